package org.culvert.support;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/**
 * A line between a browser and the server that can be cut, for pages and their workers alike: a port of this machine from
 * which octets go to the server and back. While it is cut nobody listens there and what was open is closed. It may also
 * lose answers: then the server takes the request, and whoever sent it hears nothing.
 */
public final class CutLine implements AutoCloseable {
    private final int port;
    private final Set<Socket> open = ConcurrentHashMap.newKeySet();
    private final AtomicReference<@Nullable String> losing = new AtomicReference<>();
    private final AtomicInteger lost = new AtomicInteger();
    private @Nullable ServerSocket listener;

    private CutLine(ServerSocket listener) {
        this.port = listener.getLocalPort();
        listen(listener);
    }

    public static CutLine open() {
        try {
            return new CutLine(new ServerSocket(0, 50, InetAddress.getLoopbackAddress()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Where the server seems to be, without a slash at its end. */
    public String server() {
        return "http://localhost:" + port;
    }

    /** Loses the answers to requests that begin so, such as {@code POST /api/cases/}, until it is mended. */
    public void loseAnswersTo(String request) {
        losing.set(request);
    }

    /** How many answers were lost. */
    public int lost() {
        return lost.get();
    }

    public synchronized void cut() {
        ServerSocket was = listener;
        listener = null;
        close(was);
        open.forEach(CutLine::close);
        open.clear();
    }

    public synchronized void mend() {
        losing.set(null);
        if (listener == null) {
            try {
                var again = new ServerSocket();
                again.setReuseAddress(true);
                again.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
                listen(again);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    @Override
    public void close() {
        cut();
    }

    private void listen(ServerSocket at) {
        listener = at;
        start(() -> {
            while (!at.isClosed()) {
                Socket browser = at.accept();
                Socket server = new Socket(InetAddress.getLoopbackAddress(), Request.port());
                open.add(browser);
                open.add(server);
                var deaf = new AtomicBoolean();
                start(() -> there(browser, server, deaf));
                start(() -> back(server, browser, deaf));
            }
        });
    }

    private void there(Socket browser, Socket server, AtomicBoolean deaf) throws IOException {
        copy(browser, server, (octets, length) -> {
            String wanted = losing.get();
            if (wanted != null && new String(octets, 0, length, StandardCharsets.ISO_8859_1).startsWith(wanted)) {
                deaf.set(true);
            }
            return true;
        });
    }

    /** The first octets of an answer say that the server has done what it was asked. */
    private void back(Socket server, Socket browser, AtomicBoolean deaf) throws IOException {
        copy(server, browser, (octets, length) -> {
            if (deaf.get()) {
                lost.incrementAndGet();
                return false;
            }
            return true;
        });
    }

    private interface Passing {
        boolean passes(byte[] octets, int length);
    }

    private void copy(Socket from, Socket to, Passing passing) throws IOException {
        try (from;
                to) {
            InputStream in = from.getInputStream();
            OutputStream out = to.getOutputStream();
            byte[] octets = new byte[8192];
            for (int length = in.read(octets);
                    length >= 0 && passing.passes(octets, length);
                    length = in.read(octets)) {
                out.write(octets, 0, length);
                out.flush();
            }
        } finally {
            open.remove(from);
            open.remove(to);
        }
    }

    private interface Work {
        void run() throws IOException;
    }

    /** A connection that breaks ends its thread: that is what a line is for. */
    private static void start(Work work) {
        var thread = new Thread(
                () -> {
                    try {
                        work.run();
                    } catch (IOException broken) {
                        // Nothing more comes over this connection
                        return;
                    }
                },
                "line");
        thread.setDaemon(true);
        thread.start();
    }

    private static void close(@Nullable AutoCloseable one) {
        try {
            if (one != null) {
                one.close();
            }
        } catch (Exception broken) {
            throw new IllegalStateException(broken);
        }
    }
}
