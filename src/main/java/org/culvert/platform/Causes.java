package org.culvert.platform;

import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/** What lies behind a failure; a commit that fails tells what the database said among the suppressed alone. */
final class Causes {
    private Causes() {}

    /** The nearest that fits of a failure, its causes and what was suppressed on the way; null where none does. */
    static @Nullable Throwable find(Throwable thrown, Predicate<Throwable> fits) {
        Set<Throwable> met = Collections.newSetFromMap(new IdentityHashMap<>());
        Deque<Throwable> next = new ArrayDeque<>();
        next.add(thrown);
        while (!next.isEmpty()) {
            Throwable at = next.remove();
            if (!met.add(at)) {
                continue;
            }
            if (fits.test(at)) {
                return at;
            }
            if (at.getCause() != null) {
                next.add(at.getCause());
            }
            Collections.addAll(next, at.getSuppressed());
        }
        return null;
    }
}
