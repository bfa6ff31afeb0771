package org.culvert.care.growth;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.culvert.platform.ledger.Change;
import org.jspecify.annotations.Nullable;

/** What goes into this room. */
public final class GrowthEntries {
    private GrowthEntries() {}

    static final int MOST_ROWS = 2000;

    /** What is measured: a weight in grams, and lengths in millimetres. */
    public enum BodyMeasure {
        weight,
        head,
        body,
        tail,
        ear,
        forearm,
        arm,
        leg,
        pes,
        wing,
        tarsus,
        carapaceLength,
        carapaceWidth,
        plastronLength;

        /** Its unit in words. */
        public String unit() {
            return this == weight ? "grams" : "millimetres";
        }

        /** What it is called in a sentence. */
        String inWords() {
            return name().replaceAll("(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
        }
    }

    /** For whom a table is. */
    public enum TableSex {
        female,
        male,
        both
    }

    /**
     * A row of a table.
     *
     * @param ageDays from birth or hatching
     * @param value in grams or millimetres
     */
    public record GrowthRow(
            @NotNull Double ageDays, @NotNull Double value) {}

    /**
     * A table as it is loaded.
     *
     * @param taxon scientific name of a taxon at any rank, its lower ranks included
     * @param measureWords how it is taken
     * @param estimatesAge whether an age may be told from it, and not only what is expected at an age
     * @param rows by rising age; or else {@code csv}
     * @param csv the same as lines of {@code ageDays,value} under such a heading
     * @param source where the figures were published
     * @param readOn when somebody read them there
     * @param licence in words, under which they may be used
     */
    public record GrowthTableEntry(
            @NotBlank
            @Size(max = 60)
            @Pattern(regexp = "[a-z0-9]+(-[a-z0-9]+)*", message = "must be small letters, digits and hyphens")
            String key,

            @NotBlank @Size(max = 200) String name,
            @NotBlank @Size(max = 200) String taxon,
            @NotNull TableSex sex,
            @NotNull BodyMeasure measure,
            @Nullable @Size(max = 1000) String measureWords,
            boolean estimatesAge,
            @Nullable @Size(max = MOST_ROWS) List<@NotNull GrowthRow> rows,
            @Nullable @Size(max = 200_000) String csv,
            @NotBlank @Size(max = 2000) String source,
            @NotNull LocalDate readOn,
            @NotBlank @Size(max = 1000) String licence) {}

    /** Of a table; whatever it changes, the table wants adopting again. */
    public record GrowthTableCorrection(
            Change<String> name,
            Change<String> measureWords,
            Change<Boolean> estimatesAge,
            Change<List<GrowthRow>> rows,
            Change<String> source,
            Change<String> licence,
            @NotBlank @Size(max = 2000) String reason) {}

    public record TableAdoptionEntry(
            @NotBlank @Size(max = 200) String vetName,
            @NotBlank @Size(max = 200) String vetRegistration,
            @Nullable Instant at) {}

    /**
     * What no age is told from.
     *
     * @param taxon scientific name, its lower ranks included
     */
    public record AgeCautionEntry(
            @NotBlank @Size(max = 200) String taxon,
            @NotNull BodyMeasure measure,
            @NotBlank @Size(max = 2000) String words,
            @NotBlank @Size(max = 2000) String source,
            @NotNull LocalDate readOn) {}

    /**
     * A measurement of an animal.
     *
     * @param value in grams for a weight, in millimetres for the others
     * @param at when it was taken; now when left out
     */
    public record BodyMeasurementEntry(
            @NotNull BodyMeasure measure,
            @NotNull @Positive Double value,
            @Nullable Instant at,
            @Nullable @Size(max = 2000) String words) {}
}
