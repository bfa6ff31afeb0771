package org.culvert.release.facts;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.release.rules.SpeciesFact;
import org.culvert.release.rules.SpeciesFact.ActivePeriod;
import org.culvert.release.rules.SpeciesFact.Kind;
import org.jspecify.annotations.Nullable;

/** Keeps facts of species. */
@ApplicationScoped
public class SpeciesFactService {
    /** What every fact says of itself. */
    public static final String NOTE =
            "This is what its source reports of the animals that were looked at; it is no rule and"
                    + " no limit. Check your local code and your licensed vet.";

    /**
     * A fact as entered.
     *
     * @param scientificName the taxon, its lower ranks included
     * @param metres for movementRange and nestToWater, and for these alone
     * @param activePeriod for activePeriod, and for that alone
     * @param words what was published, with its spread
     * @param source where, and how much of it was read
     * @param readOn when somebody read it
     * @param reviewBy the day from which it should be looked for again
     * @param validTo the first day on which it no longer stands
     */
    public record FactEntry(
            @NotNull Kind kind,
            @NotBlank @Size(max = 200) String scientificName,

            @Nullable @Positive @DecimalMax("20100000") Double metres,

            @Nullable ActivePeriod activePeriod,
            @NotBlank @Size(max = 4000) String words,
            @NotBlank @Size(max = 4000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @NotNull LocalDate validFrom,
            @Nullable LocalDate validTo) {}

    /**
     * Someone has read the source of a fact again.
     *
     * @param source what was read, where it is another edition or more of it; left out: the same
     * @param validTo the first day on which it no longer stands, where the source says so; what stands instead is a new row
     */
    public record FactReview(
            @Nullable @Size(max = 4000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @Nullable LocalDate validTo,
            @NotBlank @Size(max = 2000) String reason) {}

    /** A fact as shown. */
    public record PublishedFactView(
            UUID id,
            String kind,
            String scientificName,
            @Nullable Double metres,
            @Nullable String activePeriod,
            String words,
            String source,
            LocalDate readOn,
            LocalDate reviewBy,
            LocalDate validFrom,
            @Nullable LocalDate validTo,
            String note,
            RecordView record) {}

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<PublishedFact, UUID> {}

    private final Rows rows;
    private final RecordViews records;

    SpeciesFactService(Rows rows, RecordViews records) {
        this.rows = rows;
        this.records = records;
    }

    @Transactional
    public PublishedFactView createFact(FactEntry entry) {
        requireWhole(entry);
        PublishedFact row = PublishedFact.of(entry);
        rows.persistAndFlush(row);
        return view(row);
    }

    /** Records that the source was read again, and on what day it wants looking for next. */
    @Transactional
    public PublishedFactView review(UUID id, FactReview review) {
        PublishedFact row = require(id);
        requireReview(review.readOn(), review.reviewBy());
        requireEnd(row.validFrom, review.validTo());
        row.review(review);
        rows.flush();
        return view(row);
    }

    @Transactional
    public PublishedFactView getFact(UUID id) {
        return view(require(id));
    }

    /** All facts, those of other days too, in a stable order. */
    @Transactional
    public List<PublishedFactView> listFacts() {
        return rows.list("order by scientificName, id").stream().map(this::view).toList();
    }

    /** What stands of a taxon on a day, those of wider taxa included, in the order in which it was entered. */
    @Transactional
    public List<SpeciesFact> factsOf(String scientificName, LocalDate day) {
        return rows.list("validFrom <= ?1 and (validTo is null or validTo > ?1) order by id", day).stream()
                .map(PublishedFact::fact)
                .filter(fact -> fact.isAbout(scientificName))
                .toList();
    }

    private PublishedFact require(UUID id) {
        return rows.findByIdOptional(id).orElseThrow(() -> new NotFoundException("species fact", id));
    }

    private static void requireWhole(FactEntry entry) {
        boolean ofDistance = entry.kind() == Kind.movementRange || entry.kind() == Kind.nestToWater;
        if (ofDistance != (entry.metres() != null)) {
            throw InvalidException.of(
                    "metres",
                    "Metres are told of a range and of a distance from water, and of those alone.",
                    "metres for movementRange and nestToWater, nothing for the rest");
        }
        if ((entry.kind() == Kind.activePeriod) != (entry.activePeriod() != null)) {
            throw InvalidException.of(
                    "activePeriod",
                    "When it is about is told by activePeriod, and by that alone.",
                    "day, night, twilight or anyTime for activePeriod, nothing for the rest");
        }
        requireReview(entry.readOn(), entry.reviewBy());
        requireEnd(entry.validFrom(), entry.validTo());
    }

    private static void requireReview(LocalDate readOn, LocalDate reviewBy) {
        if (!reviewBy.isAfter(readOn)) {
            throw InvalidException.of("reviewBy", "It would be due at once.", "a day after readOn");
        }
    }

    private static void requireEnd(LocalDate validFrom, @Nullable LocalDate validTo) {
        if (validTo != null && !validTo.isAfter(validFrom)) {
            throw InvalidException.of("validTo", "It ends before it begins.", "a day after " + validFrom);
        }
    }

    private PublishedFactView view(PublishedFact row) {
        return new PublishedFactView(
                row.id(),
                row.kind,
                row.scientificName,
                row.metres,
                row.activePeriod,
                row.words,
                row.source,
                row.readOn,
                row.reviewBy,
                row.validFrom,
                row.validTo,
                NOTE,
                records.of(row));
    }
}
