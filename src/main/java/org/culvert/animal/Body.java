package org.culvert.animal;

import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.culvert.platform.RefusedException;
import org.culvert.platform.ledger.Corrections;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/** The body of a dead animal: who has it, and what became of it. */
@Entity
@Table(name = "bodies")
class Body extends Recorded {
    UUID caseId;

    @Nullable
    @Embedded
    @AttributeOverride(name = "memberId", column = @Column(name = "holder_member_id"))
    @AttributeOverride(name = "organisationId", column = @Column(name = "holder_organisation_id"))
    @AttributeOverride(name = "personId", column = @Column(name = "holder_person_id"))
    Holder holder;

    String barbiturate;

    @Nullable
    String disposal;

    @Nullable
    Instant disposedAt;

    /** When it was taken back that the animal had died; null while it stands. */
    @Nullable
    Instant withdrawnAt;

    protected Body() {}

    Body(UUID caseId, @Nullable Holder holder, String barbiturate, Instant at) {
        happenedAt(at);
        this.caseId = caseId;
        this.holder = holder;
        this.barbiturate = barbiturate;
    }

    void dispose(CaseEntries.Disposal how, Instant at) {
        if (how.leftOut() && !barbiturate.equals("no")) {
            throw new RefusedException(
                    "A body that has, or may have, barbiturate in it is never left out.",
                    java.util.List.of("Barbiturate in a carcass kills the animals that scavenge it."));
        }
        disposal = how.name();
        disposedAt = at;
    }

    void correct(CaseCorrections.BodyCorrection correction, Clock clock) {
        holder = correction.holder().over(holder);
        barbiturate = Corrections.name("barbiturate", correction.barbiturate(), barbiturate);
        disposedAt = Corrections.past("disposedAt", correction.disposedAt(), disposedAt, clock);
        disposal = Corrections.nameOrNone(correction.disposal(), disposal);
        if ((disposal == null) != (disposedAt == null)) {
            throw InvalidException.of("disposedAt", "What became of it and when go together.", "both, or neither");
        }
        if (disposal != null) {
            dispose(CaseEntries.Disposal.valueOf(disposal), disposedAt);
        }
        revisedBecause(correction.reason());
    }

    /** Its animal died at another time, or of something else, than was recorded. */
    void diedAt(Instant at, String barbiturate, String reason) {
        happenedAt(at);
        this.barbiturate = barbiturate;
        revisedBecause(reason);
    }

    void withdraw(Instant at, String reason) {
        withdrawnAt = at;
        revisedBecause(reason);
    }
}
