package org.culvert.call;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import org.culvert.platform.ledger.Change;

/** What can be corrected in this room; a field that is left out stays as it is. */
public final class CallCorrections {
    private CallCorrections() {}

    public record IncidentCorrection(
            Change<String> cause,
            Change<Instant> happenedAt,
            Change<Instant> happenedNotBefore,
            @NotBlank @Size(max = 2000) String reason) {}

    /** Of a call; {@code caller} replaces the whole caller. */
    public record CallCorrection(
            Change<Instant> receivedAt,
            Change<CallEntry.Answer> anyoneHurt,
            Change<CallEntry.Answer> offTheRoad,
            Change<String> policeReference,
            Change<String> cause,
            Change<CallEntry.Caller> caller,
            Change<String> words,
            @NotBlank @Size(max = 2000) String reason) {}

    /** Of the animals of one kind that a call tells of. A scientific name brings its group. */
    public record ReportedAnimalCorrection(
            Change<String> scientificName,
            Change<String> taxonGroup,
            Change<String> verbatimIdentification,
            Change<CallEntry.Verification> identificationVerificationStatus,
            Change<Integer> individualCount,
            Change<CallEntry.Vitality> vitality,
            Change<String> lifeStage,
            Change<CallEntry.Sex> sex,
            Change<String> condition,
            Change<CallEntry.Answer> pouchChecked,
            Change<Boolean> carcassSigned,
            @NotBlank @Size(max = 2000) String reason) {}
}
