package org.culvert.call;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.road.PlaceAsGiven;
import org.jspecify.annotations.Nullable;

/**
 * A call as it is taken: people first, then whatever is known. Everything may be missing; what is missing is unknown,
 * and where a component is not nullable its default takes the place of a missing value.
 *
 * @param receivedAt when the telephone rang; now when left out
 * @param happenedAt when it happened, where somebody knows
 * @param happenedNotBefore the latest instant at which it had certainly not happened yet
 * @param cause key of a cause; {@code unknown} when left out
 * @param place where, said in one of several ways
 * @param incidentId the incident it is about, when the caller speaks of one that is known already
 */
public record CallEntry(
        @Nullable Instant receivedAt,
        @Nullable Instant happenedAt,
        @Nullable Instant happenedNotBefore,
        @Valid People people,
        @Nullable @Valid Caller caller,
        @Nullable @Size(max = 20000) String words,
        String cause,
        @Size(max = 100) List<@Valid Animal> animals,
        @Nullable PlaceAsGiven place,
        @Nullable UUID incidentId) {

    public CallEntry {
        people = people == null ? new People(Answer.unknown, Answer.unknown, null) : people;
        cause = cause == null ? "unknown" : cause;
        animals = animals == null ? List.of() : List.copyOf(animals);
        if (happenedAt != null && happenedNotBefore != null && happenedAt.isBefore(happenedNotBefore)) {
            throw InvalidException.of(
                    "happenedNotBefore", "It happened before that.", "an instant at or before happenedAt");
        }
    }

    /** Yes, no, or nobody knows. */
    public enum Answer {
        yes,
        no,
        unknown
    }

    public enum Vitality {
        alive,
        dead,
        unknown
    }

    public enum Sex {
        female,
        male,
        unknown
    }

    /** How surely an animal was identified. */
    public enum Verification {
        unverified,
        fromPhotograph,
        seenByMember,
        seenByVet
    }

    /** People come first: is anyone hurt, are you off the road, do the police know. */
    public record People(
            Answer anyoneHurt,
            Answer offTheRoad,
            @Nullable @Size(max = 200) String policeReference) {
        public People {
            anyoneHurt = anyoneHurt == null ? Answer.unknown : anyoneHurt;
            offTheRoad = offTheRoad == null ? Answer.unknown : offTheRoad;
        }
    }

    /** Who rings; kept apart from the incident. */
    public record Caller(
            @Nullable @Size(max = 200) String name,
            @Nullable @Size(max = 100) String phone,
            @Nullable @Size(max = 200) String email,
            @Nullable @Size(max = 500) String address) {}

    /**
     * Animals of one kind that the caller tells of.
     *
     * @param scientificName a taxon at any rank, where one was recognised
     * @param taxonGroup key of a group, where that much is known
     * @param verbatimIdentification what the caller called it
     * @param pouchChecked whether somebody has looked for young
     * @param carcassSigned whether the carcass carries a sign that it was checked
     */
    public record Animal(
            @Nullable @Size(max = 200) String scientificName,
            @Nullable @Size(max = 200) String taxonGroup,
            @Nullable @Size(max = 200) String verbatimIdentification,
            Verification identificationVerificationStatus,
            @Min(1) @Max(1000) Integer individualCount,
            Vitality vitality,
            @Nullable @Size(max = 100) String lifeStage,
            @Nullable Sex sex,
            @Nullable @Size(max = 2000) String condition,
            Answer pouchChecked,
            Boolean carcassSigned) {
        public Animal {
            identificationVerificationStatus = identificationVerificationStatus == null
                    ? Verification.unverified
                    : identificationVerificationStatus;
            individualCount = individualCount == null ? 1 : individualCount;
            vitality = vitality == null ? Vitality.unknown : vitality;
            pouchChecked = pouchChecked == null ? Answer.unknown : pouchChecked;
            carcassSigned = carcassSigned != null && carcassSigned;
        }
    }
}
