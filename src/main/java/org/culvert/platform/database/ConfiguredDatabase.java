package org.culvert.platform.database;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** A PostgreSQL that the network runs itself, named by {@code CULVERT_DATABASE_URL} and its companions. */
final class ConfiguredDatabase {
    private static final Logger LOG = Logger.getLogger(ConfiguredDatabase.class);
    private static final int OLDEST_VERSION = 150_000;
    private static final Duration PATIENCE = Duration.ofMinutes(1);
    private static final Duration PAUSE = Duration.ofSeconds(1);

    private ConfiguredDatabase() {}

    static DatabaseAccess read(Map<String, String> environment) {
        String url = required(environment, "CULVERT_DATABASE_URL");
        if (!url.startsWith("jdbc:postgresql:")) {
            throw new CannotStartException(
                    "CULVERT_DATABASE_URL must be written as jdbc:postgresql://host:port/database.");
        }
        String user = required(environment, "CULVERT_DATABASE_USER");
        String password = required(environment, "CULVERT_DATABASE_PASSWORD");
        String migrator = environment.get("CULVERT_MIGRATOR_USER");
        return migrator == null || migrator.isBlank()
                ? new DatabaseAccess(url, user, password, user, password, null)
                : new DatabaseAccess(
                        url, user, password, migrator, required(environment, "CULVERT_MIGRATOR_PASSWORD"), null);
    }

    private static String required(Map<String, String> environment, String name) {
        String value = environment.get(name);
        if (value == null || value.isBlank()) {
            throw new CannotStartException(
                    name + " is not set. A database of yours wants CULVERT_DATABASE_URL, CULVERT_DATABASE_USER and"
                            + " CULVERT_DATABASE_PASSWORD, and CULVERT_MIGRATOR_PASSWORD where CULVERT_MIGRATOR_USER is"
                            + " set; without CULVERT_DATABASE_URL the server brings its own.");
        }
        return value;
    }

    /** Refuses what the server cannot work on; waits a while for one that is not up yet. */
    static void check(DatabaseAccess access) {
        try (Connection connection = connectPatiently(access.url(), access.user(), access.password())) {
            refuseUnfit(connection);
            warnOfWeakness(connection, access);
        } catch (SQLException e) {
            throw cannotUse(access, e);
        }
        if (!access.migratorUser().equals(access.user())) {
            connectAsMigrator(access);
        }
    }

    private static void refuseUnfit(Connection connection) throws SQLException {
        refuseOlderThan15(
                Integer.parseInt(value(connection, "SHOW server_version_num")),
                value(connection, "SHOW server_version"));
        for (String extension : new String[] {"btree_gist", "pg_trgm"}) {
            String sql = "SELECT 1 FROM pg_available_extensions WHERE name = '" + extension + "'";
            if (Jdbc.findValue(connection, sql) == null) {
                throw new CannotStartException("The configured database lacks the extension " + extension
                        + ", which comes with PostgreSQL's contrib package.");
            }
        }
    }

    static void refuseOlderThan15(int versionNumber, String version) {
        if (versionNumber < OLDEST_VERSION) {
            throw new CannotStartException(
                    "The configured database is PostgreSQL " + version + "; Culvert needs 15 or later.");
        }
    }

    private static void warnOfWeakness(Connection connection, DatabaseAccess access) throws SQLException {
        if ("t".equals(Jdbc.findValue(connection, "SELECT rolsuper FROM pg_roles WHERE rolname = current_user"))) {
            LOG.warnf("%s is a superuser of the database; nothing that the server does needs that", access.user());
        }
        if (access.migratorUser().equals(access.user())) {
            LOG.warn("Server and migrations share one database user, who owns the tables and so may delete from them;"
                    + " CULVERT_MIGRATOR_USER sets them apart");
        }
        for (String setting : new String[] {"fsync", "full_page_writes", "synchronous_commit"}) {
            if ("off".equals(Jdbc.findValue(connection, "SHOW " + setting))) {
                LOG.warnf("%s is off in the configured database: it can lose what was committed", setting);
            }
        }
    }

    private static void connectAsMigrator(DatabaseAccess access) {
        try (Connection connection = connectPatiently(access.url(), access.migratorUser(), access.migratorPassword())) {
            LOG.debugf("Migrations run as %s", value(connection, "SELECT current_user"));
        } catch (SQLException e) {
            throw cannotUse(access, e);
        }
    }

    private static Connection connectPatiently(String url, String user, String password) throws SQLException {
        long deadline = System.nanoTime() + PATIENCE.toNanos();
        boolean said = false;
        while (true) {
            try {
                return Jdbc.connect(url, user, password);
            } catch (SQLException e) {
                if (!mayPass(e.getSQLState()) || System.nanoTime() > deadline) {
                    throw e;
                }
                if (!said) {
                    LOG.warnf(
                            "The database does not answer yet; waiting up to %d s: %s",
                            PATIENCE.toSeconds(), e.getMessage());
                    said = true;
                }
                LockSupport.parkNanos(PAUSE.toNanos());
            }
        }
    }

    /** No connection yet, or a server that is just starting; a refused password will not pass by waiting. */
    private static boolean mayPass(@Nullable String state) {
        return state != null && (state.startsWith("08") || state.equals("57P03"));
    }

    private static String value(Connection connection, String sql) throws SQLException {
        String value = Jdbc.findValue(connection, sql);
        if (value == null) {
            throw new SQLException("No answer to " + sql);
        }
        return value;
    }

    private static CannotStartException cannotUse(DatabaseAccess access, SQLException e) {
        return new CannotStartException("The configured database " + access + " cannot be used: " + e.getMessage(), e);
    }
}
