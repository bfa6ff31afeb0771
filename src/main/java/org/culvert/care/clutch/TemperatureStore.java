package org.culvert.care.clutch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.care.incubation.TemperatureSeries.Reading;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** Keeps temperatures by the ten thousand, in one statement. Its reads see what stood at the asked instant. */
@ApplicationScoped
class TemperatureStore {
    private static final String STANDING = " FROM clutch_temperatures t JOIN clutch_temperature_records r"
            + " ON r.id = t.record_id WHERE t.clutch_id = ? AND r.withdrawn_at IS NULL";

    /** @param number its place for the next page */
    record Kept(long number, Instant at, double celsius, String source) {}

    private final EntityManager entities;

    TemperatureStore(EntityManager entities) {
        this.entities = entities;
    }

    void insert(TemperatureRecord record, List<Reading> readings) {
        entities.unwrap(Session.class).doWork(connection -> {
            try (PreparedStatement insert = connection.prepareStatement(
                    "INSERT INTO clutch_temperatures (record_id, clutch_id, source, read_at, celsius)"
                            + " SELECT ?, ?, ?, told.read_at, told.celsius"
                            + " FROM unnest(?::timestamptz[], ?::float8[]) AS told (read_at, celsius)")) {
                insert.setObject(1, record.id());
                insert.setObject(2, record.clutchId);
                insert.setString(3, record.source);
                insert.setArray(
                        4,
                        connection.createArrayOf(
                                "timestamptz",
                                readings.stream()
                                        .map(reading -> reading.at().toString())
                                        .toArray()));
                insert.setArray(
                        5,
                        connection.createArrayOf(
                                "float8",
                                readings.stream().map(Reading::celsius).toArray()));
                insert.executeUpdate();
            }
        });
    }

    /** What is known of a source between two instants, both included. */
    Map<Instant, Double> known(UUID clutchId, String source, Instant from, Instant to) {
        Map<Instant, Double> known = new HashMap<>();
        entities.unwrap(Session.class).doWork(connection -> {
            try (PreparedStatement query = connection.prepareStatement(
                    "SELECT t.read_at, t.celsius" + STANDING + " AND t.source = ? AND t.read_at BETWEEN ? AND ?")) {
                query.setObject(1, clutchId);
                query.setString(2, source);
                query.setObject(3, utc(from));
                query.setObject(4, utc(to));
                query.setFetchSize(5000);
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        known.put(rows.getTimestamp(1).toInstant(), rows.getDouble(2));
                    }
                }
            }
        });
        return known;
    }

    /** All that stands of a clutch, of all sources, in the order of time. */
    List<Reading> readings(UUID clutchId) {
        return entities.unwrap(Session.class).doReturningWork(connection -> readings(connection, clutchId));
    }

    private static List<Reading> readings(Connection connection, UUID clutchId) throws SQLException {
        List<Reading> readings = new ArrayList<>();
        try (PreparedStatement query = connection.prepareStatement(
                "SELECT t.read_at, t.celsius" + STANDING + " ORDER BY t.read_at, t.number")) {
            query.setObject(1, clutchId);
            query.setFetchSize(5000);
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    readings.add(new Reading(rows.getTimestamp(1).toInstant(), rows.getDouble(2)));
                }
            }
        }
        return readings;
    }

    /** One page in the order of time, after the reading with a number. */
    List<Kept> page(UUID clutchId, @Nullable Long after, int limit) {
        return entities.unwrap(Session.class).doReturningWork(connection -> {
            List<Kept> page = new ArrayList<>();
            try (PreparedStatement query =
                    connection.prepareStatement("SELECT t.number, t.read_at, t.celsius, t.source" + STANDING
                            + (after == null
                                    ? ""
                                    : " AND (t.read_at, t.number) > (SELECT a.read_at, a.number FROM clutch_temperatures a"
                                            + " WHERE a.number = ? AND a.clutch_id = t.clutch_id)")
                            + " ORDER BY t.read_at, t.number LIMIT ?")) {
                int next = 1;
                query.setObject(next++, clutchId);
                if (after != null) {
                    query.setLong(next++, after);
                }
                query.setInt(next, limit);
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        Timestamp at = rows.getTimestamp(2);
                        page.add(new Kept(rows.getLong(1), at.toInstant(), rows.getDouble(3), rows.getString(4)));
                    }
                }
            }
            return page;
        });
    }

    private static OffsetDateTime utc(Instant instant) {
        return instant.atOffset(ZoneOffset.UTC);
    }
}
