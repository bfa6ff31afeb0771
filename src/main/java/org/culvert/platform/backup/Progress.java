package org.culvert.platform.backup;

import java.io.PrintStream;
import java.time.Duration;
import java.util.Locale;

/** Tells whoever waits how far it is, every two seconds at most. */
final class Progress {
    private static final long EVERY = Duration.ofSeconds(2).toNanos();
    private static final double MEGABYTE = 1e6;

    private final PrintStream out;
    private long saidAt = System.nanoTime();
    private long rows;
    private long bytes;

    Progress(PrintStream out) {
        this.out = out;
    }

    void say(String words) {
        out.println(words);
        saidAt = System.nanoTime();
    }

    void after(String what, int done, int of, BackupManifest.TablePart part) {
        rows += part.rows();
        bytes += part.bytes();
        if (System.nanoTime() - saidAt > EVERY) {
            say(String.format(
                    Locale.ROOT, "  %s: %d of %d tables, %,d rows, %.1f MB", what, done, of, rows, bytes / MEGABYTE));
        }
    }
}
