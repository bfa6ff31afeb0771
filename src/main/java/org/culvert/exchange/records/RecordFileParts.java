package org.culvert.exchange.records;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.exchange.reading.Encoding;
import org.culvert.platform.ConflictException;
import org.jspecify.annotations.Nullable;

/** The octets of files in parts, so that none is ever held whole. */
@ApplicationScoped
class RecordFileParts {
    private static final int PART = 1 << 20;

    /**
     * What was seen of a file as its octets passed.
     *
     * @param sha256 digest of all of them (SHA-256, FIPS 180-4)
     * @param beginning no more than {@value #BEGINNING_OCTETS} octets
     */
    record Seen(long octets, byte[] sha256, Encoding encoding, byte[] beginning) {
        private static final int BEGINNING_OCTETS = 8;
    }

    private final DataSource database;

    RecordFileParts(DataSource database) {
        this.database = database;
    }

    /** Keeps a file, as part of the caller's transaction. */
    Seen keep(UUID contentId, InputStream file) throws IOException {
        try (Connection connection = database.getConnection();
                PreparedStatement insert = connection.prepareStatement(
                        "insert into personal.record_file_parts (content_id, number, octets) values (?, ?, ?)")) {
            return pass(file, (number, octets) -> {
                insert.setObject(1, contentId);
                insert.setInt(2, number);
                insert.setBytes(3, octets);
                insert.executeUpdate();
            });
        } catch (SQLException e) {
            throw new IllegalStateException("a part of a file cannot be kept", e);
        }
    }

    private interface PartTaker {
        void take(int number, byte[] octets) throws SQLException;
    }

    private static Seen pass(InputStream file, PartTaker taker) throws IOException {
        MessageDigest digest = sha256();
        var looker = new Encoding.Looker();
        byte[] beginning = new byte[0];
        long octets = 0;
        int number = 0;
        try {
            for (byte[] part = file.readNBytes(PART); part.length > 0; part = file.readNBytes(PART)) {
                digest.update(part);
                looker.take(part, part.length);
                beginning = number == 0 ? Arrays.copyOf(part, Math.min(part.length, Seen.BEGINNING_OCTETS)) : beginning;
                octets += part.length;
                taker.take(number++, part);
            }
        } catch (SQLException e) {
            throw new IllegalStateException("a part of a file cannot be kept", e);
        }
        return new Seen(octets, digest.digest(), looker.encoding(), beginning);
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every JDK has SHA-256", impossible);
        }
    }

    /** The octets of a file, one part in memory at a time. */
    InputStream open(UUID contentId) {
        return new Parts(contentId);
    }

    private final class Parts extends InputStream {
        private final UUID contentId;
        private byte[] part = new byte[0];
        private int at;
        private int number;
        private boolean ended;

        Parts(UUID contentId) {
            this.contentId = contentId;
        }

        @Override
        public int read() {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] into, int from, int length) {
            if (length == 0) {
                return 0;
            }
            while (at == part.length) {
                if (ended) {
                    return -1;
                }
                byte[] next = part(contentId, number++);
                ended = next == null;
                part = next == null ? part : next;
                at = next == null ? part.length : 0;
            }
            int some = Math.min(length, part.length - at);
            System.arraycopy(part, at, into, from, some);
            at += some;
            return some;
        }
    }

    private byte @Nullable [] part(UUID contentId, int number) {
        try (Connection connection = database.getConnection();
                PreparedStatement select = connection.prepareStatement(
                        "select octets from personal.record_file_parts where content_id = ? and number = ?")) {
            select.setObject(1, contentId);
            select.setInt(2, number);
            try (ResultSet row = select.executeQuery()) {
                if (!row.next()) {
                    return null;
                }
                byte[] octets = row.getBytes(1);
                if (octets == null) {
                    throw new ConflictException(
                            "The octets of that file are no longer kept: bring it again, if it is still wanted.");
                }
                return octets;
            }
        } catch (SQLException e) {
            throw new IllegalStateException("a part of a file cannot be read", e);
        }
    }
}
