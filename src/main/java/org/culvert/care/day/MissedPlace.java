package org.culvert.care.day;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.Comparator;
import java.util.UUID;
import org.culvert.care.plan.CarePlans.Missed;
import org.culvert.platform.InvalidException;

/** Where a missed task stands in the list of them: a step of a plan is in it once. */
record MissedPlace(Instant dueUntil, UUID planId, String stepKey) implements Comparable<MissedPlace> {
    static final Comparator<MissedPlace> ORDER = Comparator.comparing(MissedPlace::dueUntil)
            .thenComparing(MissedPlace::planId)
            .thenComparing(MissedPlace::stepKey);

    static MissedPlace of(Missed missed) {
        return new MissedPlace(
                missed.task().dueUntil(), missed.planId(), missed.task().stepKey());
    }

    static MissedPlace of(MissedTaskService.MissedTaskView view) {
        return new MissedPlace(view.dueUntil(), view.planId(), view.stepKey());
    }

    /** @throws InvalidException when it is no cursor of this list */
    static MissedPlace of(String cursor) {
        String[] parts = cursor.split("_", -1);
        if (parts.length == 3) {
            try {
                return new MissedPlace(Instant.parse(parts[0]), UUID.fromString(parts[1]), parts[2]);
            } catch (DateTimeException | IllegalArgumentException e) {
                throw wrong();
            }
        }
        throw wrong();
    }

    private static InvalidException wrong() {
        return InvalidException.of("cursor", "This is no cursor of this list.", "next of the page before");
    }

    String text() {
        return dueUntil + "_" + planId + "_" + stepKey;
    }

    @Override
    public int compareTo(MissedPlace other) {
        return ORDER.compare(this, other);
    }
}
