package org.culvert.dispatch;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** The repositories of this room. */
final class Outings {
    private Outings() {}

    @ApplicationScoped
    static class GateResults implements PanacheRepositoryBase<GateResult, UUID> {}

    @ApplicationScoped
    static class Attendances implements PanacheRepositoryBase<Attendance, UUID> {}

    @ApplicationScoped
    static class AttendancePeople implements PanacheRepositoryBase<AttendancePerson, UUID> {}

    @ApplicationScoped
    static class Closings implements PanacheRepositoryBase<Closing, UUID> {}
}
