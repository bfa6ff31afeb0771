package org.culvert.release;

import jakarta.validation.Valid;
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

/** What goes in of releases. */
public final class ReleaseEntries {
    /**
     * A permit that lifts one test of statute or code.
     *
     * @param key the test's key in the assessment
     * @param document the permit itself, in base64
     */
    public record Permit(
            @NotBlank @Size(max = 200) String key,
            @NotBlank @Size(max = 200) String number,
            @NotBlank @Size(max = 200) String issuedBy,
            @NotBlank @Size(max = 200) String documentName,

            @NotNull
            @Pattern(
                    regexp = "application/pdf|image/png|image/jpeg",
                    message = "must be application/pdf, image/png or image/jpeg")
            String documentMediaType,

            @Schema(type = SchemaType.STRING, format = "byte") @NotEmpty @Size(max = 20_000_000)
            byte[] document) {}

    /**
     * A decision to go on although one test of the network's own is not passed, by whoever enters it.
     *
     * @param agreedByMemberId a second person who agrees; needed where the rule asks for one
     */
    public record Overriding(
            @NotBlank @Size(max = 200) String key,
            @NotBlank @Size(max = 2000) String reason,
            @Nullable UUID agreedByMemberId) {}

    /** What light they were let go in. */
    public enum Light {
        day,
        twilight,
        night
    }

    /** How they were let go: soft with support feeding at the place, hard without. */
    public enum Manner {
        hard,
        soft
    }

    /**
     * A release, of one animal or of a batch at one place: all of them or none.
     *
     * @param assessmentIds one of each case, all of the same place
     * @param at when they were let go; now when left out
     * @param approvedBy who approved the release
     * @param warningsRead keys of the warnings that whoever lets them go has read: of a hotspot beside the place
     * @param releasedByMemberId who let them go
     * @param weather as it was seen
     * @param supportFeedingUntil of a soft release, the last day on which they are meant to be fed at the place
     * @param othersPresent who else was there
     * @param raisedTogether whether they were raised together; null: nobody knows
     */
    @LargestBody(bytes = 30_000_000)
    public record ReleaseEntry(
            @NotEmpty @Size(max = 500) List<@NotNull UUID> caseIds,
            @NotEmpty @Size(max = 500) List<@NotNull UUID> assessmentIds,
            @Nullable Instant at,
            @NotBlank @Size(max = 200) String approvedBy,
            @Nullable UUID releasedByMemberId,
            List<@Valid Permit> permits,
            List<@Valid Overriding> overrides,
            @Size(max = 20) List<@NotBlank @Size(max = 200) String> warningsRead,
            @Nullable @Size(max = 500) String weather,
            @Nullable Light light,
            @Nullable Manner manner,
            @Nullable LocalDate supportFeedingUntil,
            @Nullable @Size(max = 2000) String othersPresent,
            @Nullable Boolean raisedTogether) {
        public ReleaseEntry {
            permits = permits == null ? List.of() : List.copyOf(permits);
            overrides = overrides == null ? List.of() : List.copyOf(overrides);
            warningsRead = warningsRead == null ? List.of() : List.copyOf(warningsRead);
        }
    }

    /** The end of the support feeding; now when {@code at} is left out. */
    public record SupportFeedingEnd(
            @Nullable Instant at, @NotBlank @Size(max = 200) String endedBy) {}

    /** Of how a release was made and by whom; where and when it was is taken back and recorded anew. */
    public record ReleaseCorrection(
            Change<String> approvedBy,
            Change<UUID> releasedByMemberId,
            Change<String> weather,
            Change<Light> light,
            Change<Manner> manner,
            Change<LocalDate> supportFeedingUntil,
            Change<Instant> supportFeedingEndedAt,
            Change<String> supportFeedingEndedBy,
            Change<String> othersPresent,
            Change<Boolean> raisedTogether,
            @NotBlank @Size(max = 2000) String reason) {}

    private ReleaseEntries() {}
}
