package org.culvert.call;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** One person reporting something. */
@Entity
@Table(name = "calls")
class Call extends Recorded {
    UUID incidentId;

    @Nullable
    UUID callerId;

    @Nullable
    UUID wordsId;

    @Nullable
    UUID placeId;

    String anyoneHurt;
    String offTheRoad;

    @Nullable
    String policeReference;

    String cause;

    protected Call() {}

    static Call of(
            CallEntry entry,
            UUID incidentId,
            @Nullable UUID callerId,
            @Nullable UUID wordsId,
            @Nullable UUID placeId,
            Instant receivedAt) {
        var call = new Call();
        call.happenedAt(receivedAt);
        call.incidentId = incidentId;
        call.callerId = callerId;
        call.wordsId = wordsId;
        call.placeId = placeId;
        call.anyoneHurt = entry.people().anyoneHurt().name();
        call.offTheRoad = entry.people().offTheRoad().name();
        call.policeReference = entry.people().policeReference();
        call.cause = entry.cause();
        return call;
    }

    CallEntry.People people() {
        return new CallEntry.People(
                CallEntry.Answer.valueOf(anyoneHurt), CallEntry.Answer.valueOf(offTheRoad), policeReference);
    }

    void correct(CallCorrections.CallCorrection correction, Clock clock) {
        happenedAt(Corrections.known(
                "receivedAt",
                correction.receivedAt(),
                Objects.requireNonNull(happenedAt(), "a call has a time"),
                clock));
        anyoneHurt = Corrections.name("anyoneHurt", correction.anyoneHurt(), anyoneHurt);
        offTheRoad = Corrections.name("offTheRoad", correction.offTheRoad(), offTheRoad);
        policeReference = Corrections.text("policeReference", correction.policeReference(), policeReference, 200);
        cause = correction.cause().over("cause", cause);
        revisedBecause(correction.reason());
    }
}
