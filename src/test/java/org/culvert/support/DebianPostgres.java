package org.culvert.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A PostgreSQL 15 of Debian's with one empty database in it, and a role {@code asked} whose password is {@code right}. */
public final class DebianPostgres implements AutoCloseable {
    private static final Path BIN = Path.of("/usr/lib/postgresql/15/bin");
    private static final boolean ROOT = "root".equals(System.getProperty("user.name"));

    private final Path folder;
    private final int port;

    private DebianPostgres(Path folder, int port) {
        this.folder = folder;
        this.port = port;
    }

    public static DebianPostgres start() throws IOException, InterruptedException, SQLException {
        assertThat(BIN.resolve("initdb")).as("apt-get install postgresql-15").isExecutable();
        Path folder = Files.createTempDirectory("culvert-debian");
        int port;
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = socket.getLocalPort();
        }
        if (ROOT) {
            run("chown", "postgres", folder.toString());
        }
        var started = new DebianPostgres(folder, port);
        started.call("initdb", "-D", started.data(), "-U", "postgres", "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8");
        // One who is asked for a password, to see that a wrong one is refused; trust for the rest.
        Files.writeString(Path.of(started.data(), "pg_hba.conf"), """
                host all asked 127.0.0.1/32 scram-sha-256
                host all all   127.0.0.1/32 trust
                """);
        String options = "-p " + port + " -c listen_addresses=127.0.0.1 -c unix_socket_directories=";
        started.call(
                "pg_ctl", "start", "-w", "-s", "-D", started.data(), "-l", folder.resolve("log") + "", "-o", options);
        try (Connection postgres = DriverManager.getConnection(started.url("postgres"), "postgres", "");
                Statement statement = postgres.createStatement()) {
            statement.execute("CREATE ROLE tables_owner LOGIN");
            statement.execute("CREATE ROLE \"rescue-server\" LOGIN");
            statement.execute("CREATE ROLE asked LOGIN PASSWORD 'right'");
            statement.execute("CREATE DATABASE rescue OWNER tables_owner");
        }
        return started;
    }

    /** What names it to a server, whose own folder would be {@code home} and is not made. */
    public Map<String, String> environment() {
        return Map.of(
                "CULVERT_HOME", folder.resolve("home").toString(),
                "CULVERT_DATABASE_URL", url("rescue"),
                "CULVERT_DATABASE_USER", "rescue-server",
                "CULVERT_DATABASE_PASSWORD", "unasked",
                "CULVERT_MIGRATOR_USER", "tables_owner",
                "CULVERT_MIGRATOR_PASSWORD", "unasked");
    }

    private String data() {
        return folder.resolve("data").toString();
    }

    public String url(String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
    }

    @Override
    public void close() throws IOException, InterruptedException {
        call("pg_ctl", "stop", "-w", "-s", "-m", "immediate", "-D", data());
        run("rm", "-r", folder.toString());
    }

    private void call(String program, String... arguments) throws IOException, InterruptedException {
        List<String> line = new ArrayList<>();
        if (ROOT) {
            line.addAll(List.of("runuser", "-u", "postgres", "--"));
        }
        line.add(BIN.resolve(program).toString());
        line.addAll(List.of(arguments));
        run(line.toArray(String[]::new));
    }

    private static void run(String... line) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(line)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        assertThat(process.waitFor()).as(String.join(" ", line)).isZero();
    }
}
