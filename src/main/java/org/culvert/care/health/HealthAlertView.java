package org.culvert.care.health;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.geo.Generalisation;
import org.culvert.geo.Position;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.sight.Generalised;
import org.jspecify.annotations.Nullable;

/**
 * An alert as shown. It ends by no lapse of time.
 *
 * @param state {@code unread}, {@code read}, {@code grownSince} it was read last, or {@code joined} into another
 * @param animals how many are in it, of reports that stand
 * @param decimalLatitude middle of their places as they are now; null while none stands
 * @param coordinateUncertaintyInMeters to the farthest of these, its own uncertainty included
 * @param sentence what was found, by which figures
 * @param joinedTo the alert that it goes on in
 */
public record HealthAlertView(
        UUID id,
        UUID syndromeId,
        String syndrome,
        String state,
        int animals,
        @Nullable LocalDate firstDay,
        @Nullable LocalDate lastDay,
        @Nullable Double decimalLatitude,
        @Nullable Double decimalLongitude,
        @Nullable Double coordinateUncertaintyInMeters,
        int smallestCount,
        double withinKilometres,
        int withinDays,
        String sentence,
        List<AlikeReport> reports,
        List<Acknowledged> acknowledgements,
        @Nullable UUID joinedTo,
        String note,
        RecordView record)
        implements Generalised {
    static final String NOTE =
            "This counts what was reported, and tells of no cause. Check your local code and your licensed vet, and ask your"
                    + " state's wildlife health body whom else to tell.";

    /** A report in it; one that was withdrawn is still told of. */
    public record AlikeReport(UUID reportId, UUID caseId, LocalDate day, Instant since, boolean withdrawn) {}

    /** That somebody has read it. */
    public record Acknowledged(String name, String words, Instant at, String recordedBy) {}

    @Override
    public Map<String, Object> generalised(double gridDegrees) {
        Double latitude = decimalLatitude;
        Double longitude = decimalLongitude;
        Double uncertainty = coordinateUncertaintyInMeters;
        if (gridDegrees == 0 || latitude == null || longitude == null || uncertainty == null) {
            return Map.of();
        }
        Generalisation cell = Generalisation.of(new Position(latitude, longitude), uncertainty, gridDegrees);
        return Map.of(
                "decimalLatitude",
                cell.centre().latitude(),
                "decimalLongitude",
                cell.centre().longitude(),
                "coordinateUncertaintyInMeters",
                cell.uncertaintyMetres());
    }
}
