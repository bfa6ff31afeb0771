package org.culvert.platform.database;

import java.nio.file.Path;
import java.util.Map;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** The database of a starting server: the configured one, or else one of its own. */
public final class ServerDatabase {
    private static final Logger LOG = Logger.getLogger(ServerDatabase.class);

    private final DatabaseAccess access;
    private final @Nullable OwnPostgres own;

    private ServerDatabase(DatabaseAccess access, @Nullable OwnPostgres own) {
        this.access = access;
        this.own = own;
    }

    /**
     * @param environment the variables that name a database or a home folder
     * @throws CannotStartException where there is none to work on, with a message for the operator
     */
    public static ServerDatabase open(Map<String, String> environment) {
        String url = environment.get("CULVERT_DATABASE_URL");
        if (url != null && !url.isBlank()) {
            DatabaseAccess access = ConfiguredDatabase.read(environment);
            ConfiguredDatabase.check(access);
            LOG.infof("Using the configured database %s", access);
            return new ServerDatabase(access, null);
        }
        OwnPostgres own = OwnPostgres.start(home(environment));
        return new ServerDatabase(own.access(), own);
    }

    static Path home(Map<String, String> environment) {
        String home = environment.get("CULVERT_HOME");
        return home == null || home.isBlank() ? Path.of(System.getProperty("user.home"), ".culvert") : Path.of(home);
    }

    public DatabaseAccess access() {
        return access;
    }

    /** Lets go of the database without stopping it, for a server that takes it over. */
    public void release() {
        if (own != null) {
            own.release();
        }
    }

    /** Stops the database if it is the server's own. */
    public void close() {
        if (own != null) {
            own.stop();
        }
    }
}
