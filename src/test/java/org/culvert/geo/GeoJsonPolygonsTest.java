package org.culvert.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;

class GeoJsonPolygonsTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    // RFC 7946, appendix A.3 (polygon with a hole) and A.6 (multipolygon)
    private static final String WITH_A_HOLE = "[[[100.0,0.0],[101.0,0.0],[101.0,1.0],[100.0,1.0],[100.0,0.0]],"
            + "[[100.8,0.8],[100.8,0.2],[100.2,0.2],[100.2,0.8],[100.8,0.8]]]";
    private static final String TWO = "[[[[102.0,2.0],[103.0,2.0],[103.0,3.0],[102.0,3.0],[102.0,2.0]]],"
            + "[[[100.0,0.0],[101.0,0.0],[101.0,1.0],[100.0,1.0],[100.0,0.0]],"
            + "[[100.2,0.2],[100.2,0.8],[100.8,0.8],[100.8,0.2],[100.2,0.2]]]]";

    private static List<Object> list(String json) {
        try {
            return JSON.readValue(json, new TypeReference<>() {});
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException(e);
        }
    }

    private static String written(Geometry shape) throws JsonProcessingException {
        return JSON.writeValueAsString(GeoJsonPolygons.coordinates(shape));
    }

    @Test
    void theStandardsExamplesComeBackAsTheyWere() throws JsonProcessingException {
        Geometry one = GeoJsonPolygons.read("Polygon", list(WITH_A_HOLE));
        assertThat(one.getArea()).isCloseTo(1 - 0.6 * 0.6, within(1e-12));
        assertThat(GeoJsonPolygons.type(one)).isEqualTo("Polygon");
        assertThat(written(one)).isEqualTo(WITH_A_HOLE);
        Geometry two = GeoJsonPolygons.read("MultiPolygon", list(TWO));
        assertThat(two).isInstanceOf(MultiPolygon.class);
        assertThat(two.getArea()).isCloseTo(2 - 0.6 * 0.6, within(1e-12));
        assertThat(GeoJsonPolygons.type(two)).isEqualTo("MultiPolygon");
        assertThat(written(two)).isEqualTo(TWO);
        assertThat(Shapes.fromWkb(Shapes.wkb(two)).equalsExact(two)).isTrue();
    }

    @Test
    void ringsAreTurnedAndHeightsLeftOut() throws JsonProcessingException {
        Geometry shape = GeoJsonPolygons.read("Polygon", list("[[[0,0,7],[0,1,7],[1,1,7],[0,0,7]]]"));
        assertThat(Orientation.isCCW(((Polygon) shape).getExteriorRing().getCoordinates()))
                .isTrue();
        assertThat(written(shape)).isEqualTo("[[[0.0,0.0],[1.0,1.0],[0.0,1.0],[0.0,0.0]]]");
        assertThat(shape.getSRID()).isEqualTo(4326);
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', textBlock = """
                    [];                                                     coordinates;       no ring
                    [7];                                                    coordinates.0;     no list
                    [[[0,0],[1,0],[0,0]]];                                  coordinates.0;     too few
                    [[[0,0],[1,0],[1,1],[0,1]]];                            coordinates.0;     not closed
                    [[[0,0],[1,0],[1],[0,0]]];                              coordinates.0.2;   no position
                    [[[0,0],[1,0],[1,1,1,1],[0,0]]];                        coordinates.0.2;   no position
                    [[[0,0],[1,0],"here",[0,0]]];                           coordinates.0.2;   no list
                    [[[0,0],[1,0],[1,"1"],[0,0]]];                          coordinates.0.2.1; no number
                    [[[0,0],[1,0],[1,91],[0,0]]];                           coordinates.0.2.1; no latitude 91
                    [[[0,0],[181,0],[1,1],[0,0]]];                          coordinates.0.1.0; no longitude 181
                    [[[0,0],[1e400,0],[1,1],[0,0]]];                        coordinates.0.1.0; no longitude
                    [[[179,0],[-179,0],[-179,1],[179,1],[179,0]]];          coordinates.0.1;   half around
                    [[[0,0],[1,1],[1,0],[0,1],[0,0]]];                      coordinates;       longitude 0.5000000, latitude 0.5000000 the border crosses itself
                    [[[0,0],[9,0],[9,9],[0,9],[0,0]],[[10,10],[11,10],[11,11],[10,10]]]; coordinates; a hole lies outside
                    [[[0,0],[1,0],[0,0],[0,0]]];                            coordinates;       Near longitude
                    """)
    void whatIsNoPolygonIsSaidWithItsPlace(String json, String field, String detail) {
        assertThatThrownBy(() -> GeoJsonPolygons.read("Polygon", list(json)))
                .isInstanceOfSatisfying(CoordinateException.class, wrong -> {
                    assertThat(wrong.field()).isEqualTo(field);
                    assertThat(wrong.whatIsWrong()).contains(detail);
                    assertThat(wrong.whatWouldBeRight()).isNotBlank();
                });
    }

    @Test
    void polygonsOfOneGeometryDoNotOverlap() {
        String overlapping = "[[[[0,0],[2,0],[2,2],[0,2],[0,0]]],[[[1,1],[3,1],[3,3],[1,3],[1,1]]]]";
        String nested = "[[[[0,0],[9,0],[9,9],[0,9],[0,0]]],[[[1,1],[3,1],[3,3],[1,3],[1,1]]]]";
        for (String json : List.of(overlapping, nested, "[]")) {
            assertThatThrownBy(() -> GeoJsonPolygons.read("MultiPolygon", list(json)))
                    .isInstanceOf(CoordinateException.class);
        }
        assertThatThrownBy(() -> GeoJsonPolygons.read("Point", List.of(0, 0)))
                .isInstanceOfSatisfying(
                        CoordinateException.class,
                        wrong -> assertThat(wrong.field()).isEqualTo("type"));
    }

    @Test
    void latitudeFirstIsNoticedAndTheOtherReadingOffered() {
        assertThatThrownBy(() ->
                        GeoJsonPolygons.read("Polygon", list("[[[-30.5,150],[-30.5,151],[-31,151],[-30.5,150]]]")))
                .isInstanceOfSatisfying(
                        CoordinateException.class,
                        wrong -> assertThat(wrong.otherReading()).isEqualTo(new Position(-30.5, 150)));
    }

    @Test
    void aHundredThousandPositionsAreReadAndNoMore() {
        assertThat(GeoJsonPolygons.read("Polygon", List.of(circle(GeoJsonPolygons.MOST_POSITIONS)))
                        .getNumPoints())
                .isEqualTo(GeoJsonPolygons.MOST_POSITIONS);
        assertThatThrownBy(() -> GeoJsonPolygons.read("Polygon", List.of(circle(GeoJsonPolygons.MOST_POSITIONS + 1))))
                .hasMessageContaining("too many positions");
    }

    private static List<List<Double>> circle(int positions) {
        List<List<Double>> ring = new ArrayList<>();
        for (int i = 0; i < positions - 1; i++) {
            double angle = 2 * Math.PI * i / (positions - 1);
            ring.add(List.of(150 + Math.cos(angle), -30 + Math.sin(angle)));
        }
        ring.add(ring.get(0));
        return ring;
    }
}
