package org.culvert.care.health;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.ledger.Change;
import org.jspecify.annotations.Nullable;

/** What goes in of syndromes, of thresholds, of reports and of having read an alert. */
public final class SyndromeEntries {
    static final int LONGEST_WORDS = 4000;

    /** @param taxonGroup key of the group that shows it; left out: any animal */
    public record SyndromeEntry(
            @NotBlank @Size(max = 200) String name,
            @Nullable @Size(max = 200) String taxonGroup,
            @NotBlank @Size(max = LONGEST_WORDS) String words,
            @NotBlank @Size(max = LONGEST_WORDS) String source,
            @NotNull LocalDate readOn) {}

    /**
     * From when on there is an alert.
     *
     * @param syndromeId left out: of every syndrome that has none of its own
     * @param smallestCount animals, the one that is looked from included
     * @param withinKilometres of that one's place, rounded to whole metres; the edge counts
     * @param withinDays of its day; the edge counts
     * @param validTo the first day on which it no longer holds
     */
    public record ThresholdEntry(
            @Nullable UUID syndromeId,
            @NotNull @Min(2) @Max(1000) Integer smallestCount,

            @NotNull @Positive @DecimalMax("1000") Double withinKilometres,

            @NotNull @Min(0) @Max(366) Integer withinDays,
            @NotBlank @Size(max = LONGEST_WORDS) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate validFrom,
            @Nullable LocalDate validTo) {}

    /** @param validTo the first day on which it no longer holds */
    public record ThresholdEnding(
            @NotNull LocalDate validTo,
            @NotBlank @Size(max = 2000) String reason) {}

    /** @param at when it was seen; now when left out */
    public record ReportEntry(
            @NotNull UUID syndromeId,
            @Nullable Instant at,
            @Nullable @Size(max = LONGEST_WORDS) String words) {}

    public record ReportCorrection(
            Change<Instant> at,
            Change<String> words,
            @NotBlank @Size(max = 2000) String reason) {}

    public record ReportWithdrawal(
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * That somebody has read an alert.
     *
     * @param name whose
     * @param words what they say to it, or do about it
     */
    public record AcknowledgementEntry(
            @NotBlank @Size(max = 200) String name,
            @NotBlank @Size(max = LONGEST_WORDS) String words) {}

    private SyndromeEntries() {}
}
