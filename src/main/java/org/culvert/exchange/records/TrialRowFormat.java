package org.culvert.exchange.records;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.exchange.reading.Finding;
import org.culvert.exchange.reading.ReadRow;
import org.culvert.road.PlaceUnderstood;
import org.culvert.road.PlaceUnderstood.OnRoad;
import org.jspecify.annotations.Nullable;

/**
 * Writes judged rows as PostgreSQL copies them in (its binary format, version 1: a header, for each row the number of its fields
 * and each field with its length, and a trailer).
 */
final class TrialRowFormat {
    private static final List<String> COLUMNS = List.of(
            "trial_id",
            "number",
            "verdict",
            "original",
            "identifier",
            "happened_at",
            "happened_not_before",
            "happened_before",
            "given_as",
            "verbatim",
            "decimal_latitude",
            "decimal_longitude",
            "coordinate_uncertainty_in_meters",
            "road_link_id",
            "road_name",
            "carriageway",
            "metres_along_link",
            "chainage_metres",
            "chainage_precision_metres",
            "offset_metres",
            "side",
            "road_is_in_doubt",
            "other_roads",
            "taxon_id",
            "taxon_group_id",
            "verbatim_identification",
            "individual_count",
            "vitality",
            "life_stage",
            "sex",
            "cause",
            "remarks",
            "findings");

    static final String COPY =
            "COPY personal.record_trial_rows (" + String.join(", ", COLUMNS) + ") FROM STDIN WITH (FORMAT binary)";
    static final byte[] HEADER = header();
    static final byte[] TRAILER = {-1, -1};

    /** PostgreSQL counts microseconds from the beginning of 2000. */
    private static final Instant EPOCH = Instant.parse("2000-01-01T00:00:00Z");

    /** The version that stands before a jsonb in the binary format. */
    private static final int JSONB = 1;

    private static final byte[] NOTHING = "[]".getBytes(StandardCharsets.UTF_8);

    private final JsonFactory json = new JsonFactory();
    private final UUID trialId;

    TrialRowFormat(UUID trialId) {
        this.trialId = trialId;
    }

    private static byte[] header() {
        var octets = new ByteArrayOutputStream();
        octets.writeBytes("PGCOPY\n".getBytes(StandardCharsets.ISO_8859_1));
        octets.write(0xff);
        octets.writeBytes("\r\n\0".getBytes(StandardCharsets.ISO_8859_1));
        octets.writeBytes(new byte[8]);
        return octets.toByteArray();
    }

    /** Some rows, without header and trailer. */
    byte[] write(List<JudgedRow> rows) {
        var octets = new ByteArrayOutputStream(rows.size() * 600);
        try (var out = new DataOutputStream(octets)) {
            for (JudgedRow row : rows) {
                write(row, out);
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException("memory cannot be written", impossible);
        }
        return octets.toByteArray();
    }

    private void write(JudgedRow judged, DataOutputStream out) throws IOException {
        ReadRow row = judged.row();
        out.writeShort(COLUMNS.size());
        uuid(trialId, out);
        out.writeInt(Long.BYTES);
        out.writeLong(row.number());
        text(judged.verdict().name(), out);
        text(row.original(), out);
        text(row.identifier(), out);
        instant(judged.happenedAt(), out);
        instant(judged.happenedNotBefore(), out);
        instant(judged.happenedBefore(), out);
        place(judged, out);
        uuid(judged.taxonId(), out);
        uuid(judged.groupId(), out);
        text(row.allAnimalWords(), out);
        out.writeInt(Integer.BYTES);
        out.writeInt(row.individualCount());
        text(row.vitality(), out);
        text(row.lifeStage(), out);
        text(row.sex(), out);
        text(row.cause(), out);
        text(row.remarks(), out);
        jsonb(judged.findings().isEmpty() ? NOTHING : findings(judged.findings()), out);
    }

    private void place(JudgedRow judged, DataOutputStream out) throws IOException {
        PlaceUnderstood place = judged.place();
        OnRoad road = place == null ? null : place.onRoad();
        text(place == null ? null : place.givenAs(), out);
        text(place == null ? null : place.verbatim(), out);
        number(place == null ? null : place.decimalLatitude(), out);
        number(place == null ? null : place.decimalLongitude(), out);
        number(place == null ? null : place.coordinateUncertaintyInMeters(), out);
        uuid(road == null ? null : road.roadLinkId(), out);
        text(road == null ? null : road.roadName(), out);
        text(road == null ? null : road.carriageway(), out);
        number(road == null ? null : road.metresAlongLink(), out);
        number(road == null ? null : road.chainageMetres(), out);
        Double told = judged.chainagePrecisionMetres();
        number(road == null ? null : told != null ? told : road.chainagePrecisionMetres(), out);
        number(road == null ? null : road.offsetMetres(), out);
        text(road == null ? null : road.side(), out);
        out.writeInt(1);
        out.writeBoolean(place != null && place.roadInDoubt());
        jsonb(place == null || place.otherRoads().isEmpty() ? NOTHING : roads(place.otherRoads()), out);
    }

    /** PostgreSQL's texts have no NUL: its picture stands in its place, and the row has a finding of it. */
    private static void text(@Nullable String text, DataOutputStream out) throws IOException {
        if (text == null) {
            out.writeInt(-1);
            return;
        }
        byte[] octets = (text.indexOf('\0') < 0 ? text : text.replace('\0', '\u2400')).getBytes(StandardCharsets.UTF_8);
        out.writeInt(octets.length);
        out.write(octets);
    }

    private static void number(@Nullable Double number, DataOutputStream out) throws IOException {
        if (number == null) {
            out.writeInt(-1);
            return;
        }
        out.writeInt(Double.BYTES);
        out.writeDouble(number);
    }

    private static void uuid(@Nullable UUID id, DataOutputStream out) throws IOException {
        if (id == null) {
            out.writeInt(-1);
            return;
        }
        out.writeInt(2 * Long.BYTES);
        out.writeLong(id.getMostSignificantBits());
        out.writeLong(id.getLeastSignificantBits());
    }

    private static void instant(@Nullable Instant instant, DataOutputStream out) throws IOException {
        if (instant == null) {
            out.writeInt(-1);
            return;
        }
        Duration since = Duration.between(EPOCH, instant);
        out.writeInt(Long.BYTES);
        out.writeLong(Math.addExact(Math.multiplyExact(since.getSeconds(), 1_000_000L), since.getNano() / 1000));
    }

    private static void jsonb(byte[] document, DataOutputStream out) throws IOException {
        out.writeInt(document.length + 1);
        out.writeByte(JSONB);
        out.write(document);
    }

    byte[] findings(List<Finding> findings) throws IOException {
        var octets = new ByteArrayOutputStream();
        try (JsonGenerator document = json.createGenerator(octets)) {
            document.writeStartArray();
            for (Finding finding : findings) {
                document.writeStartObject();
                document.writeStringField("kind", finding.kind().name());
                document.writeStringField("weight", finding.weight().name());
                if (finding.column() != null) {
                    document.writeNumberField("column", finding.column());
                }
                document.writeStringField("detail", finding.detail().replace('\0', '\u2400'));
                String wanted = finding.wanted();
                if (wanted != null) {
                    document.writeStringField("wanted", wanted.replace('\0', '\u2400'));
                }
                document.writeEndObject();
            }
            document.writeEndArray();
        }
        return octets.toByteArray();
    }

    /** As the column of places has them. */
    private byte[] roads(List<OnRoad> roads) throws IOException {
        var octets = new ByteArrayOutputStream(256 * roads.size());
        try (JsonGenerator document = json.createGenerator(octets)) {
            document.writeStartArray();
            for (OnRoad road : roads) {
                document.writeStartObject();
                document.writeStringField("roadLinkId", road.roadLinkId().toString());
                document.writeStringField("roadName", road.roadName());
                document.writeStringField("carriageway", road.carriageway());
                document.writeNumberField("decimalLatitude", road.decimalLatitude());
                document.writeNumberField("decimalLongitude", road.decimalLongitude());
                document.writeNumberField("metresAlongLink", road.metresAlongLink());
                document.writeNumberField("chainageMetres", road.chainageMetres());
                numberOrNull(document, "chainagePrecisionMetres", road.chainagePrecisionMetres());
                document.writeNumberField("offsetMetres", road.offsetMetres());
                document.writeStringField("side", road.side());
                numberOrNull(document, "speedLimitKmh", road.speedLimitKmh());
                document.writeEndObject();
            }
            document.writeEndArray();
        }
        return octets.toByteArray();
    }

    private static void numberOrNull(JsonGenerator document, String name, @Nullable Double number) throws IOException {
        if (number == null) {
            document.writeNullField(name);
        } else {
            document.writeNumberField(name, number);
        }
    }
}
