package org.culvert.platform.personal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Tuple;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import org.culvert.platform.Rows;
import org.jspecify.annotations.Nullable;

/** Native queries by names of parameters and columns, since this room reads tables of others. */
@ApplicationScoped
class Query {
    private final EntityManager entities;

    Query(EntityManager entities) {
        this.entities = entities;
    }

    /** One row of an answer. */
    record Row(Tuple columns) {
        @Nullable
        String text(String column) {
            return (String) columns.get(column);
        }

        String word(String column) {
            return Objects.requireNonNull(text(column), column);
        }

        UUID id(String column) {
            return Objects.requireNonNull((UUID) columns.get(column), column);
        }

        @Nullable
        UUID findId(String column) {
            return (UUID) columns.get(column);
        }

        @Nullable
        Instant instant(String column) {
            return Rows.instant(columns.get(column));
        }

        Instant when(String column) {
            return Objects.requireNonNull(instant(column), column);
        }

        @Nullable
        LocalDate day(String column) {
            Object day = columns.get(column);
            return day instanceof java.sql.Date date ? date.toLocalDate() : (LocalDate) day;
        }

        LocalDate on(String column) {
            return Objects.requireNonNull(day(column), column);
        }

        @Nullable
        Double number(String column) {
            return Rows.number(columns.get(column));
        }

        int count(String column) {
            return ((Number) columns.get(column)).intValue();
        }

        boolean is(String column) {
            return Boolean.TRUE.equals(columns.get(column));
        }
    }

    @SuppressWarnings("unchecked")
    <T> List<T> list(String sql, Map<String, ? extends @Nullable Object> values, Function<Row, T> reader) {
        var query = entities.createNativeQuery(sql, Tuple.class);
        values.forEach(query::setParameter);
        List<Tuple> rows = query.getResultList();
        return rows.stream().map(row -> reader.apply(new Row(row))).toList();
    }

    /** The number of rows that were written. */
    int update(String sql, Map<String, ? extends @Nullable Object> values) {
        var query = entities.createNativeQuery(sql);
        values.forEach(query::setParameter);
        return query.executeUpdate();
    }
}
