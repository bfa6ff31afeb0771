package org.culvert.platform.watch;

import io.quarkus.logging.LoggingFilter;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Set;
import java.util.logging.Filter;
import java.util.logging.LogRecord;
import org.jboss.logging.MDC;

/**
 * Takes from what failed within a request the messages, which libraries fill with the values that they could not take: what
 * was thrown, by whom and from where stays, and so does an SQLSTATE.
 */
@LoggingFilter(name = "bare-failures")
public final class BareFailures implements Filter {
    @Override
    public boolean isLoggable(LogRecord entry) {
        Throwable thrown = entry.getThrown();
        if (thrown != null && !(thrown instanceof Bare) && MDC.get(RequestId.KEY) != null) {
            entry.setThrown(Bare.of(thrown, Collections.newSetFromMap(new IdentityHashMap<>())));
        }
        return true;
    }

    /** What stands in the log for something thrown. */
    static final class Bare extends Throwable {
        private static final long serialVersionUID = 1;

        private final String name;

        private Bare(Throwable thrown) {
            super((String) null);
            this.name = thrown.getClass().getName()
                    + (thrown instanceof java.sql.SQLException sql ? " (SQLSTATE " + sql.getSQLState() + ")" : "");
            setStackTrace(thrown.getStackTrace());
        }

        static Bare of(Throwable thrown, Set<Throwable> seen) {
            seen.add(thrown);
            Bare bare = new Bare(thrown);
            Throwable cause = thrown.getCause();
            if (cause != null && !seen.contains(cause)) {
                bare.initCause(of(cause, seen));
            }
            for (Throwable other : thrown.getSuppressed()) {
                if (!seen.contains(other)) {
                    bare.addSuppressed(of(other, seen));
                }
            }
            return bare;
        }

        @Override
        public String toString() {
            return name;
        }
    }
}
