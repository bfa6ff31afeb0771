package org.culvert.care.health;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.call.CallEntry.Answer;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** One exposure of one person, with what was done about it: health data. */
@Entity
@Table(name = "exposures", schema = "personal")
class Exposure extends Recorded {
    @Nullable
    UUID memberId;

    @Nullable
    UUID personId;

    @Nullable
    UUID guardianPersonId;

    @Nullable
    UUID caseId;

    @Nullable
    UUID incidentId;

    @Nullable
    String kind;

    @Nullable
    String bodyPart;

    @Nullable
    String washed;

    @Nullable
    Integer washedMinutes;

    @Nullable
    String protectiveKit;

    @Nullable
    String needleUsedOnAnimal;

    @Nullable
    String words;

    @Nullable
    Instant toldAt;

    @Nullable
    String toldUnit;

    @Nullable
    String toldBy;

    @Nullable
    String toldReference;

    @Nullable
    Instant closedAt;

    @Nullable
    String closedBy;

    @Nullable
    String outcome;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    @Nullable
    Instant erasedAt;

    protected Exposure() {}

    static Exposure of(ExposureEntries.ExposureEntry entry, Instant at) {
        var row = new Exposure();
        row.happenedAt(at);
        row.memberId = entry.exposed().memberId();
        row.caseId = entry.caseId();
        row.incidentId = entry.incidentId();
        row.kind = entry.kind().name();
        row.bodyPart = entry.bodyPart();
        row.washed = entry.washed().name();
        row.washedMinutes = entry.washedMinutes();
        row.protectiveKit = entry.protectiveKit();
        row.needleUsedOnAnimal = entry.needleUsedOnAnimal() == null
                ? null
                : entry.needleUsedOnAnimal().name();
        row.words = entry.words();
        row.requireWhole();
        return row;
    }

    ExposureEntries.ExposureKind kind() {
        return ExposureEntries.ExposureKind.valueOf(java.util.Objects.requireNonNull(kind));
    }

    /**
     * Whether the animal is held for it. Venom is no question of lyssavirus; a needle is one unless it is known not to have
     * been in that animal.
     */
    boolean holdsTheAnimal() {
        return switch (kind()) {
            case bite, scratch, lick, other -> true;
            case needle -> !Answer.no.name().equals(needleUsedOnAnimal);
            case venom -> false;
        };
    }

    void correct(ExposureEntries.ExposureCorrection correction) {
        requireStanding();
        kind = Corrections.name("kind", correction.kind(), java.util.Objects.requireNonNull(kind));
        bodyPart = Corrections.text("bodyPart", correction.bodyPart(), bodyPart, ExposureEntries.LONGEST_NAME);
        washed = Corrections.name("washed", correction.washed(), java.util.Objects.requireNonNull(washed));
        washedMinutes = correction.washedMinutes().over(washedMinutes);
        protectiveKit = Corrections.text(
                "protectiveKit", correction.protectiveKit(), protectiveKit, ExposureEntries.LONGEST_NAME);
        needleUsedOnAnimal = Corrections.nameOrNone(correction.needleUsedOnAnimal(), needleUsedOnAnimal);
        words = Corrections.text("words", correction.words(), words, ExposureEntries.LONGEST_WORDS);
        toldReference = Corrections.text(
                "toldReference", correction.toldReference(), toldReference, ExposureEntries.LONGEST_NAME);
        if (correction.toldReference().isMade() && toldReference != null && toldAt == null) {
            throw InvalidException.of("toldReference", "Nobody was told yet.", "POST …/telling, with when and by whom");
        }
        requireWhole();
        revisedBecause(correction.reason());
    }

    /** Names the animal of an exposure of which it was not known. */
    void name(UUID animalsCase, UUID itsIncident) {
        if (caseId != null && !caseId.equals(animalsCase)) {
            throw InvalidException.of(
                    "caseId",
                    "Another animal is named already.",
                    "nothing here; withdraw this exposure and enter it of the right animal");
        }
        if (incidentId != null && !incidentId.equals(itsIncident)) {
            throw InvalidException.of("caseId", "That case is of another incident.", "a case of " + incidentId);
        }
        caseId = animalsCase;
        incidentId = itsIncident;
    }

    void tell(ExposureEntries.UnitTelling telling, Instant at) {
        requireStanding();
        if (toldAt != null) {
            throw new ConflictException("The public health unit was told already: " + toldUnit + " at " + toldAt + ".");
        }
        told(telling, at);
        revisedBecause(null);
    }

    void told(ExposureEntries.UnitTelling telling, Instant at) {
        requireAfter("at", at, java.util.Objects.requireNonNull(happenedAt()), "it happened");
        toldAt = at;
        toldUnit = telling.unit();
        toldBy = telling.by();
        toldReference = telling.reference();
    }

    void close(ExposureEntries.ExposureClosing closing, Instant at) {
        requireStanding();
        if (toldAt == null && kind() != ExposureEntries.ExposureKind.venom) {
            throw new ConflictException("The public health unit has not been told yet: ring it now, and say so here.");
        }
        requireAfter("at", at, toldAt == null ? java.util.Objects.requireNonNull(happenedAt()) : toldAt, "it was told");
        closedAt = at;
        closedBy = closing.by();
        outcome = closing.outcome();
        revisedBecause(null);
    }

    void withdraw(Instant at, String reason) {
        requireStanding();
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }

    private void requireStanding() {
        if (erasedAt != null) {
            throw new ConflictException("This person was erased: nothing is written of them again.");
        }
        if (withdrawnAt != null) {
            throw new ConflictException("That exposure was withdrawn: " + withdrawnBecause);
        }
        if (closedAt != null) {
            throw new ConflictException("That exposure was closed at " + closedAt + " by " + closedBy + ".");
        }
    }

    private static void requireAfter(String field, Instant at, Instant earliest, String what) {
        if (at.isBefore(earliest)) {
            throw InvalidException.of(field, "That was before " + what + ".", "an instant from " + earliest + " on");
        }
    }

    private void requireWhole() {
        if (washedMinutes != null && !Answer.yes.name().equals(washed)) {
            throw InvalidException.of(
                    "washedMinutes", "It was not washed, or nobody knows.", "nothing, or washed: yes");
        }
        if (washedMinutes != null && (washedMinutes < 0 || washedMinutes > ExposureEntries.MOST_MINUTES)) {
            throw InvalidException.of(
                    "washedMinutes", "So long it did not take.", "0 to " + ExposureEntries.MOST_MINUTES);
        }
        if (needleUsedOnAnimal != null && kind() != ExposureEntries.ExposureKind.needle) {
            throw InvalidException.of("needleUsedOnAnimal", "There was no needle.", "nothing, or kind: needle");
        }
    }
}
