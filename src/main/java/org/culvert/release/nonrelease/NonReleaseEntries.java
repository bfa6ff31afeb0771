package org.culvert.release.nonrelease;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.LargestBody;
import org.culvert.platform.ledger.Change;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What is told of non-release. */
public final class NonReleaseEntries {
    private NonReleaseEntries() {}

    /** Why an animal may not go back. */
    public enum NonReleaseGround {
        injury,
        /** Such as with a pelvis that no longer passes eggs. */
        cannotBreedSafely,
        unknownOrigin,
        imprinted,
        disease,
        housedWithPets,
        noFitPlace
    }

    /**
     * A vet's decision that an animal may not go back.
     *
     * @param decidedAt when; now when left out
     * @param reviewDueOn by which day somebody looks again at how it is kept, after the day of the decision
     */
    public record NonReleaseEntry(
            @NotEmpty @Size(max = 20) List<@NotNull NonReleaseGround> grounds,
            @NotBlank @Size(max = 4000) String words,
            @NotBlank @Size(max = 200) String vetName,
            @NotBlank @Size(max = 200) String vetRegistration,
            @Nullable Instant decidedAt,
            @Nullable LocalDate reviewDueOn) {}

    /** Of why it was decided and when somebody looks again; who decided and when is withdrawn and recorded anew. */
    public record NonReleaseCorrection(
            Change<List<NonReleaseGround>> grounds,
            Change<String> words,
            Change<LocalDate> reviewDueOn,
            @NotBlank @Size(max = 2000) String reason) {}

    /** What another vet says of a decision. */
    public record SecondOpinionEntry(
            @NotBlank @Size(max = 200) String vetName,
            @NotBlank @Size(max = 200) String vetRegistration,
            @NotNull Boolean agrees,
            @NotBlank @Size(max = 4000) String words,
            @Nullable Instant at) {}

    /**
     * An authority was told.
     *
     * @param reference of theirs, where they gave one
     */
    public record AuthorityNoticeEntry(
            @NotBlank @Size(max = 200) String authority,
            @Nullable @Size(max = 200) String reference,
            @Nullable Instant at) {}

    /**
     * A permit to keep the animal.
     *
     * @param document the permit itself, in base64
     * @param validTo its last day; null: none is named
     */
    @LargestBody(bytes = 30_000_000)
    public record PermitToKeepEntry(
            @NotBlank @Size(max = 200) String number,
            @NotBlank @Size(max = 200) String issuedBy,
            @NotBlank @Size(max = 200) String documentName,

            @NotNull
            @Pattern(
                    regexp = "application/pdf|image/png|image/jpeg",
                    message = "must be application/pdf, image/png or image/jpeg")
            String documentMediaType,

            @Schema(type = SchemaType.STRING, format = "byte") @NotEmpty @Size(max = 20_000_000)
            byte[] document,

            @NotNull LocalDate validFrom,
            @Nullable LocalDate validTo) {}

    /**
     * Somebody looked at how the animal is kept.
     *
     * @param nextDueOn by which day somebody looks again
     */
    public record WelfareReviewEntry(
            @NotBlank @Size(max = 200) String reviewedBy,
            @NotBlank @Size(max = 4000) String words,
            @Nullable Instant at,
            @NotNull LocalDate nextDueOn) {}

    public enum OutcomeKind {
        placement,
        euthanasia
    }

    /**
     * What is to become of the animal.
     *
     * @param placedWith of a placement, with whom
     * @param permitToKeepId of a placement, the permit recorded here under which it is kept
     * @param approvedBy of euthanasia, who approved it
     */
    public record OutcomeEntry(
            @NotNull OutcomeKind outcome,
            @Nullable @Size(max = 500) String placedWith,
            @Nullable UUID permitToKeepId,
            @Nullable @Size(max = 200) String approvedBy,
            @Nullable @Size(max = 4000) String words,
            @Nullable Instant at) {}
}
