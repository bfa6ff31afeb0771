package org.culvert.care.growth;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.care.growth.GrowthEntries.BodyMeasure;
import org.culvert.care.growth.GrowthViews.AgainstView;
import org.culvert.care.growth.GrowthViews.BodyMeasurementView;
import org.culvert.care.growth.GrowthViews.GrowthView;
import org.culvert.care.growth.GrowthViews.MeasuredView;
import org.culvert.care.growth.GrowthViews.NotUsedView;
import org.culvert.care.growth.curve.GrowthCurve;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.Rows;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Keeps measurements of bodies, and says what adopted tables say of them. */
@ApplicationScoped
public class GrowthService {
    private static final String NOTE =
            "A table tells of the animals that were measured for it, and nothing outside of its rows. Between two rows a straight"
                    + " line is drawn. Check your licensed vet.";
    private static final String OUTSIDE = "Outside of the table.";

    @ApplicationScoped
    static class Measurements implements PanacheRepositoryBase<BodyMeasurement, UUID> {}

    private final Measurements measurements;
    private final GrowthTableService tables;
    private final CaseService cases;
    private final RegionService region;
    private final RecordViews records;
    private final EntityManager entities;
    private final Clock clock;

    GrowthService(
            Measurements measurements,
            GrowthTableService tables,
            CaseService cases,
            RegionService region,
            RecordViews records,
            EntityManager entities,
            Clock clock) {
        this.measurements = measurements;
        this.tables = tables;
        this.cases = cases;
        this.region = region;
        this.records = records;
        this.entities = entities;
        this.clock = clock;
    }

    @Transactional
    public BodyMeasurementView measure(UUID caseId, GrowthEntries.BodyMeasurementEntry entry) {
        cases.getCase(caseId);
        var row = new BodyMeasurement(caseId, entry, Corrections.passed("at", entry.at(), clock));
        measurements.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public BodyMeasurementView getMeasurement(UUID id) {
        return view(require(id));
    }

    /** Those of a case as they were entered, in the order in which they were. */
    @Transactional
    public List<BodyMeasurementView> listMeasurements(UUID caseId) {
        return measurements.list("caseId = ?1 order by id", caseId).stream()
                .map(this::view)
                .toList();
    }

    @Transactional
    public BodyMeasurementView withdraw(UUID id, String reason) {
        BodyMeasurement row = require(id);
        row.withdraw(clock.instant(), reason);
        measurements.flush();
        return view(row);
    }

    private BodyMeasurement require(UUID id) {
        return measurements.findByIdOptional(id).orElseThrow(() -> new NotFoundException("body measurement", id));
    }

    private BodyMeasurementView view(BodyMeasurement row) {
        BodyMeasure measure = BodyMeasure.valueOf(row.measure);
        return new BodyMeasurementView(
                row.id(),
                row.caseId,
                measure,
                measure.unit(),
                row.value,
                row.happenedAt(),
                row.words,
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }

    /** The measurements of a case against the tables that a vet has adopted for its taxon and sex. */
    @Transactional
    public GrowthView grow(UUID caseId) {
        CaseView of = cases.getCase(caseId);
        CaseView.AnimalView animal = of.animal();
        List<GrowthTableService.OfTaxon> used = new ArrayList<>();
        List<NotUsedView> notUsed = new ArrayList<>();
        for (GrowthTableService.OfTaxon one : tables.tablesOf(animal.scientificName())) {
            String why = whyNot(one, animal.sex());
            if (why == null) {
                used.add(one);
            } else {
                notUsed.add(new NotUsedView(one.table().id(), one.table().name, why));
            }
        }
        List<MeasuredView> measured = new ArrayList<>();
        for (Taken one : taken(caseId)) {
            Long age = animal.bornOn() == null
                    ? null
                    : ChronoUnit.DAYS.between(animal.bornOn(), LocalDate.ofInstant(one.at, region.zone()));
            measured.add(new MeasuredView(
                    one.at,
                    one.measure,
                    one.value,
                    one.measure.unit(),
                    one.from,
                    age,
                    used.stream()
                            .filter(table -> table.table().bodyMeasure() == one.measure)
                            .map(table -> against(table, one, age, animal.bornDoubtDays()))
                            .toList()));
        }
        return new GrowthView(
                caseId,
                animal.scientificName(),
                animal.sex(),
                animal.bornOn(),
                animal.bornDoubtDays(),
                measured,
                notUsed,
                NOTE);
    }

    private static @Nullable String whyNot(GrowthTableService.OfTaxon one, String sex) {
        if (one.adoption() == null) {
            return "No vet has adopted it as it stands.";
        }
        String of = one.table().sex;
        return of.equals("both") || of.equals(sex)
                ? null
                : "It is for a " + of + ", and the sex of this animal is " + sex + ".";
    }

    private record Taken(Instant at, BodyMeasure measure, double value, String from) {}

    private List<Taken> taken(UUID caseId) {
        List<?> rows =
                entities.createNativeQuery("""
                        select happened_at as at, 'weight' as measure, weight_grams as value, 'visit' as source from visits
                        where case_id = :case and weight_grams > 0 and not of_body
                        union all
                        select happened_at, 'weight', figure, 'careEntry' from care_entries
                        where case_id = :case and measure = 'grams' and figure > 0 and withdrawn_at is null
                        union all
                        select happened_at, measure, value, 'measurement' from body_measurements
                        where case_id = :case and withdrawn_at is null
                        order by at
                        """).setParameter("case", caseId).getResultList();
        return rows.stream()
                .map(row -> (Object[]) row)
                .map(row -> new Taken(
                        Objects.requireNonNull(Rows.instant(row[0])),
                        BodyMeasure.valueOf((String) row[1]),
                        ((Number) Objects.requireNonNull(row[2])).doubleValue(),
                        (String) Objects.requireNonNull(row[3])))
                .toList();
    }

    private static AgainstView against(
            GrowthTableService.OfTaxon one, Taken taken, @Nullable Long age, @Nullable Integer doubt) {
        GrowthTable table = one.table();
        GrowthTableAdoption adoption = Objects.requireNonNull(one.adoption());
        GrowthCurve curve = table.curve();
        Double expected = age == null ? null : number(curve.valueAt(age));
        Double low = inDoubt(curve, age, doubt, -1);
        Double high = inDoubt(curve, age, doubt, 1);
        Double estimate = one.tellsAge() ? number(curve.ageAt(taken.value)) : null;
        List<String> words = new ArrayList<>();
        words.add(
                age == null
                        ? "When it was born is not entered."
                        : expected == null ? OUTSIDE : "Compared at the age of " + age + " days.");
        if (one.tellsAge()) {
            words.add(estimate == null ? "Age: outside of the table." : "An age is told from this measure.");
        } else if (table.estimatesAge) {
            words.add("No age is told from this measure for this kind.");
        }
        return new AgainstView(
                table.id(),
                table.name,
                adoption.tableRevision,
                adoption.vetName,
                expected,
                low,
                high,
                expected == null ? null : Double.valueOf(100 * taken.value / expected),
                estimate,
                String.join(" ", words));
    }

    /** What is expected where the birth is wrong by as many days as it may be; null where it is not in doubt. */
    private static @Nullable Double inDoubt(
            GrowthCurve curve, @Nullable Long age, @Nullable Integer doubt, int direction) {
        return age == null || doubt == null || doubt == 0
                ? null
                : number(curve.valueAt(age + direction * (double) doubt));
    }

    private static @Nullable Double number(OptionalDouble number) {
        return number.isPresent() ? Double.valueOf(number.getAsDouble()) : null;
    }
}
