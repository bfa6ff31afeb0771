package org.culvert.platform.backup;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a backup says about itself; the last entry of its file.
 *
 * @param format version of this very format; a later one is refused
 * @param takenAt when the moment was that the backup shows, as PostgreSQL told it
 * @param schemaVersion the last migration its tables had
 * @param migrations checksum by version of every migration its tables had
 */
record BackupManifest(
        int format,
        String takenAt,
        String culvertVersion,
        String postgresqlVersion,
        String schemaVersion,
        Map<String, Integer> migrations,
        List<TablePart> tables,
        List<SequencePart> sequences) {

    static final int FORMAT = 1;
    static final String ENTRY = "culvert-backup.json";

    /**
     * One table in the file.
     *
     * @param columns in the order in which their values stand in the entry
     * @param sha256 of the entry's bytes
     * @param sumOfRows see {@link RowTally}
     */
    record TablePart(
            String schema, String name, List<String> columns, long rows, long bytes, String sha256, String sumOfRows) {
        String entry() {
            return "tables/" + schema + "/" + name + ".copy";
        }

        RowTally.Content content() {
            return new RowTally.Content(rows, sumOfRows);
        }
    }

    /** Where a sequence stands. */
    record SequencePart(String schema, String name, long lastValue, boolean called) {}

    long rows() {
        return tables.stream().mapToLong(TablePart::rows).sum();
    }

    byte[] toJson() {
        try {
            return mapper().writeValueAsBytes(this);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    static BackupManifest read(byte[] json) throws IOException {
        // The format comes first: what a later one says beside it cannot be known here.
        int format = mapper().readTree(json).path("format").asInt(-1);
        if (format > FORMAT) {
            throw new BackupException("The backup is of format " + format + " and this server knows up to " + FORMAT
                    + ". Restore it with the version of Culvert that made it, or a later one.");
        }
        return mapper().readValue(json, BackupManifest.class);
    }

    private static ObjectMapper mapper() {
        return new ObjectMapper()
                .enable(SerializationFeature.INDENT_OUTPUT)
                .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
                .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES);
    }

    static String thisCulvertVersion() {
        @Nullable String version = BackupManifest.class.getPackage().getImplementationVersion();
        return version == null ? "not packaged" : version;
    }
}
