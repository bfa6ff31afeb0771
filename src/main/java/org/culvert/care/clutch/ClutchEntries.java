package org.culvert.care.clutch;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.UUID;
import org.culvert.call.CallEntry.Answer;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/** What is entered of clutches. A time that is left out is now. */
public final class ClutchEntries {
    private ClutchEntries() {}

    /** How eggs came out of their mother. */
    public enum EggsCame {
        surgery,
        afterDeath,
        induced,
        laidInCare,
        laidInTransit,
        unknown;

        boolean laid() {
            return this == laidInCare || this == laidInTransit;
        }
    }

    /** What somebody saw who gave eggs up. */
    public enum FailureGrounds {
        collapsed,
        mouldy,
        noDevelopmentOnCandling,
        openedDead,
        broken,
        other
    }

    /** Eggs that came at one time: {@code recovered = setToIncubate + broken + discarded}. */
    public record EggsEntry(
            @Min(1) @Max(1000) int recovered,
            @Min(0) int setToIncubate,
            @Min(0) int broken,
            @Min(0) int discarded,
            EggsCame how,
            @Nullable Instant at) {
        public EggsEntry {
            how = how == null ? EggsCame.unknown : how;
        }
    }

    /**
     * A new clutch.
     *
     * @param visitId the visit at which they came, if any
     * @param holder who runs the incubator, under an authorisation of their own
     */
    public record ClutchEntry(
            @NotNull UUID motherCaseId,
            @Nullable UUID visitId,
            @NotNull Holder holder,
            @NotNull @Valid EggsEntry eggs) {}

    public record ClutchHandOverEntry(
            @NotNull Holder holder, @Nullable Instant at) {}

    public record HatchingEntry(
            @Min(1) @Max(200) int hatched, @Nullable Instant at) {}

    /**
     * Eggs that somebody gives up. No date and no count does that.
     *
     * @param words needed of other grounds
     */
    public record FailedEggsEntry(
            @Min(1) @Max(1000) int failed,
            @NotNull FailureGrounds grounds,
            @NotBlank @Size(max = 200) String saidBy,
            @Nullable @Size(max = 2000) String words,
            @Nullable Instant at) {}

    /** How many eggs somebody says are still in the mother. */
    public record EggsInsideEntry(
            @Min(0) @Max(1000) int counted,
            @NotBlank @Size(max = 200) String reader,
            @Nullable @Size(max = 2000) String words,
            @Nullable Instant at) {}

    /**
     * In what the eggs lie.
     *
     * @param medium such as vermiculite
     * @param waterParts by weight, so many parts of water to {@code mediumParts} of the dry medium: both or none
     * @param box which one, and where
     * @param topMarked whether the upper side of each egg is marked
     */
    public record SetUpEntry(
            @NotBlank @Size(max = 200) String medium,
            @Nullable @Positive @DecimalMax("1000") Double waterParts,
            @Nullable @Positive @DecimalMax("1000") Double mediumParts,
            @NotBlank @Size(max = 200) String box,
            Answer topMarked,
            @NotBlank @Size(max = 200) String setUpBy,
            @Nullable @Size(max = 2000) String words,
            @Nullable Instant at) {
        public SetUpEntry {
            topMarked = topMarked == null ? Answer.unknown : topMarked;
        }
    }

    /**
     * What was seen when light was held to the eggs; none of them fails by it.
     *
     * @param developing eggs in which development was seen
     * @param notDeveloping in which none was seen
     * @param cannotTell in which it could not be told
     */
    public record CandlingEntry(
            @Min(0) @Max(1000) int developing,
            @Min(0) @Max(1000) int notDeveloping,
            @Min(0) @Max(1000) int cannotTell,
            @NotBlank @Size(max = 200) String candledBy,
            @Nullable @Size(max = 2000) String words,
            @Nullable Instant at) {}

    /**
     * A temperature of the substrate next to the eggs, not of the air.
     *
     * @param source which thermometer, and who read it
     */
    public record TemperatureEntry(
            @NotBlank @Size(max = 200) String source,
            @DecimalMin("-20") @DecimalMax("60") double celsius,
            @Nullable Instant at) {}

    /**
     * The file of a logger whose probe lies in the substrate next to the eggs.
     *
     * @param source which logger
     * @param timeColumn name of the column of times; null: the one whose name says time or date
     * @param temperatureColumn likewise; null: the one whose name says °C, Celsius or temperature
     * @param utcOffset of times that bear none, such as +10:00; null: they are in the region's time zone
     */
    public record LoggerFileEntry(
            @Nullable String source,
            @Nullable String timeColumn,
            @Nullable String temperatureColumn,
            @Nullable String utcOffset) {}
}
