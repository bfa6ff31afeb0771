package org.culvert.platform.database;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Properties;
import org.jspecify.annotations.Nullable;
import org.postgresql.Driver;

/** Single connections, made before any pool exists. */
final class Jdbc {
    private static final String CONNECT_TIMEOUT_SECONDS = "10";

    private Jdbc() {}

    static Connection connect(String url, String user, String password) throws SQLException {
        Properties properties = new Properties();
        properties.setProperty("user", user);
        properties.setProperty("password", password);
        properties.setProperty("connectTimeout", CONNECT_TIMEOUT_SECONDS);
        properties.setProperty("loginTimeout", CONNECT_TIMEOUT_SECONDS);
        properties.setProperty("ApplicationName", "culvert start");
        // The driver is asked directly: which class loader DriverManager looks in depends on who started us.
        Connection connection = new Driver().connect(url, properties);
        if (connection == null) {
            throw new SQLException("Not the address of a PostgreSQL: " + url);
        }
        return connection;
    }

    /** The first column of the first row, or null where there is no row. */
    static @Nullable String findValue(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            return rows.next() ? rows.getString(1) : null;
        }
    }

    static void execute(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
