package org.culvert.platform.database;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Where the database is, and as whom the server and its migrations speak to it.
 *
 * @param owner the role the migrations work as once connected, so that what they make belongs to it; null when the
 *     migrating user itself owns the database
 */
public record DatabaseAccess(
        String url,
        String user,
        String password,
        String migratorUser,
        String migratorPassword,
        @Nullable String owner) {

    /** Hands the way to the framework, whose configuration reads system properties first. */
    public void publish() {
        Properties system = System.getProperties();
        system.putAll(settings());
    }

    /** A connection that may read and lay every table, for work that is done without the server. */
    public Connection connectAsOwner(String program) throws SQLException {
        Connection connection = Jdbc.connect(url, migratorUser, migratorPassword);
        connection.setClientInfo("ApplicationName", program);
        if (owner != null) {
            Jdbc.execute(connection, "SET ROLE \"" + owner + "\"");
        }
        return connection;
    }

    Map<String, String> settings() {
        Map<String, String> settings = new TreeMap<>();
        settings.put("quarkus.datasource.jdbc.url", url);
        settings.put("quarkus.datasource.username", user);
        settings.put("quarkus.datasource.password", password);
        settings.put("quarkus.flyway.jdbc-url", url);
        settings.put("quarkus.flyway.username", migratorUser);
        settings.put("quarkus.flyway.password", migratorPassword);
        settings.put("quarkus.flyway.placeholders.applicationRole", user);
        if (owner != null) {
            settings.put("quarkus.flyway.init-sql", "SET ROLE \"" + owner + "\"");
        }
        return settings;
    }

    @Override
    public String toString() {
        return url + " as " + user + ", migrated by " + migratorUser;
    }
}
