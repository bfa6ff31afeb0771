package org.culvert.care.calendar;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.UUID;
import org.culvert.care.schedule.Task;

/**
 * A task as an event of a calendar.
 *
 * @param uid the same at every read (RFC 5545, section 3.8.4.7)
 * @param cancelled whether it is not to be done any more
 * @param sequence grows with every change (section 3.8.7.4)
 * @param changedAt when it was changed last
 */
record TaskEvent(UUID uid, long caseNumber, Task task, boolean cancelled, int sequence, Instant changedAt) {
    /** By member, plan, step and day: a member's next address has the same events. */
    static UUID uid(UUID memberId, UUID planId, Task task) {
        String name = memberId + "/" + planId + "/" + task.step().key() + "/" + task.day();
        return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
    }
}
