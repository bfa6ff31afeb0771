package org.culvert.exchange.files;

import io.micrometer.core.annotation.Timed;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import java.util.function.Supplier;
import org.culvert.exchange.files.BroughtFileService.Order;
import org.culvert.platform.Actor;
import org.culvert.platform.CulvertException;
import org.culvert.platform.DatabaseRefusals;
import org.culvert.platform.Job;
import org.culvert.platform.file.ReadingWatch;
import org.jboss.logging.Logger;

/** Reads a file in the name of whoever brought it: all of it, or nothing. */
@ApplicationScoped
class BroughtFileJob implements Job {
    static final String NAME = "brought-file";

    private static final Logger LOG = Logger.getLogger(BroughtFileJob.class);
    private static final Duration BETWEEN_NOTES = Duration.ofMillis(500);

    private final BroughtFileService files;
    private final FileReaders readers;
    private final DatabaseRefusals refusals;
    private final Clock clock;

    BroughtFileJob(BroughtFileService files, FileReaders readers, DatabaseRefusals refusals, Clock clock) {
        this.files = files;
        this.readers = readers;
        this.refusals = refusals;
        this.clock = clock;
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    @Timed("culvert.files.taking")
    public void run(UUID id) {
        Order order = files.begin(id);
        if (order == null) {
            return;
        }
        try {
            Actor.actFor(order.account(), () -> {
                take(order);
                return order;
            });
        } catch (CulvertException e) {
            refuse(id, e);
        } catch (RuntimeException e) {
            CulvertException meant = refusals.find(e);
            if (meant == null) {
                throw e;
            }
            refuse(id, meant);
        }
    }

    /** Nothing that trying again would mend. */
    private void refuse(UUID id, CulvertException why) {
        LOG.infof("Nothing is taken of the brought file %s: %s", id, why.getMessage());
        files.fail(id, FileFailure.of(why));
    }

    private void take(Order order) {
        var notes = new Notes(order.id());
        try (InputStream octets = new Counted(files.open(order), order.octets(), notes)) {
            Supplier<FileResult> change = readers.read(order.entry(), order.fileName(), octets, notes);
            files.finish(order, change);
        } catch (IOException e) {
            throw new UncheckedIOException("the octets of a file cannot be read", e);
        }
    }

    @Override
    public void gaveUp(UUID id, String reason) {
        files.fail(id, FileFailure.of(reason));
    }

    /** Notes now and then how far it is, and always when something else begins. */
    private final class Notes implements ReadingWatch {
        private final UUID id;
        private Step last = Step.octets;
        private Instant noted = Instant.EPOCH;

        Notes(UUID id) {
            this.id = id;
        }

        @Override
        public void hear(Step step, long done, long whole) {
            Instant now = clock.instant();
            if (step != last || Duration.between(noted, now).compareTo(BETWEEN_NOTES) >= 0) {
                last = step;
                noted = now;
                files.note(id, step, done, whole);
            }
        }
    }

    /** Tells how many octets were read. */
    private static final class Counted extends FilterInputStream {
        private final long whole;
        private final ReadingWatch watch;
        private long read;

        Counted(InputStream in, long whole, ReadingWatch watch) {
            super(in);
            this.whole = whole;
            this.watch = watch;
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] into, int from, int length) throws IOException {
            int some = super.read(into, from, length);
            if (some > 0) {
                read += some;
                watch.hear(ReadingWatch.Step.octets, read, whole);
            }
            return some;
        }
    }
}
