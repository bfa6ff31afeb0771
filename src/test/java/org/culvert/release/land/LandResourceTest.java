package org.culvert.release.land;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.geo.Position;
import org.culvert.geo.Shapes;
import org.culvert.release.rules.Land;
import org.culvert.support.Api;
import org.culvert.support.Clocks;
import org.culvert.support.Json;
import org.junit.jupiter.api.Test;

@QuarkusTest
class LandResourceTest {
    private static final LocalDate DAY = LocalDate.of(2026, 6, 1);

    @Inject
    LandService land;

    @Inject
    DataSource database;

    /** A square of a hundredth of a degree from its south-west corner. */
    private static String square(double west, double south) {
        double east = west + 0.01;
        double north = south + 0.01;
        return "{\"type\":\"Polygon\",\"coordinates\":[[[%s,%s],[%s,%s],[%s,%s],[%s,%s],[%s,%s]]]}"
                .formatted(west, south, east, south, east, north, west, north, west, south);
    }

    private static String area(String kind, String name, String geometry, String more) {
        return "{\"kind\":\"%s\",\"name\":\"%s\",\"source\":\"a map made for a test\",\"from\":\"2020-01-01\"%s,\"geometry\":%s}"
                .formatted(kind, name, more, geometry);
    }

    private static String make(String kind, String name, String geometry, String more) {
        return Api.make(COORDINATOR, "/api/land-areas", area(kind, name, geometry, more))
                .getString("id");
    }

    @Test
    void landIsEnteredReadAndEnded() {
        String name = "Burnt hill " + UUID.randomUUID();
        String id = Api.post(ADMIN, "/api/land-areas", area("burnt", name, square(141, -31), ""))
                .statusCode(201)
                .header("Location", containsString("/api/land-areas/"))
                .extract()
                .path("id");
        String path = "/api/land-areas/" + id;
        Json read = Api.get(CARER, path);
        assertThat(read.getString("name")).isEqualTo(name);
        assertThat(read.getString("from")).isEqualTo("2020-01-01");
        assertThat(read.<Object>get("until")).isNull();
        assertThat(read.getList("bbox", Double.class)).containsExactly(141.0, -31.0, 141.01, -30.99);
        assertThat(read.getString("geometry.type")).isEqualTo("Polygon");
        assertThat(read.getList("geometry.coordinates[0]")).hasSize(5);
        assertThat(read.getDouble("geometry.coordinates[0][2][0]")).isEqualTo(141.01);
        assertThat(read.getDouble("geometry.coordinates[0][2][1]")).isEqualTo(-30.99);
        assertThat(read.getString("note")).contains("Check your local code and your licensed vet");
        assertThat(read.getString("note")).doesNotContainPattern("(?i)lawful|legal|safe");

        Api.post(COORDINATOR, path + "/ending", "{\"until\":\"2026-01-01\",\"reason\":\"regrown\"}")
                .statusCode(428);
        Api.change(COORDINATOR, path, "/ending", "{\"until\":\"2020-01-01\",\"reason\":\"regrown\"}")
                .statusCode(400)
                .body("errors.field", hasItem("until"));
        Api.change(COORDINATOR, path, "/ending", "{\"until\":\"2026-01-01\",\"reason\":\" \"}")
                .statusCode(400);
        Instant before = Clocks.now();
        Api.change(COORDINATOR, path, "/ending", "{\"until\":\"2026-01-01\",\"reason\":\"regrown\"}")
                .statusCode(200)
                .body("until", equalTo("2026-01-01"))
                .body("record.revision", equalTo(2));
        assertThat(Api.get(OFFICER, "/api/records/" + id + "/revisions").getList("reason"))
                .containsExactly(null, "regrown");
        Json past = Api.get(CARER, path + "?asOf=" + before);
        assertThat(past.<Object>get("until")).isNull();
        assertThat(past.getMap("geometry")).isEqualTo(read.getMap("geometry"));
    }

    /** ISO 3166-1 and 3166-2. */
    @Test
    void whereALawHoldsIsNamedByItsCode() {
        for (String wrong : List.of("Queensland", "au-qld", "AU-", "AUS")) {
            Api.post(ADMIN, "/api/land-areas", area("jurisdiction", wrong, square(141, -32), ""))
                    .statusCode(400)
                    .body("errors[0].field", equalTo("name"))
                    .body("errors[0].wanted", containsString("AU-QLD"));
        }
        // Codes that are left to their users
        make("jurisdiction", "XZ", square(141, -32), "");
        make("jurisdiction", "XZ-9", square(141, -32), "");
        assertThatThrownBy(() -> {
                    try (Connection connection = database.getConnection();
                            Statement statement = connection.createStatement()) {
                        statement.executeUpdate("update land_areas set name = 'nowhere' where name = 'XZ-9'");
                    }
                })
                .isInstanceOf(SQLException.class)
                .hasMessageContaining("a_jurisdiction_is_named_by_its_code");
    }

    @Test
    void severalPolygonsAndHolesComeBack() {
        String coordinates = "[[[[142.0,-31.0],[142.3,-31.0],[142.3,-30.7],[142.0,-30.7],[142.0,-31.0]],"
                + "[[142.1,-30.9],[142.1,-30.8],[142.2,-30.8],[142.2,-30.9],[142.1,-30.9]]],"
                + "[[[142.5,-31.0],[142.6,-31.0],[142.6,-30.9],[142.5,-31.0]]]]";
        String id = make("catchment", "Two", "{\"type\":\"MultiPolygon\",\"coordinates\":" + coordinates + "}", "");
        String answer = Api.as(OFFICER).get("/api/land-areas/" + id).asString();
        assertThat(answer.replace(" ", "")).contains("\"coordinates\":" + coordinates);
    }

    @Test
    void areasAreListedByKindNameAndDayAPageAtATime() {
        String mark = UUID.randomUUID().toString();
        List<String> ids = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            ids.add(0, make("water", "Dam " + i + " " + mark, square(143 + i * 0.1, -31), ""));
        }
        String gone = make("flooded", "Flood " + mark, square(143.5, -31), ",\"until\":\"2020-02-01\"");
        String asked = "/api/land-areas?name=" + mark.toUpperCase(java.util.Locale.ROOT);
        assertThat(Api.get(CLINIC, asked + "&kind=water").getList("items.id")).isEqualTo(ids);
        assertThat(Api.get(CLINIC, asked).getList("items.id")).hasSize(4).startsWith(gone);
        assertThat(Api.get(CLINIC, asked).getList("items.geometry")).containsOnlyNulls();
        assertThat(Api.get(CLINIC, asked + "&day=2020-01-31").getList("items.id"))
                .hasSize(4);
        assertThat(Api.get(CLINIC, asked + "&day=2020-02-01").getList("items.id"))
                .isEqualTo(ids);
        assertThat(Api.get(CLINIC, asked + "&day=2019-12-31").getList("items.id"))
                .isEmpty();
        Json page = Api.get(CLINIC, asked + "&kind=water&limit=2");
        assertThat(page.getList("items.id")).isEqualTo(ids.subList(0, 2));
        assertThat(Api.get(CLINIC, asked + "&kind=water&limit=2&cursor=" + page.getString("next"))
                        .getList("items.id"))
                .isEqualTo(ids.subList(2, 3));
        for (String wrong : List.of("kind=moon", "day=2020-02-30", "limit=0", "cursor=7")) {
            Api.as(CLINIC).get("/api/land-areas?" + wrong).then().statusCode(400);
        }
    }

    @Test
    void whatIsWrongWithLandIsSaidByFieldAndPlace() {
        String good = square(144, -31);
        String bowTie = "{\"type\":\"Polygon\",\"coordinates\":[[[144,-31],[145,-30],[145,-31],[144,-30],[144,-31]]]}";
        for (String[] wrong : new String[][] {
            {area("burnt", "x", bowTie, ""), "geometry.coordinates", "longitude 144.5000000, latitude -30.5000000"},
            {area("burnt", "x", good.replace("[144.01,-30.99]", "[144.01]"), ""), "geometry.coordinates.0.2", ""},
            {area("burnt", "x", good.replace("144.01,-31.0]", "144.01,-91]"), ""), "geometry.coordinates.0.1.1", "-91"},
            {
                area(
                        "burnt",
                        "x",
                        "{\"type\":\"Polygon\",\"coordinates\":[[[179,-31],[-179,-31],[-179,-30],[179,-31]]]}",
                        ""),
                "geometry.coordinates.0.1",
                "half around"
            },
            {area("burnt", "x", "{\"type\":\"Polygon\",\"coordinates\":[]}", ""), "geometry.coordinates", "no ring"},
            {area("burnt", "x", "{\"type\":\"Point\",\"coordinates\":[1,2]}", ""), "geometry.type", ""},
            {area("burnt", "x", "{\"type\":\"Polygon\"}", ""), "geometry.coordinates", ""},
            {area("burnt", "x", "null", ""), "geometry", ""},
            {area("burnt", " ", good, ""), "name", ""},
            {area("moon", "x", good, ""), "kind", ""},
            {area("burnt", "x", good, "").replace("\"burnt\"", "null"), "kind", ""},
            {area("burnt", "x", good, ",\"until\":\"2020-01-01\""), "until", "before it begins"}
        }) {
            Api.post(COORDINATOR, "/api/land-areas", wrong[0])
                    .statusCode(400)
                    .body("type", containsString("invalid"))
                    .body("errors.field", hasItem(wrong[1]))
                    .body("errors.detail", hasItem(containsString(wrong[2])));
        }
        Api.post(
                        COORDINATOR,
                        "/api/land-areas",
                        area(
                                "burnt",
                                "x",
                                "{\"type\":\"Polygon\",\"coordinates\":[[[-31,144],[-31,145],[-30,145],[-31,144]]]}",
                                ""))
                .statusCode(400)
                .body("errors[0].otherReading.decimalLatitude", equalTo(-31.0));
    }

    @Test
    void whatMayLieWithinACircleIsFound() {
        String name = "Lagoon " + UUID.randomUUID();
        make("water", name, square(146.0, -31.0), "");
        make("burnt", name + " burnt", square(146.0, -31.0), ",\"until\":\"2026-06-01\"");
        make("flooded", name + " later", square(146.0, -31.0), "");
        List<Land> near = about(-30.995, 146.02, 1000, DAY, name);
        assertThat(near).extracting(Land::kind).containsExactly(Land.Kind.water, Land.Kind.flooded);
        assertThat(near.get(0).name()).isEqualTo(name);
        assertThat(near.get(0).source()).isEqualTo("a map made for a test");
        assertThat(near.get(0).until()).isNull();
        assertThat(near.get(0).shape().covers(Shapes.point(new Position(-30.995, 146.005))))
                .isTrue();
        // The east side lies at 146.01; a hundredth of a degree of longitude is 955.8 m at 31 degrees south
        assertThat(about(-30.995, 146.02, 940, DAY, name)).isEmpty();
        assertThat(about(-30.995, 146.03, 1000, DAY, name)).isEmpty();
        assertThat(about(-30.995, 146.005, 0, DAY, name)).hasSize(2);
        assertThat(about(-30.995, 146.02, 1000, DAY.minusDays(1), name)).hasSize(3);
        assertThat(about(-30.995, 146.02, 1000, LocalDate.of(2019, 12, 31), name))
                .isEmpty();
    }

    @Test
    void aCircleMayCrossTheAntimeridian() {
        String name = "Islet " + UUID.randomUUID();
        make("property", name, square(-179.995, -17), "");
        assertThat(about(-16.995, 179.999, 2000, DAY, name)).hasSize(1);
        assertThat(about(-16.995, 179.9, 2000, DAY, name)).isEmpty();
    }

    private List<Land> about(double latitude, double longitude, double metres, LocalDate day, String name) {
        return land.around(new Position(latitude, longitude), metres, day).stream()
                .filter(found -> found.name().startsWith(name))
                .toList();
    }

    @Test
    void whereNestsAreIsToldToFew() {
        String name = "Nests " + UUID.randomUUID();
        String id = make("nestingGround", name, square(147, -31), "");
        String path = "/api/land-areas/" + id;
        for (String role : List.of(COORDINATOR, OFFICER)) {
            assertThat(Api.get(role, path).getString("name")).isEqualTo(name);
            assertThat(Api.get(role, path).getList("geometry.coordinates[0]")).hasSize(5);
            assertThat(Api.get(role, "/api/land-areas?name=" + name).getList("items.id"))
                    .containsExactly(id);
        }
        for (String role : List.of(CLINIC, CARER, ADMIN)) {
            assertThat(Api.get(role, path).getMap("$").keySet())
                    .containsExactlyInAnyOrder("id", "kind", "from", "until", "note");
            assertThat(Api.get(role, "/api/land-areas?name=" + name).getList("items.id"))
                    .isEmpty();
            assertThat(Api.get(role, "/api/land-areas?kind=nestingGround").getList("items.id"))
                    .isEmpty();
        }
        for (String role : List.of(DISPATCHER, RESCUER, ROADS_AUTHORITY)) {
            Api.as(role).get(path).then().statusCode(403);
        }
        Api.post(CARER, "/api/land-areas", area("burnt", "x", square(147, -31), ""))
                .statusCode(403);
    }

    @Test
    void theDatabaseRefusesWhatIsNoLand() throws SQLException {
        String id = make("burnt", "For the database", square(148, -31), "");
        for (String[] wrong : new String[][] {
            {"until_day = from_day", "land_ends_after_it_began"},
            {"west = east", "the_box_of_land_is_on_the_earth"},
            {"north = 91", "the_box_of_land_is_on_the_earth"},
            {"kind = 'moon'", "land_areas_kind_check"},
            {"shape = ''", "land_areas_shape_check"}
        }) {
            try (Connection connection = database.getConnection();
                    Statement statement = connection.createStatement()) {
                assertThatThrownBy(() -> statement.executeUpdate("update land_areas set " + wrong[0]
                                + ", version = version + 1, revised_at = now(), revised_by = recorded_by where id = '"
                                + id + "'"))
                        .as(wrong[0])
                        .hasMessageContaining(wrong[1]);
            }
        }
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            assertThatThrownBy(() -> statement.executeUpdate("delete from land_areas where id = '" + id + "'"))
                    .hasMessageContaining("permission denied");
        }
    }
}
