package org.culvert.roster;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.ledger.Change;

/** What can be corrected in this room; a field that is left out stays as it is. */
public final class RosterCorrections {
    private RosterCorrections() {}

    public record OrganisationCorrection(
            Change<String> name,
            Change<Double> latitude,
            Change<Double> longitude,
            Change<Boolean> xRay,
            Change<Boolean> surgery,
            @NotBlank @Size(max = 2000) String reason) {}

    /** Of a member; name, telephone, e-mail address and home go in and do not come out. */
    public record MemberCorrection(
            Change<UUID> organisationId,
            Change<String> callSign,
            Change<String> name,
            Change<String> phone,
            Change<String> email,
            Change<Double> homeLatitude,
            Change<Double> homeLongitude,
            Change<Boolean> attends,
            Change<Boolean> cares,
            Change<String> vetRegistration,
            Change<LocalDate> leftOn,
            @NotBlank @Size(max = 2000) String reason) {}

    public record VaccinationCorrection(
            Change<String> against,
            Change<LocalDate> givenOn,
            Change<LocalDate> currentUntil,
            Change<String> basis,
            @NotBlank @Size(max = 2000) String reason) {}

    public record AuthorisationCorrection(
            Change<String> jurisdiction,
            Change<String> authorisationClass,
            Change<String> number,
            Change<LocalDate> validFrom,
            Change<LocalDate> validTo,
            Change<String> premises,
            Change<Boolean> supervised,
            @NotBlank @Size(max = 2000) String reason) {}
}
