package org.culvert.care.health;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * An exposure whole: health data of one person, for very few and for that person.
 *
 * @param animalHeld whether a hold for an exposure stands on the animal; false too where none is named
 * @param vaccinations what is asked of whoever handles such an animal, and whether it was shown on that day
 * @param told null: the public health unit has not been told yet
 * @param closing null while it is open
 */
public record ExposureView(
        UUID id,
        String kind,
        Exposed exposed,
        @Nullable UUID caseId,
        @Nullable UUID incidentId,
        boolean animalHeld,
        @Nullable String bodyPart,
        String washed,
        @Nullable Integer washedMinutes,
        @Nullable String protectiveKit,
        @Nullable String needleUsedOnAnimal,
        @Nullable String words,
        List<Vaccinated> vaccinations,
        @Nullable UnitTold told,
        @Nullable ClosedBy closing,
        @Nullable Instant withdrawnAt,
        @Nullable String withdrawnBecause,
        List<HealthAdvice> advice,
        RecordView record) {

    /**
     * Who was exposed.
     *
     * @param hidden whether somebody outside of the roster is hidden, so that names and numbers are not shown
     */
    public record Exposed(
            @Nullable UUID memberId,
            @Nullable String callSign,
            @Nullable UUID personId,
            @Nullable String name,
            @Nullable String phone,
            @Nullable UUID guardianPersonId,
            @Nullable String guardianName,
            @Nullable String guardianPhone,
            boolean hidden) {}

    /**
     * A vaccination that is asked for.
     *
     * @param shown whether a record says that it was current on the day; what nobody recorded is none
     */
    public record Vaccinated(String against, boolean shown, String sentence) {}

    /** That the public health unit was told. */
    public record UnitTold(String unit, String by, @Nullable String reference, Instant at) {}

    /** How it ended for the person. */
    public record ClosedBy(String by, String outcome, Instant at) {}
}
