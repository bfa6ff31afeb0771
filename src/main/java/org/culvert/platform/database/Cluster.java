package org.culvert.platform.database;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ThreadLocalRandom;
import java.util.function.IntPredicate;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** The PostgreSQL of one home folder: laid once, started, adopted, stopped, by PostgreSQL's own programs. */
final class Cluster {
    private static final Logger LOG = Logger.getLogger(Cluster.class);

    /** Replaying what was not yet written to the tables can take minutes after a crash under load. */
    private static final Duration START_PATIENCE = Duration.ofMinutes(5);

    private static final Duration STOP_PATIENCE = Duration.ofMinutes(1);

    // Below the range that Linux and macOS give to outgoing connections, so that the port is still free tomorrow.
    private static final int LOWEST_PORT = 20_000;
    private static final int HIGHEST_PORT = 32_000;
    private static final int PORT_TRIES = 100;

    private final HomeFolder home;
    private final PostgresBinaries binaries;

    Cluster(HomeFolder home, PostgresBinaries binaries) {
        this.home = home;
        this.binaries = binaries;
    }

    /** Makes the data folder where there is none; a half-made one of an interrupted start is made anew. */
    void lay(HomeFolder.Passwords passwords) throws IOException, InterruptedException {
        if (Files.exists(home.data().resolve("PG_VERSION"))) {
            refuseOtherMajorVersion();
        } else if (Files.exists(home.data())) {
            throw new CannotStartException(
                    home.data() + " is not a data folder of PostgreSQL. Move it away, or choose another CULVERT_HOME.");
        } else {
            Path half = home.root().resolve("database.new");
            PostgresBinaries.deleteTree(half);
            Path passwordFile = home.root().resolve("initdb-password");
            home.writePrivately(passwordFile, passwords.of(Roles.SUPERUSER) + "\n");
            try {
                Command initdb = Command.run(
                        List.of(
                                binaries.program("initdb").toString(),
                                "--pgdata=" + half,
                                "--username=" + Roles.SUPERUSER,
                                "--pwfile=" + passwordFile,
                                "--auth=scram-sha-256",
                                "--encoding=UTF8",
                                "--locale=C",
                                "--locale-provider=builtin",
                                "--builtin-locale=C.UTF-8",
                                "--data-checksums"),
                        START_PATIENCE);
                if (initdb.failed()) {
                    throw new CannotStartException(
                            "PostgreSQL cannot lay its data folder: " + initdb.output() + hint());
                }
            } finally {
                Files.deleteIfExists(passwordFile);
            }
            Files.writeString(half.resolve("postgresql.conf"), "\ninclude 'culvert.conf'\n", StandardOpenOption.APPEND);
            Files.writeString(half.resolve("culvert.conf"), settings());
            Files.move(half, home.data(), StandardCopyOption.ATOMIC_MOVE);
        }
    }

    private static String hint() {
        return "root".equals(System.getProperty("user.name"))
                ? "\nThe server was started as root, which PostgreSQL refuses, and lowers itself with 'unshare -U';"
                        + " where that is not allowed, start it as another user."
                : "";
    }

    private void refuseOtherMajorVersion() throws IOException, InterruptedException {
        String kept = Files.readString(home.data().resolve("PG_VERSION")).strip();
        Command version = Command.run(List.of(binaries.program("postgres").toString(), "--version"), STOP_PATIENCE);
        if (version.failed()) {
            throw new CannotStartException(
                    "The PostgreSQL of this build does not run here (it wants glibc or macOS): " + version.output());
        }
        String brought = version.output().replaceFirst("^.*\\) (\\d+).*$", "$1");
        if (!kept.equals(brought)) {
            throw new CannotStartException("The data in " + home.data() + " are of PostgreSQL " + kept
                    + " and this server brings " + brought + ". Dump them with the server that made them and load them"
                    + " here: DEVELOPERS.md, 'A new major version of PostgreSQL'.");
        }
    }

    /** PostgreSQL reads these last in its file, so that they win over what stands before. */
    private String settings() {
        return String.join(
                "\n",
                "# Written by the server at every start. Settings of your own go into postgresql.conf.",
                "listen_addresses = '127.0.0.1'",
                "unix_socket_directories = ''",
                "password_encryption = 'scram-sha-256'",
                "fsync = on",
                "full_page_writes = on",
                "synchronous_commit = on",
                "timezone = 'UTC'",
                "log_timezone = 'UTC'",
                // What an adopted server says would otherwise go to a terminal that is gone.
                "logging_collector = on",
                "log_directory = '" + home.log().toString().replace("'", "''") + "'",
                "log_filename = 'postgresql-%a.log'",
                "log_rotation_age = 1d",
                "log_rotation_size = 0",
                "log_truncate_on_rotation = on",
                // A row that is refused would be quoted with all that it says of people.
                "log_error_verbosity = terse",
                "log_min_error_statement = panic",
                "log_parameter_max_length_on_error = 0",
                "");
    }

    /**
     * Adopts the PostgreSQL that an earlier server left running, or starts it.
     *
     * @param takesOurPassword whether what listens on a port lets us in
     * @return the port it listens on
     */
    int bringUp(IntPredicate takesOurPassword) throws IOException, InterruptedException {
        int port = port();
        Postmaster running = Postmaster.find(home.data());
        if (running != null && running.runsFrom(home.root())) {
            if (running.port() == port && runsOurBinaries(running) && takesOurPassword.test(port)) {
                LOG.infof(
                        "Adopted the PostgreSQL that runs in %s on port %d (process %d)",
                        home.root(), port, running.pid());
                return port;
            }
            LOG.warnf(
                    "Process %d is a PostgreSQL of %s that does not fit: it is restarted", running.pid(), home.root());
            stop();
        } else if (running != null) {
            dropLockOfTheDead(running);
        }
        if (!isFree(port)) {
            int other = choosePort();
            LOG.warnf("Port %d of the database is taken by another program; it moves to %d", port, other);
            home.keepPort(other);
            port = other;
        }
        startOn(port);
        return port;
    }

    /** Starts it again after it died under a running server, where it was before. */
    void startAgainOn(int port) throws IOException, InterruptedException {
        Postmaster lock = Postmaster.find(home.data());
        if (lock != null) {
            if (lock.runsFrom(home.root())) {
                return;
            }
            dropLockOfTheDead(lock);
        }
        startOn(port);
    }

    private void startOn(int port) throws IOException, InterruptedException {
        Files.createDirectories(home.log());
        Files.writeString(home.data().resolve("culvert.conf"), settings());
        Path said = home.log().resolve("start.log");
        Files.deleteIfExists(said);
        Command start = pgCtl(START_PATIENCE, "start", "--wait", "--log=" + said, "--options=-p " + port);
        if (start.failed()) {
            String log = Files.exists(said) ? Files.readString(said).strip() : "";
            throw new CannotStartException(
                    "PostgreSQL does not start in " + home.root() + ": " + start.output() + "\n" + log + hint());
        }
    }

    /** Stops it, letting running transactions end with an error; returns once it is down. */
    void stop() throws IOException, InterruptedException {
        Postmaster running = Postmaster.find(home.data());
        if (running == null || !running.runsFrom(home.root())) {
            return;
        }
        Command fast = pgCtl(STOP_PATIENCE, "stop", "--wait", "--mode=fast");
        if (fast.failed() && running.runsFrom(home.root())) {
            // Nothing committed is lost by this: the next start replays it.
            LOG.warnf("PostgreSQL does not stop in order (%s); it is told to stop at once", fast.output());
            Command immediate = pgCtl(STOP_PATIENCE, "stop", "--wait", "--mode=immediate");
            if (immediate.failed()) {
                throw new IOException("PostgreSQL cannot be stopped: " + immediate.output());
            }
        }
    }

    @Nullable
    ProcessHandle findProcess() throws IOException {
        Postmaster running = Postmaster.find(home.data());
        return running != null && running.runsFrom(home.root())
                ? ProcessHandle.of(running.pid()).orElse(null)
                : null;
    }

    private Command pgCtl(Duration patience, String action, String... options)
            throws IOException, InterruptedException {
        List<String> line = new ArrayList<>(List.of(
                binaries.program("pg_ctl").toString(),
                action,
                "--pgdata=" + home.data(),
                "--silent",
                "--timeout=" + patience.toSeconds()));
        line.addAll(List.of(options));
        return Command.run(line, patience.plusSeconds(10));
    }

    private boolean runsOurBinaries(Postmaster running) {
        return ProcessHandle.of(running.pid())
                .flatMap(process -> process.info().command())
                .map(command -> command.equals(binaries.program("postgres").toString()))
                .orElse(false);
    }

    /**
     * PostgreSQL drops the lock of a dead process by itself. It cannot where the pid lives on in another process, as
     * happens after a power cut: then the lock is dropped here, but only when nothing at all runs from this home.
     */
    private void dropLockOfTheDead(Postmaster lock) throws IOException {
        boolean livesOnElsewhere = lock.isSomebodyElse(home.root());
        if (!livesOnElsewhere && !lock.isGone()) {
            throw new CannotStartException(Postmaster.lockFile(home.data()) + " names process " + lock.pid()
                    + ", and what that is cannot be seen from here. If no PostgreSQL works on " + home.data()
                    + ", remove that file and start again.");
        }
        boolean postgresDropsIt = !livesOnElsewhere
                && ProcessHandle.of(lock.pid()).filter(ProcessHandle::isAlive).isEmpty();
        if (postgresDropsIt) {
            return;
        }
        if (Postmaster.anyRunsFrom(home.root())) {
            throw new CannotStartException("Processes of an earlier PostgreSQL still run in " + home.root() + ".");
        }
        LOG.warnf("Process %d is not PostgreSQL any more: its lock is dropped", lock.pid());
        Files.delete(Postmaster.lockFile(home.data()));
    }

    private int port() {
        Integer kept = home.findPort();
        if (kept != null) {
            return kept;
        }
        int chosen = choosePort();
        home.keepPort(chosen);
        return chosen;
    }

    private static int choosePort() {
        for (int i = 0; i < PORT_TRIES; i++) {
            int port = ThreadLocalRandom.current().nextInt(LOWEST_PORT, HIGHEST_PORT);
            if (isFree(port)) {
                return port;
            }
        }
        throw new CannotStartException("No free port for the database between " + LOWEST_PORT + " and " + HIGHEST_PORT);
    }

    private static boolean isFree(int port) {
        try (ServerSocket socket = new ServerSocket(port, 1, InetAddress.getLoopbackAddress())) {
            return socket.isBound();
        } catch (IOException taken) {
            return false;
        }
    }
}
