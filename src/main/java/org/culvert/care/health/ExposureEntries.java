package org.culvert.care.health;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.UUID;
import org.culvert.call.CallEntry.Answer;
import org.culvert.platform.ledger.Change;
import org.jspecify.annotations.Nullable;

/** What goes in of exposures; a field of a correction that is left out stays as it is. */
public final class ExposureEntries {
    static final int LONGEST_NAME = 200;
    static final int LONGEST_WORDS = 4000;
    static final int MOST_MINUTES = 1440;

    /** How somebody was exposed. A lick counts where it met broken skin, an eye, the nose or the mouth. */
    public enum ExposureKind {
        bite,
        scratch,
        lick,
        needle,
        venom,
        other
    }

    /**
     * Who was exposed: a member, or somebody else by name.
     *
     * @param guardianName whom to reach in place of a child
     */
    public record ExposedEntry(
            @Nullable UUID memberId,
            @Nullable @Size(max = LONGEST_NAME) String name,
            @Nullable @Size(max = LONGEST_NAME) String phone,
            @Nullable @Size(max = LONGEST_NAME) String guardianName,
            @Nullable @Size(max = LONGEST_NAME) String guardianPhone) {}

    /**
     * That the public health unit was told.
     *
     * @param unit which
     * @param by who rang
     * @param at when; now when left out
     * @param reference its number of the matter
     */
    public record UnitTelling(
            @NotBlank @Size(max = LONGEST_NAME) String unit,
            @NotBlank @Size(max = LONGEST_NAME) String by,
            @Nullable Instant at,
            @Nullable @Size(max = LONGEST_NAME) String reference) {}

    /**
     * An exposure as entered.
     *
     * @param caseId of the animal, which is then held
     * @param incidentId where the animal has no case yet; of a case it is known
     * @param bodyPart in words
     * @param protectiveKit what was worn, in words
     * @param needleUsedOnAnimal of a needle: whether it had been in that animal; left out: nobody knows
     * @param told that the public health unit was told; left out: not yet
     */
    public record ExposureEntry(
            @NotNull ExposureKind kind,
            @NotNull @Valid ExposedEntry exposed,
            @Nullable UUID caseId,
            @Nullable UUID incidentId,
            @Nullable @Size(max = LONGEST_NAME) String bodyPart,
            @NotNull Answer washed,
            @Nullable @Min(0) @Max(MOST_MINUTES) Integer washedMinutes,
            @Nullable @Size(max = LONGEST_NAME) String protectiveKit,
            @Nullable Answer needleUsedOnAnimal,
            @Nullable @Size(max = LONGEST_WORDS) String words,
            @Nullable Instant happenedAt,
            @Nullable @Valid UnitTelling told) {}

    /** @param caseId of an animal that was not named yet; it is held from then on */
    public record ExposureCorrection(
            Change<ExposureKind> kind,
            Change<UUID> caseId,
            Change<String> bodyPart,
            Change<Answer> washed,
            Change<Integer> washedMinutes,
            Change<String> protectiveKit,
            Change<Answer> needleUsedOnAnimal,
            Change<String> words,
            Change<String> toldReference,
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * Nothing more is to be done for the person; of the animal only the authority says that.
     *
     * @param by whose word it is
     */
    public record ExposureClosing(
            @NotBlank @Size(max = LONGEST_NAME) String by,
            @NotBlank @Size(max = LONGEST_WORDS) String outcome,
            @Nullable Instant at) {}

    /** @param reason why it should not have been entered */
    public record ExposureWithdrawal(
            @NotBlank @Size(max = 2000) String reason) {}

    private ExposureEntries() {}
}
