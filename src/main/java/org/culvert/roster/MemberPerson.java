package org.culvert.roster;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** The personal side of a member, in a table of its own so that it can be withheld and erased. */
@Entity
@Table(name = "members", schema = "personal")
class MemberPerson extends Recorded {
    String name;

    @Nullable
    String phone;

    @Nullable
    String email;

    @Nullable
    Double homeLatitude;

    @Nullable
    Double homeLongitude;

    @Nullable
    LocalDate keepUntil;

    @Nullable
    Instant erasedAt;

    protected MemberPerson() {}

    MemberPerson(String name) {
        this.name = name;
    }

    void correct(RosterCorrections.MemberCorrection correction) {
        name = Corrections.words("name", correction.name(), name, 200);
        phone = Corrections.text("phone", correction.phone(), phone, 100);
        email = Corrections.text("email", correction.email(), email, 200);
        homeLatitude = correction.homeLatitude().over(homeLatitude);
        homeLongitude = correction.homeLongitude().over(homeLongitude);
        revisedBecause(correction.reason());
    }
}
