package org.culvert.care.incubation;

import java.time.Duration;
import java.time.Instant;

/** Files as loggers write them, invented. */
public final class LoggerFiles {
    private LoggerFiles() {}

    public static String file(Instant from, int rows, Duration step) {
        var csv = new StringBuilder("time,temperature °C\n");
        for (int i = 0; i < rows; i++) {
            csv.append(from.plus(step.multipliedBy(i)))
                    .append(',')
                    .append(28 + i % 10 / 10.0)
                    .append('\n');
        }
        return csv.toString();
    }
}
