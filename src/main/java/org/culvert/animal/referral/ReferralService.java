package org.culvert.animal.referral;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ReadTransaction;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Keeps what the network's holders may not hold, and says it of an animal. */
@ApplicationScoped
public class ReferralService {
    /** What every referral says of itself. */
    public static final String NOTE =
            "Custody is recorded all the same, since somebody has the animal. Check your local code and your licensed vet.";

    private static final String NETWORK = "network";

    /** What stands behind a referral. */
    public enum ReferralKind {
        /** A law, or what is laid down under one such as a licence's condition. */
        statute,
        /** The network's own. */
        policy,
        advice
    }

    /**
     * A referral as entered, of a group or of a taxon.
     *
     * @param jurisdiction ISO 3166 code of a country or of a part of one; {@code network} for the network's own policy, and
     *     for that alone
     * @param scientificName the taxon, its lower ranks included
     * @param referTo to whom it goes instead: a body or office, no person
     * @param reviewBy the day from which the source wants reading again
     * @param validTo the first day on which it no longer holds
     */
    public record ReferralEntry(
            @NotNull
            @Pattern(regexp = "[A-Z]{2}(-[A-Z0-9]{1,3})?|network", message = "must be an ISO 3166 code or network")
            String jurisdiction,

            @NotNull ReferralKind kind,
            @Nullable @Size(max = 200) String taxonGroup,
            @Nullable @Size(min = 1, max = 200) String scientificName,
            @NotBlank @Size(max = 500) String referTo,
            @NotBlank @Size(max = 4000) String words,
            @NotBlank @Size(max = 4000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @NotNull LocalDate validFrom,
            @Nullable LocalDate validTo) {}

    /** Someone has read the source of a referral again. */
    public record ReferralReview(
            @Nullable @Size(max = 4000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @Nullable LocalDate validTo,
            @NotBlank @Size(max = 2000) String reason) {}

    /** A referral as kept. */
    public record ReferralView(
            UUID id,
            String jurisdiction,
            String kind,
            @Nullable String taxonGroup,
            @Nullable String scientificName,
            String referTo,
            String words,
            String source,
            LocalDate readOn,
            LocalDate reviewBy,
            LocalDate validFrom,
            @Nullable LocalDate validTo,
            String note,
            RecordView record) {}

    /**
     * Said of an animal: the network's holders may not hold it, as far as is entered.
     *
     * @param referTo to whom it goes instead
     * @param reviewDue whether the source should have been read again by now
     */
    public record ReferOutView(
            UUID referralId,
            String jurisdiction,
            String kind,
            String words,
            String referTo,
            String source,
            boolean reviewDue,
            String note) {}

    /** What holds here today, to be asked about many animals. */
    public static final class Today {
        private final List<Referral> rows;
        private final LocalDate day;

        private Today(List<Referral> rows, LocalDate day) {
            this.rows = rows;
            this.day = day;
        }

        public List<ReferOutView> of(UUID taxonGroupId, String scientificName) {
            return rows.stream()
                    .filter(row -> row.isAbout(taxonGroupId, scientificName))
                    .map(row -> new ReferOutView(
                            row.id(),
                            row.jurisdiction,
                            row.kind,
                            row.words,
                            row.referTo,
                            row.source,
                            !row.reviewBy.isAfter(day),
                            NOTE))
                    .toList();
        }
    }

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<Referral, UUID> {}

    @Produces
    @Singleton
    static TagSource ofReferral(EntityManager entities, ReferralService referrals) {
        return new RowTag("referral", "referrals", entities, referrals::getReferral);
    }

    private final Rows rows;
    private final TaxonService taxa;
    private final RegionService regions;
    private final RecordViews records;
    private final Clock clock;
    private final ReadTransaction reading;

    ReferralService(
            Rows rows,
            TaxonService taxa,
            RegionService regions,
            RecordViews records,
            Clock clock,
            ReadTransaction reading) {
        this.reading = reading;
        this.rows = rows;
        this.taxa = taxa;
        this.regions = regions;
        this.records = records;
        this.clock = clock;
    }

    @Transactional
    public ReferralView createReferral(ReferralEntry entry) {
        if ((entry.kind() == ReferralKind.policy) != entry.jurisdiction().equals(NETWORK)) {
            throw InvalidException.of(
                    "jurisdiction",
                    "What the network itself does not hold is policy, and policy is the network's own.",
                    "network for policy, an ISO 3166 code for the rest");
        }
        if ((entry.taxonGroup() == null) == (entry.scientificName() == null)) {
            throw InvalidException.of("scientificName", "It is of a group or of a taxon.", "one of the two");
        }
        requireDays(entry.readOn(), entry.reviewBy(), entry.validFrom(), entry.validTo());
        UUID groupId = entry.taxonGroup() == null
                ? null
                : taxa.requireGroup("taxonGroup", entry.taxonGroup()).id();
        Referral row = Referral.of(entry, groupId);
        rows.persistAndFlush(row);
        return getReferral(row.id());
    }

    /** Records that the source was read again, and on what day it wants reading next. */
    @Transactional
    public ReferralView review(UUID id, ReferralReview review) {
        Referral row = require(id);
        requireDays(review.readOn(), review.reviewBy(), row.validFrom, review.validTo());
        row.review(review);
        rows.flush();
        return getReferral(id);
    }

    @Transactional
    public ReferralView getReferral(UUID id) {
        return views(List.of(require(id))).get(0);
    }

    /** All referrals, those of other places and days too, in a stable order. */
    @Transactional
    public List<ReferralView> listReferrals() {
        return views(rows.list("order by jurisdiction, id"));
    }

    /** What holds where the network works, today. */
    @Transactional
    public Today today() {
        return reading.once(Today.class, this::readToday);
    }

    private Today readToday() {
        LocalDate day = LocalDate.ofInstant(clock.instant(), regions.zone());
        String here = regions.findRegion()
                .map(region -> region.jurisdiction() == null ? region.countryCode() : region.jurisdiction())
                .orElse("");
        return new Today(
                rows.list("validFrom <= ?1 and (validTo is null or validTo > ?1) order by id", day).stream()
                        .filter(row -> row.jurisdiction.equals(NETWORK)
                                || here.equals(row.jurisdiction)
                                || here.startsWith(row.jurisdiction + "-"))
                        .toList(),
                day);
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

    private Referral require(UUID id) {
        return rows.findByIdOptional(id).orElseThrow(() -> new NotFoundException("referral", id));
    }

    private List<ReferralView> views(List<Referral> referrals) {
        records.lookUp(referrals);
        Map<UUID, String> groups = taxa.listGroups().stream()
                .collect(Collectors.toMap(TaxonService.GroupView::id, TaxonService.GroupView::key));
        return referrals.stream()
                .map(row -> new ReferralView(
                        row.id(),
                        row.jurisdiction,
                        row.kind,
                        row.taxonGroupId == null ? null : groups.get(row.taxonGroupId),
                        row.scientificName,
                        row.referTo,
                        row.words,
                        row.source,
                        row.readOn,
                        row.reviewBy,
                        row.validFrom,
                        row.validTo,
                        NOTE,
                        records.of(row)))
                .toList();
    }
}
