package org.culvert.care.clutch;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseView;
import org.culvert.care.incubation.EggCount;
import org.culvert.care.incubation.SexAdvisory;
import org.culvert.clinic.ClinicService;
import org.culvert.platform.ledger.RecordView;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/** Clutches as others see them. What was taken back is shown with its reason, and counts for nothing. */
public final class ClutchViews {
    private ClutchViews() {}

    /**
     * A clutch with its count: {@code recovered = setToIncubate + broken + discarded}, and {@code setToIncubate = hatched +
     * failed + stillIncubating}.
     *
     * @param laid how many of those recovered were laid
     * @param stillIncubating derived; nobody enters it
     * @param readOnFilm the count of eggs that was taken from the films of the mother, or null; compared, never enforced
     * @param filmDiffers whether the eggs that came since, and those said to be inside, differ from that reading
     */
    public record ClutchView(
            UUID id,
            UUID motherCaseId,
            @Nullable UUID visitId,
            int recovered,
            int laid,
            int setToIncubate,
            int broken,
            int discarded,
            long hatched,
            int failed,
            long stillIncubating,
            @Nullable Integer readOnFilm,
            @Nullable Boolean filmDiffers,
            EggReconciliationView reconciliation,
            List<ClutchCustodyView> custody,
            List<EggsView> recoveries,
            List<HatchedView> hatchings,
            List<FailedEggsView> failures,
            List<EggsInsideView> leftInside,
            List<SetUpView> setUps,
            List<CandlingView> candlings,
            List<TemperatureRecordView> temperatures,
            HatchWindowView hatchWindow,
            SexAdvisoryView sexAdvisory,
            List<String> cautions,
            RecordView record) {}

    public record ClutchCustodyView(
            UUID id, Holder holder, Instant from, @Nullable Instant to, String authorisation, RecordView record) {}

    /** Eggs that came at one time, as kept. */
    public record EggsView(
            UUID id,
            int recovered,
            int setToIncubate,
            int broken,
            int discarded,
            ClutchEntries.EggsCame how,
            @Nullable Instant at,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    /** Hatchlings of one time, as kept. */
    public record HatchedView(
            UUID id, int hatched, @Nullable Instant at, RecordView record) {}

    public record FailedEggsView(
            UUID id,
            int failed,
            ClutchEntries.FailureGrounds grounds,
            String saidBy,
            @Nullable String words,
            Instant at,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    public record EggsInsideView(
            UUID id,
            int counted,
            String reader,
            @Nullable String words,
            Instant at,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    public record SetUpView(
            UUID id,
            String medium,
            @Nullable Double waterParts,
            @Nullable Double mediumParts,
            String box,
            String topMarked,
            String setUpBy,
            @Nullable String words,
            Instant at,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    public record CandlingView(
            UUID id,
            int developing,
            int notDeveloping,
            int cannotTell,
            String candledBy,
            @Nullable String words,
            Instant at,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    /**
     * One temperature by hand, or those of a file.
     *
     * @param kind {@code byHand} or {@code loggerFile}
     * @param readings how many are kept of it: those that were known already are not among them
     */
    public record TemperatureRecordView(
            UUID id,
            String kind,
            String source,
            int readings,
            Instant firstAt,
            Instant lastAt,
            double lowestCelsius,
            double highestCelsius,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    public record TemperatureReadingView(Instant at, double celsius, String source) {}

    /**
     * Eggs read on films of the mother against those of all her clutches in this case.
     *
     * @param differsBy eggs read beyond those accounted for; below 0 where more are accounted for
     * @param leftInside said to be inside still, less what came since; null where nobody said it
     */
    public record EggReconciliationView(
            EggCount.EggVerdict verdict,
            @Nullable Integer differsBy,
            @Nullable Integer leftInside,
            String words,
            List<FilmCountView> films) {}

    /**
     * One reading of a film.
     *
     * @param at when; of a reading without a time, when the visit began
     * @param taken whether the verdict is of this one: the surest, of several as sure the latest
     * @param accountedFor eggs that came since, and those inside still
     */
    public record FilmCountView(
            UUID readingId,
            UUID visitId,
            int counted,
            String reader,
            ClinicService.Confidence confidence,
            Instant at,
            boolean taken,
            int accountedFor,
            int differsBy) {}

    /**
     * When eggs may hatch; no egg is failed by it.
     *
     * @param earliest in the region's days; null where it cannot be told
     * @param narrowed whether the temperatures narrowed it
     * @param basis on what it rests, a sentence each
     */
    public record HatchWindowView(
            @Nullable LocalDate earliest,
            @Nullable LocalDate latest,
            boolean narrowed,
            List<String> basis,
            List<String> sources) {}

    /** @param advice shown where temperature makes the sex, and null elsewhere; it claims nothing of these eggs */
    public record SexAdvisoryView(
            SexAdvisory.MadeBy madeBy, @Nullable String advice, String why, List<String> sources) {}

    /** The clutch and the cases of its new hatchlings, each with its mother's found place. */
    public record HatchingView(ClutchView clutch, List<CaseView> hatchlings) {}

    /**
     * What became of the file of a logger.
     *
     * @param added readings that are kept
     * @param known readings that were kept already, or stood twice in the file; they are left out
     */
    public record LoggerFileView(int added, int known, ClutchView clutch) {}
}
