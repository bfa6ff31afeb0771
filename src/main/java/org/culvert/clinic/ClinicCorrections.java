package org.culvert.clinic;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import org.culvert.call.CallEntry.Answer;
import org.culvert.platform.ledger.Change;

/** What can be corrected in this room; a field that is left out stays as it is. */
public final class ClinicCorrections {
    private ClinicCorrections() {}

    public record VisitCorrection(
            Change<Instant> arrivedAt,
            Change<Instant> leftAt,
            Change<Instant> stabilisedAt,
            Change<Double> weightGrams,
            Change<Integer> bodyCondition,
            Change<Answer> gravid,
            Change<String> diagnosis,
            Change<String> causeOfDeath,
            @NotBlank @Size(max = 2000) String reason) {}

    public record FindingCorrection(
            Change<String> bodyPart,
            Change<ClinicService.Side> side,
            Change<String> finding,
            Change<String> part,
            Change<ClinicService.FindingKind> kind,
            @NotBlank @Size(max = 2000) String reason) {}

    public record ReadingCorrection(
            Change<String> what,
            Change<Integer> counted,
            Change<String> reader,
            Change<ClinicService.Confidence> confidence,
            Change<Instant> at,
            @NotBlank @Size(max = 2000) String reason) {}

    public record ProcedureCorrection(
            Change<String> procedure,
            Change<String> vetName,
            Change<String> vetRegistration,
            Change<Instant> at,
            @NotBlank @Size(max = 2000) String reason) {}

    /** Of a discharge; the words are the vet's own, and so is their correction. */
    public record DischargeCorrection(
            Change<String> vetName,
            Change<String> vetRegistration,
            Change<String> plan,
            Change<String> limits,
            Change<String> mayHold,
            Change<LocalDate> reviewOn,
            @NotBlank @Size(max = 2000) String reason) {}
}
