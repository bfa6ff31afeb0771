package org.culvert.roster;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** A clinic, a shelter, a council, an authority, or the network itself. */
@Entity
@Table(name = "organisations")
class Organisation extends Recorded {
    String kind;
    String name;

    @Nullable
    Double latitude;

    @Nullable
    Double longitude;

    boolean xRay;
    boolean surgery;

    protected Organisation() {}

    Organisation(String kind, String name) {
        this.kind = kind;
        this.name = name;
    }

    void correct(RosterCorrections.OrganisationCorrection correction) {
        name = Corrections.words("name", correction.name(), name, 200);
        latitude = correction.latitude().over(latitude);
        longitude = correction.longitude().over(longitude);
        xRay = correction.xRay().over("xRay", xRay);
        surgery = correction.surgery().over("surgery", surgery);
        revisedBecause(correction.reason());
    }
}
