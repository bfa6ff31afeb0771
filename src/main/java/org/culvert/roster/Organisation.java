package org.culvert.roster;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.culvert.platform.Recorded;
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
}
