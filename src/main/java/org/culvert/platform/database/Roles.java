package org.culvert.platform.database;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import org.postgresql.PGConnection;

/**
 * The roles of a database of our own: the owner cannot log in, the migrator works as the owner, and the application
 * owns nothing, so that no request can drop, alter or delete what the migrations did not allow.
 */
final class Roles {
    static final String SUPERUSER = "postgres";
    static final String OWNER = "culvert_owner";
    static final String MIGRATOR = "culvert_migrator";
    static final String APPLICATION = "culvert_application";
    static final List<String> WITH_LOGIN = List.of(SUPERUSER, MIGRATOR, APPLICATION);

    private Roles() {}

    /** Makes what is not there yet; may be repeated after an interruption. */
    static void lay(Connection superuser, HomeFolder.Passwords passwords) throws SQLException {
        makeRole(superuser, OWNER, "NOLOGIN");
        for (String role : List.of(MIGRATOR, APPLICATION)) {
            makeRole(superuser, role, "LOGIN");
            // Hashed on this side: no password reaches the database or its log.
            superuser
                    .unwrap(PGConnection.class)
                    .alterUserPassword(role, passwords.of(role).toCharArray(), "scram-sha-256");
        }
        Jdbc.execute(superuser, "GRANT " + OWNER + " TO " + MIGRATOR);
    }

    private static void makeRole(Connection superuser, String role, String login) throws SQLException {
        if (Jdbc.findValue(superuser, "SELECT 1 FROM pg_roles WHERE rolname = '" + role + "'") == null) {
            Jdbc.execute(
                    superuser,
                    "CREATE ROLE " + role + " " + login + " NOSUPERUSER NOCREATEDB NOCREATEROLE NOBYPASSRLS");
        }
    }

    static void layDatabase(Connection superuser, String name) throws SQLException {
        if (Jdbc.findValue(superuser, "SELECT 1 FROM pg_database WHERE datname = '" + name + "'") == null) {
            Jdbc.execute(superuser, "CREATE DATABASE " + name + " OWNER " + OWNER);
        }
        Jdbc.execute(superuser, "REVOKE ALL ON DATABASE " + name + " FROM PUBLIC");
        Jdbc.execute(superuser, "GRANT CONNECT ON DATABASE " + name + " TO " + MIGRATOR + ", " + APPLICATION);
    }
}
