package org.culvert.care.health;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.Change;
import org.jspecify.annotations.Nullable;

/** What goes in of diseases that must be notified, and of suspicions of them. */
public final class SuspicionEntries {
    static final int LONGEST_NAME = 200;
    static final int LONGEST_WORDS = 4000;

    /**
     * Whom to ring.
     *
     * @param name whose line it is
     * @param source where the number was read
     * @param readOn when
     * @param reviewBy the day from which it should be looked up again
     */
    public record HotlineEntry(
            @NotBlank @Size(max = LONGEST_NAME) String name,
            @NotBlank @Size(max = 100) String number,
            @NotBlank @Size(max = LONGEST_WORDS) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy) {}

    /**
     * A disease that must be notified.
     *
     * @param jurisdiction whose law it is, an ISO 3166 code; left out: wherever the network works
     * @param taxonGroups keys of the groups it is about; none: any animal
     * @param signs in words, as the source has them
     */
    public record ConditionEntry(
            @Nullable
            @Pattern(regexp = "[A-Z]{2}(-[A-Z0-9]{1,3})?", message = "must be an ISO 3166 code such as AU-VIC")
            String jurisdiction,

            @NotBlank @Size(max = LONGEST_NAME) String name,
            @Size(max = 200) List<@NotBlank @Size(max = 200) String> taxonGroups,
            @NotBlank @Size(max = LONGEST_WORDS) String signs,
            @NotBlank @Size(max = LONGEST_WORDS) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @Nullable @Valid HotlineEntry hotline) {
        public ConditionEntry {
            taxonGroups = taxonGroups == null ? List.of() : List.copyOf(taxonGroups);
        }
    }

    public record ConditionCorrection(
            Change<List<String>> taxonGroups,
            Change<String> signs,
            Change<String> source,
            Change<LocalDate> readOn,
            Change<LocalDate> reviewBy,
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * That an authority was told.
     *
     * @param to whom
     * @param by who rang
     * @param at when; now when left out
     * @param reference its number of the matter
     */
    public record SuspicionTelling(
            @NotBlank @Size(max = LONGEST_NAME) String to,
            @NotBlank @Size(max = LONGEST_NAME) String by,
            @Nullable Instant at,
            @Nullable @Size(max = LONGEST_NAME) String reference) {}

    /**
     * A suspicion.
     *
     * @param signs what was seen, in words
     * @param suspectedBy who suspects it
     * @param at when it was seen; now when left out
     * @param told that the authority was told; left out: not yet
     */
    public record SuspicionEntry(
            @NotNull UUID conditionId,
            @NotBlank @Size(max = LONGEST_WORDS) String signs,
            @NotBlank @Size(max = LONGEST_NAME) String suspectedBy,
            @Nullable Instant at,
            @Nullable @Valid SuspicionTelling told) {}

    /** The suspicion itself is not taken back: the authority clears the hold. */
    public record SuspicionCorrection(
            Change<UUID> conditionId,
            Change<String> signs,
            Change<String> suspectedBy,
            Change<String> toldReference,
            @NotBlank @Size(max = 2000) String reason) {}

    private SuspicionEntries() {}
}
