package org.culvert.hotspot;

import org.jspecify.annotations.Nullable;

/** Where a run stands, as what has happened to it says. */
enum RunState {
    WAITING,
    COMPUTING,
    DONE,
    FAILED,
    CANCELLED;

    static RunState of(@Nullable RunProgress progress, @Nullable RunResult result, boolean cancelled) {
        if (result != null) {
            return DONE;
        }
        if (cancelled) {
            return CANCELLED;
        }
        if (progress == null) {
            return WAITING;
        }
        return progress.failedAt == null ? COMPUTING : FAILED;
    }

    boolean isUnderWay() {
        return this == WAITING || this == COMPUTING;
    }

    String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
