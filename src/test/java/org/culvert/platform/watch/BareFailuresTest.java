package org.culvert.platform.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.sql.SQLException;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import org.jboss.logging.MDC;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class BareFailuresTest {
    private static final String VALUE = "Wilhelmina Featherstonehaugh";

    @AfterEach
    void leaveTheRequest() {
        MDC.remove(RequestId.KEY);
    }

    @Test
    void whatFailedWithinARequestIsToldWithoutItsWords() {
        MDC.put(RequestId.KEY, "one");
        String told = told(failure());
        assertThat(told)
                .doesNotContain(VALUE)
                .contains("java.lang.IllegalStateException", "Caused by: java.sql.SQLException (SQLSTATE 23505)")
                .contains("Suppressed: java.lang.IllegalArgumentException")
                .contains("BareFailuresTest.failure");
    }

    @Test
    void whatFailedOutsideKeepsThem() {
        assertThat(told(failure())).contains(VALUE);
    }

    @Test
    void failuresThatAreEachOthersCauseComeToAnEnd() {
        MDC.put(RequestId.KEY, "one");
        var first = new IllegalStateException(VALUE);
        first.initCause(new IllegalArgumentException(VALUE, first));
        assertThat(told(first)).doesNotContain(VALUE).contains("IllegalArgumentException");
    }

    private static Throwable failure() {
        var cause = new SQLException("Key (name)=(" + VALUE + ") already exists", "23505");
        cause.addSuppressed(new IllegalArgumentException(VALUE));
        return new IllegalStateException("not kept: " + VALUE, cause);
    }

    private static String told(Throwable thrown) {
        var entry = new LogRecord(Level.SEVERE, "The request failed");
        entry.setThrown(thrown);
        assertThat(new BareFailures().isLoggable(entry)).isTrue();
        var text = new StringWriter();
        entry.getThrown().printStackTrace(new PrintWriter(text, true));
        return text.toString();
    }
}
