package org.culvert.exchange.records;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.exchange.reading.Encoding;
import org.culvert.platform.file.FileParts;

/** The octets of files of old records, and what is seen of them as they pass. */
@ApplicationScoped
class RecordFileParts {
    /**
     * What was seen of a file as its octets passed.
     *
     * @param sha256 digest of all of them (SHA-256, FIPS 180-4)
     * @param beginning no more than {@value #BEGINNING_OCTETS} octets
     */
    record Seen(long octets, byte[] sha256, Encoding encoding, byte[] beginning) {
        private static final int BEGINNING_OCTETS = 8;
    }

    private final FileParts parts;

    RecordFileParts(DataSource database) {
        this.parts = new FileParts(database, "personal.record_file_parts");
    }

    /** Keeps a file, as part of the caller's transaction. */
    Seen keep(UUID contentId, InputStream file) throws IOException {
        var looked = new LookedAt(file);
        FileParts.Kept kept = parts.keep(contentId, looked);
        return new Seen(kept.octets(), kept.sha256(), looked.looker.encoding(), looked.beginning);
    }

    /** Looks at what is read of it. */
    private static final class LookedAt extends FilterInputStream {
        private final Encoding.Looker looker = new Encoding.Looker();
        private byte[] beginning = new byte[0];

        LookedAt(InputStream file) {
            super(file);
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
                byte[] octets = Arrays.copyOfRange(into, from, from + some);
                looker.take(octets, some);
                int missing = Math.min(Seen.BEGINNING_OCTETS - beginning.length, some);
                if (missing > 0) {
                    byte[] longer = Arrays.copyOf(beginning, beginning.length + missing);
                    System.arraycopy(octets, 0, longer, beginning.length, missing);
                    beginning = longer;
                }
            }
            return some;
        }
    }

    /** The octets of a file, one part in memory at a time. */
    InputStream open(UUID contentId) {
        return parts.open(contentId);
    }
}
