package org.culvert.platform.database;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * A PostgreSQL that the server brings itself, in a folder of its own: durable, with its own passwords, on a port of its
 * own, started again when it dies, and adopted when it outlived the server before.
 */
public final class OwnPostgres {
    private static final Logger LOG = Logger.getLogger(OwnPostgres.class);
    private static final String DATABASE = "culvert";
    private static final List<String> MUST_BE_ON = List.of("fsync", "full_page_writes", "synchronous_commit");
    private static final Duration WATCH_EVERY = Duration.ofMillis(500);
    private static final Duration LONGEST_PAUSE = Duration.ofSeconds(10);
    private static final Duration LOGIN_PATIENCE = Duration.ofMinutes(5);

    private final HomeFolder home;
    private final HomeFolder.Passwords passwords;
    private final Cluster cluster;
    private final int port;
    private boolean watching = true;

    private OwnPostgres(HomeFolder home, HomeFolder.Passwords passwords, Cluster cluster, int port) {
        this.home = home;
        this.passwords = passwords;
        this.cluster = cluster;
        this.port = port;
    }

    /**
     * Starts or adopts the PostgreSQL of a home folder, lays its roles and database the first time, and watches it.
     *
     * @throws CannotStartException where that cannot be, with a message for the operator
     */
    public static OwnPostgres start(Path homeFolder) {
        HomeFolder home = new HomeFolder(homeFolder);
        home.lock();
        boolean up = false;
        try {
            HomeFolder.Passwords passwords = home.passwords();
            Cluster cluster = new Cluster(home, PostgresBinaries.unpackInto(home.root()));
            cluster.lay(passwords);
            boolean laid = Files.exists(laidMark(home));
            int port = cluster.bringUp(p -> takesOurPassword(p, laid, passwords));
            OwnPostgres own = new OwnPostgres(home, passwords, cluster, port);
            try {
                if (!laid) {
                    own.layRolesAndDatabase();
                }
                own.refuseUnlessDurable();
                own.watch();
                up = true;
                return own;
            } finally {
                if (!up) {
                    cluster.stop();
                }
            }
        } catch (IOException | SQLException e) {
            throw new CannotStartException(
                    "The server's own PostgreSQL in " + home.root() + " cannot be used: " + e, e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CannotStartException("Interrupted while PostgreSQL started", e);
        } finally {
            if (!up) {
                home.unlock();
            }
        }
    }

    /** Whether a home folder holds a database. */
    static boolean isLaid(Path homeFolder) {
        return Files.exists(homeFolder.resolve("database"));
    }

    /** The way to the database of the server that holds a home folder now, or null where none does. */
    static @Nullable DatabaseAccess findAccessOfRunning(Path homeFolder) {
        HomeFolder home = new HomeFolder(homeFolder);
        Integer port = home.findPort();
        return home.isHeld() && port != null ? accessTo(DATABASE, port, home.passwords()) : null;
    }

    /** How the server and its migrations reach the database. */
    public DatabaseAccess access() {
        return accessTo(DATABASE);
    }

    DatabaseAccess accessTo(String database) {
        return accessTo(database, port, passwords);
    }

    private static DatabaseAccess accessTo(String database, int port, HomeFolder.Passwords passwords) {
        return new DatabaseAccess(
                url(port, database),
                Roles.APPLICATION,
                passwords.of(Roles.APPLICATION),
                Roles.MIGRATOR,
                passwords.of(Roles.MIGRATOR),
                Roles.OWNER);
    }

    /** Stops watching and stops PostgreSQL, then lets go of the folder. */
    public void stop() {
        stop(false);
    }

    /** Stops it, and deletes a database that was only just laid and never came to hold anything. */
    void discard() {
        stop(true);
    }

    private void stop(boolean andDelete) {
        try {
            stopWatching();
            cluster.stop();
            if (andDelete) {
                PostgresBinaries.deleteTree(home.data());
            }
        } catch (IOException e) {
            LOG.errorf("PostgreSQL in %s was not stopped: %s", home.root(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            home.unlock();
        }
    }

    /** Stops watching and lets go of the folder; PostgreSQL goes on, for the next server to adopt. */
    public void release() {
        stopWatching();
        home.unlock();
    }

    private synchronized void stopWatching() {
        watching = false;
        notifyAll();
    }

    /** Makes an empty database in place of the one of that name. */
    void layAnew(String database) throws SQLException {
        try (Connection superuser = superuser()) {
            Jdbc.execute(superuser, "DROP DATABASE IF EXISTS " + database + " WITH (FORCE)");
            Roles.layDatabase(superuser, database);
        }
    }

    /** The one use of the superuser: to lay roles and databases that are not there yet. */
    private void layRolesAndDatabase() throws SQLException, IOException {
        try (Connection superuser = superuser()) {
            Roles.lay(superuser, passwords);
            Roles.layDatabase(superuser, DATABASE);
        }
        Files.createFile(laidMark(home));
        LOG.infof("Laid the database in %s", home.root());
    }

    private Connection superuser() throws SQLException {
        return Jdbc.connect(url(port, "postgres"), Roles.SUPERUSER, passwords.of(Roles.SUPERUSER));
    }

    private static Path laidMark(HomeFolder home) {
        return home.data().resolve("culvert.laid");
    }

    private void refuseUnlessDurable() throws SQLException {
        try (Connection connection = Jdbc.connect(access().url(), access().user(), access().password())) {
            List<String> off = new ArrayList<>();
            for (String setting : MUST_BE_ON) {
                if (!"on".equals(Jdbc.findValue(connection, "SHOW " + setting))) {
                    off.add(setting);
                }
            }
            if (!off.isEmpty()) {
                throw new CannotStartException("The database in " + home.root() + " could lose records: "
                        + String.join(", ", off) + " must be on. Look for it in postgresql.conf and"
                        + " postgresql.auto.conf in " + home.data() + ".");
            }
        }
    }

    private static boolean takesOurPassword(int port, boolean laid, HomeFolder.Passwords passwords) {
        String role = laid ? Roles.APPLICATION : Roles.SUPERUSER;
        String database = laid ? DATABASE : "postgres";
        long deadline = System.nanoTime() + LOGIN_PATIENCE.toNanos();
        while (true) {
            try (Connection connection = Jdbc.connect(url(port, database), role, passwords.of(role))) {
                return connection.isValid(0);
            } catch (SQLException e) {
                boolean stillStarting = "57P03".equals(e.getSQLState());
                if (!stillStarting || System.nanoTime() > deadline) {
                    LOG.warnf("PostgreSQL on port %d does not let us in: %s", port, e.getMessage());
                    return false;
                }
                LockSupport.parkNanos(WATCH_EVERY.toNanos());
            }
        }
    }

    private static String url(int port, String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
    }

    private void watch() {
        Thread watchdog = new Thread(this::keepAlive, "database watchdog");
        watchdog.setDaemon(true);
        watchdog.start();
    }

    private void keepAlive() {
        Duration pause = WATCH_EVERY;
        ProcessHandle process = null;
        while (true) {
            synchronized (this) {
                if (!watching) {
                    return;
                }
                try {
                    wait(pause.toMillis());
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                    return;
                }
                if (!watching) {
                    return;
                }
                try {
                    if (process == null || !runs(process)) {
                        process = cluster.findProcess();
                    }
                    if (process == null) {
                        LOG.errorf("PostgreSQL in %s is gone; it is started again on port %d", home.root(), port);
                        cluster.startAgainOn(port);
                        LOG.infof("PostgreSQL runs again on port %d", port);
                    }
                    pause = WATCH_EVERY;
                } catch (IOException | CannotStartException e) {
                    pause = pause.multipliedBy(2).compareTo(LONGEST_PAUSE) < 0 ? pause.multipliedBy(2) : LONGEST_PAUSE;
                    LOG.errorf(
                            "PostgreSQL could not be started again, next try in %d ms: %s",
                            pause.toMillis(), e.getMessage());
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                    return;
                }
            }
        }
    }

    /** A process that ended but was not collected by its parent has no program any more. */
    private static boolean runs(@Nullable ProcessHandle process) {
        return process != null && process.isAlive() && process.info().command().isPresent();
    }
}
