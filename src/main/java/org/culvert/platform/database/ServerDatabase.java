package org.culvert.platform.database;

import java.nio.file.Path;
import java.util.Map;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** The database of a starting server: the configured one, or else one of its own. */
public final class ServerDatabase implements AutoCloseable {
    private static final Logger LOG = Logger.getLogger(ServerDatabase.class);

    private final DatabaseAccess access;
    private final @Nullable OwnPostgres own;
    private boolean kept = true;

    private ServerDatabase(DatabaseAccess access, @Nullable OwnPostgres own) {
        this.access = access;
        this.own = own;
    }

    /**
     * @param environment the variables that name a database or a home folder
     * @throws CannotStartException where there is none to work on, with a message for the operator
     */
    public static ServerDatabase open(Map<String, String> environment) {
        if (isConfigured(environment)) {
            DatabaseAccess access = ConfiguredDatabase.read(environment);
            ConfiguredDatabase.check(access);
            LOG.infof("Using the configured database %s", access);
            return new ServerDatabase(access, null);
        }
        OwnPostgres own = OwnPostgres.start(home(environment));
        return new ServerDatabase(own.access(), own);
    }

    /** The database with records in it, to read them: that of a running server too, which is not disturbed. */
    public static ServerDatabase openToRead(Map<String, String> environment) {
        if (isConfigured(environment)) {
            return open(environment);
        }
        Path home = home(environment);
        if (!OwnPostgres.isLaid(home)) {
            throw new CannotStartException("There is no database in " + home
                    + ". CULVERT_HOME names the folder of the server, or CULVERT_DATABASE_URL its database.");
        }
        DatabaseAccess running = OwnPostgres.findAccessOfRunning(home);
        return running == null ? open(environment) : new ServerDatabase(running, null);
    }

    /** A database to fill; one of its own that is laid by this is taken away again by closing unless it was kept. */
    public static ServerDatabase openToFill(Map<String, String> environment) {
        if (isConfigured(environment)) {
            return open(environment);
        }
        Path home = home(environment);
        boolean laidBefore = OwnPostgres.isLaid(home);
        OwnPostgres own = OwnPostgres.start(home);
        var database = new ServerDatabase(own.access(), own);
        database.kept = laidBefore;
        return database;
    }

    private static boolean isConfigured(Map<String, String> environment) {
        String url = environment.get("CULVERT_DATABASE_URL");
        return url != null && !url.isBlank();
    }

    /** Says that what was laid is to stay. */
    public void keep() {
        kept = true;
    }

    /** The server's own folder: {@code CULVERT_HOME}, or else one in the home of whoever starts it. */
    public static Path home(Map<String, String> environment) {
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
    @Override
    public void close() {
        if (own != null && kept) {
            own.stop();
        } else if (own != null) {
            own.discard();
        }
    }
}
