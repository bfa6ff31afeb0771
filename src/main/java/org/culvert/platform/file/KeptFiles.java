package org.culvert.platform.file;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;

/** Keeps files, and gives them back as they came. */
@ApplicationScoped
public class KeptFiles {
    public static final String PDF = "application/pdf";
    public static final String PNG = "image/png";
    public static final String JPEG = "image/jpeg";

    /** Of documents that the server wrote itself; nobody hands one in. */
    public static final String JSON = "application/json";

    /** Of tables that the server wrote itself. */
    public static final String CSV = "text/csv;charset=UTF-8";

    /** Within how many octets a PDF says that it is one; what stands before that is passed over. */
    private static final int PDF_BEGINS_WITHIN = 1024;

    /** A file as it was handed in. */
    public record Content(String mediaType, byte[] octets) {}

    /**
     * A file that was kept.
     *
     * @param sha256 digest of its content (SHA-256, FIPS 180-4), which the database has computed too
     */
    public record Kept(UUID id, byte[] sha256) {}

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<KeptFile, UUID> {}

    private final Rows rows;

    KeptFiles(Rows rows) {
        this.rows = rows;
    }

    /**
     * Keeps a file.
     *
     * @param field where it stands in the request
     * @throws InvalidException if it is not of the type that is said
     */
    @Transactional
    public UUID keep(String field, String mediaType, byte[] content) {
        return seal(field, mediaType, content).id();
    }

    /**
     * Keeps a file, and says the digest under which it is kept.
     *
     * @param field where it stands in the request
     * @throws InvalidException if it is not of the type that is said
     */
    @Transactional
    public Kept seal(String field, String mediaType, byte[] content) {
        requireOf(field, mediaType, content);
        return sealOwn(mediaType, content);
    }

    /** Keeps a file that the server wrote itself, and says the digest under which it is kept. */
    @Transactional
    public Kept sealOwn(String mediaType, byte[] content) {
        byte[] digest = sha256(content);
        var row = new KeptFile(mediaType, content, digest);
        rows.persistAndFlush(row);
        return new Kept(row.id(), digest);
    }

    /** @throws InvalidException if it is not of the type that is said */
    public static void requireOf(String field, String mediaType, byte[] content) {
        if (!isOf(mediaType, content)) {
            throw InvalidException.of(
                    field, "This is no file of the type " + mediaType + ".", "the octets of such a file, in base64");
        }
    }

    /** The digest of some content as it is now. */
    public static byte[] sha256(byte[] content) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(content);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java has SHA-256", impossible);
        }
    }

    @Transactional
    public Content getContent(UUID id) {
        KeptFile row = rows.findByIdOptional(id).orElseThrow(() -> new NotFoundException("file", id));
        return new Content(row.mediaType, row.content);
    }

    /**
     * Whether a file begins as its type does: PNG (ISO/IEC 15948, 5.2), JPEG (ISO/IEC 10918-1, annex B: start of image, then
     * a marker), PDF (ISO 32000-1, 7.5.2).
     */
    static boolean isOf(String mediaType, byte[] content) {
        return switch (mediaType) {
            case PNG -> beginsWith(content, 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n');
            case JPEG -> beginsWith(content, 0xff, 0xd8, 0xff);
            case PDF ->
                new String(
                                Arrays.copyOf(content, Math.min(content.length, PDF_BEGINS_WITHIN)),
                                StandardCharsets.ISO_8859_1)
                        .contains("%PDF-");
            default -> false;
        };
    }

    private static boolean beginsWith(byte[] content, int... octets) {
        if (content.length < octets.length) {
            return false;
        }
        for (int i = 0; i < octets.length; i++) {
            if (Byte.toUnsignedInt(content[i]) != octets[i]) {
                return false;
            }
        }
        return true;
    }
}
