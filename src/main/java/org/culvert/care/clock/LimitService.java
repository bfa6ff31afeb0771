package org.culvert.care.clock;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.care.clock.limit.Length.Unit;
import org.culvert.care.clock.limit.Limit.Binds;
import org.culvert.care.clock.limit.Limit.Ends;
import org.culvert.care.clock.limit.Limit.Starts;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Keeps limits of time: shipped, and those a network enters for itself. */
@ApplicationScoped
public class LimitService {
    /** The jurisdiction of the network's own limits. */
    static final String NETWORK = "network";

    /** What every limit, and every clock, says of itself. */
    public static final String NOTE =
            "This counts what was entered here, and is no advice on the law: check your local code and your licensed vet.";

    /** What stands behind a limit. */
    public enum LimitKind {
        /** A law, or what is laid down under one such as a licence's condition. */
        statute,
        /** The network's own. */
        policy,
        advice
    }

    /**
     * A limit as entered.
     *
     * @param jurisdiction ISO 3166 code of a country or of a part of one; {@code network} for the network's own policy, and
     *     for that alone
     * @param taxonGroup key of the group it is about; with {@code scientificName} left out too it is about all
     * @param listedAs words of species listings: about taxa listed as one of these alone; empty: about all
     * @param ends whichever comes first; after a death in care only {@code toldAuthority}
     * @param length in {@code lengthUnit}: hours are exact, the others are of the calendar in the region's time zone
     * @param warnBeforeHours from how many hours before it is due it warns; 0: not
     * @param extensionGrounds on which it may be extended, in words; empty: only by an order
     * @param reviewBy the day from which the source wants reading again
     */
    public record LimitEntry(
            @NotNull
            @Pattern(regexp = "[A-Z]{2}(-[A-Z0-9]{1,3})?|network", message = "must be an ISO 3166 code or network")
            String jurisdiction,

            @NotNull LimitKind kind,
            @Nullable @Size(max = 200) String taxonGroup,
            @Nullable @Size(max = 200) String scientificName,
            @Size(max = 100) List<@NotBlank @Size(max = 200) String> exceptScientificNames,

            @Size(max = 20)
            List<
                            @NotNull @Size(max = 100)
                            @Pattern(regexp = "[a-z][A-Za-z0-9]*", message = "must be one word such as threatened")
                            String>
                    listedAs,

            @NotNull Binds binds,
            @NotNull Starts starts,
            @NotEmpty List<@NotNull Ends> ends,
            @NotNull @Min(1) @Max(10_000) Integer length,
            @NotNull Unit lengthUnit,
            @NotNull @Min(0) @Max(10_000) Integer warnBeforeHours,
            @Size(max = 20) List<@NotBlank @Size(max = 200) String> extensionGrounds,
            @NotBlank @Size(max = 4000) String words,
            @NotBlank @Size(max = 4000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @NotNull LocalDate validFrom,
            @Nullable LocalDate validTo) {
        public LimitEntry {
            exceptScientificNames = exceptScientificNames == null ? List.of() : exceptScientificNames;
            listedAs = listedAs == null ? List.of() : listedAs;
            extensionGrounds = extensionGrounds == null ? List.of() : extensionGrounds;
        }
    }

    /**
     * Someone has read the source of a limit again.
     *
     * @param source what was read, where it is another edition; left out: the same
     * @param validTo the first day on which it no longer holds, where the source says so; what holds instead is a new row
     */
    public record LimitReview(
            @Nullable @Size(max = 4000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @Nullable LocalDate validTo,
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * A limit as shown.
     *
     * @param holdsHere whether it holds today where the network works
     * @param reviewDue whether its source should have been read again by now
     */
    public record TimeLimitView(
            UUID id,
            String jurisdiction,
            String kind,
            @Nullable String taxonGroup,
            @Nullable String scientificName,
            List<String> exceptScientificNames,
            List<String> listedAs,
            String binds,
            String starts,
            List<String> ends,
            int length,
            String lengthUnit,
            int warnBeforeHours,
            List<String> extensionGrounds,
            String words,
            String source,
            LocalDate readOn,
            LocalDate reviewBy,
            LocalDate validFrom,
            @Nullable LocalDate validTo,
            boolean holdsHere,
            boolean reviewDue,
            String note,
            RecordView record) {}

    @ApplicationScoped
    static class Limits implements PanacheRepositoryBase<TimeLimit, UUID> {}

    private final Limits limits;
    private final TaxonService taxa;
    private final RegionService regions;
    private final RecordViews records;
    private final Clock clock;

    LimitService(Limits limits, TaxonService taxa, RegionService regions, RecordViews records, Clock clock) {
        this.limits = limits;
        this.taxa = taxa;
        this.regions = regions;
        this.records = records;
        this.clock = clock;
    }

    @Transactional
    public TimeLimitView createLimit(LimitEntry entry) {
        requireWhole(entry);
        UUID groupId = entry.taxonGroup() == null
                ? null
                : taxa.requireGroup("taxonGroup", entry.taxonGroup()).id();
        TimeLimit row = TimeLimit.of(entry, groupId);
        limits.persistAndFlush(row);
        return getLimit(row.id());
    }

    /** Records that the source was read again, and on what day it wants reading next. */
    @Transactional
    public TimeLimitView review(UUID id, LimitReview review) {
        TimeLimit row = require(id);
        requireDays(review.readOn(), review.reviewBy(), row.validFrom, review.validTo());
        row.review(review);
        limits.flush();
        return getLimit(id);
    }

    @Transactional
    public TimeLimitView getLimit(UUID id) {
        return views(List.of(require(id))).get(0);
    }

    /** All limits, those of other places and days too, in a stable order. */
    @Transactional
    public List<TimeLimitView> listLimits() {
        return views(limits.list("order by jurisdiction, id"));
    }

    /** Whose law holds where the network works, as far as it was told: a part of the country, the country, or nothing. */
    @Nullable
    String jurisdictionHere() {
        return regions.findRegion()
                .map(region -> region.jurisdiction() == null ? region.countryCode() : region.jurisdiction())
                .orElse(null);
    }

    /** Limits of this place, its country's and the network's own included, of all days. */
    List<TimeLimit> limitsHere() {
        String here = jurisdictionHere();
        return limits.list("order by id").stream()
                .filter(row -> holdsIn(row, here))
                .toList();
    }

    /** Whether limits of parts of the country are kept although it is not told in which part the network works. */
    boolean missesPartOfCountry() {
        String here = jurisdictionHere();
        return here == null || here.length() == 2 && limits.count("jurisdiction like ?1", here + "-%") > 0;
    }

    TimeLimit require(UUID id) {
        return limits.findByIdOptional(id).orElseThrow(() -> new NotFoundException("time limit", id));
    }

    private static boolean holdsIn(TimeLimit row, @Nullable String here) {
        return row.jurisdiction.equals(NETWORK)
                || here != null && (here.equals(row.jurisdiction) || here.startsWith(row.jurisdiction + "-"));
    }

    private static void requireWhole(LimitEntry entry) {
        if ((entry.kind() == LimitKind.policy) != entry.jurisdiction().equals(NETWORK)) {
            throw InvalidException.of(
                    "jurisdiction",
                    "The network's own limits are policy, and policy is the network's own.",
                    "network for policy, an ISO 3166 code for the rest");
        }
        if (entry.taxonGroup() != null && entry.scientificName() != null) {
            throw InvalidException.of("scientificName", "It is about a group or about a taxon.", "one of the two");
        }
        if (entry.starts() == Starts.deathInCare && !entry.ends().equals(List.of(Ends.toldAuthority))) {
            throw InvalidException.of(
                    "ends", "After a death only telling the authority is left to be done.", "toldAuthority alone");
        }
        requireDays(entry.readOn(), entry.reviewBy(), entry.validFrom(), entry.validTo());
    }

    private static void requireDays(
            LocalDate readOn, LocalDate reviewBy, LocalDate validFrom, @Nullable LocalDate validTo) {
        if (!reviewBy.isAfter(readOn)) {
            throw InvalidException.of("reviewBy", "It would be due at once.", "a day after readOn");
        }
        if (validTo != null && !validTo.isAfter(validFrom)) {
            throw InvalidException.of("validTo", "It ends before it begins.", "a day after " + validFrom);
        }
    }

    private List<TimeLimitView> views(List<TimeLimit> rows) {
        records.lookUp(rows);
        Map<UUID, String> groups = taxa.listGroups().stream()
                .collect(Collectors.toMap(TaxonService.GroupView::id, TaxonService.GroupView::key));
        LocalDate today = LocalDate.ofInstant(clock.instant(), regions.zone());
        String here = jurisdictionHere();
        return rows.stream()
                .map(row -> new TimeLimitView(
                        row.id(),
                        row.jurisdiction,
                        row.kind,
                        row.taxonGroupId == null ? null : groups.get(row.taxonGroupId),
                        row.scientificName,
                        row.exceptScientificNames,
                        row.listedAs,
                        row.binds,
                        row.starts,
                        row.ends,
                        row.length,
                        row.lengthUnit,
                        row.warnBeforeHours,
                        row.extensionGrounds,
                        row.words,
                        row.source,
                        row.readOn,
                        row.reviewBy,
                        row.validFrom,
                        row.validTo,
                        holdsIn(row, here)
                                && !row.validFrom.isAfter(today)
                                && (row.validTo == null || row.validTo.isAfter(today)),
                        !row.reviewBy.isAfter(today),
                        NOTE,
                        records.of(row)))
                .toList();
    }
}
