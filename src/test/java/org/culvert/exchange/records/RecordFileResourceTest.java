package org.culvert.exchange.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files of old records as they come. All tables are invented. */
@QuarkusTest
class RecordFileResourceTest {
    private static final String FILES = "/api/record-files";

    @Inject
    EntityManager entities;

    @BeforeEach
    void world() {
        World.shared();
    }

    private static Answer bring(byte[] octets) {
        return Api.as(COORDINATOR)
                .contentType("text/csv")
                .body(octets)
                .post(FILES + "?fileName=struck-2019-2021.csv")
                .then();
    }

    /** A file of its own, whatever its rows are: each test brings another one. */
    private static Json brought(String heading, IntFunction<String> row, int rows) {
        return bring(table(heading, row, rows).getBytes(StandardCharsets.UTF_8))
                .statusCode(201)
                .extract()
                .jsonPath();
    }

    private static String table(String heading, IntFunction<String> row, int rows) {
        String sign = heading.contains(";") ? ";" : ",";
        var text = new StringBuilder(heading + sign + "mark\n");
        IntStream.range(0, rows)
                .forEach(i -> text.append(row.apply(i))
                        .append(sign)
                        .append(UUID.randomUUID())
                        .append('\n'));
        return text.toString();
    }

    private static List<String> open(Json file) {
        List<Boolean> needed = file.getList("inspection.questions.needed");
        List<String> keys = file.getList("inspection.questions.key");
        return IntStream.range(0, keys.size())
                .filter(needed::get)
                .mapToObj(keys::get)
                .toList();
    }

    private static Answer decide(Json file, String entry) {
        return Api.post(COORDINATOR, FILES + "/" + file.getString("id") + "/reading", entry);
    }

    @Test
    void aFileIsLookedThroughDecidedAndProposedForTheNext() {
        String heading = "Date,Lat,Long,Species,Odd heading " + UUID.randomUUID();
        Json file = brought(
                heading, i -> "2020-0" + (1 + i % 9) + "-11,-30." + (100 + i) + ",150." + (200 + i) + ",fox,x", 20);
        assertThat(file.getString("fileName")).isEqualTo("struck-2019-2021.csv");
        assertThat(file.getInt("inspection.rows")).isEqualTo(20);
        assertThat(file.getString("inspection.encoding")).isEqualTo("UTF-8");
        assertThat(file.getBoolean("inspection.encodingIsSure")).isTrue();
        assertThat(file.getString("inspection.separator")).isEqualTo("comma");
        assertThat(file.getInt("inspection.headingRow")).isEqualTo(1);
        assertThat(file.getList("inspection.columns.heading"))
                .startsWith("Date", "Lat", "Long", "Species")
                .endsWith("mark");
        assertThat(file.getList("inspection.columns[0].examples")).hasSize(5).contains("2020-01-11");
        assertThat(file.getList("inspection.proposals.field"))
                .contains("day", "decimalLatitude", "decimalLongitude", "scientificName");
        assertThat(open(file)).as("nothing but the cause is open").containsExactly("cause");

        String reading = """
                {"name":"of the shire","columns":{"day":0,"decimalLatitude":1,"decimalLongitude":2,"scientificName":3}%s}
                """;
        decide(file, reading.formatted("")).statusCode(400).body("errors[0].field", equalTo("cause"));
        decide(file, reading.formatted(",\"cause\":\"collisionWithVehicle\",\"animals\":{\" Fox \":\"undecided\"}"))
                .statusCode(201)
                .body("settings.decimalMark", equalTo("point"))
                .body("settings.encoding", equalTo("UTF-8"))
                .body("settings.animals.fox", equalTo("undecided"))
                .body("settings.columns.day", equalTo(0));
        Api.as(COORDINATOR)
                .get(FILES + "/" + file.getString("id") + "/reading")
                .then()
                .statusCode(200)
                .body("name", equalTo("of the shire"));
        Api.as(COORDINATOR)
                .get(FILES + "/" + file.getString("id"))
                .then()
                .statusCode(200)
                .body("readingId", notNullValue());

        Json next = brought(heading, i -> "2021-02-11,-30.1,150.2,fox,x", 5);
        assertThat(next.getString("inspection.former.name")).isEqualTo("of the shire");
        assertThat(next.getString("inspection.former.settings.cause")).isEqualTo("collisionWithVehicle");
    }

    /** RFC 2781, 3.2 for the mark; spreadsheets save "Unicode text" as UTF-16 with tabs (from memory). */
    @ParameterizedTest
    @CsvSource({"UTF-16LE,feff,true", "UTF-16BE,feff,true", "UTF-8,feff,true", "UTF-8,,true", "windows-1252,,false"})
    void encodingsAreToldFromTheOctets(String encoding, String mark, boolean sure) throws IOException {
        String text = table("Datum;Straße;Tierart", i -> "0" + (1 + i % 9) + ".03.2020;Mühlbächle;Fuchs", 12)
                .replace(';', '\t');
        var octets = new ByteArrayOutputStream();
        Charset charset = Charset.forName(encoding);
        if (mark != null) {
            octets.write("\ufeff".getBytes(charset));
        }
        octets.write(text.getBytes(charset));
        bring(octets.toByteArray())
                .statusCode(201)
                .body("inspection.encoding", equalTo(encoding))
                .body("inspection.encodingIsSure", equalTo(sure))
                .body("inspection.separator", equalTo("tab"))
                .body("inspection.columns[0].heading", equalTo("Datum"))
                .body("inspection.columns[1].heading", equalTo("Straße"))
                .body("inspection.columns[1].examples", contains("Mühlbächle"))
                .body("inspection.rows", equalTo(12));
    }

    @Test
    void anotherEncodingIsTriedWithoutKeepingIt() {
        byte[] octets =
                table("Date,Road,Species", i -> "2020-01-01,Höhe,fox", 6).getBytes(StandardCharsets.ISO_8859_1);
        String id = bring(octets).statusCode(201).extract().path("id");
        Api.as(COORDINATOR)
                .get(FILES + "/" + id + "/inspection?encoding=IBM850")
                .then()
                .statusCode(200)
                .body("encoding", equalTo("IBM850"))
                .body("columns[1].examples", contains("H÷he"));
        Api.as(COORDINATOR)
                .get(FILES + "/" + id + "/inspection?encoding=klingon")
                .then()
                .statusCode(400);
        Api.as(COORDINATOR)
                .get(FILES + "/" + id + "/inspection?separator=dash")
                .then()
                .statusCode(400);
        Api.as(COORDINATOR)
                .get(FILES + "/" + id + "/inspection?headingRow=0")
                .then()
                .statusCode(200)
                .body("columns[0].heading", equalTo("column 1"))
                .body("rows", equalTo(7));
    }

    @Test
    void theSameFileIsNotBroughtTwiceUnlessItWasCalledOff() {
        byte[] octets =
                table("Date,Road,Species", i -> "2020-01-01,Mill Road,fox", 3).getBytes(StandardCharsets.UTF_8);
        String id = bring(octets).statusCode(201).extract().path("id");
        bring(octets).statusCode(409).body("detail", containsString(id));
        Api.post(COORDINATOR, FILES + "/" + id + "/calling-off", "{\"reason\":\"the wrong year\"}")
                .statusCode(200)
                .body("calledOffBecause", equalTo("the wrong year"))
                .body("erasedAt", notNullValue())
                .body("inspection", nullValue());
        assertThat(octetsKept(id)).as("nothing of it is kept").isZero();
        Api.post(COORDINATOR, FILES + "/" + id + "/calling-off", "{\"reason\":\"once more\"}")
                .statusCode(409);
        Api.as(COORDINATOR).get(FILES + "/" + id + "/inspection").then().statusCode(409);
        assertThat(Api.get(COORDINATOR, FILES).getList("items.id")).contains(id);
        bring(octets).statusCode(201);
    }

    @Inject
    RecordFileSweeper sweeper;

    @Test
    void aFileThatNobodyTakesInIsForgottenInTime() {
        String id =
                brought("Date,Road,Species", i -> "2020-01-01,Mill Road,fox", 3).getString("id");
        sweeper.run();
        assertThat(octetsKept(id)).as("its day has not come").isEqualTo(1);
        letTimePass(id);
        sweeper.run();
        assertThat(octetsKept(id)).isZero();
        Api.as(COORDINATOR)
                .get(FILES + "/" + id)
                .then()
                .statusCode(200)
                .body("erasedAt", notNullValue())
                .body("inspection", nullValue())
                .body("sha256", notNullValue());
        Api.post(COORDINATOR, FILES + "/" + id + "/reading", "{\"columns\":{\"day\":0},\"cause\":\"unknown\"}")
                .statusCode(409);
    }

    @Transactional
    void letTimePass(String id) {
        entities.createNativeQuery(
                        "update record_files set keep_until = '2020-01-01', version = version + 1 where id = ?1")
                .setParameter(1, UUID.fromString(id))
                .executeUpdate();
    }

    @Transactional
    long octetsKept(String id) {
        return ((Number) entities.createNativeQuery("select count(p.octets) from personal.record_file_parts p"
                                + " join record_files f on f.content_id = p.content_id where f.id = ?1")
                        .setParameter(1, UUID.fromString(id))
                        .getSingleResult())
                .longValue();
    }

    /** PK, 3, 4 is how a ZIP archive begins (APPNOTE 4.3.7), and so a workbook of today. */
    /** NUL, and what only looks like one in JSON, are told and break nothing. */
    @Test
    void aFileWithNulIsRead() {
        Json file = brought("Da\0te,Road,Spe\\u0000cies", i -> "2020-01-01,Mill\0Road,\\u0000fox", 3);
        assertThat(file.getList("inspection.columns.heading")).startsWith("Da␀te", "Road", "Spe\\u0000cies");
        assertThat(file.getList("inspection.columns[1].examples")).containsExactly("Mill␀Road");
    }

    @Test
    void whatIsNoTextOfATableIsRefused() {
        bring(new byte[] {'P', 'K', 3, 4, 20, 0, 6, 0})
                .statusCode(400)
                .body("errors[0].wanted", containsString("save the sheet as CSV"));
        bring(new byte[0]).statusCode(400);
        bring(("Date,Road,Species " + UUID.randomUUID() + "\n").getBytes(StandardCharsets.UTF_8))
                .statusCode(400);
        Api.as(COORDINATOR)
                .contentType("text/csv")
                .body("Date,Road\n2020-01-01,x\n".getBytes(StandardCharsets.UTF_8))
                .post(FILES + "?fileName=" + "x".repeat(201))
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("fileName"));
    }

    @Test
    void nobodyElseSeesSuchFiles() {
        Api.as(DISPATCHER).get(FILES).then().statusCode(403);
    }

    @Test
    void mess1SwappedAxesAreFoundInTheWholeFileAndAsked() {
        Json file = brought("Date,Latitude,Longitude", i -> "2020-03-14,150." + (100 + i) + ",-30." + (100 + i), 30);
        assertThat(open(file)).contains("axesSwapped");
        String reading =
                "{\"columns\":{\"day\":0,\"decimalLatitude\":1,\"decimalLongitude\":2},\"cause\":\"unknown\"%s}";
        decide(file, reading.formatted("")).statusCode(400).body("errors.field", contains("axesSwapped"));
        decide(file, reading.formatted(",\"axesSwapped\":true"))
                .statusCode(201)
                .body("settings.axesSwapped", equalTo(true));
    }

    /** The shared region lies south of the equator. */
    @Test
    void mess1SignsThatAWholeFileLacksAreAskedAndMended() {
        Json file = brought("Date,Latitude,Longitude", i -> "2020-03-14,30." + (100 + i) + ",150." + (100 + i), 30);
        assertThat(open(file)).contains("latitudesWithoutSign").doesNotContain("longitudesWithoutSign", "axesSwapped");
        String reading =
                "{\"columns\":{\"day\":0,\"decimalLatitude\":1,\"decimalLongitude\":2},\"cause\":\"unknown\"%s}";
        decide(file, reading.formatted("")).statusCode(400).body("errors.field", contains("latitudesWithoutSign"));
        decide(file, reading.formatted(",\"latitudesWithoutSign\":true"))
                .statusCode(201)
                .body("settings.latitudesWithoutSign", equalTo(true))
                .body("settings.longitudesWithoutSign", equalTo(false));
        String trial = OldRecords.tryOut(file.getString("id"));
        Api.as(COORDINATOR)
                .get("/api/record-trials/" + trial + "/rows?limit=1")
                .then()
                .statusCode(200)
                .body("items[0].original", containsString(",30.100,"))
                .body("items[0].decimalLatitude", equalTo(-30.1));
    }

    @Test
    void mess2WordsForMissingAreCountedAsMissing() {
        String[] words = {"", "n/a ", "unknown", "-", "keine Angabe"};
        Json file = brought("Date,Road,Condition", i -> "2020-03-14,Mill Road," + words[i % 5], 10);
        assertThat(file.getInt("inspection.columns[2].missing")).isEqualTo(10);
        assertThat(file.getInt("inspection.columns[2].told")).isZero();
    }

    @Test
    void mess4AFileNeedsNoCoordinates() {
        Json file = brought("Date,Road,Direction,Chainage (km)", i -> "2020-03-14,Mill Road,N," + i + ".4", 10);
        assertThat(file.getList("inspection.proposals.field")).contains("road", "direction", "chainage");
        assertThat(open(file)).as("the heading names the unit").containsExactly("cause");
        Json without = brought("Date,Road,Chainage", i -> "2020-03-14,Mill Road," + i, 10);
        assertThat(open(without)).contains("chainageUnit");
    }

    @Test
    void mess5DirectionsThatMeanNothingAreListedToDecide() {
        Json file =
                brought("Date,Road,km,Direction", i -> "2020-03-14,Mill Road,1," + (i % 2 == 0 ? "NB" : "sunward"), 10);
        List<String> words = file.getList("inspection.words.word");
        List<String> meanings = file.getList("inspection.words.meaning");
        assertThat(meanings.get(words.indexOf("NB"))).isEqualTo("north");
        assertThat(meanings.get(words.indexOf("sunward"))).isNull();
    }

    @Test
    void mess6OrdersOfDaysAreAskedWhereNoCellTells() {
        Json open = brought("Date,Road", i -> (1 + i % 9) + "/4/2020,Mill Road", 10);
        assertThat(open(open)).contains("dayOrder");
        String reading = "{\"columns\":{\"day\":0,\"road\":1},\"cause\":\"unknown\"%s}";
        decide(open, reading.formatted("")).statusCode(400).body("errors.field", hasItem("dayOrder"));
        decide(open, reading.formatted(",\"dayOrder\":\"dayMonthYear\"")).statusCode(201);
        Json told = brought("Date,Road", i -> (1 + i * 2) + "/4/2020,Mill Road", 10);
        assertThat(open(told)).as("19/4 is no month").containsExactly("cause");
        decide(told, reading.formatted("")).statusCode(201).body("settings.dayOrder", equalTo("dayMonthYear"));
    }

    @Test
    void mess9AnimalsAreMatchedByWholeWordsAndOthersListed() {
        String[] animals = {"dog", "Hostilia nemo", "catbird"};
        Json file = brought("Date,Road,Species", i -> "2020-03-14,Mill Road," + animals[i % 3], 9);
        List<String> words = file.getList("inspection.words.word");
        List<String> meanings = file.getList("inspection.words.meaning");
        assertThat(words).containsExactlyInAnyOrder(animals);
        assertThat(meanings.get(words.indexOf("dog"))).isEqualTo("domestic");
        assertThat(meanings.get(words.indexOf("catbird"))).isNull();
        decide(
                        file,
                        "{\"columns\":{\"day\":0,\"road\":1,\"scientificName\":2},\"cause\":\"unknown\",\"animals\":{\"catbird\":\"taxon:7\"}}")
                .statusCode(400)
                .body("errors[0].field", equalTo("animals.catbird"));
    }

    @Test
    void titlesEmptyLinesAndSemicolonsWithDecimalCommas() {
        String text = "Struck on the roads of the shire 2019-2021;;;\n;;;\n"
                + table(
                        "Datum;Breite;Länge",
                        i -> "1" + i % 9 + ".03.2020;-30," + (1000 + i) + ";150," + (2000 + i),
                        12)
                + ";;;\n";
        bring(("sep=;\n" + text).getBytes(StandardCharsets.UTF_8))
                .statusCode(201)
                .body("inspection.separator", equalTo("semicolon"))
                .body("inspection.headingRow", equalTo(3))
                .body("inspection.titles", hasSize(1))
                .body("inspection.titles[0]", containsString("2019-2021"))
                .body("inspection.rows", equalTo(12))
                .body("inspection.emptyRows", equalTo(1))
                .body("inspection.proposals.field", hasItem("decimalLatitude"));
    }

    @Test
    void emptyCellsThatMeanTheOnesAboveAreDecidedByField() {
        Json file = brought("Date,Road,km", i -> (i % 3 == 0 ? "2020-03-14" : "") + ",Mill Road," + i, 9);
        assertThat(file.getList("inspection.questions.key")).contains("asAbove");
        String reading = "{\"columns\":{\"day\":0,\"road\":1},\"cause\":\"unknown\",\"asAbove\":[%s]}";
        decide(file, reading.formatted("\"locality\"")).statusCode(400).body("errors[0].field", equalTo("asAbove"));
        decide(file, reading.formatted("\"colour\"")).statusCode(400);
        decide(file, reading.formatted("null")).statusCode(400);
        decide(file, reading.formatted("\"day\"")).statusCode(201).body("settings.asAbove", contains("day"));
        String trial = OldRecords.tryOut(file.getString("id"));
        Api.as(COORDINATOR)
                .get("/api/record-trials/" + trial + "/rows?verdict=refused")
                .then()
                .statusCode(200)
                .body("items", hasSize(0));
    }

    @Test
    void aReadingNamesEverythingThatIsWrong() {
        Json file = brought("Date,Road,km", i -> "2020-03-14,Mill Road,1", 4);
        decide(file, """
                {"columns":{"day":0,"road":0,"chainage":9,"colour":1},"cause":"boredom","epsg":4326,"uncertaintyMetres":-1,
                 "directions":{"sunward":"sunward"}}
                """)
                .statusCode(400)
                .body("errors.field", hasItem("columns.road"))
                .body("errors.field", hasItem("columns.chainage"))
                .body("errors.field", hasItem("columns.colour"))
                .body("errors.field", hasItem("cause"))
                .body("errors.field", hasItem("epsg"))
                .body("errors.field", hasItem("uncertaintyMetres"))
                .body("errors.field", hasItem("directions.sunward"));
        decide(file, "{\"columns\":{\"road\":1},\"cause\":\"unknown\"}").statusCode(400);
        Api.as(COORDINATOR)
                .get(FILES + "/" + file.getString("id") + "/reading")
                .then()
                .statusCode(404);
    }
}
