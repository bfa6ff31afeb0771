package org.culvert.exchange.records;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** How far work in the background has come, as a word. */
enum JobState {
    waiting,
    underway,
    done,
    failed;

    static JobState of(boolean begun, @Nullable Instant finishedAt, @Nullable Instant failedAt) {
        if (finishedAt != null) {
            return done;
        }
        if (failedAt != null) {
            return failed;
        }
        return begun ? underway : waiting;
    }
}
