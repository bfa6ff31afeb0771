package org.culvert.care.clock;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.care.clock.CaseHistories.CaseHistory;
import org.culvert.care.clock.CaseHistories.Chosen;
import org.culvert.care.clock.limit.ClockReader;
import org.culvert.care.clock.limit.ClockReader.Listed;
import org.culvert.care.clock.limit.Limit.Ends;
import org.culvert.care.clock.limit.Running;
import org.culvert.care.clock.limit.Running.State;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Page;
import org.culvert.platform.RegionService;
import org.culvert.taxon.ListingService;
import org.culvert.taxon.ListingService.Listings;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Says how the limits of time stand, in one case or in all. */
@ApplicationScoped
public class ClockService {
    private static final Set<State> UNSETTLED = Set.of(State.running, State.warned, State.overdue, State.cantTell);
    private static final DateTimeFormatter WALL_CLOCK = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    /** One clock of one case with its limit. */
    record Ticking(CaseHistory of, TimeLimit limit, Running clock) {
        /** By when it is due, those of which that is not known last; then by case, limit and link. */
        private static final Comparator<Ticking> ORDER =
                Comparator.comparing(Ticking::due).thenComparing(Ticking::cursor);

        private Instant due() {
            return clock.dueAt() == null ? Instant.MAX : clock.dueAt();
        }

        private UUID link() {
            return clock.linkId() == null ? new UUID(0, 0) : clock.linkId();
        }

        private String cursor() {
            return (clock.dueAt() == null ? "never" : clock.dueAt()) + "~" + of.id() + "~" + limit.id() + "~" + link();
        }
    }

    private final LimitService limits;
    private final CaseHistories histories;
    private final CaseService cases;
    private final ListingService listings;
    private final TaxonService taxa;
    private final ExtensionViews extensions;
    private final RegionService regions;
    private final Clock clock;

    ClockService(
            LimitService limits,
            CaseHistories histories,
            CaseService cases,
            ListingService listings,
            TaxonService taxa,
            ExtensionViews extensions,
            RegionService regions,
            Clock clock) {
        this.limits = limits;
        this.histories = histories;
        this.cases = cases;
        this.listings = listings;
        this.taxa = taxa;
        this.extensions = extensions;
        this.regions = regions;
        this.clock = clock;
    }

    /** The clocks of a case, those that have ended among them, in the order in which they are due. */
    @Transactional
    public ClockViews.CaseClocksView ofCase(UUID caseId) {
        cases.getCase(caseId);
        List<TimeLimit> here = limits.limitsHere();
        List<Ticking> ticking = read(here, histories.read(Chosen.of(List.of(caseId))));
        return new ClockViews.CaseClocksView(
                caseId,
                limits.jurisdictionHere(),
                missing(here),
                ticking.stream().sorted(Ticking.ORDER).map(viewer()).toList(),
                extensions.extensionsOf(caseId),
                extensions.noticesOf(caseId),
                LimitService.NOTE);
    }

    /**
     * Clocks of all open cases, and of ended ones of which the authority is still to be told, in the order in which they are
     * due.
     *
     * @param state only those in this state; null: all that have not ended
     * @param cursor as a page before gave it
     */
    @Transactional
    public Page<ClockViews.CaseClockView> listClocks(@Nullable State state, int limit, @Nullable String cursor) {
        List<TimeLimit> here = limits.limitsHere();
        List<Ticking> all = read(here, histories.read(chosen(here))).stream()
                // Of an ended case in doubt its own page says so
                .filter(ticking -> ticking.of().history().endedAt() == null
                        || ticking.clock().state() != State.cantTell)
                .filter(ticking -> state == null
                        ? UNSETTLED.contains(ticking.clock().state())
                        : ticking.clock().state() == state)
                .sorted(Ticking.ORDER)
                .toList();
        List<Ticking> rows = all;
        if (cursor != null) {
            Instant due = cursorDue(cursor);
            // A row may have gone since the page before was read: begin after where it stood
            rows = all.stream()
                    .filter(ticking -> ticking.due().isAfter(due)
                            || ticking.due().equals(due) && ticking.cursor().compareTo(cursor) > 0)
                    .toList();
        }
        return Page.of(rows.subList(0, Math.min(rows.size(), limit + 1)), limit, viewer(), Ticking::cursor);
    }

    private static Instant cursorDue(String cursor) {
        String[] parts = cursor.split("~", -1);
        try {
            if (parts.length == 4) {
                return parts[0].equals("never") ? Instant.MAX : Instant.parse(parts[0]);
            }
        } catch (java.time.format.DateTimeParseException noInstant) {
            throw InvalidException.of(
                    "cursor", "This is no cursor.", "next of the page before, as this server gave it");
        }
        throw InvalidException.of("cursor", "This is no cursor.", "next of the page before, as this server gave it");
    }

    private Chosen chosen(List<TimeLimit> here) {
        List<TimeLimit> outliving = here.stream()
                .filter(row -> !row.ends().contains(Ends.caseEnded))
                .toList();
        if (outliving.isEmpty()) {
            return Chosen.open();
        }
        Instant since = outliving.stream()
                .map(row -> row.validFrom)
                .min(Comparator.naturalOrder())
                .orElseThrow()
                .atStartOfDay(regions.zone())
                .toInstant();
        if (outliving.stream().anyMatch(row -> row.listedAs.isEmpty())) {
            return Chosen.openOrToBeTold(since, null);
        }
        Listings today = listingsToday();
        Set<String> words =
                outliving.stream().flatMap(row -> row.listedAs.stream()).collect(Collectors.toSet());
        return Chosen.openOrToBeTold(
                since,
                taxa.findTaxa(null).stream()
                        .filter(taxon -> Boolean.TRUE.equals(today.isListed(taxon.scientificName(), words)))
                        .map(TaxonService.TaxonView::id)
                        .collect(Collectors.toSet()));
    }

    /** The clocks of one limit in some cases, in the order of the cases; a case that it does not bind has none. */
    List<Ticking> ofLimit(TimeLimit limit, List<CaseHistory> chosen) {
        return limits.limitsHere().contains(limit) ? read(List.of(limit), chosen) : List.of();
    }

    private List<Ticking> read(List<TimeLimit> here, List<CaseHistory> chosen) {
        var reader = new ClockReader(regions.zone(), clock.instant());
        Listings today = listingsToday();
        List<Ticking> all = new ArrayList<>();
        for (CaseHistory one : chosen) {
            for (TimeLimit row : here) {
                if (row.isAbout(one.taxonGroupId(), one.scientificName())) {
                    Listed listed = row.listedAs.isEmpty()
                            ? Listed.yes
                            : listed(today.isListed(one.scientificName(), row.listedAs));
                    reader.read(
                                    row.limit(),
                                    one.history(),
                                    one.toldByLimit().getOrDefault(row.id(), List.of()),
                                    one.extendedByLimit().get(row.id()),
                                    listed)
                            .forEach(running -> all.add(new Ticking(one, row, running)));
                }
            }
        }
        return all;
    }

    private static Listed listed(@Nullable Boolean told) {
        if (told == null) {
            return Listed.unknown;
        }
        return told ? Listed.yes : Listed.no;
    }

    private Listings listingsToday() {
        String here = limits.jurisdictionHere();
        return here == null
                ? new Listings(List.of())
                : listings.listingsOn(LocalDate.ofInstant(clock.instant(), regions.zone()), here);
    }

    private List<String> missing(List<TimeLimit> here) {
        List<String> said = new ArrayList<>();
        String jurisdiction = limits.jurisdictionHere();
        if (limits.missesPartOfCountry()) {
            said.add(
                    "Whose law holds here was not told whole, so that limits of a part of a country were not looked at:"
                            + " PUT /api/region names the jurisdiction.");
        }
        if (jurisdiction != null && here.stream().allMatch(row -> row.jurisdiction.equals(LimitService.NETWORK))) {
            said.add("No limit of time is entered here for " + jurisdiction
                    + ", which does not mean that there is none.");
        }
        return said;
    }

    private java.util.function.Function<Ticking, ClockViews.CaseClockView> viewer() {
        ZoneId zone = regions.zone();
        LocalDate today = LocalDate.ofInstant(clock.instant(), zone);
        return ticking -> {
            TimeLimit row = ticking.limit();
            Running running = ticking.clock();
            return new ClockViews.CaseClockView(
                    ticking.of().id(),
                    ticking.of().number(),
                    row.id(),
                    row.jurisdiction,
                    row.kind,
                    row.binds,
                    row.starts,
                    row.ends,
                    row.lengthInWords(),
                    row.words,
                    row.source,
                    !row.reviewBy.isAfter(today),
                    running.linkId(),
                    running.startedAt(),
                    running.dueAt(),
                    running.warnedFrom(),
                    running.state().name(),
                    running.extendedUntil(),
                    running.endedAt(),
                    running.endedBy() == null ? null : running.endedBy().name(),
                    said(running, zone),
                    row.extensionGrounds,
                    LimitService.NOTE);
        };
    }

    private static String said(Running running, ZoneId zone) {
        String due = running.dueAt() == null ? "" : wall(running.dueAt(), zone);
        return switch (running.state()) {
            case running -> "Runs until " + due + ".";
            case warned -> "Runs out soon: at " + due + ".";
            case overdue -> "Ran out at " + due + ", and nothing that ends it is recorded.";
            case endedInTime ->
                "Ended in time: at " + wall(Objects.requireNonNull(running.endedAt()), zone)
                        + (due.isEmpty() ? "." : ", before " + due + ".");
            case endedLate ->
                "Ended late: at " + wall(Objects.requireNonNull(running.endedAt()), zone) + ", after " + due + ".";
            case cantTell -> doubt(running, due);
        };
    }

    private static String doubt(Running running, String due) {
        return switch (Objects.requireNonNull(running.doubt())) {
            case nobodyHoldsIt ->
                "Can't tell: nobody is recorded as its holder, so that it is not known whom it binds and"
                        + " from when. Enter who has it.";
            case stabilisedNotTold ->
                "Can't tell: when the vet had it stable is not recorded. Counted from when it came, the"
                        + " earliest, it is due at " + due + ".";
            case listingNotKnown ->
                "Can't tell: how the law lists this kind is not recorded. If it is listed so, it is due" + " at " + due
                        + ". Enter the listing, or notListed.";
        };
    }

    private static String wall(Instant instant, ZoneId zone) {
        ZonedDateTime local = instant.atZone(zone);
        return WALL_CLOCK.format(local) + " (UTC" + local.getOffset().getId().replace("Z", "+00:00") + ")";
    }
}
