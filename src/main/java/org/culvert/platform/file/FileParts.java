package org.culvert.platform.file;

import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.platform.ConflictException;
import org.jspecify.annotations.Nullable;

/** The octets of files in parts, in a table with {@code content_id}, {@code number} and {@code octets}; none is ever held whole. */
public final class FileParts {
    private static final int PART = 1 << 20;

    /** @param sha256 digest of all octets (SHA-256, FIPS 180-4) */
    public record Kept(long octets, byte[] sha256) {}

    private final DataSource database;
    private final String insert;
    private final String select;

    /** @param table its name as a program has it, never as somebody typed it */
    public FileParts(DataSource database, String table) {
        this.database = database;
        this.insert = "insert into " + table + " (content_id, number, octets) values (?, ?, ?)";
        this.select = "select octets from " + table + " where content_id = ? and number = ?";
    }

    /** Keeps a file, as part of the caller's transaction. */
    public Kept keep(UUID contentId, InputStream file) throws IOException {
        MessageDigest digest = sha256();
        long octets = 0;
        int number = 0;
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(insert)) {
            for (byte[] part = file.readNBytes(PART); part.length > 0; part = file.readNBytes(PART)) {
                digest.update(part);
                octets += part.length;
                statement.setObject(1, contentId);
                statement.setInt(2, number++);
                statement.setBytes(3, part);
                statement.executeUpdate();
            }
        } catch (SQLException e) {
            throw new IllegalStateException("a part of a file cannot be kept", e);
        }
        return new Kept(octets, digest.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every JDK has SHA-256", impossible);
        }
    }

    /** The octets of a file, one part in memory at a time. */
    public InputStream open(UUID contentId) {
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
                PreparedStatement statement = connection.prepareStatement(select)) {
            statement.setObject(1, contentId);
            statement.setInt(2, number);
            try (ResultSet row = statement.executeQuery()) {
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
