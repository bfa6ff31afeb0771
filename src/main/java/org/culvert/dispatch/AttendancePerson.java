package org.culvert.dispatch;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** Someone who goes, as lead or as helper. */
@Entity
@Table(name = "attendance_people")
class AttendancePerson extends Recorded {
    UUID attendanceId;
    UUID memberId;
    boolean leads;

    @Nullable
    Instant acceptedAt;

    protected AttendancePerson() {}

    AttendancePerson(UUID attendanceId, UUID memberId, boolean leads) {
        this.attendanceId = attendanceId;
        this.memberId = memberId;
        this.leads = leads;
    }

    void accept(Instant at) {
        acceptedAt = at;
    }

    void correct(@Nullable Instant acceptedAt, String reason) {
        this.acceptedAt = acceptedAt;
        revisedBecause(reason);
    }
}
