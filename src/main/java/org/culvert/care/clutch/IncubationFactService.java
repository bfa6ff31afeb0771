package org.culvert.care.clutch;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.care.incubation.PublishedPeriod;
import org.culvert.care.incubation.PublishedPeriod.Basis;
import org.culvert.care.incubation.PublishedPeriod.Setting;
import org.culvert.care.incubation.RateModel;
import org.culvert.care.incubation.SexAdvisory;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Keeps what has been published of eggs. */
@ApplicationScoped
public class IncubationFactService {
    public enum FactKind {
        period,
        rateModel,
        sex
    }

    public enum SexMadeBy {
        genes,
        temperature
    }

    /**
     * A finding as entered.
     *
     * @param scientificName the taxon, its lower ranks included
     * @param setting of a period: where the eggs lay
     * @param celsiusLow at which temperatures; of a rate model, from where it holds, above its threshold
     * @param daysLow of a period: from setting to hatching, in days
     * @param thresholdCelsius of a rate model: where development stands still
     * @param degreeDays of a rate model: above the threshold, to the end of development
     * @param statedError of a rate model: the largest share by which it missed
     * @param waitsAfterwards of a rate model: whether the young wait in the egg afterwards
     * @param sexBy of a fact of sex: what makes it
     * @param words what was found, with its spread
     * @param source where, and how much of it was read
     */
    public record IncubationFactEntry(
            @NotNull FactKind kind,
            @NotBlank @Size(max = 200) String scientificName,
            @NotNull Basis basis,
            @Nullable Setting setting,
            @Nullable @DecimalMin("0") @DecimalMax("50") Double celsiusLow,
            @Nullable @DecimalMin("0") @DecimalMax("50") Double celsiusHigh,
            @Nullable @Positive @DecimalMax("1000") Double daysLow,
            @Nullable @Positive @DecimalMax("1000") Double daysHigh,
            @Nullable @DecimalMin("0") @DecimalMax("50") Double thresholdCelsius,
            @Nullable @Positive @DecimalMax("10000") Double degreeDays,
            @Nullable @Positive @DecimalMax("0.5") Double statedError,
            @Nullable Boolean waitsAfterwards,
            @Nullable SexMadeBy sexBy,
            @NotBlank @Size(max = 4000) String words,
            @NotBlank @Size(max = 4000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @NotNull LocalDate validFrom,
            @Nullable LocalDate validTo) {}

    /**
     * Someone has read the source of a finding again.
     *
     * @param source what was read, where it is another edition or more of it; left out: the same
     * @param validTo the first day on which it no longer stands; what stands instead is a new row
     */
    public record IncubationFactReview(
            @Nullable @Size(max = 4000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @Nullable LocalDate validTo,
            @NotBlank @Size(max = 2000) String reason) {}

    public record IncubationFactView(
            UUID id,
            String kind,
            String scientificName,
            String basis,
            @Nullable String setting,
            @Nullable Double celsiusLow,
            @Nullable Double celsiusHigh,
            @Nullable Double daysLow,
            @Nullable Double daysHigh,
            @Nullable Double thresholdCelsius,
            @Nullable Double degreeDays,
            @Nullable Double statedError,
            @Nullable Boolean waitsAfterwards,
            @Nullable String sexBy,
            String words,
            String source,
            LocalDate readOn,
            LocalDate reviewBy,
            LocalDate validFrom,
            @Nullable LocalDate validTo,
            RecordView record) {}

    /** What is known of a species: of several models the one of the narrowest taxon that was read last. */
    record Known(List<PublishedPeriod> periods, @Nullable RateModel model, List<SexAdvisory.Fact> sex) {}

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<IncubationFact, UUID> {}

    private final Rows rows;
    private final RecordViews records;

    IncubationFactService(Rows rows, RecordViews records) {
        this.rows = rows;
        this.records = records;
    }

    @Transactional
    public IncubationFactView createFact(IncubationFactEntry entry) {
        requireWhole(entry);
        var row = new IncubationFact(entry);
        rows.persistAndFlush(row);
        return view(row);
    }

    /** Records that the source was read again, and on what day it wants looking for next. */
    @Transactional
    public IncubationFactView review(UUID id, IncubationFactReview review) {
        IncubationFact row = require(id);
        requireReview(review.readOn(), review.reviewBy());
        requireEnd(row.validFrom, review.validTo());
        row.review(review);
        rows.flush();
        return view(row);
    }

    @Transactional
    public IncubationFactView getFact(UUID id) {
        return view(require(id));
    }

    /** All of them, those of other days too, in a stable order. */
    @Transactional
    public List<IncubationFactView> listFacts() {
        return rows.list("order by scientificName, kind, id").stream()
                .map(this::view)
                .toList();
    }

    /** What stands of a species on a day. */
    @Transactional
    Known about(String scientificName, LocalDate day) {
        List<IncubationFact> standing =
                rows.list("validFrom <= ?1 and (validTo is null or validTo > ?1) order by id", day).stream()
                        .filter(row -> row.isAbout(scientificName))
                        .toList();
        return new Known(
                of(standing, FactKind.period)
                        .map(row -> new PublishedPeriod(
                                Setting.valueOf(Objects.requireNonNull(row.setting)),
                                Basis.valueOf(row.basis),
                                row.celsiusLow,
                                row.celsiusHigh,
                                Objects.requireNonNull(row.daysLow),
                                Objects.requireNonNull(row.daysHigh),
                                row.words,
                                row.source))
                        .toList(),
                of(standing, FactKind.rateModel)
                        .max(Comparator.comparingInt((IncubationFact row) -> row.scientificName.length())
                                .thenComparing(row -> row.readOn)
                                .thenComparing(IncubationFact::id))
                        .map(row -> new RateModel(
                                Objects.requireNonNull(row.thresholdCelsius),
                                Objects.requireNonNull(row.degreeDays),
                                Objects.requireNonNull(row.celsiusLow),
                                Objects.requireNonNull(row.celsiusHigh),
                                Objects.requireNonNull(row.statedError),
                                Objects.requireNonNull(row.waitsAfterwards),
                                row.words,
                                row.source))
                        .orElse(null),
                of(standing, FactKind.sex)
                        .map(row -> new SexAdvisory.Fact(
                                SexAdvisory.MadeBy.valueOf(Objects.requireNonNull(row.sexBy)), row.words, row.source))
                        .toList());
    }

    private static Stream<IncubationFact> of(List<IncubationFact> rows, FactKind kind) {
        return rows.stream().filter(row -> row.kind.equals(kind.name()));
    }

    private IncubationFact require(UUID id) {
        return rows.findByIdOptional(id).orElseThrow(() -> new NotFoundException("incubation fact", id));
    }

    private static void requireWhole(IncubationFactEntry entry) {
        boolean ofPeriod = entry.kind() == FactKind.period;
        requireOnly("setting", entry.setting(), ofPeriod, "a period");
        requireOnly("daysLow", entry.daysLow(), ofPeriod, "a period");
        requireOnly("daysHigh", entry.daysHigh(), ofPeriod, "a period");
        boolean ofRate = entry.kind() == FactKind.rateModel;
        requireOnly("thresholdCelsius", entry.thresholdCelsius(), ofRate, "a rate model");
        requireOnly("degreeDays", entry.degreeDays(), ofRate, "a rate model");
        requireOnly("statedError", entry.statedError(), ofRate, "a rate model");
        requireOnly("waitsAfterwards", entry.waitsAfterwards(), ofRate, "a rate model");
        requireOnly("sexBy", entry.sexBy(), entry.kind() == FactKind.sex, "a fact of sex");
        requireOrder("celsiusHigh", entry.celsiusLow(), entry.celsiusHigh());
        requireOrder("daysHigh", entry.daysLow(), entry.daysHigh());
        if (ofRate
                && (entry.celsiusLow() == null
                        || entry.celsiusLow() - RateModel.MARGIN_CELSIUS
                                <= Objects.requireNonNull(entry.thresholdCelsius()))) {
            throw InvalidException.of(
                    "celsiusLow",
                    "A rate model says between which temperatures it holds.",
                    "temperatures more than half a degree above thresholdCelsius");
        }
        requireReview(entry.readOn(), entry.reviewBy());
        requireEnd(entry.validFrom(), entry.validTo());
    }

    private static void requireOnly(String field, @Nullable Object value, boolean needed, String what) {
        if ((value != null) != needed) {
            throw InvalidException.of(
                    field, "This is told of " + what + ", and of that alone.", needed ? "a value" : "nothing");
        }
    }

    private static void requireOrder(String field, @Nullable Double low, @Nullable Double high) {
        if ((low == null) != (high == null) || (low != null && high != null && low > high)) {
            throw InvalidException.of(field, "It goes from low to high, both or none.", "at least the lower one");
        }
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

    private IncubationFactView view(IncubationFact row) {
        return new IncubationFactView(
                row.id(),
                row.kind,
                row.scientificName,
                row.basis,
                row.setting,
                row.celsiusLow,
                row.celsiusHigh,
                row.daysLow,
                row.daysHigh,
                row.thresholdCelsius,
                row.degreeDays,
                row.statedError,
                row.waitsAfterwards,
                row.sexBy,
                row.words,
                row.source,
                row.readOn,
                row.reviewBy,
                row.validFrom,
                row.validTo,
                records.of(row));
    }
}
