package org.culvert.exchange.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.exchange.records.OldRecords.decide;
import static org.culvert.exchange.records.OldRecords.entry;
import static org.culvert.exchange.records.OldRecords.send;
import static org.culvert.exchange.records.OldRecords.take;
import static org.culvert.exchange.records.OldRecords.tried;
import static org.culvert.exchange.records.OldRecords.tryOut;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.hamcrest.Matchers.containsString;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import javax.sql.DataSource;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.call.CollisionReport;
import org.culvert.call.IncidentService;
import org.culvert.support.Api;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Old records from the file to the register. Each test has years of its own, in which nothing else happened. */
@QuarkusTest
@OnOldestDatabase
class RecordTakingResourceTest {
    private static final String WALLABY = "swamp wallaby";

    @Inject
    DataSource database;

    @Inject
    IncidentService incidents;

    @BeforeEach
    void layTheWorld() {
        World.shared();
    }

    private static String row(String day, String time, double longitude, String animal) {
        return String.format(Locale.ROOT, "%s,%s,,,-30.50000,%.5f,%s,1,", day, time, longitude, animal);
    }

    /** The kinds of mess are those of the network's own list of what real files look like. */
    @Test
    void aFileOfElevenKindsOfMessIsTriedTakenMendedAndTakenAgain() {
        List<String> rows = List.of(
                row("1971-03-01", "18:30", 150.01, WALLABY),
                // 1: latitude and longitude under each other's headings
                "1971-03-08,,,,150.02,-30.5,swamp wallaby,1,",
                // 2: words for missing
                "1971-03-15,n/a,Mill Road,unknown ,-,NULL,swamp wallaby,1,",
                // 3: a pin of another road
                "1971-03-22,,River Lane,,-30.50000,150.01000,swamp wallaby,1,",
                // 4: road and chainage alone, in steps of 100 m
                "1971-03-29,,Mill Road,4.5,,,swamp wallaby,1,",
                // 5 and 7: a chainage in words, beyond the compass
                "1971-04-05,,Mill Road 5K,,,,swamp wallaby,1,ramp",
                // 6: a year alone, and a day that is none
                "1971,,,,-30.5,150.03,swamp wallaby,1,",
                "1971-02-30,,,,-30.5,150.04,swamp wallaby,1,",
                // 8: twice word for word, and two calls about one animal
                row("1971-05-10", "07:10", 150.06, WALLABY),
                row("1971-05-10", "07:10", 150.06, WALLABY),
                row("1971-05-10", "09:40", 150.0601, "wallabies"),
                // 9: no wildlife, a word within another, a spelling
                row("1971-05-17", "", 150.07, "cat"),
                row("1971-05-24", "", 150.07, "Catatonia"),
                row("1971-05-31", "", 150.08, "swamp walaby"),
                // 10: office hours
                row("1971-06-07", "10:00", 150.09, WALLABY),
                // 11: a place of two decimals, and so of kilometres
                "1971-06-14,,,,-30.50,150.02,swamp wallaby,1,");
        String trial = tried(rows);

        var told = Api.get(COORDINATOR, "/api/record-trials/" + trial);
        assertThat(told.getLong("rowsRead")).isEqualTo(rows.size());
        assertThat(told.getLong("rowsRight")
                        + told.getLong("rowsDoubtful")
                        + told.getLong("rowsApart")
                        + told.getLong("rowsRefused"))
                .isEqualTo(rows.size());
        assertThat(verdict(trial, 2)).isEqualTo("right");
        assertThat(verdict(trial, 3)).isEqualTo("refused");
        assertThat(findings(trial, 3)).contains("swappedAxes");
        assertThat(findings(trial, 4)).contains("routeOnly");
        assertThat(findings(trial, 5)).contains("roadInDoubt");
        assertThat(verdict(trial, 5)).isEqualTo("doubtful");
        assertThat(one(trial, 6, "chainageMetres")).isEqualTo("4500.0");
        assertThat(one(trial, 7, "chainageMetres")).isEqualTo("5000.0");
        assertThat(findings(trial, 8)).contains("yearAlone");
        assertThat(findings(trial, 9)).contains("unreadableDay");
        assertThat(verdict(trial, 9)).isEqualTo("refused");
        assertThat(findings(trial, 11)).contains("repeatedInFile");
        assertThat(verdict(trial, 11)).isEqualTo("apart");
        assertThat(one(trial, 11, "oneWith")).isEqualTo("10");
        assertThat(findings(trial, 12)).contains("perhapsOneAnimal");
        assertThat(one(trial, 12, "oneWith")).isEqualTo("10");
        assertThat(findings(trial, 13)).contains("domestic");
        assertThat(verdict(trial, 13)).isEqualTo("apart");
        assertThat(findings(trial, 14)).contains("unknownAnimal");
        assertThat(findings(trial, 15)).contains("unknownAnimal");
        assertThat(Api.get(COORDINATOR, "/api/record-trials/" + trial).getList("summary.unknownAnimals.words"))
                .contains("catatonia", "swamp walaby");
        assertThat(
                        count(
                                "select count(*) from incidents where reported_at < '1972-01-01' and reported_at >= '1971-01-01'"))
                .as("a trial enters nothing")
                .isZero();

        Api.post(COORDINATOR, "/api/record-trials/" + trial + "/taking", entry("all", true, false))
                .statusCode(409)
                .body("detail", containsString("refused"));
        String[] taking = take(trial, "good", false, false);
        assertThat(taking[1]).isEqualTo("done");
        long taken = Api.get(COORDINATOR, "/api/record-takings/" + taking[0]).getLong("rowsTaken");
        assertThat(taken).isEqualTo(told.getLong("rowsRight"));

        String rest = rest(trial, false);
        assertThat(rest).contains("what is wrong").contains("1971-02-30,,,,-30.5,150.04,swamp wallaby,1,");
        assertThat(lines(rest(trial, true)) - 1 + taken)
                .as("taken and rest are all")
                .isEqualTo(rows.size());

        String mended = rest.replace("1971-02-30", "1971-02-28")
                .replace(",,,,150.02,-30.5,", ",,,,-30.5,150.02,")
                .replace("Catatonia", WALLABY)
                .replace("swamp walaby", WALLABY);
        String again = send(mended);
        decide(again, OldRecords.COLUMNS);
        String second = tryOut(again);
        assertThat(Api.get(COORDINATOR, "/api/record-trials/" + second).getLong("rowsRefused"))
                .isZero();
        String[] rested = take(second, "all", true, true);
        assertThat(rested[1]).isEqualTo("done");
        long takenAgain =
                Api.get(COORDINATOR, "/api/record-takings/" + rested[0]).getLong("rowsTaken");
        long apart = told.getLong("rowsApart");
        assertThat(taken + takenAgain + apart).isEqualTo(rows.size());
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void countsAddUpForSeededFiles(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        List<String> rows = new ArrayList<>();
        List<String> animals =
                List.of(WALLABY, "koala", "Pteropus poliocephalus", "dog", "", "turtles", "something", "KOALA ");
        List<String> days = List.of("1980-0%d-1%d", "198%d-13-0%d", "198%d", "n/a", "1981-1%d-0%d");
        for (int i = 0; i < 300; i++) {
            String day = days.get(random.nextInt(days.size()))
                    .formatted(random.nextInt(3), 1 + random.nextInt(9))
                    .replace("-00", "-01");
            boolean chainage = random.nextInt(3) == 0;
            rows.add(String.join(
                    ",",
                    day,
                    random.nextInt(2) == 0 ? "" : "1" + random.nextInt(10) + ":15",
                    chainage ? List.of("Mill Road", "River Ln", "Elsewhere").get(random.nextInt(3)) : "",
                    chainage ? String.valueOf(random.nextInt(13)) : "",
                    chainage ? "" : String.format(Locale.ROOT, "%.5f", -30.5 + random.nextDouble(-0.001, 0.001)),
                    chainage ? "" : String.format(Locale.ROOT, "%.5f", 150 + random.nextDouble(0, 0.1)),
                    animals.get(random.nextInt(animals.size())),
                    List.of("1", "", "2", "many", "0").get(random.nextInt(5)),
                    random.nextInt(9) == 0 ? "\"by the \"\"old\"\" mill, " + i + "\"" : ""));
        }
        String trial = tried(rows);
        var told = Api.get(COORDINATOR, "/api/record-trials/" + trial);
        long right = told.getLong("rowsRight");
        long doubtful = told.getLong("rowsDoubtful");
        long apart = told.getLong("rowsApart");
        long refused = told.getLong("rowsRefused");
        assertThat(right + doubtful + apart + refused).as("seed %d", seed).isEqualTo(300);
        assertThat(List.of(right, doubtful, apart, refused)).allMatch(count -> count > 0);
        for (String verdict : List.of("right", "doubtful", "apart", "refused")) {
            assertThat(told.getLong("rows" + verdict.substring(0, 1).toUpperCase(Locale.ROOT) + verdict.substring(1)))
                    .isEqualTo(
                            Api.get(COORDINATOR, "/api/record-trials/" + trial + "/rows?limit=1000&verdict=" + verdict)
                                    .getList("items.number")
                                    .size());
        }
        assertThat(lines(csv("/api/record-trials/" + trial + "/report.csv"))).isGreaterThanOrEqualTo(301);

        String[] taking = take(trial, "good", seed % 2 == 0, seed % 2 == 0);
        assertThat(taking[1]).isEqualTo("done");
        var over = Api.get(COORDINATOR, "/api/record-takings/" + taking[0]);
        long taken = over.getLong("rowsTaken");
        assertThat(taken).isEqualTo(right + (seed % 2 == 0 ? doubtful : 0));
        assertThat(taken + lines(rest(trial, true)) - 1).isEqualTo(300);
        String ofImport = "import_id = '" + over.getString("importId") + "'";
        assertThat(count("select count(*) from calls where " + ofImport)).isEqualTo(taken);
        assertThat(count("select count(*) from reported_animals where " + ofImport))
                .isEqualTo(taken);
        assertThat(count("select count(*) from personal.original_rows where " + ofImport))
                .isEqualTo(taken);
        long entered = count("select count(*) from incidents where " + ofImport);
        assertThat(count("select count(*) from closings where " + ofImport)).isEqualTo(entered);
        if (seed % 2 == 0) {
            assertThat(entered).isLessThan(taken);
        } else {
            assertThat(entered).isEqualTo(taken);
        }
    }

    @Test
    void whereOneRowIsRefusedAtTheEndNothingIsTakenAndTheRowIsNamed() throws SQLException {
        List<String> rows = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            rows.add(row("1973-%02d-%02d".formatted(1 + i / 4, 1 + i % 4 * 7), "12:00", 150.01 + i * 0.002, WALLABY));
        }
        String trial = tried(rows);
        String before = everything();
        change(
                "update personal.record_trial_rows set individual_count = 5000 where trial_id = ? and number = 41",
                trial);
        String[] refused = take(trial, "all", true, false);
        assertThat(refused[1]).isEqualTo("failed");
        assertThat(Api.get(COORDINATOR, "/api/record-takings/" + refused[0]).getString("failure"))
                .contains("Row 41 cannot be kept, and so none was taken");
        assertThat(everything()).as("nothing of it is kept").isEqualTo(before);

        change("update personal.record_trial_rows set individual_count = 5 where trial_id = ? and number = 41", trial);
        assertThat(take(trial, "all", true, false)[1]).isEqualTo("done");
        assertThat(everything()).isNotEqualTo(before);
    }

    @Test
    void evidenceCountsTheCollisionsThatWereTakenAndNothingElse() {
        List<String> rows = List.of(
                row("1974-02-03", "", 150.011, WALLABY),
                row("1974-07-03", "19:45", 150.022, "koala"),
                "1974-04-03,,Mill Road,7.2,,,swamp wallaby,1,",
                "1974-05-03,,Mill Road,,,,swamp wallaby,1,",
                row("1974-06-03", "", 150.033, "dog"));
        String trial = tried(rows);
        assertThat(take(trial, "good", true, false)[1]).isEqualTo("done");
        List<CollisionReport> reports = incidents.listCollisionReports(
                Instant.parse("1974-01-01T00:00:00Z"), Instant.parse("1975-01-01T00:00:00Z"));
        assertThat(reports).hasSize(4).allMatch(CollisionReport::collision);
        assertThat(reports).filteredOn(CollisionReport::hasPlace).hasSize(3);
        assertThat(reports)
                .filteredOn(report -> report.roadLinkId() != null)
                .extracting(report -> Math.round(report.chainageMetres() / 100))
                .doesNotHaveDuplicates()
                .contains(72L);
        // A day without an hour is an interval in the region's zone: eleven hours ahead in summer, ten in winter
        assertThat(reports.get(0).happenedAt()).isNull();
        assertThat(reports.get(0).happenedNotBefore()).isEqualTo(Instant.parse("1974-02-02T13:00:00Z"));
        assertThat(reports.get(0).reportedAt()).isEqualTo(Instant.parse("1974-02-03T12:59:59Z"));
        assertThat(reports.get(3).happenedAt()).isEqualTo(Instant.parse("1974-07-03T09:45:00Z"));
        assertThat(reports.get(3).taxonGroups()).containsExactly("koalas");
        assertThat(Api.get(COORDINATOR, "/api/incidents/" + reports.get(0).incidentId())
                        .getString("progress"))
                .isEqualTo("closed");
    }

    @Test
    void recordsThatAreSentTwiceAreFoundInTheRegister() {
        List<String> rows = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            rows.add(row("1975-%02d-11".formatted(1 + i), i % 2 == 0 ? "21:00" : "", 150.02 + i * 0.003, WALLABY));
        }
        String first = tried(rows);
        assertThat(Api.get(COORDINATOR, "/api/record-trials/" + first).getLong("rowsRight"))
                .isEqualTo(12);
        assertThat(take(first, "all", false, false)[1]).isEqualTo("done");
        List<String> more = new ArrayList<>(rows);
        more.add(row("1975-12-24", "21:00", 150.02, WALLABY));
        String second = tried(more);
        var told = Api.get(COORDINATOR, "/api/record-trials/" + second);
        assertThat(told.getLong("rowsDoubtful")).isEqualTo(12);
        assertThat(told.getLong("rowsRight")).isEqualTo(1);
        long number =
                count("select min(number) from incidents where reported_at between '1975-01-01' and '1975-01-31'");
        assertThat(Api.get(COORDINATOR, "/api/record-trials/" + second + "/rows?finding=inRegister")
                        .getString("items[0].findings[0].detail"))
                .contains("Incident " + number + " of the register");
        assertThat(take(second, "good", false, false)[1]).isEqualTo("done");
        assertThat(count("select count(*) from incidents where reported_at between '1975-01-01' and '1976-01-01'"))
                .isEqualTo(13);
    }

    @Test
    void rowsAboutOneAnimalBecomeCallsOfOneIncidentWhereThatIsSaid() {
        String trial = tried(List.of(
                row("1976-02-03", "08:00", 150.05, WALLABY),
                row("1976-02-03", "11:00", 150.0502, WALLABY),
                row("1976-02-04", "06:00", 150.0504, "wallabia bicolor"),
                row("1976-09-03", "08:00", 150.05, WALLABY)));
        assertThat(take(trial, "all", true, true)[1]).isEqualTo("done");
        List<CollisionReport> reports = incidents.listCollisionReports(
                Instant.parse("1976-01-01T00:00:00Z"), Instant.parse("1977-01-01T00:00:00Z"));
        assertThat(reports).hasSize(2);
        var incident = Api.get(COORDINATOR, "/api/incidents/" + reports.get(0).incidentId());
        assertThat(incident.getList("calls")).hasSize(3);
        assertThat(incident.getString("progress")).isEqualTo("closed");
        assertThat(Api.get(COORDINATOR, "/api/incidents/" + reports.get(0).incidentId() + "/origin")
                        .getList("rows.rowNumber"))
                .hasToString("[2, 3, 4]");
    }

    @Test
    void whereRoadsOrReadingsOrRecordsChangedSinceATrialIsStale() {
        String file = send(List.of(row("1977-02-03", "08:00", 150.05, WALLABY)));
        Api.post(COORDINATOR, "/api/record-files/" + file + "/trials", "").statusCode(409);
        decide(file, OldRecords.COLUMNS);
        String trial = tryOut(file);
        decide(file, OldRecords.COLUMNS);
        Api.post(COORDINATOR, "/api/record-trials/" + trial + "/taking", entry("good", true, false))
                .statusCode(409)
                .body("detail", containsString("read otherwise"));
        String second = tryOut(file);
        Api.post(COORDINATOR, "/api/record-trials/" + trial + "/taking", entry("good", true, false))
                .statusCode(409)
                .body("detail", containsString("later trial"));
        Api.as(COORDINATOR).get("/api/record-trials/" + trial + "/rows").then().statusCode(409);
        importOtherRoads();
        Api.post(COORDINATOR, "/api/record-trials/" + second + "/taking", entry("good", true, false))
                .statusCode(409)
                .body("detail", containsString("Other roads were imported"));
        World.shared();
        String third = tryOut(file);
        assertThat(take(third, "good", true, false)[1]).isEqualTo("done");
        Api.post(COORDINATOR, "/api/record-trials/" + third + "/taking", entry("good", true, false))
                .statusCode(409)
                .body("detail", containsString("were taken in"));
        Api.post(COORDINATOR, "/api/record-files/" + file + "/trials", "")
                .statusCode(409)
                .body("detail", containsString("file of their own"));
    }

    @Test
    void nobodyIsToldAsNewsOfWhatIsYearsOld() {
        String subscription = Api.make(ADMIN, "/api/event-subscriptions", """
                        {"address":"http://localhost:9/old-records","purpose":"a test",
                         "types":["culvert.incident.logged","culvert.incident.closed"]}
                        """).getString("id");
        String trial = tried(List.of(row("1978-02-03", "08:00", 150.05, WALLABY)));
        String[] taking = take(trial, "good", true, false);
        assertThat(taking[1]).isEqualTo("done");
        String importId =
                Api.get(COORDINATOR, "/api/record-takings/" + taking[0]).getString("importId");
        assertThat(count("select count(*) from incidents where import_id = '" + importId + "'"))
                .isEqualTo(1);
        assertThat(count("""
                        select count(*) from events e join incidents i on e.subject = 'incidents/' || i.id
                        where i.import_id = '%s'
                        """.formatted(importId))).isZero();
        String incident = World.call("Wallabia bicolor", 150.03, "").getString("incidentId");
        assertThat(count("select count(*) from events where subject = 'incidents/" + incident + "'"))
                .as("but of what happens now")
                .isPositive();
        // Or all that other tests log would be sent there again and again
        Api.change(ADMIN, "/api/event-subscriptions/" + subscription, "/ending", "{\"reason\":\"the test is over\"}")
                .statusCode(200);
    }

    @Test
    void anIncidentTellsTheRowThatItCameFromToThoseWhoMaySee() {
        String odd =
                "1979-02-03,08:00,,,-30.50000,150.05000,swamp wallaby,1,\"=HYPERLINK(\"\"x\"\"), said Ms Example\"";
        String trial = tried(List.of(odd, "1979-02-31,,,,-30.5,150.04,swamp wallaby,1,=1+1"));
        assertThat(take(trial, "good", true, false)[1]).isEqualTo("done");
        UUID incident = incidents
                .listCollisionReports(Instant.parse("1979-01-01T00:00:00Z"), Instant.parse("1980-01-01T00:00:00Z"))
                .get(0)
                .incidentId();
        var origin = Api.get(COORDINATOR, "/api/incidents/" + incident + "/origin");
        assertThat(origin.getString("rows[0].original")).isEqualTo(odd);
        assertThat(origin.getInt("rows[0].rowNumber")).isEqualTo(2);
        assertThat(origin.getString("rows[0].sha256")).matches("[0-9a-f]{64}");
        Api.as(DISPATCHER).get("/api/incidents/" + incident + "/origin").then().statusCode(403);
        String typed = World.call("Wallabia bicolor", 150.03, "").getString("incidentId");
        Api.as(COORDINATOR).get("/api/incidents/" + typed + "/origin").then().statusCode(404);

        assertThat(rest(trial, false)).as("their file, as it was").contains(",swamp wallaby,1,=1+1,\"");
        assertThat(csv("/api/record-trials/" + trial + "/report.csv")).contains("refused,");
        Api.as(DISPATCHER)
                .get("/api/record-trials/" + trial + "/report.csv")
                .then()
                .statusCode(403);
    }

    @Test
    void aCellThatAProgramWouldTakeForAFormulaIsMadeHarmlessInTheReport() {
        String file = send("remarks,date,latitude,longitude,species\r\n=1+1,1979-05-31,-30.5,150.04,swamp wallaby\r\n"
                + "=2+2,1979-05-32,-30.5,150.04,swamp wallaby\r\n");
        decide(file, """
                {"columns":{"remarks":0,"day":1,"decimalLatitude":2,"decimalLongitude":3,"scientificName":4},
                 "dayOrder":"yearMonthDay","cause":"collisionWithVehicle"}
                """);
        String trial = tryOut(file);
        assertThat(csv("/api/record-trials/" + trial + "/report.csv"))
                .contains("\"'=1+1,1979-05-31")
                .contains("\"'=2+2,1979-05-32");
        assertThat(rest(trial, false)).contains("\r\n=2+2,1979-05-32");
    }

    @Test
    void textsOfRowsAreErasedWhenTheDutyToKeepPeopleHasPassed() throws SQLException {
        String trial = tried(List.of("1979-08-03,08:00,,,-30.50000,150.05000,swamp wallaby,1,said Ms Example"));
        String[] taking = take(trial, "good", true, false);
        String importId =
                Api.get(COORDINATOR, "/api/record-takings/" + taking[0]).getString("importId");
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            try (var statement = connection.createStatement()) {
                statement.execute("""
                        insert into personal.original_rows (id, record_file_id, row_number, text, recorded_at, recorded_by,
                            import_id)
                        select gen_random_uuid(), record_file_id, 99, 'from long ago', now() - interval '250 years',
                            recorded_by, import_id
                        from personal.original_rows where import_id = '%s'
                        """.formatted(importId));
                statement.execute("""
                        insert into retention_rules (id, jurisdiction, kind, years, source, read_on, valid_from, recorded_at,
                            recorded_by)
                        select gen_random_uuid(), 'network', 'people', 80, 'a test', '2020-01-01', '2000-01-01', now(),
                            recorded_by from imports where id = '%s'
                        """.formatted(importId));
                statement.execute("select personal.erase_original_rows(now())");
                try (ResultSet rows =
                        statement.executeQuery("select row_number, text from personal.original_rows where import_id = '"
                                + importId + "' order by row_number")) {
                    rows.next();
                    assertThat(rows.getString(2)).contains("Ms Example");
                    rows.next();
                    assertThat(rows.getLong(1)).isEqualTo(99);
                    assertThat(rows.getString(2)).isNull();
                }
            } finally {
                connection.rollback();
                connection.setAutoCommit(true);
            }
        }
    }

    private static void importOtherRoads() {
        Api.as(ADMIN)
                .contentType("application/geo+json")
                .queryParam("name", "roads that came between")
                .body("""
                        {"type":"FeatureCollection","features":[{"type":"Feature","properties":{"name":"Mill Road"},
                         "geometry":{"type":"LineString","coordinates":[[150.0,-30.5],[150.1,-30.5]]}}]}
                        """)
                .post("/api/road-networks")
                .then()
                .statusCode(201);
    }

    private static String verdict(String trial, long row) {
        return one(trial, row, "verdict");
    }

    private static List<String> findings(String trial, long row) {
        return Api.get(COORDINATOR, "/api/record-trials/" + trial + "/rows?limit=1&after=" + (row - 1))
                .getList("items[0].findings.kind");
    }

    private static String one(String trial, long row, String field) {
        return Api.get(COORDINATOR, "/api/record-trials/" + trial + "/rows?limit=1&after=" + (row - 1))
                .getString("items[0]." + field);
    }

    private static String rest(String trial, boolean apart) {
        return csv("/api/record-trials/" + trial + "/rest.csv?apart=" + apart);
    }

    private static String csv(String path) {
        return Api.as(COORDINATOR)
                .accept("text/csv")
                .get(path)
                .then()
                .statusCode(200)
                .extract()
                .asString();
    }

    private static long lines(String csv) {
        return csv.lines().count();
    }

    private long count(String query) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(query);
                ResultSet rows = statement.executeQuery()) {
            rows.next();
            return rows.getLong(1);
        } catch (SQLException e) {
            throw new IllegalStateException(query, e);
        }
    }

    private void change(String update, String trial) throws SQLException {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(update)) {
            statement.setObject(1, UUID.fromString(trial));
            assertThat(statement.executeUpdate()).isEqualTo(1);
        }
    }

    /** How many rows there are of everything that a taking writes. */
    private String everything() {
        StringBuilder told = new StringBuilder();
        for (String table : List.of(
                "imports",
                "places",
                "incidents",
                "calls",
                "reported_animals",
                "closings",
                "incident_origins",
                "personal.words",
                "personal.original_rows")) {
            told.append(table)
                    .append(' ')
                    .append(count("select count(*) from " + table))
                    .append('\n');
        }
        return told.toString();
    }
}
