package org.culvert.care.clutch;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ledger.Corrections;

/** Eggs that came at one time, every one of them accounted for. */
@Entity
@Table(name = "egg_recoveries")
class EggRecovery extends ClutchPart {
    int recovered;
    int setToIncubate;
    int broken;
    int discarded;
    String how;

    protected EggRecovery() {}

    EggRecovery(UUID clutchId, ClutchEntries.EggsEntry entry, Instant at) {
        super(clutchId, at);
        this.recovered = entry.recovered();
        this.setToIncubate = entry.setToIncubate();
        this.broken = entry.broken();
        this.discarded = entry.discarded();
        this.how = entry.how().name();
    }

    void correct(ClutchCorrections.EggsCorrection correction, Clock clock) {
        requireStanding();
        recovered = correction.recovered().over("recovered", recovered);
        setToIncubate = correction.setToIncubate().over("setToIncubate", setToIncubate);
        broken = correction.broken().over("broken", broken);
        discarded = correction.discarded().over("discarded", discarded);
        how = Corrections.name("how", correction.how(), how);
        happenedAt(Corrections.known("at", correction.at(), at(), clock));
        revisedBecause(correction.reason());
    }

    ClutchEntries.EggsEntry eggs() {
        return new ClutchEntries.EggsEntry(recovered, setToIncubate, broken, discarded, howTheyCame(), happenedAt());
    }

    ClutchEntries.EggsCame howTheyCame() {
        return ClutchEntries.EggsCame.valueOf(how);
    }
}
