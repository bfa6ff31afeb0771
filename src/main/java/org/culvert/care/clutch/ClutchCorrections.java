package org.culvert.care.clutch;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ledger.Change;
import org.culvert.roster.Holder;

/** What can be corrected of clutches; a field that is left out stays as it is. */
public final class ClutchCorrections {
    private ClutchCorrections() {}

    public record ClutchCorrection(
            Change<UUID> visitId,
            Change<Instant> at,
            @NotBlank @Size(max = 2000) String reason) {}

    public record EggsCorrection(
            Change<Integer> recovered,
            Change<Integer> setToIncubate,
            Change<Integer> broken,
            Change<Integer> discarded,
            Change<ClutchEntries.EggsCame> how,
            Change<Instant> at,
            @NotBlank @Size(max = 2000) String reason) {}

    public record FailedEggsCorrection(
            Change<Integer> failed,
            Change<ClutchEntries.FailureGrounds> grounds,
            Change<String> saidBy,
            Change<String> words,
            Change<Instant> at,
            @NotBlank @Size(max = 2000) String reason) {}

    /** Of who answered for a clutch when; a holder needs an authorisation, also afterwards. */
    public record ClutchCustodyCorrection(
            Change<Holder> holder,
            Change<Instant> from,
            Change<Instant> to,
            @NotBlank @Size(max = 2000) String reason) {}

    /** Of when hatchlings came; each of them is a case of its own, so that how many there were is corrected there. */
    public record HatchedCorrection(
            Change<Instant> at, @NotBlank @Size(max = 2000) String reason) {}
}
