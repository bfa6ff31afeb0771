package org.culvert.care.growth;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/** What goes out of this room. */
public final class GrowthViews {
    private GrowthViews() {}

    /**
     * A table as kept.
     *
     * @param adopted whether a vet has adopted it as it stands, so that animals are compared with it
     * @param cautions why no age is told from it, whatever it says of itself
     */
    public record GrowthTableView(
            UUID id,
            String key,
            String name,
            String taxon,
            GrowthEntries.TableSex sex,
            GrowthEntries.BodyMeasure measure,
            String unit,
            @Nullable String measureWords,
            boolean estimatesAge,
            List<GrowthEntries.GrowthRow> rows,
            String source,
            LocalDate readOn,
            String licence,
            boolean adopted,
            List<TableAdoptionView> adoptions,
            List<AgeCautionView> cautions,
            RecordView record) {}

    /**
     * @param tableRevision which revision of the table was adopted
     * @param stands whether it was not taken back and the table has not been changed since
     */
    public record TableAdoptionView(
            UUID id,
            int tableRevision,
            String vetName,
            String vetRegistration,
            Instant adoptedAt,
            boolean stands,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    /** What no age is told from. */
    public record AgeCautionView(
            UUID id,
            String taxon,
            GrowthEntries.BodyMeasure measure,
            String words,
            String source,
            LocalDate readOn,
            RecordView record) {}

    public record BodyMeasurementView(
            UUID id,
            UUID caseId,
            GrowthEntries.BodyMeasure measure,
            String unit,
            double value,
            @Nullable Instant at,
            @Nullable String words,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    /**
     * The measurements of an animal against adopted tables.
     *
     * @param bornOn when it was born or hatched, where that is entered
     * @param bornDoubtDays by how many days that may be wrong
     * @param measurements in the order of time, whether or not a table says anything of them
     * @param notUsed tables of its taxon with which it was not compared, and why
     */
    public record GrowthView(
            UUID caseId,
            String scientificName,
            String sex,
            @Nullable LocalDate bornOn,
            @Nullable Integer bornDoubtDays,
            List<MeasuredView> measurements,
            List<NotUsedView> notUsed,
            String note) {}

    /**
     * One measurement.
     *
     * @param from {@code visit}, {@code careEntry} or {@code measurement}
     * @param ageDays whole days from its birth to the day of the measurement, where its birth is entered
     */
    public record MeasuredView(
            Instant at,
            GrowthEntries.BodyMeasure measure,
            double value,
            String unit,
            String from,
            @Nullable Long ageDays,
            List<AgainstView> against) {}

    /**
     * What one table says of one measurement.
     *
     * @param expected at the age, by a straight line between two rows; likewise the next two, at the ages by which the birth may
     *     be wrong. Null outside of the table, and where the age is not known
     * @param percentOfExpected the measurement in percent of what is expected
     * @param estimatedAgeDays at which the table has the value; null where it tells no age or has no such value
     */
    public record AgainstView(
            UUID tableId,
            String table,
            int tableRevision,
            String vetName,
            @Nullable Double expected,
            @Nullable Double expectedLow,
            @Nullable Double expectedHigh,
            @Nullable Double percentOfExpected,
            @Nullable Double estimatedAgeDays,
            String words) {}

    public record NotUsedView(UUID tableId, String table, String why) {}
}
