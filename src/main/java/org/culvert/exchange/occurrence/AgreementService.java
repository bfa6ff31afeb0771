package org.culvert.exchange.occurrence;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.ConstraintSentences;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.account.AccountService;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Agreements with named recipients, and what went out under them. */
@ApplicationScoped
public class AgreementService {
    /** A box in degrees on WGS 84. */
    public record Box(
            @NotNull @DecimalMin("-90") @DecimalMax("90") Double south,
            @NotNull @DecimalMin("-180") @DecimalMax("180") Double west,
            @NotNull @DecimalMin("-90") @DecimalMax("90") Double north,
            @NotNull @DecimalMin("-180") @DecimalMax("180") Double east) {}

    /**
     * An agreement as entered.
     *
     * @param recipient username of the account that it is for, which needs the role recipient
     * @param documentReference where the signed agreement is
     * @param taxonGroups keys of groups; with {@code scientificNames} empty too, every kind
     * @param box where; the whole region when left out
     * @param validTo last day
     */
    public record AgreementEntry(
            @NotBlank @Size(max = 200) String recipient,
            @NotBlank @Size(max = 2000) String purpose,
            @NotBlank @Size(max = 500) String documentReference,
            @Size(max = 100) List<@NotBlank String> taxonGroups,
            @Size(max = 100) List<@NotBlank String> scientificNames,
            @Nullable @Valid Box box,
            @NotNull LocalDate validFrom,
            @NotNull LocalDate validTo) {
        public AgreementEntry {
            taxonGroups = taxonGroups == null ? List.of() : List.copyOf(taxonGroups);
            scientificNames = scientificNames == null ? List.of() : List.copyOf(scientificNames);
        }
    }

    public record AgreementView(
            UUID id,
            UUID recipientAccountId,
            String purpose,
            String documentReference,
            List<String> taxonGroups,
            List<String> scientificNames,
            @Nullable Box box,
            LocalDate validFrom,
            LocalDate validTo,
            @Nullable Instant endedAt,
            @Nullable String endedReason,
            RecordView record) {}

    /**
     * Exact records that went out.
     *
     * @param records how many
     * @param filter what was asked for
     */
    public record DisclosureView(UUID id, UUID agreementId, UUID accountId, int records, String filter, Instant at) {}

    @ApplicationScoped
    static class Agreements implements PanacheRepositoryBase<Agreement, UUID> {}

    @ApplicationScoped
    static class Disclosures implements PanacheRepositoryBase<Disclosure, UUID> {}

    @ApplicationScoped
    static class Sentences implements ConstraintSentences {
        @Override
        public Map<String, String> sentences() {
            return Map.of(
                    "a_licence_of_archives_is_an_address",
                    "The licence of archives is the address of one.",
                    "a_contact_of_archives_is_an_address",
                    "The contact of archives is an address for letters.",
                    "an_agreement_ends_after_it_begins",
                    "An agreement cannot end before it begins.",
                    "an_agreements_box_is_sane",
                    "The box of an agreement has its south below its north and its west below its east.",
                    "an_agreement_is_of_a_box_or_the_region",
                    "The box of an agreement has four sides.",
                    "ending_an_agreement_has_time_and_reason",
                    "Ending an agreement needs a time and a reason.",
                    "a_public_delay_is_no_less_than_none",
                    "What is open to everybody comes out at once or some days later, never before.",
                    "a_smallest_count_is_positive",
                    "The smallest count that is shown is one or more.",
                    "disclosure_settings_only_one",
                    "A server has one set of these settings, and it is there already.");
        }
    }

    @Produces
    @Singleton
    static TagSource tag(EntityManager entities, AgreementService service) {
        return new RowTag("agreement", "agreements", entities, service::getAgreement);
    }

    private final Agreements agreements;
    private final Disclosures disclosures;
    private final AccountService accounts;
    private final TaxonService taxa;
    private final RecordViews records;
    private final Clock clock;

    AgreementService(
            Agreements agreements,
            Disclosures disclosures,
            AccountService accounts,
            TaxonService taxa,
            RecordViews records,
            Clock clock) {
        this.agreements = agreements;
        this.disclosures = disclosures;
        this.accounts = accounts;
        this.taxa = taxa;
        this.records = records;
        this.clock = clock;
    }

    @Transactional
    public AgreementView make(AgreementEntry entry) {
        UUID recipient = accounts.findId(entry.recipient())
                .orElseThrow(() -> InvalidException.of(
                        "recipient", "There is no account " + entry.recipient() + ".", "the name of an account"));
        entry.taxonGroups().forEach(key -> taxa.requireGroup("taxonGroups", key));
        for (String name : entry.scientificNames()) {
            if (taxa.findByScientificName(name).isEmpty()) {
                throw InvalidException.of("scientificNames", "There is no taxon " + name + ".", "names from /api/taxa");
            }
        }
        if (entry.validTo().isBefore(entry.validFrom())) {
            throw InvalidException.of("validTo", "It ends before it begins.", "a day on or after validFrom");
        }
        Box box = entry.box();
        if (box != null && (box.south() >= box.north() || box.west() >= box.east())) {
            throw InvalidException.of("box", "The box has no inside.", "south < north and west < east");
        }
        var row = new Agreement(recipient, entry);
        agreements.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public AgreementView end(UUID id, String reason) {
        Agreement row = require(id);
        row.end(clock.instant(), reason);
        agreements.flush();
        return view(row);
    }

    @Transactional
    public Page<AgreementView> listAgreements(int limit, @Nullable UUID before) {
        List<Agreement> rows = agreements
                .find("?1 is null or id < ?1 order by id desc", before)
                .page(0, limit + 1)
                .list();
        return Page.of(rows, limit, this::view, row -> row.id().toString());
    }

    @Transactional
    public Page<DisclosureView> listDisclosures(int limit, @Nullable UUID before) {
        List<Disclosure> rows = disclosures
                .find("?1 is null or id < ?1 order by id desc", before)
                .page(0, limit + 1)
                .list();
        return Page.of(rows, limit, AgreementService::view, row -> row.id().toString());
    }

    @Transactional
    public AgreementView getAgreement(UUID id) {
        return view(require(id));
    }

    private Agreement require(UUID id) {
        return agreements.findByIdOptional(id).orElseThrow(() -> new NotFoundException("agreement", id));
    }

    /** Whether an account has an agreement that holds on a day. */
    @Transactional
    boolean holds(UUID accountId, LocalDate on) {
        return agreements.count(
                        "recipientAccountId = ?1 and endedAt is null and validFrom <= ?2 and validTo >= ?2",
                        accountId,
                        on)
                > 0;
    }

    /** Keeps that exact records went out. */
    @Transactional
    void disclose(UUID agreementId, UUID accountId, int records, String filter) {
        disclosures.persistAndFlush(new Disclosure(agreementId, accountId, records, filter, clock.instant()));
    }

    private AgreementView view(Agreement row) {
        Box box = row.south == null
                ? null
                : new Box(
                        row.south,
                        Objects.requireNonNull(row.west),
                        Objects.requireNonNull(row.north),
                        Objects.requireNonNull(row.east));
        return new AgreementView(
                row.id(),
                row.recipientAccountId,
                row.purpose,
                row.documentReference,
                row.taxonGroups,
                row.scientificNames,
                box,
                row.validFrom,
                row.validTo,
                row.endedAt,
                row.endedReason,
                records.of(row));
    }

    private static DisclosureView view(Disclosure row) {
        return new DisclosureView(
                row.id(),
                row.agreementId,
                row.accountId,
                row.records,
                row.filter,
                Objects.requireNonNull(row.happenedAt()));
    }
}
