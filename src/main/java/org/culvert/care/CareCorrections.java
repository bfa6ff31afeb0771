package org.culvert.care;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ledger.Change;

/** What can be corrected in this room; a field that is left out stays as it is. */
public final class CareCorrections {
    private CareCorrections() {}

    public record PlacementCorrection(
            Change<UUID> visitId,
            Change<String> conditions,
            Change<Instant> offeredAt,
            @NotBlank @Size(max = 2000) String reason) {}

    public record ClutchCorrection(
            Change<UUID> visitId,
            Change<Instant> at,
            @NotBlank @Size(max = 2000) String reason) {}

    public record EggsCorrection(
            Change<Integer> recovered,
            Change<Integer> setToIncubate,
            Change<Integer> broken,
            Change<Integer> discarded,
            Change<Instant> at,
            @NotBlank @Size(max = 2000) String reason) {}

    /** Of when hatchlings came; each of them is a case of its own, so that how many there were is corrected there. */
    public record HatchedCorrection(
            Change<Instant> at, @NotBlank @Size(max = 2000) String reason) {}
}
