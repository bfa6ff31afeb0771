package org.culvert.roster;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** The personal side of a member, in a table of its own so that it can be withheld and erased. */
@Entity
@Table(name = "members", schema = "personal")
class MemberPerson extends Recorded {
    /** Null once it is erased. */
    @Nullable
    String name;

    @Nullable
    String phone;

    @Nullable
    String email;

    @Nullable
    Double homeLatitude;

    @Nullable
    Double homeLongitude;

    /** Since when nobody sends this member out from their home. */
    @Nullable
    Instant hiddenAt;

    @Nullable
    Instant erasedAt;

    protected MemberPerson() {}

    MemberPerson(String name) {
        this.name = name;
    }

    void correct(RosterCorrections.MemberCorrection correction) {
        if (name == null) {
            throw new ConflictException("This member was erased: nothing is written of them again.");
        }
        name = Corrections.words("name", correction.name(), name, 200);
        phone = Corrections.text("phone", correction.phone(), phone, 100);
        email = Corrections.text("email", correction.email(), email, 200);
        homeLatitude = correction.homeLatitude().over(homeLatitude);
        homeLongitude = correction.homeLongitude().over(homeLongitude);
        revisedBecause(correction.reason());
    }
}
