package org.culvert.animal.photograph;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RECIPIENT;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.Directory;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.StreamSupport;
import javax.sql.DataSource;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Exif;
import org.culvert.support.Json;
import org.culvert.support.Pictures;
import org.culvert.support.World;
import org.eclipse.microprofile.config.ConfigProvider;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@QuarkusTest
class PhotographResourceTest {
    private static final String TURTLE = "Chelodina longicollis";

    @Inject
    DataSource database;

    @TempDir
    Path folder;

    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
    }

    private static String incident() {
        return World.call(TURTLE, 150.0412, "").getString("incidentId");
    }

    private String heldCase(String incident) {
        return Api.make(COORDINATOR, "/api/cases", """
                {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-01-10T02:00:00Z",
                 "holder":{"memberId":"%s"}}
                """.formatted(incident, TURTLE, world.carer))
                .getString("id");
    }

    private static Json add(String role, String of, byte[] picture, String more) {
        return Api.make(role, of + "/photographs", Pictures.sent("image/jpeg", picture, more));
    }

    private static byte[] sha256(byte[] octets) throws Exception {
        return MessageDigest.getInstance("SHA-256").digest(octets);
    }

    @Test
    void aPhotographSaysWhereAndWhenItWasTakenAndIsNotBelievedByItself() {
        String incident = incident();
        byte[] picture = Pictures.withExif(
                Pictures.file("jpeg", Pictures.bars(64, 48)),
                Pictures.at(-30.50010, 150.04150)
                        .orientation(6)
                        .taken("2026:01:10 13:00:00")
                        .offset("+11:00")
                        .gpsTime("2026:01:10", 1, 1, 58, 1, 0, 1)
                        .altitude(0, 512, 1)
                        .direction("T", 90, 1)
                        .error(8, 1)
                        .octets());
        Json made = add(DISPATCHER, "/api/incidents/" + incident, picture, ",\"caption\":\"by the kerb\"");
        assertThat(made.getString("incidentId")).isEqualTo(incident);
        assertThat(made.getBoolean("takenWhereFound")).isTrue();
        assertThat(made.getString("takenAt")).as("offered, not taken over").isNull();
        assertThat(made.getDouble("exif.place.decimalLatitude")).isEqualTo(-30.5001, within(1e-7));
        assertThat(made.getDouble("exif.place.decimalLongitude")).isEqualTo(150.0415, within(1e-7));
        assertThat(made.getDouble("exif.place.coordinateUncertaintyInMeters")).isEqualTo(8);
        assertThat(made.getString("exif.place.uncertaintyFrom")).isEqualTo("picture");
        assertThat(made.getDouble("exif.place.altitudeMetres")).isEqualTo(512);
        assertThat(made.getDouble("exif.place.directionDegrees")).isEqualTo(90);
        assertThat(made.getBoolean("exif.place.insideRegion")).isTrue();
        // 0.0003 degree of longitude at 30.5 degrees south are about 28.8 m, 0.0001 of latitude about 11.1 m
        assertThat(made.getDouble("exif.place.metresFromIncident")).isEqualTo(30.9, within(0.2));
        assertThat(made.getString("exif.cameraClock")).isEqualTo("2026-01-10T13:00:00");
        assertThat(made.getString("exif.cameraOffset")).isEqualTo("+11:00");
        assertThat(made.getString("exif.cameraClockIs")).isEqualTo("withOffset");
        assertThat(made.getString("exif.gpsTime")).isEqualTo("2026-01-10T01:58:00Z");
        assertThat(made.getInt("exif.orientation")).isEqualTo(6);
        assertThat(made.getInt("widthPixels")).isEqualTo(64);
        assertThat(made.getInt("heightPixels")).isEqualTo(48);
        assertThat(made.getList("exif.doubts", String.class))
                .singleElement()
                .asString()
                .contains("before the incident was reported");
        assertThat(made.getList("cautions", String.class).toString()).contains("faces", "not of the animal");
        assertThat(Api.get(DISPATCHER, "/api/incidents/" + incident).getDouble("place.decimalLongitude"))
                .as("it stays where the caller said")
                .isEqualTo(150.0412, within(1e-4));
    }

    @Test
    void whatSpeaksAgainstAPictureIsSaid() {
        String incident = incident();
        byte[] elsewhere = Pictures.withExif(
                Pictures.file("jpeg", Pictures.bars(64, 48)),
                Pictures.at(48.2, 16.37).taken("2026:01:10 13:00:00").octets());
        Json made = add(DISPATCHER, "/api/incidents/" + incident, elsewhere, "");
        assertThat(made.getBoolean("exif.place.insideRegion")).isFalse();
        assertThat(made.getString("exif.place.uncertaintyFrom")).isEqualTo("network");
        assertThat(made.getString("exif.cameraClockIs")).isEqualTo("clockTimeWithoutZone");
        assertThat(made.getList("exif.doubts", String.class).toString())
                .contains("outside the region", "km from where the incident is pinned", "older picture");
        Json silent = add(DISPATCHER, "/api/incidents/" + incident, Pictures.file("jpeg", Pictures.bars(9, 9)), "");
        assertThat(silent.getMap("exif")).containsEntry("place", null).containsEntry("cameraClock", null);
        assertThat(silent.getList("exif.doubts")).isEmpty();
    }

    @Test
    void theCopyIsUprightAndSilentAndTheSmallOneSmall() throws Exception {
        byte[] picture = Pictures.withExif(
                Pictures.file("jpeg", Pictures.bars(3000, 2000)),
                Pictures.at(-30.5, 150.04).orientation(6).make("SECRET").octets());
        String path = "/api/photographs/"
                + add(RESCUER, "/api/cases/" + ofRescuer(), picture, "").getString("id");
        for (Map.Entry<String, Integer> wanted :
                Map.of("/copy", 2048, "/small", 320).entrySet()) {
            Answer answer = Api.as(RESCUER).accept("*/*").get(path + wanted.getKey());
            answer.then()
                    .statusCode(200)
                    .contentType("image/jpeg")
                    .header("Cache-Control", "private, no-cache")
                    .header("X-Content-Type-Options", "nosniff");
            byte[] copy = answer.asByteArray();
            var seen = javax.imageio.ImageIO.read(new ByteArrayInputStream(copy));
            assertThat(seen.getHeight()).isEqualTo(wanted.getValue());
            assertThat(seen.getWidth()).isEqualTo(Math.round(wanted.getValue() * 2 / 3f));
            assertThat(StreamSupport.stream(
                                    ImageMetadataReader.readMetadata(new ByteArrayInputStream(copy))
                                            .getDirectories()
                                            .spliterator(),
                                    false)
                            .map(Directory::getName))
                    .isSubsetOf("JPEG", "JFIF", "Huffman", "File Type");
            assertThat(new String(copy, StandardCharsets.ISO_8859_1)).doesNotContain("SECRET", "Exif");
            String tag = answer.header("ETag");
            assertThat(tag).isEqualTo('"' + HexFormat.of().formatHex(sha256(copy)) + '"');
            Api.as(RESCUER)
                    .accept("*/*")
                    .header("If-None-Match", tag)
                    .get(path + wanted.getKey())
                    .then()
                    .statusCode(304)
                    .header("Cache-Control", "private, no-cache");
        }
    }

    private String ofRescuer() {
        return Api.make(RESCUER, "/api/cases", """
                {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-01-10T02:00:00Z",
                 "holder":{"memberId":"%s"}}
                """.formatted(incident(), TURTLE, world.rescuer))
                .getString("id");
    }

    /** A carer's picture tells where the carer lives, unless it was taken where the animal was found. */
    @Test
    void thePlaceOfAPictureOfACaseStaysSealed() throws Exception {
        String incident = incident();
        String held = heldCase(incident);
        byte[] atHome = Pictures.jpegAt(-30.48, 150.06);
        Json made = add(CARER, "/api/cases/" + held, atHome, ",\"caption\":\"the wound\"");
        assertThat(made.getBoolean("takenWhereFound")).isFalse();
        assertThat(made.getMap("exif")).containsEntry("place", null);
        assertThat(made.getList("cautions", String.class).toString()).contains("carer's home");
        assertThat(Api.get(COORDINATOR, "/api/photographs/" + made.getString("id"))
                        .getMap("exif"))
                .containsEntry("place", null);
        assertThat(text("select to_jsonb(p)::text from photographs p where id = '" + made.getString("id") + "'"))
                .doesNotContain("30.48", "150.06");
        Api.change(
                        DISPATCHER,
                        "/api/incidents/" + incident,
                        "/photographs/" + made.getString("id") + "/found-place",
                        "{\"reason\":\"it says so\"}")
                .statusCode(409)
                .body("detail", containsString("not taken where the animal was found"));

        Json there = add(CARER, "/api/cases/" + held, atHome, ",\"takenWhereFound\":true");
        assertThat(there.getDouble("exif.place.decimalLatitude")).isEqualTo(-30.48, within(1e-7));
        Json not = add(DISPATCHER, "/api/incidents/" + incident, atHome, ",\"takenWhereFound\":false");
        assertThat(not.getMap("exif")).containsEntry("place", null);
    }

    @Test
    void whoSeesTheIncidentSeesItsPhotographsAndNobodyElse() {
        String incident = incident();
        String held = heldCase(incident);
        String id = add(DISPATCHER, "/api/incidents/" + incident, Pictures.jpegAt(-30.5, 150.0412), "")
                .getString("id");
        String path = "/api/photographs/" + id;
        for (String role : List.of(DISPATCHER, COORDINATOR, OFFICER, CARER)) {
            assertThat(Api.get(role, path).getDouble("exif.place.decimalLatitude"))
                    .as(role)
                    .isEqualTo(-30.5, within(1e-7));
            Api.as(role).accept("*/*").get(path + "/copy").then().statusCode(200);
            assertThat(Api.get(role, "/api/incidents/" + incident + "/photographs")
                            .getList("items.id"))
                    .containsExactly(id);
            assertThat(Api.get(role, "/api/cases/" + held + "/photographs").getList("items.id"))
                    .containsExactly(id);
        }
        // The clinic is of another organisation than whoever has the animal
        for (String part : List.of("", "/copy", "/small")) {
            Api.as(CLINIC).accept("*/*").get(path + part).then().statusCode(404);
            for (String role : List.of(ROADS_AUTHORITY, RECIPIENT, ADMIN)) {
                Api.as(role).accept("*/*").get(path + part).then().statusCode(403);
            }
        }
        Api.as(CLINIC).get("/api/incidents/" + incident + "/photographs").then().statusCode(404);
        Api.post(CLINIC, "/api/incidents/" + incident + "/photographs", Pictures.sent("image/jpeg", small(), ""))
                .statusCode(404);
        String missing = UUID.randomUUID().toString();
        Api.post(DISPATCHER, "/api/incidents/" + missing + "/photographs", Pictures.sent("image/jpeg", small(), ""))
                .statusCode(404);
        Api.post(DISPATCHER, "/api/cases/" + missing + "/photographs", Pictures.sent("image/jpeg", small(), ""))
                .statusCode(404);
        Api.as(DISPATCHER).get("/api/photographs/" + missing).then().statusCode(404);
    }

    private static byte[] small() {
        return Pictures.file("jpeg", Pictures.bars(8, 8));
    }

    @Test
    void theOriginalIsGivenForAReasonThatIsKept() throws Exception {
        byte[] picture = Pictures.jpegAt(-30.5, 150.0412);
        Json made = add(DISPATCHER, "/api/incidents/" + incident(), picture, "");
        String path = "/api/photographs/" + made.getString("id");
        String digest = HexFormat.of().formatHex(sha256(picture));
        assertThat(made.getString("sha256")).isEqualTo(digest).isEqualTo(sha256sum(picture));
        for (String role : List.of(DISPATCHER, RESCUER, CLINIC, CARER, ADMIN)) {
            Api.post(role, path + "/original-openings", "{\"reason\":\"asked\"}")
                    .statusCode(403);
            Api.as(role).get(path + "/original-openings").then().statusCode(403);
        }
        Api.post(OFFICER, path + "/original-openings", "{\"reason\":\" \"}").statusCode(400);
        assertThat(Api.get(OFFICER, path + "/original-openings").getList("")).isEmpty();

        Json opened = Api.make(OFFICER, path + "/original-openings", "{\"reason\":\"the court asks for it\"}");
        assertThat(Base64.getDecoder().decode(opened.getString("content"))).isEqualTo(picture);
        assertThat(opened.getString("mediaType")).isEqualTo("image/jpeg");
        assertThat(opened.getString("opening.sealedSha256")).isEqualTo(digest);
        assertThat(opened.getString("opening.foundSha256")).isEqualTo(digest);
        assertThat(opened.getBoolean("opening.sealHolds")).isTrue();
        Api.make(COORDINATOR, path + "/original-openings", "{\"reason\":\"a second look\"}");
        Json log = Api.get(COORDINATOR, path + "/original-openings");
        assertThat(log.getList("reason")).containsExactly("a second look", "the court asks for it");
        assertThat(log.getList("record.recordedBy")).containsExactly("test-coordinator", "test-officer");
        assertThat(log.getList("sealHolds")).containsExactly(true, true);
    }

    /** The digest by coreutils. */
    private String sha256sum(byte[] octets) throws Exception {
        Path file = folder.resolve("original");
        Files.write(file, octets);
        Process sum = new ProcessBuilder("sha256sum", file.toString()).start();
        String said = new String(sum.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
        assertThat(sum.waitFor()).isZero();
        return said.substring(0, 64);
    }

    @Test
    void theSameKeyDoesNotOpenAnOriginalTwice() {
        String path = "/api/photographs/"
                + add(DISPATCHER, "/api/incidents/" + incident(), small(), "").getString("id")
                + "/original-openings";
        String key = "\"" + UUID.randomUUID() + "\"";
        for (int i = 0; i < 2; i++) {
            Answer answer = Api.as(OFFICER)
                    .header("Idempotency-Key", key)
                    .body("{\"reason\":\"asked\"}")
                    .post(path);
            answer.then().statusCode(201);
            assertThat(answer.asString().contains("content")).isEqualTo(i == 0);
        }
        assertThat(Api.get(OFFICER, path).getList("")).hasSize(1);
    }

    /** Whoever owns the tables can switch off what guards them; the seal shows it. */
    @Test
    void aBrokenSealIsSaidAndTheFileIsNotGiven() throws Exception {
        byte[] picture = Pictures.jpegAt(-30.5, 150.0412);
        String id = add(DISPATCHER, "/api/incidents/" + incident(), picture, "").getString("id");
        String path = "/api/photographs/" + id + "/original-openings";
        byte[] another = small();
        UUID file = UUID.fromString(text("select original_file_id::text from photographs where id = '" + id + "'"));
        asOwner(
                "alter table kept_files disable trigger kept_for_ever",
                "alter table kept_files drop constraint a_file_has_the_digest_of_its_content");
        try {
            change(file, another);
            Api.post(OFFICER, path, "{\"reason\":\"the court asks for it\"}")
                    .statusCode(409)
                    .contentType("application/problem+json")
                    .body("type", equalTo("/problems/seal-broken"))
                    .body("detail", containsString(HexFormat.of().formatHex(sha256(another))))
                    .body("content", nullValue());
            Json log = Api.get(OFFICER, path);
            assertThat(log.getList("sealHolds")).containsExactly(false);
            assertThat(log.getString("[0].foundSha256"))
                    .isEqualTo(HexFormat.of().formatHex(sha256(another)));
            assertThat(log.getString("[0].sealedSha256"))
                    .isEqualTo(HexFormat.of().formatHex(sha256(picture)));
        } finally {
            change(file, picture);
            asOwner(
                    "alter table kept_files enable trigger kept_for_ever",
                    "alter table kept_files add constraint a_file_has_the_digest_of_its_content"
                            + " check (sha256 = sha256(content))");
        }
        Api.make(OFFICER, path, "{\"reason\":\"once more\"}");
    }

    @Test
    void theDatabaseRefusesToChangeAFileOrAnOpening() throws Exception {
        Json made = add(DISPATCHER, "/api/incidents/" + incident(), Pictures.jpegAt(-30.5, 150.0412), "");
        String id = made.getString("id");
        Api.make(OFFICER, "/api/photographs/" + id + "/original-openings", "{\"reason\":\"asked\"}");
        String file = "(select original_file_id from photographs where id = '" + id + "')";
        refused("update kept_files set content = '\\xffd8ff' where id = " + file, "23000");
        refused(
                "update kept_files set sha256 = sha256('\\xffd8ff'), content = '\\xffd8ff' where id = " + file,
                "23000");
        refused("delete from kept_files where id = " + file, "42501");
        refused("update photographs set original_sha256 = sha256('\\x00') where id = '" + id + "'", "23000");
        refused("update photographs set decimal_latitude = 0 where id = '" + id + "'", "23000");
        refused("update photograph_openings set reason = 'another' where photograph_id = '" + id + "'", "23000");
        refused("delete from photograph_openings where photograph_id = '" + id + "'", "42501");
        refused("""
                insert into kept_files (id, media_type, content, sha256, recorded_at, recorded_by)
                select gen_random_uuid(), 'image/jpeg', '\\xffd8ff', sha256('\\x00'), now(), recorded_by from photographs
                where id = '%s'""".formatted(id), "23514");
    }

    private void refused(String statement, String state) {
        assertThatThrownBy(() -> {
                    try (Connection connection = database.getConnection();
                            Statement sql = connection.createStatement()) {
                        connection.setAutoCommit(false);
                        try {
                            assertThat(sql.executeUpdate(statement)).isPositive();
                        } finally {
                            connection.rollback();
                        }
                    }
                })
                .as(statement)
                .isInstanceOfSatisfying(
                        SQLException.class, e -> assertThat(e.getSQLState()).isEqualTo(state));
    }

    private String text(String query) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement sql = connection.createStatement();
                ResultSet rows = sql.executeQuery(query)) {
            assertThat(rows.next()).isTrue();
            return rows.getString(1);
        }
    }

    private static Connection owner() throws SQLException {
        var settings = ConfigProvider.getConfig();
        return DriverManager.getConnection(
                settings.getValue("quarkus.datasource.jdbc.url", String.class),
                settings.getValue("quarkus.flyway.username", String.class),
                settings.getValue("quarkus.flyway.password", String.class));
    }

    private static void asOwner(String... statements) throws SQLException {
        try (Connection connection = owner();
                Statement sql = connection.createStatement()) {
            for (String statement : statements) {
                sql.execute(statement);
            }
        }
    }

    private static void change(UUID file, byte[] content) throws SQLException {
        try (Connection connection = owner();
                PreparedStatement sql = connection.prepareStatement("update kept_files set content = ? where id = ?")) {
            sql.setBytes(1, content);
            sql.setObject(2, file);
            assertThat(sql.executeUpdate()).isEqualTo(1);
        }
    }

    @Test
    void anIncidentIsPutWhereThePhotographWasTakenBySomebodysDecision() {
        String incident = incident();
        String held = heldCase(incident);
        String before = Api.get(DISPATCHER, "/api/incidents/" + incident).getString("place.id");
        byte[] picture = Pictures.withExif(
                small(), Pictures.at(-30.50002, 150.06212).error(125, 10).octets());
        String id = add(COORDINATOR, "/api/incidents/" + incident, picture, "").getString("id");
        String act = "/photographs/" + id + "/found-place";
        Api.as(DISPATCHER)
                .body("{\"reason\":\"asked\"}")
                .post("/api/incidents/" + incident + act)
                .then()
                .statusCode(428);
        for (String role : List.of(RESCUER, CLINIC, CARER, OFFICER)) {
            Api.as(role)
                    .header("If-Match", "*")
                    .body("{\"reason\":\"asked\"}")
                    .post("/api/incidents/" + incident + act)
                    .then()
                    .statusCode(403);
        }
        Json placed = Api.change(DISPATCHER, "/api/incidents/" + incident, act, "{\"reason\":\"the driver sent it\"}")
                .statusCode(200)
                .extract()
                .jsonPath();
        assertThat(placed.getString("uncertaintyFrom")).isEqualTo("picture");
        assertThat(placed.getString("incident.place.id")).isNotEqualTo(before);
        assertThat(placed.getDouble("incident.place.coordinateUncertaintyInMeters"))
                .isEqualTo(12.5);
        assertThat(placed.getString("incident.place.verbatim")).isEqualTo("30\u00b030'0.0720\"S 150\u00b03'43.6320\"E");
        assertThat(placed.getString("incident.place.roadName")).isEqualTo("Mill Road");
        assertThat(placed.getString("incident.record.revisionReason"))
                .isEqualTo("By photograph " + id + ": the driver sent it");
        assertThat(placed.getList("casesFoundElsewhere", Long.class))
                .containsExactly(Api.get(COORDINATOR, "/api/cases/" + held).getLong("number"));
        assertThat(Api.get(COORDINATOR, "/api/cases/" + held).getString("foundPlace.id"))
                .as("a case is corrected by itself")
                .isEqualTo(before);
        Json history = Api.get(COORDINATOR, "/api/records/" + incident + "/revisions");
        assertThat(history.getList("")).hasSize(2);

        // Without the receiver's own error the digits and the figure for receivers count
        String other = add(DISPATCHER, "/api/incidents/" + incident, Pictures.jpegAt(-30.5, 150.06), "")
                .getString("id");
        Api.change(
                        DISPATCHER,
                        "/api/incidents/" + incident,
                        "/photographs/" + other + "/found-place",
                        "{\"reason\":\"x\"}")
                .statusCode(200)
                .body("uncertaintyFrom", equalTo("network"));
        double metres =
                Api.get(DISPATCHER, "/api/incidents/" + incident).getDouble("place.coordinateUncertaintyInMeters");
        assertThat(metres).isEqualTo(30.0, within(0.1));
    }

    @Test
    void photographsOfJoinedIncidentsAreShownTogetherAndMayPlaceEither() {
        String kept = incident();
        String joined = incident();
        String held = heldCase(kept);
        String here = add(DISPATCHER, "/api/incidents/" + kept, small(), "").getString("id");
        String there = add(DISPATCHER, "/api/incidents/" + joined, Pictures.jpegAt(-30.5, 150.06), "")
                .getString("id");
        assertThat(Api.get(DISPATCHER, "/api/incidents/" + kept + "/photographs")
                        .getList("items.id"))
                .containsExactly(here);
        Api.as(CARER).get("/api/photographs/" + there).then().statusCode(404);
        String join = Api.post(
                        DISPATCHER,
                        "/api/incidents/" + kept + "/joins",
                        "{\"incidentId\":\"%s\",\"reason\":\"the same turtle\"}".formatted(joined))
                .statusCode(200)
                .extract()
                .path("joins[0].id");
        for (String list : List.of("/api/incidents/" + kept, "/api/incidents/" + joined, "/api/cases/" + held)) {
            assertThat(Api.get(CARER, list + "/photographs").getList("items.id"))
                    .as(list)
                    .containsExactly(there, here);
        }
        Api.change(DISPATCHER, "/api/incidents/" + kept, "/photographs/" + there + "/found-place", "{\"reason\":\"x\"}")
                .statusCode(200);
        assertThat(Api.get(DISPATCHER, "/api/incidents/" + kept).getDouble("place.decimalLongitude"))
                .isEqualTo(150.06, within(1e-4));
        Api.change(DISPATCHER, "/api/joins/" + join, "/undoing", "{\"reason\":\"another one\"}")
                .statusCode(200);
        assertThat(Api.get(CARER, "/api/cases/" + held + "/photographs").getList("items.id"))
                .containsExactly(here);
    }

    @Test
    void aPhotographThatTellsNoPlaceOrIsOfAnotherIncidentMovesNothing() {
        String incident = incident();
        String silent =
                add(DISPATCHER, "/api/incidents/" + incident, small(), "").getString("id");
        Api.change(
                        DISPATCHER,
                        "/api/incidents/" + incident,
                        "/photographs/" + silent + "/found-place",
                        "{\"reason\":\"x\"}")
                .statusCode(409)
                .body("detail", equalTo("That photograph tells no place."));
        String elsewhere = add(DISPATCHER, "/api/incidents/" + incident(), Pictures.jpegAt(-30.5, 150.06), "")
                .getString("id");
        Api.change(
                        DISPATCHER,
                        "/api/incidents/" + incident,
                        "/photographs/" + elsewhere + "/found-place",
                        "{\"reason\":\"x\"}")
                .statusCode(404);
        String taken = add(DISPATCHER, "/api/incidents/" + incident, Pictures.jpegAt(-30.5, 150.06), "")
                .getString("id");
        Api.change(DISPATCHER, "/api/photographs/" + taken, "/withdrawal", "{\"reason\":\"another day\"}")
                .statusCode(200);
        Api.change(
                        DISPATCHER,
                        "/api/incidents/" + incident,
                        "/photographs/" + taken + "/found-place",
                        "{\"reason\":\"x\"}")
                .statusCode(409)
                .body("detail", containsString("another day"));
    }

    @Test
    void aPhotographIsTakenBackByWhoSentItAndStaysForTheNetwork() {
        String incident = incident();
        String held = heldCase(incident);
        String of = "/api/photographs/"
                + add(CARER, "/api/cases/" + held, small(), "").getString("id");
        String dispatchers = "/api/photographs/"
                + add(DISPATCHER, "/api/cases/" + held, small(), "").getString("id");
        Api.change(CARER, dispatchers, "/withdrawal", "{\"reason\":\"it is mine\"}")
                .statusCode(403);
        Api.as(CARER)
                .body("{\"reason\":\"asked\"}")
                .post(of + "/withdrawal")
                .then()
                .statusCode(428);
        Api.change(CARER, of, "/withdrawal", "{\"reason\":\"it shows my child\"}")
                .statusCode(200)
                .body("withdrawnBecause", equalTo("it shows my child"));
        Api.change(COORDINATOR, of, "/withdrawal", "{\"reason\":\"again\"}").statusCode(409);
        Api.as(CARER).accept("*/*").get(of + "/copy").then().statusCode(404);
        Api.as(CARER).accept("*/*").get(of + "/small").then().statusCode(404);
        Api.as(OFFICER).accept("*/*").get(of + "/copy").then().statusCode(200);
        assertThat(Api.get(CARER, "/api/cases/" + held + "/photographs").getList("items.withdrawnBecause"))
                .containsExactly(null, "it shows my child");
    }

    @Test
    void whatIsNoPictureIsRefusedAndKeepsNothing() throws Exception {
        String path = "/api/incidents/" + incident() + "/photographs";
        String before = text("select count(*)::text from kept_files");
        byte[] jpeg = Pictures.file("jpeg", Pictures.bars(200, 100));
        Api.post(DISPATCHER, path, Pictures.sent("image/png", jpeg, ""))
                .statusCode(400)
                .body("errors[0].field", equalTo("content"));
        Api.post(DISPATCHER, path, Pictures.sent("image/svg+xml", "<svg/>".getBytes(StandardCharsets.UTF_8), ""))
                .statusCode(400)
                .body("errors[0].field", equalTo("mediaType"));
        Api.post(DISPATCHER, path, Pictures.sent("image/jpeg", Arrays.copyOf(jpeg, 20), ""))
                .statusCode(400)
                .body("errors[0].detail", containsString("cannot be read"));
        Api.post(DISPATCHER, path, Pictures.sent("image/jpeg", new byte[0], "")).statusCode(400);
        Api.post(DISPATCHER, path, Pictures.sent("image/jpeg", jpeg, ",\"takenAt\":\"2126-01-01T00:00:00Z\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("takenAt"));
        byte[] large = Arrays.copyOf(jpeg, 10_000_001);
        Api.post(DISPATCHER, path, Pictures.sent("image/jpeg", large, "")).statusCode(400);
        byte[] bomb = Pictures.file("png", Pictures.bars(8, 8));
        bomb[16] = 0x7f;
        var checksum = new java.util.zip.CRC32();
        checksum.update(bomb, 12, 17);
        java.nio.ByteBuffer.wrap(bomb).putInt(29, (int) checksum.getValue());
        Api.post(DISPATCHER, path, Pictures.sent("image/png", bomb, ""))
                .statusCode(400)
                .body("errors[0].wanted", equalTo("a picture of at most 50 million pixels"));
        assertThat(text("select count(*)::text from kept_files")).isEqualTo(before);
    }

    @Test
    void damagedExifIsPassedOverWithAWord() {
        byte[] exif = Pictures.at(-30.5, 150.04).make("Culvert").octets();
        byte[] cut = Pictures.withExif(small(), Arrays.copyOf(exif, exif.length - 20));
        Json made = add(DISPATCHER, "/api/incidents/" + incident(), cut, "");
        assertThat(made.getList("exif.notes")).isNotEmpty();
        byte[] nowhere = Pictures.withExif(
                small(),
                Exif.littleEndian()
                        .latitude("S", 95, 1, 0, 1, 0, 1)
                        .longitude("E", 150, 1, 0, 1, 0, 1)
                        .octets());
        made = add(DISPATCHER, "/api/incidents/" + incident(), nowhere, "");
        assertThat(made.getList("exif.notes", String.class))
                .containsExactly("Its place is no place on Earth, and was passed over.");
        assertThat(made.getMap("exif")).containsEntry("place", null);
    }

    @Test
    void aPngTellsToo() {
        byte[] png = Pictures.withChunk(
                Pictures.file("png", Pictures.bars(20, 10)),
                "eXIf",
                Pictures.at(-30.5, 150.0412).octets());
        Json made = Api.make(
                DISPATCHER, "/api/incidents/" + incident() + "/photographs", Pictures.sent("image/png", png, ""));
        assertThat(made.getDouble("exif.place.decimalLongitude")).isEqualTo(150.0412, within(1e-7));
    }

    @Test
    void whatACarerEntersMayNameAPhotographOfTheSameAnimal() {
        String held = heldCase(incident());
        String another = heldCase(incident());
        String photograph = add(CARER, "/api/cases/" + held, small(), "").getString("id");
        String entry = "{\"kind\":\"photograph\",\"words\":\"the wound closes\",\"photographId\":\"%s\"}"
                .formatted(photograph);
        Json made = Api.make(CARER, "/api/cases/" + held + "/care-entries", entry);
        assertThat(made.getString("photographId")).isEqualTo(photograph);
        Api.post(CARER, "/api/cases/" + another + "/care-entries", entry)
                .statusCode(400)
                .body("errors[0].field", equalTo("photographId"));
        String of = "/api/care-entries/" + made.getString("id");
        Api.correct(CARER, of, "{\"photographId\":null,\"reason\":\"another day\"}")
                .statusCode(200)
                .body("photographId", nullValue());
        Api.correct(CARER, of, "{\"photographId\":\"%s\",\"reason\":\"the right one\"}".formatted(photograph))
                .statusCode(200)
                .body("photographId", equalTo(photograph));
        Api.correct(CARER, of, "{\"photographId\":\"%s\",\"reason\":\"none\"}".formatted(UUID.randomUUID()))
                .statusCode(400);
    }

    /** What was recorded later is not there in the past. */
    @Test
    void listsGoOnPageByPageAndIntoThePast() {
        String incident = incident();
        String path = "/api/incidents/" + incident + "/photographs";
        String first =
                add(DISPATCHER, "/api/incidents/" + incident, small(), "").getString("id");
        String between = org.culvert.support.Clocks.now().toString();
        String second =
                add(DISPATCHER, "/api/incidents/" + incident, small(), "").getString("id");
        Json page = Api.get(DISPATCHER, path + "?limit=1");
        assertThat(page.getList("items.id")).containsExactly(second);
        assertThat(Api.get(DISPATCHER, path + "?limit=1&cursor=" + page.getString("next"))
                        .getList("items.id"))
                .containsExactly(first);
        assertThat(Api.get(DISPATCHER, path + "?asOf=" + between).getList("items.id"))
                .containsExactly(first);
        assertThat(Api.get(DISPATCHER, "/api/photographs/" + first + "?asOf=" + between)
                        .getString("id"))
                .isEqualTo(first);
        Api.as(DISPATCHER)
                .accept("*/*")
                .get("/api/photographs/" + first + "/copy?asOf=" + between)
                .then()
                .statusCode(200);
    }
}
