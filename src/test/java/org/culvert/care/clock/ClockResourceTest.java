package org.culvert.care.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.care.clock.limit.Length;
import org.culvert.platform.Page;
import org.culvert.support.Api;
import org.culvert.support.Clocks;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.hibernate.SessionFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
class ClockResourceTest {
    private static final String SHIPPED = "01920000-0000-7000-8000-000000055";

    @Inject
    DataSource database;

    @Inject
    EntityManager entities;

    @Inject
    SessionFactory sessions;

    @Inject
    ClockService clocks;

    private World world;
    private String group;
    private String taxon;

    /** A kind of its own, so that limits of one test do not bind the animals of another. */
    @BeforeEach
    void makeWorld() {
        world = World.shared();
        String letters = UUID.randomUUID().toString().replaceAll("[^a-f]", "x").replace("-", "");
        group = "clocked-" + letters;
        taxon = "Horologia " + letters;
        Api.post(ADMIN, "/api/taxon-groups", """
                [{"key":"%s","name":"%s","pouch":false,"clutches":false,"introduced":false}]
                """.formatted(group, group)).statusCode(200);
        Api.post(ADMIN, "/api/taxa", """
                [{"scientificName":"%s","vernacularName":"clocked one","taxonRank":"species","taxonGroup":"%s"}]
                """.formatted(taxon, group)).statusCode(200);
    }

    private String limit(String more) {
        return Api.make(COORDINATOR, "/api/time-limits", """
                        {"jurisdiction":"network","kind":"policy","taxonGroup":"%s","words":"made for a test",
                         "source":"made for a test","readOn":"2026-01-05","reviewBy":"2090-01-01","validFrom":"2020-01-01",
                         %s}
                        """.formatted(group, more))
                .getString("id");
    }

    private String inCare(String grounds) {
        return limit("""
                "binds":"anyone","starts":"received","ends":["caseEnded"],"length":180,"lengthUnit":"days",
                "warnBeforeHours":720,"extensionGrounds":[%s]
                """.formatted(grounds));
    }

    private String tell(String more) {
        return limit("""
                "binds":"anyone","starts":"received","ends":["toldAuthority"],"length":24,"lengthUnit":"hours",
                "warnBeforeHours":6%s
                """.formatted(more));
    }

    private String newCase(Instant foundAt) {
        return newCase(taxon, foundAt);
    }

    private String newCase(String name, Instant foundAt) {
        String incident = World.call(name, 150.04, "").getString("incidentId");
        return Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"%s","holder":{"memberId":"%s"}}
                        """.formatted(incident, name, foundAt, world.rescuer))
                .getString("id");
    }

    private static Instant ago(Duration time) {
        return Clocks.now().minus(time);
    }

    private Json clock(String caseId, String limit) {
        return Api.get(COORDINATOR, "/api/cases/" + caseId + "/clocks")
                .under("clocks.find { it.limitId == '" + limit + "' }");
    }

    /**
     * What is shipped is what was read, each with its source: 312 IAC 9-10-9; 2 CCR 406-14-1405; AGFC 09.12; general licences
     * GL07 and GL08; Department of Conservation; WAC 220-450; NR 19.78; C-61.1 r. 5 s. 36.
     */
    @Test
    void theShippedLimitsAreThoseThatWereRead() {
        List<Map<String, Object>> shipped = Api.get(OFFICER, "/api/time-limits")
                .<Map<String, Object>>getList("findAll { it.id.startsWith('" + SHIPPED + "') }");
        assertThat(shipped)
                .extracting(row -> row.get("jurisdiction") + " " + row.get("length") + " " + row.get("lengthUnit") + " "
                        + row.get("starts"))
                .containsExactlyInAnyOrder(
                        "US-IN 24 hours takenIntoThisCustody",
                        "US-CO 24 hours takenIntoThisCustody",
                        "US-AR 72 hours stabilised",
                        "GB-ENG 15 days takenIntoThisCustody",
                        "GB-ENG 6 weeks takenIntoThisCustody",
                        "NZ 3 months received",
                        "US-WA 180 days received",
                        "US-WI 180 days received",
                        "US-CO 180 days received",
                        "CA-QC 1 years received",
                        "US-WA 24 hours received",
                        "US-WA 72 hours received",
                        "US-WA 24 hours deathInCare",
                        "US-WI 48 hours received");
        assertThat(shipped).allSatisfy(row -> {
            assertThat((String) row.get("source")).contains("Check your local code and your licensed vet.");
            assertThat(row.get("kind")).isEqualTo("statute");
            assertThat(row.get("holdsHere")).as("the region is in Australia").isEqualTo(false);
        });
        assertThat(shipped.stream()
                        .filter(row -> row.get("id").equals(SHIPPED + "007"))
                        .findFirst()
                        .orElseThrow()
                        .get("extensionGrounds"))
                .isEqualTo(List.of("over-wintering", "moulting", "placement"));
    }

    /** The calendar of an engine that nobody here wrote: PostgreSQL adds to the time of the wall clock. */
    @Test
    void theCalendarIsThatOfPostgres() throws SQLException {
        var random = new Random(55);
        List<String> zones =
                List.of("Australia/Sydney", "Australia/Lord_Howe", "America/New_York", "Europe/London", "UTC");
        int compared = 0;
        try (Connection connection = database.getConnection();
                var add = connection.prepareStatement("""
                        select ((timestamptz 'epoch' + ? * interval '1 second') at time zone ? + ?::interval) at time zone ?
                        """)) {
            for (int i = 0; i < 3000; i++) {
                ZoneId zone = ZoneId.of(zones.get(random.nextInt(zones.size())));
                long second = 1_600_000_000L + random.nextInt(400_000_000);
                Length.Unit unit = Length.Unit.values()[1 + random.nextInt(4)];
                int amount = 1 + random.nextInt(unit == Length.Unit.days ? 400 : 30);
                Instant ours = new Length(amount, unit).after(Instant.ofEpochSecond(second), zone);
                LocalDateTime wall = LocalDateTime.ofInstant(ours, zone);
                if (zone.getRules().getValidOffsets(wall).size() != 1) {
                    // Of a time that comes twice either is as good
                    continue;
                }
                add.setLong(1, second);
                add.setString(2, zone.getId());
                add.setString(3, amount + " " + unit);
                add.setString(4, zone.getId());
                try (ResultSet theirs = add.executeQuery()) {
                    assertThat(theirs.next()).isTrue();
                    assertThat(theirs.getTimestamp(1).toInstant())
                            .as("%s after %s in %s", amount + " " + unit, Instant.ofEpochSecond(second), zone)
                            .isEqualTo(ours);
                }
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(2900);
    }

    @Test
    void aLimitRunsWarnsAndIsExtendedOnItsGroundsOrByAnOrderAlone() {
        String limit = inCare("\"moulting\"");
        String fresh = newCase(ago(Duration.ofDays(10)));
        String late = newCase(ago(Duration.ofDays(170)));
        String over = newCase(ago(Duration.ofDays(190)));
        assertThat(clock(fresh, limit).getString("state")).isEqualTo("running");
        assertThat(clock(late, limit).getString("state")).isEqualTo("warned");
        Json overdue = clock(over, limit);
        assertThat(overdue.getString("state")).isEqualTo("overdue");
        assertThat(overdue.getString("note")).contains("check your local code and your licensed vet");
        assertThat(overdue.getString("said")).startsWith("Ran out at 20").contains("(UTC+1");

        String path = "/api/cases/" + over + "/clock-extensions";
        String start = "{\"limitId\":\"" + limit + "\",\"grantedBy\":\"the local office\",\"until\":\"";
        String order =
                "\"order\":{\"authority\":\"the department\",\"number\":\"O-1\",\"date\":\"2026-01-05\",\"words\":\"fires\"}";
        Api.post(COORDINATOR, path, start + "2090-01-01T00:00:00Z\",\"ground\":\"it is cute\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("ground"))
                .body("errors[0].wanted", containsString("moulting"));
        Api.post(COORDINATOR, path, start + "2090-01-01T00:00:00Z\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("ground"));
        Api.post(COORDINATOR, path, start + "2090-01-01T00:00:00Z\",\"ground\":\"moulting\"," + order + "}")
                .statusCode(400)
                .body("errors[0].field", equalTo("ground"));
        Api.post(COORDINATOR, path, start + Clocks.now().minusSeconds(5) + "\",\"ground\":\"moulting\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("until"));
        Api.post(
                        COORDINATOR,
                        "/api/cases/" + fresh + "/clock-extensions",
                        start + Clocks.now().plusSeconds(60) + "\",\"ground\":\"moulting\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("until"))
                .body("errors[0].detail", containsString("due only at"));
        Api.post(CARER, path, start + "2090-01-01T00:00:00Z\",\"ground\":\"moulting\"}")
                .statusCode(403);
        String extension = Api.make(COORDINATOR, path, start + "2090-01-01T00:00:00Z\",\"ground\":\"moulting\"}")
                .getString("id");
        Json extended = clock(over, limit);
        assertThat(extended.getString("state")).isEqualTo("running");
        assertThat(extended.getString("dueAt")).isEqualTo("2090-01-01T00:00:00Z");

        String own = "/api/clock-extensions/" + extension;
        Api.correct(COORDINATOR, own, "{\"ground\":null,\"reason\":\"by order after all\"}")
                .statusCode(400);
        Api.correct(COORDINATOR, own, "{\"ground\":null," + order + ",\"reason\":\"by order after all\"}")
                .statusCode(200)
                .body("order.number", equalTo("O-1"))
                .body("record.revision", equalTo(2));
        Api.correct(COORDINATOR, own, "{\"order\":{\"authority\":\"x\"},\"reason\":\"by order after all\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("order.number"));
        Api.change(COORDINATOR, own, "/withdrawal", "{\"reason\":\"of another animal\"}")
                .statusCode(200)
                .body("withdrawnBecause", equalTo("of another animal"));
        assertThat(clock(over, limit).getString("state")).isEqualTo("overdue");
        assertThat(Api.get(COORDINATOR, "/api/cases/" + over + "/clocks").getList("extensions"))
                .hasSize(1);

        Api.change(COORDINATOR, "/api/cases/" + over, "/fate", "{\"fate\":\"escaped\"}")
                .statusCode(200);
        assertThat(clock(over, limit).getString("state")).isEqualTo("endedLate");
        assertThat(clock(over, limit).getString("endedBy")).isEqualTo("caseEnded");
    }

    @Test
    void theDatabaseKeepsWhatAnExtensionIs() throws SQLException {
        String limit = inCare("\"moulting\"");
        String id = newCase(ago(Duration.ofDays(10)));
        Map<String, String> wrong = Map.of(
                "null, null, null, null, null, now(), now() + interval '1 day'",
                        "an_extension_has_a_ground_or_an_order",
                "'g', 'a', 'n', now(), 'w', now(), now() + interval '1 day'", "an_extension_has_a_ground_or_an_order",
                "null, null, 'n', now(), 'w', now(), now() + interval '1 day'", "an_order_is_told_whole",
                "'g', null, null, null, null, now(), now()", "an_extension_ends_after_it_begins");
        for (Map.Entry<String, String> entry : wrong.entrySet()) {
            try (Connection connection = database.getConnection();
                    var insert = connection.createStatement()) {
                assertThatThrownBy(() -> insert.execute("""
                                insert into clock_extensions (id, case_id, limit_id, granted_by, ground, order_authority,
                                    order_number, order_date, order_words, happened_at, until_at, recorded_at, recorded_by)
                                select gen_random_uuid(), '%s', '%s', 'x', %s, now(), id from accounts limit 1
                                """.formatted(id, limit, entry.getKey())))
                        .hasMessageContaining(entry.getValue());
            }
        }
    }

    @Test
    void anOrderExtendsManyOrNone() {
        String limit = inCare("");
        Instant from = Instant.parse("2026-07-01T00:00:00Z");
        List<String> burnt = List.of(newCase(from.plusSeconds(60)), newCase(from.plusSeconds(3600)));
        String before = newCase(from.minusSeconds(1));
        String other = newCase("Chelodina longicollis", from.plusSeconds(60));
        String ended = newCase(from.plusSeconds(120));
        Api.change(COORDINATOR, "/api/cases/" + ended, "/fate", "{\"fate\":\"died\"}")
                .statusCode(200);
        String order = """
                {"limitId":"%s","until":"2090-01-01T00:00:00Z","grantedBy":"the department",
                 "order":{"authority":"the department","number":"F-7","date":"2026-07-02","words":"all clocks stand still"},%s}
                """;
        // A list in which one case is unknown extends none
        Api.post(
                        COORDINATOR,
                        "/api/clock-extensions",
                        order.formatted(
                                limit, "\"caseIds\":[\"%s\",\"%s\"]".formatted(burnt.get(0), UUID.randomUUID())))
                .statusCode(400)
                .body("errors[0].field", equalTo("caseIds"));
        assertThat(Api.get(COORDINATOR, "/api/cases/" + burnt.get(0) + "/clocks")
                        .getList("extensions"))
                .isEmpty();
        // A list with a case that the limit does not bind says so
        Json listed = Api.make(
                COORDINATOR,
                "/api/clock-extensions",
                order.formatted(limit, "\"caseIds\":[\"%s\",\"%s\"]".formatted(burnt.get(0), other)));
        assertThat(listed.getList("extended.caseId")).containsExactly(burnt.get(0));
        assertThat(listed.getList("notExtended.caseId")).containsExactly(other);
        assertThat(listed.getString("notExtended[0].because")).contains("does not bind");
        // A span takes the open ones of the group; what is extended as far already is named
        Json spanned = Api.make(COORDINATOR, "/api/clock-extensions", order.formatted(limit, """
                "found":{"taxonGroup":"%s","foundFrom":"%s","foundBefore":"%s"}
                """.formatted(
                        group, from, from.plus(Duration.ofDays(1)))));
        assertThat(spanned.getList("extended.caseId")).containsExactly(burnt.get(1));
        assertThat(spanned.getList("notExtended.caseId")).containsExactly(burnt.get(0));
        assertThat(clock(burnt.get(1), limit).getString("dueAt")).isEqualTo("2090-01-01T00:00:00Z");
        assertThat(clock(before, limit).getString("extendedUntil")).isNull();
        assertThat(Api.get(COORDINATOR, "/api/cases/" + burnt.get(1) + "/clocks")
                        .getString("extensions[0].order.number"))
                .isEqualTo("F-7");
        Api.post(COORDINATOR, "/api/clock-extensions", order.formatted(limit, "\"caseIds\":null"))
                .statusCode(400);
    }

    @Test
    void aNoticeEndsWhatAsksForOneAndNothingElse() {
        String tell = tell("");
        String care = inCare("");
        String id = newCase(ago(Duration.ofHours(20)));
        assertThat(clock(id, tell).getString("state")).isEqualTo("warned");
        String path = "/api/cases/" + id + "/notices";
        String notice = "{\"limitId\":\"%s\",\"told\":\"the department\",\"how\":\"phone\",\"reference\":\"N-1\"%s}";
        Api.post(RESCUER, path, notice.formatted(care, "")).statusCode(400).body("errors[0].field", equalTo("limitId"));
        Api.post(RESCUER, path, notice.formatted(tell, ",\"at\":\"2020-01-01T00:00:00Z\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("at"));
        String told = Api.make(RESCUER, path, notice.formatted(tell, "")).getString("id");
        assertThat(clock(id, tell).getString("state")).isEqualTo("endedInTime");
        assertThat(clock(id, tell).getString("endedBy")).isEqualTo("toldAuthority");
        assertThat(clock(id, care).getString("state")).isEqualTo("running");
        Api.change(RESCUER, "/api/clock-notices/" + told, "/withdrawal", "{\"reason\":\"nobody answered\"}")
                .statusCode(200);
        assertThat(clock(id, tell).getString("state")).isEqualTo("warned");
    }

    /** A death is told of after the case has ended, so that the list still names it. */
    @Test
    void whatIsStillToBeToldOutlivesTheCase() {
        String death = limit("""
                "binds":"anyone","starts":"deathInCare","ends":["toldAuthority"],"length":24,"lengthUnit":"hours",
                "warnBeforeHours":6
                """);
        String id = newCase(ago(Duration.ofDays(3)));
        assertThat(clock(id, death).getString("state")).isNull();
        Api.change(
                        COORDINATOR,
                        "/api/cases/" + id,
                        "/fate",
                        "{\"fate\":\"died\",\"at\":\"" + ago(Duration.ofDays(2)) + "\"}")
                .statusCode(200);
        assertThat(clock(id, death).getString("state")).isEqualTo("overdue");
        assertThat(all("?state=overdue&limit=1000")).contains(id + " " + death);
        Api.make(
                COORDINATOR,
                "/api/cases/" + id + "/notices",
                "{\"limitId\":\"%s\",\"told\":\"the department\",\"how\":\"phone\"}".formatted(death));
        assertThat(all("?limit=1000")).doesNotContain(id + " " + death);
    }

    private List<String> all(String query) {
        List<String> rows = new ArrayList<>();
        String cursor = null;
        do {
            Json page = Api.get(OFFICER, "/api/clocks" + query + (cursor == null ? "" : "&cursor=" + cursor));
            page.<Map<String, Object>>getList("items")
                    .forEach(row -> rows.add(row.get("caseId") + " " + row.get("limitId")));
            cursor = page.getString("next");
        } while (cursor != null);
        return rows;
    }

    @Test
    void pagesOfAllClocksAreInTheOrderInWhichTheyAreDue() {
        String limit = inCare("");
        List<String> ids = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            ids.add(newCase(ago(Duration.ofDays(175 - (i * 7) % 6))));
        }
        List<String> whole = all("?limit=1000");
        assertThat(all("?limit=3")).isEqualTo(whole).doesNotHaveDuplicates();
        List<Instant> due = Api.get(OFFICER, "/api/clocks?limit=1000").<String>getList("items.dueAt").stream()
                .filter(java.util.Objects::nonNull)
                .map(Instant::parse)
                .toList();
        assertThat(due).isSorted();
        assertThat(whole).containsAll(ids.stream().map(id -> id + " " + limit).toList());
        Api.as(OFFICER)
                .get("/api/clocks?cursor=then")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("cursor"));
        Api.as(OFFICER).get("/api/clocks?state=soon").then().statusCode(400);
        Api.as(RESCUER).get("/api/clocks").then().statusCode(403);
    }

    /** How the law lists a kind is data; where nobody looked it can't be told, and is said. */
    @Test
    void aLimitOfListedKindsAsksHowTheLawListsIt() {
        tellJurisdiction("\"AU-NSW\"");
        try {
            String limit = tell(",\"listedAs\":[\"threatened\"]");
            String id = newCase(ago(Duration.ofHours(30)));
            assertThat(clock(id, limit).getString("state")).isEqualTo("cantTell");
            assertThat(clock(id, limit).getString("said")).contains("how the law lists this kind is not recorded");
            assertThat(all("?state=cantTell&limit=1000")).contains(id + " " + limit);
            String listing = """
                    {"jurisdiction":"%s","scientificName":"%s","listedAs":"%s","source":"made for a test",
                     "readOn":"2026-01-05","reviewBy":"2090-01-01","validFrom":"2020-01-01"}
                    """;
            Api.make(COORDINATOR, "/api/species-listings", listing.formatted("AU-VIC", taxon, "threatened"));
            assertThat(clock(id, limit).getString("state"))
                    .as("of another state")
                    .isEqualTo("cantTell");
            Api.make(COORDINATOR, "/api/species-listings", listing.formatted("AU", taxon, "notListed"));
            assertThat(clock(id, limit).getString("state")).isNull();
            Api.make(COORDINATOR, "/api/species-listings", listing.formatted("AU-NSW", taxon, "threatened"));
            assertThat(clock(id, limit).getString("state")).isEqualTo("overdue");
        } finally {
            tellJurisdiction("null");
        }
    }

    @Test
    void onlyLimitsOfTheRegionAndItsCountryRun() {
        String state = limitOf("AU-NSW");
        String country = limitOf("AU");
        String elsewhere = limitOf("AU-VIC");
        String id = newCase(ago(Duration.ofHours(1)));
        assertThat(ofCase(id)).containsExactly(country);
        assertThat(Api.get(COORDINATOR, "/api/cases/" + id + "/clocks").getList("said"))
                .anySatisfy(said -> assertThat((String) said).contains("was not told whole"));
        tellJurisdiction("\"AU-NSW\"");
        try {
            assertThat(ofCase(id)).containsExactlyInAnyOrder(country, state).doesNotContain(elsewhere);
            assertThat(Api.get(COORDINATOR, "/api/cases/" + id + "/clocks").getList("said"))
                    .isEmpty();
        } finally {
            tellJurisdiction("null");
        }
        Api.as(ADMIN)
                .header("If-Match", Api.tag(ADMIN, "/api/region"))
                .body(region("\"NZ\""))
                .put("/api/region")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("jurisdiction"));
    }

    private String limitOf(String jurisdiction) {
        return Api.make(COORDINATOR, "/api/time-limits", """
                        {"jurisdiction":"%s","kind":"statute","scientificName":"%s","binds":"anyone","starts":"found",
                         "ends":["caseEnded"],"length":3,"lengthUnit":"months","warnBeforeHours":0,"words":"made for a test",
                         "source":"made for a test","readOn":"2026-01-05","reviewBy":"2090-01-01","validFrom":"2020-01-01"}
                        """.formatted(jurisdiction, taxon))
                .getString("id");
    }

    private List<String> ofCase(String id) {
        return Api.get(COORDINATOR, "/api/cases/" + id + "/clocks").getList("clocks.limitId");
    }

    private static void tellJurisdiction(String jurisdiction) {
        Api.as(ADMIN)
                .header("If-Match", Api.tag(ADMIN, "/api/region"))
                .body(region(jurisdiction))
                .put("/api/region")
                .then()
                .statusCode(200);
    }

    private static String region(String jurisdiction) {
        return """
                {"name":"Test region","timeZone":"Australia/Sydney","countryCode":"AU","jurisdiction":%s,
                 "south":-32,"west":149,"north":-29,"east":152,"demo":false}
                """.formatted(jurisdiction);
    }

    @Test
    void aVetsTimeRunsFromWhenItWasStable() {
        String limit = limit("""
                "binds":"unauthorisedClinic","starts":"stabilised","ends":["handedToAuthorisedHolder","caseEnded"],
                "length":72,"lengthUnit":"hours","warnBeforeHours":24
                """);
        Instant came = ago(Duration.ofHours(50));
        String id = newCase(ago(Duration.ofHours(60)));
        String handOver = Api.make(RESCUER, "/api/cases/" + id + "/hand-overs", """
                        {"taker":{"organisationId":"%s"},"at":"%s"}
                        """.formatted(world.clinic, came))
                .getString("id");
        Api.change(CLINIC, "/api/hand-overs/" + handOver, "/acceptance", "{\"at\":\"" + came + "\"}")
                .statusCode(200);
        String visit = Api.make(CLINIC, "/api/visits", """
                        {"caseId":"%s","clinicId":"%s","arrivedAt":"%s"}
                        """.formatted(id, world.clinic, came))
                .getString("id");
        assertThat(clock(id, limit).getString("state")).isEqualTo("cantTell");
        Api.correct(CLINIC, "/api/visits/" + visit, "{\"stabilisedAt\":\"2020-01-01T00:00:00Z\",\"reason\":\"told\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("stabilisedAt"));
        Instant stable = came.plus(Duration.ofHours(20));
        Api.correct(CLINIC, "/api/visits/" + visit, "{\"stabilisedAt\":\"" + stable + "\",\"reason\":\"told\"}")
                .statusCode(200)
                .body("stabilisedAt", equalTo(stable.toString()));
        assertThat(clock(id, limit).getString("state")).isEqualTo("running");
        assertThat(clock(id, limit).getString("dueAt"))
                .isEqualTo(stable.plus(Duration.ofHours(72)).toString());
    }

    @Test
    void theSourceOfALimitIsReadAgain() {
        String path = "/api/time-limits/" + inCare("");
        Api.change(
                        COORDINATOR,
                        path,
                        "/reviews",
                        "{\"readOn\":\"2026-02-01\",\"reviewBy\":\"2026-02-02\",\"reason\":\"read again\"}")
                .statusCode(200)
                .body("reviewDue", equalTo(true))
                .body("record.revision", equalTo(2));
        Api.change(
                        COORDINATOR,
                        path,
                        "/reviews",
                        "{\"readOn\":\"2026-02-01\",\"reviewBy\":\"2026-02-01\",\"reason\":\"read again\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("reviewBy"));
        Api.post(COORDINATOR, "/api/time-limits", """
                        {"jurisdiction":"network","kind":"statute","binds":"anyone","starts":"found","ends":["caseEnded"],
                         "length":1,"lengthUnit":"days","warnBeforeHours":0,"words":"w","source":"s","readOn":"2026-01-05",
                         "reviewBy":"2090-01-01","validFrom":"2020-01-01"}
                        """).statusCode(400).body("errors[0].field", equalTo("jurisdiction"));
    }

    /** Five thousand open cases, each with three links: a handful of questions, and a page within seconds. */
    @Test
    void fiveThousandOpenCasesAreReadInAHandfulOfQuestions() {
        inCare("");
        tell("");
        newCase(ago(Duration.ofHours(1)));
        UUID incident = UUID.fromString(World.call(taxon, 150.04, "").getString("incidentId"));
        QuarkusTransaction.begin();
        try {
            entities.createNativeQuery("""
                            with made as (
                                insert into cases (id, animal_id, incident_id, origin, cause, happened_at, recorded_at, recorded_by)
                                select gen_random_uuid(), a.id, :incident, 'unknown', 'unknown',
                                    now() - interval '1 minute' * n * 20, now(), a.recorded_by
                                from generate_series(1, 5000) n, (
                                    select x.id, x.recorded_by from animals x join taxa t on t.id = x.taxon_id
                                    where t.scientific_name = :taxon limit 1) a
                                returning id, happened_at, recorded_by)
                            insert into custody_links (id, case_id, holder_member_id, held, happened_at, recorded_at, recorded_by)
                            select gen_random_uuid(), made.id, :member,
                                tstzrange(made.happened_at + interval '1 minute' * k, case when k < 2 then made.happened_at
                                    + interval '1 minute' * (k + 1) end), made.happened_at + interval '1 minute' * k, now(),
                                made.recorded_by
                            from made, generate_series(0, 2) k
                            """)
                    .setParameter("incident", incident)
                    .setParameter("taxon", taxon)
                    .setParameter("member", UUID.fromString(world.rescuer))
                    .executeUpdate();
            sessions.getStatistics().setStatisticsEnabled(true);
            long asked = sessions.getStatistics().getPrepareStatementCount();
            long began = System.nanoTime();
            Page<ClockViews.CaseClockView> page = clocks.listClocks(null, 50, null);
            double seconds = (System.nanoTime() - began) / 1e9;
            asked = sessions.getStatistics().getPrepareStatementCount() - asked;
            sessions.getStatistics().setStatisticsEnabled(false);
            System.getLogger(ClockResourceTest.class.getName())
                    .log(
                            System.Logger.Level.INFO,
                            "a page of the clocks of 5,000 open cases: {0} s, {1} questions",
                            seconds,
                            asked);
            assertThat(page.items()).hasSize(50);
            assertThat(asked).isLessThan(40);
            assertThat(seconds).isLessThan(10);
        } finally {
            QuarkusTransaction.rollback();
        }
    }
}
