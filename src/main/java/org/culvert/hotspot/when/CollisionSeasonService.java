package org.culvert.hotspot.when;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.function.Predicate;
import org.culvert.call.CollisionReport;
import org.culvert.hotspot.AuthoritySight;
import org.culvert.hotspot.EvidenceRoads;
import org.culvert.hotspot.PeriodReports;
import org.culvert.hotspot.stats.RoadSpan;
import org.culvert.hotspot.works.RoadPieces;
import org.culvert.hotspot.works.StretchQuestionService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.RegionService;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadService;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Tells when collisions of a group of animals happen. */
@ApplicationScoped
public class CollisionSeasonService {
    private static final int USUAL_YEARS = 5;
    private static final int MOST_YEARS = 30;
    private static final List<String> RESTS_ON = List.of(
            "Each incident whose cause is a collision counts once, whoever rang and however many animals were struck.",
            "Where nobody knows when it happened, it counts on the day of its report; of an interval of up to 31 days, on"
                    + " its middle. Half of all carcasses are gone after a day (Santos et al. 2016, PLoS ONE, doi"
                    + " 10.1371/journal.pone.0165608), so that a report is seldom late by more than a few days.",
            "Hours and light are of collisions whose own time is known, to the hour or to one class of light. The hours of"
                    + " reports are those of the people who ring, and are told apart.",
            "The tests ask whether the days come from all around the bare year. More traffic, more people about or more"
                    + " calls answered in some months make a season too: look at what is said against the calls.",
            "The number of peaks is decided by the rule that is told with its figures, at 5 %; the other tests are shown"
                    + " beside it and decide nothing.");

    private final PeriodReports incidents;
    private final RoadService roads;
    private final TaxonService taxa;
    private final RegionService regions;
    private final AuthoritySight authority;
    private final Clock clock;

    CollisionSeasonService(
            PeriodReports incidents,
            RoadService roads,
            TaxonService taxa,
            RegionService regions,
            AuthoritySight authority,
            Clock clock) {
        this.incidents = incidents;
        this.roads = roads;
        this.taxa = taxa;
        this.regions = regions;
        this.authority = authority;
        this.clock = clock;
    }

    /** @throws InvalidException naming every field that is wrong */
    @Transactional
    public CollisionSeasonsView tell(SeasonQuestion question) {
        ZoneId zone = regions.zone();
        LocalDate today = clock.instant().atZone(zone).toLocalDate();
        LocalDate last = question.periodTo() == null ? LocalDate.of(today.getYear() - 1, 12, 31) : question.periodTo();
        LocalDate first =
                question.periodFrom() == null ? last.plusDays(1).minusYears(USUAL_YEARS) : question.periodFrom();
        Integer smallest = authority.smallestCount();
        check(question, first, last, today, smallest != null);
        List<CollisionReport> reports = incidents.list(
                first.atStartOfDay(zone).toInstant(),
                last.plusDays(1).atStartOfDay(zone).toInstant());
        Predicate<CollisionReport> onTheRoads = onTheRoadsOf(question.owner());
        var told = new Told(smallest);
        var teller = new SeasonTeller(told);
        CountedCollisions one = CountedCollisions.of(reports, first, last, question.taxonGroup(), onTheRoads, zone);
        String with = question.comparedWith();
        CountedCollisions other =
                with == null ? null : CountedCollisions.of(reports, first, last, with, onTheRoads, zone);
        int[] calls = callsByMonth(reports, onTheRoads, zone);
        var times = new TimesTeller(told, zone);
        return new CollisionSeasonsView(
                first,
                last,
                question.owner(),
                smallest,
                season(question.taxonGroup(), one, calls, last, told, teller, times),
                other == null ? null : season(with, other, calls, last, told, teller, times),
                other == null ? null : teller.compare(one, other),
                RESTS_ON);
    }

    /**
     * Hours and light of the collisions on a stretch, in whole calendar years that are over; empty where they are not told.
     *
     * @throws InvalidException where the current roads have no such stretch
     */
    @Transactional
    public Optional<StretchTimes> tellOfStretch(
            @Nullable String taxonGroup, String road, double from, double to, int firstYear, int lastYear) {
        if (authority.withholdsPlacesOf(taxonGroup)) {
            return Optional.empty();
        }
        Integer smallest = authority.smallestCount();
        if (smallest != null) {
            StretchQuestionService.requireStep("fromChainageMetres", from);
            StretchQuestionService.requireStep("toChainageMetres", to);
        }
        ZoneId zone = regions.zone();
        LocalDate first = LocalDate.of(firstYear, 1, 1);
        LocalDate last = LocalDate.of(lastYear, 12, 31);
        CurrentRoads current = roads.current();
        RoadPieces pieces = RoadPieces.of(current.network());
        List<RoadSpan> spans = pieces.requireStretch("", road, from, to).stream()
                .flatMap(part -> pieces.spans(part).stream())
                .toList();
        CountedCollisions counted = CountedCollisions.of(
                incidents.list(
                        first.atStartOfDay(zone).toInstant(),
                        last.plusDays(1).atStartOfDay(zone).toInstant()),
                first,
                last,
                taxonGroup,
                report -> isOn(report, spans, current),
                zone);
        var times = new TimesTeller(new Told(smallest), zone);
        RoadSpan middle = spans.get(spans.size() / 2);
        return Optional.of(new StretchTimes(
                firstYear,
                lastYear,
                times.light(counted.timed(), last),
                times.hoursOfCollisions(counted.timed()),
                times.sun(
                        lastYear,
                        current.network().positionAt(middle.link(), (middle.fromMetres() + middle.toMetres()) / 2))));
    }

    private static boolean isOn(CollisionReport report, List<RoadSpan> spans, CurrentRoads current) {
        UUID id = report.roadLinkId();
        Double metres = report.metresAlongLink();
        OptionalInt link = id == null ? OptionalInt.empty() : current.findLink(id);
        return link.isPresent()
                && metres != null
                && spans.stream()
                        .anyMatch(span -> span.link() == link.getAsInt()
                                && span.fromMetres() <= metres
                                && metres <= span.toMetres());
    }

    private static CollisionSeasonsView.GroupSeason season(
            @Nullable String taxonGroup,
            CountedCollisions counted,
            int[] calls,
            LocalDate last,
            Told told,
            SeasonTeller teller,
            TimesTeller times) {
        CollisionSeasonsView.YearCircle circle = teller.circle(counted.days());
        return new CollisionSeasonsView.GroupSeason(
                taxonGroup,
                told.count(counted.count()),
                told.tells(counted.count()) ? told.count(counted.onDayOfReport()) : null,
                counted.leftOut(),
                teller.words(counted.count(), circle),
                told.parts(counted.months()),
                circle,
                teller.effort(counted.months(), calls),
                times.light(counted.timed(), last),
                times.hoursOfCollisions(counted.timed()),
                times.hoursOfReports(counted.timed()));
    }

    /** Incidents of any cause and any animal, each once, by the month of their report. */
    private static int[] callsByMonth(
            List<CollisionReport> reports, Predicate<CollisionReport> onTheRoads, ZoneId zone) {
        int[] months = new int[12];
        for (CollisionReport report : reports) {
            if (!report.joined() && onTheRoads.test(report)) {
                months[report.reportedAt().atZone(zone).getMonthValue() - 1]++;
            }
        }
        return months;
    }

    private Predicate<CollisionReport> onTheRoadsOf(@Nullable String owner) {
        if (owner == null) {
            return report -> true;
        }
        CurrentRoads current = roads.current();
        return report -> {
            UUID id = report.roadLinkId();
            OptionalInt link = id == null ? OptionalInt.empty() : current.findLink(id);
            return link.isPresent()
                    && owner.equals(
                            current.network().attributes(link.getAsInt()).owner());
        };
    }

    private void check(SeasonQuestion question, LocalDate first, LocalDate last, LocalDate today, boolean small) {
        List<FieldError> errors = new ArrayList<>();
        checkPeriod(first, last, today, small, errors);
        checkGroup("taxonGroup", question.taxonGroup(), errors);
        checkGroup("comparedWith", question.comparedWith(), errors);
        String with = question.comparedWith();
        if (with != null && (question.taxonGroup() == null || with.equals(question.taxonGroup()))) {
            errors.add(error(
                    "comparedWith", "A group is compared with another one.", "a taxonGroup, and another group here"));
        }
        checkOwner(question, errors);
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
    }

    private static void checkPeriod(
            LocalDate first, LocalDate last, LocalDate today, boolean small, List<FieldError> errors) {
        if (last.isBefore(first)) {
            errors.add(error("periodTo", "The period ends before it begins.", "a day after periodFrom"));
            return;
        }
        int years = last.plusDays(1).getYear() - first.getYear();
        if (years > MOST_YEARS || first.getYear() < 1900 || last.getYear() > 2200) {
            errors.add(error("periodFrom", "The period is too long.", "at most " + MOST_YEARS + " years"));
        } else if (years < 1 || !first.plusYears(years).equals(last.plusDays(1))) {
            errors.add(error(
                    "periodTo",
                    "A season is told from whole years: what is looked at more often would look busier.",
                    "a day a whole number of years later, such as "
                            + first.plusYears(Math.max(1, years)).minusDays(1)));
        } else if (!last.isBefore(today)) {
            errors.add(error("periodTo", "The last year is not over.", "a day before " + today));
        } else if (small && first.getDayOfYear() != 1) {
            // From counts that begin a day apart, what happened on that day could be told
            errors.add(error("periodFrom", "Counts are told to you by calendar years.", "a first of January"));
        }
    }

    private void checkGroup(String field, @Nullable String group, List<FieldError> errors) {
        if (group != null && taxa.findGroup(group).isEmpty()) {
            errors.add(error(
                    field,
                    "There is no such taxon group.",
                    String.join(
                            ", ",
                            taxa.listGroups().stream()
                                    .map(TaxonService.GroupView::key)
                                    .toList())));
        }
    }

    private void checkOwner(SeasonQuestion question, List<FieldError> errors) {
        if (question.owner() == null) {
            return;
        }
        if (authority.withholdsPlacesOf(question.taxonGroup())
                || authority.withholdsPlacesOf(question.comparedWith())) {
            errors.add(error(
                    "owner",
                    "A species of this group is sensitive: where it is struck is not told to you.",
                    "no owner with this group"));
            return;
        }
        List<String> owners = EvidenceRoads.owners(roads.current().network());
        if (!owners.contains(question.owner())) {
            errors.add(error(
                    "owner",
                    "No road of the current network belongs to that owner.",
                    owners.isEmpty() ? "the network names no owners" : String.join(", ", owners)));
        }
    }

    private static FieldError error(String field, String detail, String wanted) {
        return new FieldError(field, detail, wanted, null);
    }
}
