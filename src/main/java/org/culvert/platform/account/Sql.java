package org.culvert.platform.account;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.PersistenceException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;

/** Plain SQL, since who asks is found out before any transaction and any entity; within a transaction it takes part. */
@ApplicationScoped
class Sql {
    /** Reads one row. */
    interface Reader<T> {
        T read(ResultSet row) throws SQLException;
    }

    private final DataSource database;

    Sql(DataSource database) {
        this.database = database;
    }

    <T> List<T> list(String sql, Reader<T> reader, @Nullable Object... values) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = prepare(connection, sql, values);
                ResultSet rows = statement.executeQuery()) {
            List<T> read = new ArrayList<>();
            while (rows.next()) {
                read.add(reader.read(rows));
            }
            return read;
        } catch (SQLException e) {
            throw new SqlFailure(e);
        }
    }

    <T> Optional<T> find(String sql, Reader<T> reader, @Nullable Object... values) {
        return list(sql, reader, values).stream().findFirst();
    }

    /** The number of rows that were written. */
    int update(String sql, @Nullable Object... values) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = prepare(connection, sql, values)) {
            return statement.executeUpdate();
        } catch (SQLException e) {
            throw new SqlFailure(e);
        }
    }

    private static PreparedStatement prepare(Connection connection, String sql, @Nullable Object[] values)
            throws SQLException {
        PreparedStatement statement = connection.prepareStatement(sql);
        for (int i = 0; i < values.length; i++) {
            Object value = values[i];
            statement.setObject(
                    i + 1, value instanceof Instant at ? OffsetDateTime.ofInstant(at, ZoneOffset.UTC) : value);
        }
        return statement;
    }

    static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        Timestamp at = row.getTimestamp(column);
        return at == null ? null : at.toInstant();
    }

    /** The database could not answer; its cause says whether it is away. */
    static final class SqlFailure extends PersistenceException {
        private static final long serialVersionUID = 1L;

        SqlFailure(SQLException cause) {
            super("the database could not answer", cause);
        }
    }
}
