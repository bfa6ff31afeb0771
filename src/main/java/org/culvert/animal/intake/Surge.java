package org.culvert.animal.intake;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** A time in which many animals come at once; it happened when it began. */
@Entity
@Table(name = "surges")
class Surge extends Recorded {
    String name;
    String kind;

    @Nullable
    String kindWords;

    String tentWords;

    @Nullable
    UUID tentPlaceId;

    UUID holderId;

    @Nullable
    Instant endedAt;

    @Nullable
    UUID endedBy;

    protected Surge() {}

    Surge(SurgeEntries.SurgeEntry entry, @Nullable UUID tentPlaceId) {
        happenedAt(entry.from());
        this.name = entry.name();
        this.kind = entry.kind().name();
        this.kindWords = entry.kindWords();
        this.tentWords = entry.tentWords();
        this.tentPlaceId = tentPlaceId;
        this.holderId = entry.holderMemberId();
    }

    Instant from() {
        return Objects.requireNonNull(happenedAt(), "a surge has a beginning");
    }

    void correct(SurgeEntries.SurgeCorrection correction, Clock clock) {
        name = Corrections.words("name", correction.name(), name, 200);
        happenedAt(Corrections.known("from", correction.from(), from(), clock));
        tentWords = Corrections.words("tentWords", correction.tentWords(), tentWords, 500);
        holderId = correction.holderMemberId().over("holderMemberId", holderId);
        revisedBecause(correction.reason());
    }

    void end(Instant at, UUID by) {
        if (endedAt != null) {
            throw new ConflictException("That surge ended already, at " + endedAt + ".");
        }
        endedAt = at;
        endedBy = by;
        revisedBecause("The surge ended.");
    }
}
