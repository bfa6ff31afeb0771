package org.culvert.road.traffic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.support.Api;
import org.culvert.support.Gdal;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Counts in GeoPackages as GDAL writes them (Debian's {@code ogr2ogr}), against the GeoJSON that it was given. Between WGS 84
 * and GDA2020 GDAL and the register behind this server agree that there is no shift.
 */
@QuarkusTest
class TrafficFilesIT {
    private static final String FILES = "/api/traffic-counts/files";
    private static final String HOW = "?stationAttribute=SITE&roadAttribute=RD&yearAttribute=YEAR"
            + "&vehiclesPerDayAttribute=AADT&measure=annualAverage&kind=continuous&directions=both&source=a-test";
    private static final int COUNTS = 30;

    @TempDir
    Path folder;

    private static Json send(String path, String type, Object body, int status) {
        var request = Api.as(COORDINATOR).contentType(type);
        return (body instanceof String text ? request.body(text) : request.body((byte[]) body))
                .post(path)
                .then()
                .statusCode(status)
                .extract()
                .jsonPath();
    }

    @ParameterizedTest
    @ValueSource(strings = {"EPSG:4326", "EPSG:7856", "EPSG:32756", "EPSG:3857"})
    void countsAreWhereTheyWere(String system) throws Exception {
        World.shared();
        String station = "G-" + UUID.randomUUID();
        List<String> features = new ArrayList<>();
        for (int i = 0; i < COUNTS; i++) {
            features.add(String.format(
                    Locale.ROOT,
                    "{\"type\":\"Feature\",\"properties\":{\"SITE\":\"%s\",\"RD\":\"Mill Road\",\"YEAR\":%d,\"AADT\":%.1f},"
                            + "\"geometry\":{\"type\":\"Point\",\"coordinates\":[%.9f,%.9f]}}",
                    station,
                    1901 + i,
                    4000.5 + i,
                    150.01 + 0.00123456 * i,
                    -30.5 + 0.0001 * (i % 2 == 0 ? 1 : -1)));
        }
        String geoJson = "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}";
        byte[] file = Gdal.geoPackage(folder, geoJson, "-t_srs", system, "-nln", "counts");
        Json given = send(FILES + "/trials" + HOW, "application/geo+json", geoJson, 200);
        Json read = send(FILES + "/trials" + HOW, "application/geopackage+sqlite3", file, 200);
        assertThat(read.getInt("understood")).isEqualTo(COUNTS).isEqualTo(given.getInt("understood"));
        for (int i = 0; i < COUNTS; i++) {
            Json one = read.under("rows[" + i + "].count");
            Json same = given.under("rows[" + i + "].count");
            assertThat(one.getDouble("vehiclesPerDay")).isEqualTo(4000.5 + i);
            assertThat(one.getString("from")).isEqualTo((1901 + i) + "-01-01");
            assertThat(one.getString("station")).isEqualTo(station);
            assertThat(one.getDouble("fromChainageMetres"))
                    .isCloseTo(same.getDouble("fromChainageMetres"), within(0.01));
            assertThat(one.getDouble("offsetMetres")).isCloseTo(same.getDouble("offsetMetres"), within(0.01));
            assertThat(Geodesy.metresBetween(place(one), place(same))).isLessThan(0.01);
        }
        Json made = send(FILES + HOW, "application/geopackage+sqlite3", file, 201);
        assertThat(made.getInt("entered")).isEqualTo(COUNTS);
        Json first = Api.get(COORDINATOR, "/api/traffic-counts/" + made.getString("ids[0]"));
        assertThat(first.getInt("year")).isEqualTo(1901);
        // Others of the test's run would be told that these stood there before
        for (String id : made.<String>getList("ids")) {
            Api.change(COORDINATOR, "/api/traffic-counts/" + id, "/withdrawal", "{\"reason\":\"the test is over\"}")
                    .statusCode(200)
                    .body("road", equalTo("Mill Road"));
        }
    }

    private static Position place(Json count) {
        return new Position(count.getDouble("decimalLatitude"), count.getDouble("decimalLongitude"));
    }
}
