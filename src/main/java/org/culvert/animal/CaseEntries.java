package org.culvert.animal;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.call.CallEntry.Sex;
import org.culvert.call.CallEntry.Verification;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/** What goes into this room. */
public final class CaseEntries {
    private CaseEntries() {}

    /** Nobody guesses a birth to within more than these days. */
    static final int MOST_DOUBT_DAYS = 3650;

    /**
     * An individual.
     *
     * @param naturalMarks what tells it from others; individual marks put on by people are unlawful in many places
     * @param bornOn when it was born or hatched, where somebody knows
     * @param bornDoubtDays by how many days that may be wrong
     */
    public record AnimalEntry(
            @NotBlank @Size(max = 200) String scientificName,
            Verification identificationVerificationStatus,
            Sex sex,
            @Nullable @Size(max = 100) String lifeStage,
            @Nullable UUID motherAnimalId,
            @Nullable @Size(max = 2000) String naturalMarks,
            @Nullable LocalDate bornOn,
            @Nullable @Min(0) @Max(MOST_DOUBT_DAYS) Integer bornDoubtDays) {
        /** Of whose birth nothing is told. */
        public AnimalEntry(
                String scientificName,
                Verification identificationVerificationStatus,
                Sex sex,
                @Nullable String lifeStage,
                @Nullable UUID motherAnimalId,
                @Nullable String naturalMarks) {
            this(
                    scientificName,
                    identificationVerificationStatus,
                    sex,
                    lifeStage,
                    motherAnimalId,
                    naturalMarks,
                    null,
                    null);
        }

        public AnimalEntry {
            identificationVerificationStatus = identificationVerificationStatus == null
                    ? Verification.seenByMember
                    : identificationVerificationStatus;
            sex = sex == null ? Sex.unknown : sex;
        }
    }

    /**
     * Opens a case.
     *
     * @param animalId an animal known from before (struck again a year after release), or else {@code animal}
     * @param incidentId what happened to it
     * @param attendanceId the going-out that collected it, if any
     * @param foundAt when it was found
     * @param originUnknown whether nobody knows where it came from, although the incident has a place
     * @param holder who has it first, such as the finder or the rescuer; none for an animal left at the place
     */
    public record CaseEntry(
            @Nullable UUID animalId,
            @Nullable @Valid AnimalEntry animal,
            @NotNull UUID incidentId,
            @Nullable UUID attendanceId,
            @Nullable Instant foundAt,
            boolean originUnknown,
            boolean dependentYoung,
            @Nullable Holder holder) {}

    /**
     * A licence that is not the network's, under which a taker holds.
     *
     * @param organisation whose licence it is, where that is not the taker; an organisation's name, never a person's
     * @param number its number
     * @param jurisdiction ISO 3166 code of the country, or of the part of it, whose authority gave it
     */
    public record OtherLicence(
            @Nullable @Size(max = 200) String organisation,
            @NotBlank @Size(max = 200) String number,

            @NotNull @Pattern(regexp = "[A-Z]{2}(-[A-Z0-9]{1,3})?", message = "must be an ISO 3166 code such as AU-VIC")
            String jurisdiction) {}

    /**
     * Offers the animal to another holder.
     *
     * @param otherLicence where the taker holds under a licence that is not the network's
     */
    public record HandOverEntry(
            @NotNull Holder taker,
            @Nullable Instant at,
            @Nullable @Valid OtherLicence otherLicence) {
        /** Under what is listed of the taker. */
        public HandOverEntry(Holder taker, @Nullable Instant at) {
            this(taker, at, null);
        }
    }

    /** Settles a hand-over; now when {@code at} is left out. */
    public record AcceptanceEntry(@Nullable Instant at) {}

    public record RefusalEntry(
            @Nullable Instant at, @NotBlank String reason) {}

    /** Where the animal is from an instant on. */
    public record WhereaboutsEntry(
            @Nullable UUID organisationId,
            @Nullable UUID memberId,
            @Nullable @Size(max = 500) String words,
            @Nullable Instant at) {}

    public enum FateKind {
        released,
        died,
        euthanased,
        deadWhenFound,
        diedOnTheWay,
        deadOnReachingClinic,
        leftWell,
        escaped,
        unknown;

        /** Whether the animal is dead, so that there is a body. */
        public boolean dead() {
            return this == died
                    || this == euthanased
                    || this == deadWhenFound
                    || this == diedOnTheWay
                    || this == deadOnReachingClinic;
        }
    }

    /**
     * How a case ended.
     *
     * @param method how, for euthanasia
     * @param authority under what authority, for euthanasia, such as a vet's registration, a permit or an officer's order
     * @param approvedBy who approved, for euthanasia
     * @param barbiturate whether barbiturate was given
     * @param deathConfirmedBy who confirmed that it is dead; needed for euthanasia
     * @param deathConfirmedAt when; when it died when left out
     */
    public record FateEntry(
            @NotNull FateKind fate,
            @Nullable Instant at,
            @Nullable @Size(max = 200) String method,
            @Nullable @Size(max = 200) String authority,
            @Nullable @Size(max = 200) String approvedBy,
            boolean barbiturate,
            @Nullable @Size(max = 200) String deathConfirmedBy,
            @Nullable Instant deathConfirmedAt) {
        /** An end of which no more is to be said. */
        public static FateEntry of(FateKind fate, @Nullable Instant at) {
            return new FateEntry(fate, at, null, null, null, false, null, null);
        }
    }

    public enum Disposal {
        leftInPlace,
        movedOffRoad,
        buriedDeep,
        incinerated,
        clinicWaste,
        museum,
        keptForPathology;

        /** Whether scavengers can reach it. */
        public boolean leftOut() {
            return this == leftInPlace || this == movedOffRoad;
        }
    }

    /** What became of a body. */
    public record DisposalEntry(
            @NotNull Disposal disposal, @Nullable Instant at) {}
}
