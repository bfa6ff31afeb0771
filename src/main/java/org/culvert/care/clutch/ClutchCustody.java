package org.culvert.care.clutch;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/** Who answers for a clutch, from when to when; whoever runs the incubator holds protected wildlife. */
@Entity
@Table(name = "clutch_custody_links")
class ClutchCustody extends Recorded {
    UUID clutchId;

    @Nullable
    @Column(name = "holder_member_id")
    UUID memberId;

    @Nullable
    @Column(name = "holder_organisation_id")
    UUID organisationId;

    Instant heldFrom;

    @Nullable
    Instant heldTo;

    String authorisation;

    protected ClutchCustody() {}

    ClutchCustody(UUID clutchId, Holder holder, Instant from, String authorisation) {
        happenedAt(from);
        this.clutchId = clutchId;
        this.memberId = holder.memberId();
        this.organisationId = holder.organisationId();
        this.heldFrom = from;
        this.authorisation = authorisation;
    }

    /**
     * @param holder who it was
     * @param authorisation of that holder
     */
    void correct(
            Holder holder, String authorisation, ClutchCorrections.ClutchCustodyCorrection correction, Clock clock) {
        memberId = holder.memberId();
        organisationId = holder.organisationId();
        this.authorisation = authorisation;
        heldFrom = Corrections.known("from", correction.from(), heldFrom, clock);
        heldTo = Corrections.past("to", correction.to(), heldTo, clock);
        happenedAt(heldFrom);
        if (heldTo != null && !heldTo.isAfter(heldFrom)) {
            throw InvalidException.of("to", "It ends before it begins.", "an instant after " + heldFrom);
        }
        revisedBecause(correction.reason());
    }

    void endAt(Instant at) {
        heldTo = at;
        revisedBecause("The clutch went on to another holder.");
    }
}
