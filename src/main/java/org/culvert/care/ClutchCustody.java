package org.culvert.care;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;
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

    void endAt(Instant at) {
        heldTo = at;
        revisedBecause("The clutch went on to another holder.");
    }
}
