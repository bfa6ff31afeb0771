package org.culvert.animal;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.animal.CaseEntries.OtherLicence;
import org.culvert.call.CallEntry;
import org.culvert.platform.ledger.Change;
import org.culvert.road.PlaceAsGiven;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/** What can be corrected in this room; a field that is left out stays as it is. */
public final class CaseCorrections {
    private CaseCorrections() {}

    public record AnimalCorrection(
            Change<String> scientificName,
            Change<CallEntry.Verification> identificationVerificationStatus,
            Change<CallEntry.Sex> sex,
            Change<String> lifeStage,
            Change<UUID> motherId,
            Change<String> naturalMarks,
            Change<LocalDate> bornOn,
            Change<Integer> bornDoubtDays,
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * Of a case.
     *
     * @param foundPlace where it was found after all; null where nobody knows
     */
    public record CaseCorrection(
            Change<Instant> foundAt,
            Change<PlaceAsGiven> foundPlace,
            Change<String> cause,
            Change<Boolean> dependentYoung,
            Change<UUID> attendanceId,
            @NotBlank @Size(max = 2000) String reason) {}

    public record CustodyCorrection(
            Change<Holder> holder,
            Change<Instant> from,
            Change<Instant> to,
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * A link of custody that was forgotten; it fits into a gap, before the first link or after the last.
     *
     * @param between whether it may also stand where others meet: then the link before ends when this begins, and the link
     *     after begins when this ends; none is cut in two, and none is covered whole
     * @param otherLicence the licence of somebody else under which it was held, if it was
     */
    public record CustodyEntry(
            @NotNull Holder holder,
            @NotNull Instant from,
            @Nullable Instant to,
            boolean between,
            @Nullable @Valid OtherLicence otherLicence,
            @NotBlank @Size(max = 2000) String reason) {}

    public record WhereaboutsCorrection(
            Change<UUID> organisationId,
            Change<UUID> memberId,
            Change<String> words,
            Change<Instant> since,
            @NotBlank @Size(max = 2000) String reason) {}

    /** Of how a case ended; whether it ended at all is taken back by a withdrawal. */
    public record FateCorrection(
            Change<CaseEntries.FateKind> fate,
            Change<Instant> at,
            Change<String> method,
            Change<String> authority,
            Change<String> approvedBy,
            Change<Boolean> barbiturate,
            Change<String> deathConfirmedBy,
            Change<Instant> deathConfirmedAt,
            @NotBlank @Size(max = 2000) String reason) {}

    public record BodyCorrection(
            Change<Holder> holder,
            Change<CallEntry.Answer> barbiturate,
            Change<CaseEntries.Disposal> disposal,
            Change<Instant> disposedAt,
            @NotBlank @Size(max = 2000) String reason) {}

    /** Why something is taken back. */
    public record Withdrawal(@NotBlank @Size(max = 2000) String reason) {}
}
