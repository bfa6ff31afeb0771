package org.culvert.platform;

import java.sql.Timestamp;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import org.jspecify.annotations.Nullable;

/** Reads columns of native queries, whichever class the driver chose for them. */
public final class Rows {
    private Rows() {}

    public static @Nullable Instant instant(@Nullable Object column) {
        if (column == null || column instanceof Instant) {
            return (Instant) column;
        }
        if (column instanceof OffsetDateTime time) {
            return time.toInstant();
        }
        if (column instanceof ZonedDateTime time) {
            return time.toInstant();
        }
        if (column instanceof Timestamp time) {
            return time.toInstant();
        }
        throw new IllegalArgumentException("no instant in a " + column.getClass());
    }

    public static @Nullable Double number(@Nullable Object column) {
        return column == null ? null : ((Number) column).doubleValue();
    }
}
