package org.culvert.animal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;

import io.agroal.api.AgroalDataSource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import org.culvert.support.Api;
import org.culvert.support.Clocks;
import org.culvert.support.Json;
import org.culvert.support.Pictures;
import org.culvert.support.World;
import org.hibernate.SessionFactory;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A long list asks the database no more often than a short one, and shows each row as the read of it alone does. */
@QuarkusTest
class LongListResourceTest {
    private static final String TURTLE = "Chelodina longicollis";
    private static final int LONG = 20;
    private static final int SHORT = 5;

    @Inject
    SessionFactory sessions;

    @Inject
    AgroalDataSource database;

    private static List<String> incidents;
    private static Instant before;

    @BeforeEach
    void manyIncidentsAndCases() {
        if (incidents == null) {
            World world = World.shared();
            incidents = new ArrayList<>();
            for (int i = 0; i < LONG; i++) {
                incidents.add(incident(world, i));
            }
            before = Clocks.now();
            for (int i = 0; i < LONG; i++) {
                changed(incidents.get(i), i);
            }
        }
        sessions.getStatistics().setStatisticsEnabled(true);
        database.getConfiguration().setMetricsEnabled(true);
    }

    @AfterEach
    void countNoMore() {
        sessions.getStatistics().setStatisticsEnabled(false);
        database.getConfiguration().setMetricsEnabled(false);
    }

    /** Two calls, another incident joined to it and a third to that, and a case; the older ones have more authors. */
    private static String incident(World world, int i) {
        double longitude = 150.001 + i * 0.004;
        String third = World.call("Wallabia bicolor", longitude, "").getString("incidentId");
        String second = World.call(TURTLE, longitude, "").getString("incidentId");
        String incident = World.call(
                        TURTLE,
                        longitude,
                        ",\"words\":\"Turtle %d.\",\"caller\":{\"name\":\"Caller %d\"}".formatted(i, i))
                .getString("incidentId");
        further(COORDINATOR, incident, "Another driver, " + i);
        join(second, third);
        join(incident, second);
        String author =
                i < LONG - SHORT ? List.of(RESCUER, CLINIC, CARER, DISPATCHER).get(i % 4) : COORDINATOR;
        String path = "/api/cases/"
                + Api.make(author, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-01-10T02:00:00Z",
                         "holder":{"memberId":"%s"}}
                        """.formatted(incident, TURTLE, world.carer))
                        .getString("id");
        for (int day = 11; day < 14; day++) {
            Api.post(COORDINATOR, path + "/whereabouts", """
                    {"words":"pen %d","at":"2026-01-%dT02:00:00Z"}
                    """.formatted(day * i, day))
                    .statusCode(200);
        }
        String handOver = Api.make(COORDINATOR, path + "/hand-overs", """
                        {"taker":{"memberId":"%s"},"at":"2026-01-15T02:00:00Z"}
                        """.formatted(world.rescuer))
                .getString("id");
        if (i % 2 == 0) {
            Api.change(COORDINATOR, "/api/hand-overs/" + handOver, "/acceptance", "{\"at\":\"2026-01-16T02:00:00Z\"}")
                    .statusCode(200);
            Api.change(COORDINATOR, path, "/fate", "{\"fate\":\"died\",\"at\":\"2026-01-17T02:00:00Z\"}")
                    .statusCode(200);
        }
        return incident;
    }

    /** What the past does not know yet. */
    private static void changed(String incident, int i) {
        further(DISPATCHER, incident, "A third driver, " + i);
        Api.correct(COORDINATOR, "/api/incidents/" + incident, "{\"cause\":\"disease\",\"reason\":\"seen since\"}")
                .statusCode(200);
        if (i % 2 == 1) {
            String join = Api.get(COORDINATOR, "/api/incidents/" + incident)
                    .getString("joins.find { it.keptIncidentId == '%s' }.id".formatted(incident));
            Api.change(COORDINATOR, "/api/joins/" + join, "/undoing", "{\"reason\":\"another one\"}")
                    .statusCode(200);
        }
    }

    private static void further(String role, String incident, String words) {
        Api.make(role, "/api/calls", """
                {"incidentId":"%s","words":"%s","caller":{"phone":"555"},"animals":[{"taxonGroup":"macropods"}],
                 "place":{"decimalDegrees":{"latitude":"-30.5","longitude":"150.01"}}}
                """.formatted(incident, words));
    }

    private static void join(String kept, String joined) {
        Api.post(
                        DISPATCHER,
                        "/api/incidents/" + kept + "/joins",
                        "{\"incidentId\":\"%s\",\"reason\":\"the same turtle\"}".formatted(joined))
                .statusCode(200);
    }

    @ParameterizedTest
    @CsvSource({
        "incidents, coordinator",
        "incidents, rescuer",
        "incidents, officer",
        "cases, coordinator",
        "cases, rescuer",
        "cases, officer"
    })
    void aLongPageAsksAsOftenAsAShortOne(String list, String role) {
        String path = "/api/" + list + "?limit=";
        assertThat(asked(role, path + LONG, LONG)).isEqualTo(asked(role, path + SHORT, SHORT));
    }

    @ParameterizedTest
    @ValueSource(strings = {"incidents", "cases"})
    void soItDoesInThePast(String list) {
        String path = "/api/" + list + "?asOf=" + before + "&limit=";
        assertThat(asked(COORDINATOR, path + LONG, LONG)).isEqualTo(asked(COORDINATOR, path + SHORT, SHORT));
    }

    @ParameterizedTest
    @ValueSource(strings = {COORDINATOR, CARER, OFFICER})
    void soDoPhotographs(String role) {
        World world = World.shared();
        String incident = World.call(TURTLE, 150.0412, "").getString("incidentId");
        String path = "/api/cases/"
                + Api.make(COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-01-10T02:00:00Z",
                         "holder":{"memberId":"%s"}}
                        """.formatted(incident, TURTLE, world.carer))
                        .getString("id") + "/photographs";
        byte[] picture = Pictures.jpegAt(-30.5, 150.0412);
        for (int i = 0; i < LONG; i++) {
            Api.make(
                    i % 3 == 0 ? CARER : i % 3 == 1 ? DISPATCHER : COORDINATOR,
                    i % 2 == 0 ? path : "/api/incidents/" + incident + "/photographs",
                    Pictures.sent("image/jpeg", picture, ",\"caption\":\"picture %d\"".formatted(i)));
        }
        assertThat(asked(role, path + "?limit=" + LONG, LONG)).isEqualTo(asked(role, path + "?limit=" + SHORT, SHORT));
        for (Map<String, Object> row : Api.get(role, path).<Map<String, Object>>getList("items")) {
            assertThat(row)
                    .isEqualTo(
                            Api.get(role, "/api/photographs/" + row.get("id")).getMap(""));
        }
    }

    @Test
    void theCountSeesEachStatement() {
        long none = asked(COORDINATOR, "/api/taxon-groups", -1);
        assertThat(asked(COORDINATOR, "/api/incidents?limit=1", 1)).isGreaterThan(none + 5);
    }

    /**
     * Statements by way of Hibernate, and connections taken, since who may see what is asked on connections of its own. The
     * least of several, because jobs ask at times too.
     */
    private long asked(String role, String path, int rows) {
        return IntStream.range(0, 4)
                .mapToLong(turn -> {
                    long sofar = total();
                    Json page = Api.get(role, path);
                    long asked = total() - sofar;
                    if (rows >= 0) {
                        assertThat(page.getList("items")).hasSize(rows);
                    }
                    return asked;
                })
                .min()
                .orElseThrow();
    }

    private long total() {
        return sessions.getStatistics().getPrepareStatementCount()
                + database.getMetrics().acquireCount();
    }

    @ParameterizedTest
    @CsvSource({"incidents, coordinator", "incidents, rescuer", "cases, coordinator", "cases, rescuer"})
    void aRowOfAPageIsWhatItsOwnReadShows(String list, String role) {
        for (String moment : List.of(Clocks.now().toString(), before.toString())) {
            List<Map<String, Object>> rows = Api.get(role, "/api/" + list + "?limit=" + LONG + "&asOf=" + moment)
                    .getList("items");
            assertThat(rows).hasSize(LONG);
            for (Map<String, Object> row : rows) {
                String alone = "/api/" + list + "/" + row.get("id") + "?asOf=" + moment;
                assertThat(row).isEqualTo(Api.get(role, alone).getMap(""));
            }
        }
    }

    /** What belongs to one incident is told of no other; what was joined to what is joined is told of both. */
    @Test
    void eachIncidentHasItsOwnCallsAndThoseJoinedToIt() {
        Json then = Api.get(COORDINATOR, "/api/incidents?limit=" + LONG + "&asOf=" + before);
        for (int i = 0; i < LONG; i++) {
            String row = "items.find { it.id == '%s' }".formatted(incidents.get(i));
            assertThat(then.getList(row + ".joins")).hasSize(2);
            assertThat(then.getList(row + ".calls")).hasSize(4);
            assertThat(then.getList(row + ".calls.words").stream().filter(Objects::nonNull))
                    .containsExactlyInAnyOrder("Turtle " + i + ".", "Another driver, " + i);
            assertThat(then.getList(row + ".calls.caller.name")).contains("Caller " + i);
            Json now = Api.get(COORDINATOR, "/api/incidents/" + incidents.get(i));
            assertThat(now.getList("calls")).hasSize(i % 2 == 1 ? 3 : 5);
        }
    }
}
