package org.culvert.platform;

import jakarta.persistence.Query;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.List;
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

    /**
     * The only column of a query by hand, which is asked without a result class: with one of a basic type Hibernate makes another
     * plan each time, until none is left of the others.
     */
    public static <T> List<T> column(Query query, Class<T> type) {
        List<?> rows = query.getResultList();
        return rows.stream().map(type::cast).toList();
    }
}
