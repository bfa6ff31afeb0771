package org.culvert.platform;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The server as it is shipped, in a process of its own. */
public final class PackagedServer implements AutoCloseable {
    public static final String ADMIN_PASSWORD = "of-this-test-only";

    /** It lives for seconds, on a machine that is busy: the second compiler takes twice what it gives back. */
    private static final List<String> SHORT_LIVED =
            List.of("-XX:TieredStopAtLevel=1", "-XX:ReservedCodeCacheSize=240m", "-XX:+UseSerialGC", "-Xshare:auto");

    private static final Path JAR =
            Path.of("target", "quarkus-app", "quarkus-run.jar").toAbsolutePath();

    private final HttpClient http = HttpClient.newHttpClient();
    private final Process process;
    private final Path output;
    private final int port;

    private @Nullable String adminToken;

    private PackagedServer(Process process, Path output, int port) {
        this.process = process;
        this.output = output;
        this.port = port;
    }

    /**
     * Starts it, and does not wait until it answers.
     *
     * @param folder its working folder and that of its output
     * @param environment the variables to set; none of the server's own are passed on from this process
     */
    public static PackagedServer launch(Path folder, Map<String, String> environment) {
        try {
            int port = freePort();
            Path output = Files.createTempFile(folder, "server", ".log");
            List<String> line = new ArrayList<>();
            line.add(ProcessHandle.current().info().command().orElse("java"));
            line.addAll(SHORT_LIVED);
            line.addAll(List.of("-jar", JAR.toString()));
            ProcessBuilder builder = new ProcessBuilder(line)
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(output.toFile());
            builder.environment().keySet().removeIf(name -> name.startsWith("CULVERT_") || name.startsWith("QUARKUS_"));
            builder.environment().put("CULVERT_PORT", Integer.toString(port));
            builder.environment().put("CULVERT_FIRST_ADMIN_PASSWORD", ADMIN_PASSWORD);
            builder.environment().putAll(environment);
            return new PackagedServer(builder.start(), output, port);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Starts it and waits until it is ready. */
    public static PackagedServer start(Path folder, Map<String, String> environment) {
        PackagedServer server = launch(folder, environment);
        server.awaitReady();
        return server;
    }

    public void awaitReady() {
        Patience.until("the server is ready", () -> {
            if (!process.isAlive()) {
                throw new AssertionError("The server ended with " + process.exitValue() + ":\n" + output());
            }
            return status("/q/health/ready") == 200;
        });
    }

    public URI at(String path) {
        return URI.create("http://localhost:" + port + path);
    }

    /** The status of an answer, or 0 where there is none. */
    public int status(String path) {
        try {
            return get(path).statusCode();
        } catch (UncheckedIOException noAnswer) {
            return 0;
        }
    }

    public HttpResponse<String> get(String path) {
        return send(HttpRequest.newBuilder(at(path)).GET());
    }

    /** Sends a request as the first administrator. */
    public HttpResponse<String> sendAsAdmin(HttpRequest.Builder request) {
        return send(request.header("Authorization", "Bearer " + adminToken()));
    }

    /** A token of the first administrator, made as a person makes one: through the forms. */
    public synchronized String adminToken() {
        String known = adminToken;
        if (known == null) {
            known = FormSignIn.makeToken(at("/"), "admin", ADMIN_PASSWORD, "*:read *:write");
            adminToken = known;
        }
        return known;
    }

    private HttpResponse<String> send(HttpRequest.Builder request) {
        try {
            return http.send(request.build(), HttpResponse.BodyHandlers.ofString());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    public boolean isAlive() {
        return process.isAlive();
    }

    /** Waits until it has ended by itself. */
    public int awaitEnd() {
        Patience.until("the server has ended", () -> !process.isAlive());
        return process.exitValue();
    }

    /** kill -9. */
    public void kill() {
        process.destroyForcibly();
        awaitEnd();
    }

    /** SIGTERM, as an operator or systemd stops it. */
    @Override
    public void close() {
        process.destroy();
        awaitEnd();
    }

    public String output() {
        try {
            return Files.readString(output);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }
}
