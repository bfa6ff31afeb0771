package org.culvert.roster;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** A member as the work knows them; name, telephone and home are kept apart. */
@Entity
@Table(name = "members")
class Member extends Recorded {
    UUID personId;
    UUID organisationId;
    String callSign;
    boolean attends;
    boolean cares;

    @Nullable
    String vetRegistration;

    @Nullable
    LocalDate leftOn;

    protected Member() {}

    Member(UUID personId, UUID organisationId, String callSign) {
        this.personId = personId;
        this.organisationId = organisationId;
        this.callSign = callSign;
    }

    void correct(RosterCorrections.MemberCorrection correction) {
        organisationId = correction.organisationId().over("organisationId", organisationId);
        callSign = Corrections.words("callSign", correction.callSign(), callSign, 100);
        attends = correction.attends().over("attends", attends);
        cares = correction.cares().over("cares", cares);
        vetRegistration = Corrections.text("vetRegistration", correction.vetRegistration(), vetRegistration, 100);
        leftOn = correction.leftOn().over(leftOn);
        revisedBecause(correction.reason());
    }
}
