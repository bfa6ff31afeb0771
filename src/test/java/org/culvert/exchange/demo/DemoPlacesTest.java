package org.culvert.exchange.demo;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.openlocationcode.OpenLocationCode;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import net.sf.geographiclib.Geodesic;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.referencing.CRS;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What callers say of a place leads back to where the animal truly was, read by other people's libraries. */
class DemoPlacesTest {
    private static final DemoRegion REGION = DemoRegion.committed();

    @Test
    void decimalDegreesLieBesideTheRoad() {
        for (CallOf callOf : collisions(GivenPlace.Kind.DECIMAL_DEGREES)) {
            GivenPlace place = callOf.call().place();
            assertThat(metresFromTruth(
                            callOf,
                            Double.parseDouble(present(place.decimalLatitude())),
                            Double.parseDouble(present(place.decimalLongitude()))))
                    .as(place.text())
                    .isLessThan(60);
        }
    }

    @Test
    void degreesMinutesAndSecondsLieBesideTheRoad() {
        for (CallOf callOf : collisions(GivenPlace.Kind.DEGREES_MINUTES_SECONDS)) {
            String[] halves = callOf.call().place().text().split(" ");
            assertThat(metresFromTruth(callOf, sexagesimal(halves[0]), sexagesimal(halves[1])))
                    .as(callOf.call().place().text())
                    .isLessThan(60);
        }
    }

    private static double sexagesimal(String text) {
        String[] parts = text.split("[°'\"]");
        double degrees =
                Double.parseDouble(parts[0]) + Double.parseDouble(parts[1]) / 60 + Double.parseDouble(parts[2]) / 3600;
        return parts[3].equals("S") ? -degrees : degrees;
    }

    /** The reference is GeoTools' reading of EPSG:32757. */
    @Test
    void gridPositionsLieBesideTheRoad() throws Exception {
        MathTransform toGrid = CRS.findMathTransform(CRS.decode("EPSG:4326", true), CRS.decode("EPSG:32757", true));
        for (CallOf callOf : collisions(GivenPlace.Kind.GRID)) {
            GivenPlace place = callOf.call().place();
            double[] truth = {
                callOf.incident().spot().longitude(), callOf.incident().spot().latitude()
            };
            toGrid.transform(truth, 0, truth, 0, 1);
            assertThat(Math.hypot(truth[0] - present(place.easting()), truth[1] - present(place.northing())))
                    .as(place.text())
                    .isLessThan(60);
            double[] ours = PlaceText.eastingNorthing(callOf.incident().spot());
            assertThat(Math.hypot(truth[0] - ours[0], truth[1] - ours[1])).isLessThan(0.001);
        }
    }

    /** The reference is the library of the Open Location Code project. */
    @Test
    void plusCodesLieBesideTheRoad() {
        for (CallOf callOf : collisions(GivenPlace.Kind.PLUS_CODE)) {
            String code = present(callOf.call().place().plusCode());
            OpenLocationCode.CodeArea area = new OpenLocationCode(code).decode();
            assertThat(metresFromTruth(callOf, area.getCenterLatitude(), area.getCenterLongitude()))
                    .as(code)
                    .isLessThan(60);
            Spot spot = callOf.incident().spot();
            assertThat(PlaceText.plusCode(spot)).isEqualTo(OpenLocationCode.encode(spot.latitude(), spot.longitude()));
        }
    }

    @Test
    void chainagesAreOfTheRightRoadAndAsExactAsTheySay() {
        List<CallOf> calls = collisions(GivenPlace.Kind.ROAD_AND_CHAINAGE);
        for (CallOf callOf : calls) {
            GivenPlace place = callOf.call().place();
            Exposure.RoadPoint truth = present(callOf.incident().point());
            double metres = Double.parseDouble(present(place.chainageKm())) * 1000;
            assertThat(place.roadName()).isEqualTo(truth.road().name());
            assertThat(metres)
                    .as(place.text())
                    .isBetween(truth.road().startMeasure(), truth.road().endMeasure());
            assertThat(Math.abs(metres - truth.measure()))
                    .as(place.text())
                    .isLessThan(present(place.chainageKm()).contains(".") ? 200 : 501);
        }
        Map<Boolean, Long> whole = calls.stream()
                .collect(Collectors.partitioningBy(
                        callOf -> !present(callOf.call().place().chainageKm()).contains("."), Collectors.counting()));
        assertThat(whole.get(true)).isGreaterThan(300);
        assertThat(whole.get(false)).isGreaterThan(1_000);
    }

    @Test
    void crossingRoadsReallyMeetNearby() {
        for (CallOf callOf : collisions(GivenPlace.Kind.CROSSING_ROADS)) {
            GivenPlace place = callOf.call().place();
            Exposure.RoadPoint truth = present(callOf.incident().point());
            assertThat(truth.road().junctions())
                    .as(place.text())
                    .anyMatch(junction -> junction.otherRoad().equals(place.crossingRoadName())
                            && Math.abs(junction.measure() - truth.measure()) < 200);
            assertThat(Exposure.named(REGION.roads(), present(place.crossingRoadName())))
                    .isNotEmpty();
        }
    }

    @Test
    void twoCallersAboutOneAnimalAreNearInTimeAndMarked() {
        List<Incident> twice = REGION.incidents().stream()
                .filter(incident -> incident.calls().size() > 1)
                .toList();

        assertThat(twice).hasSizeBetween(600, 1_000);
        assertThat(twice)
                .allSatisfy(incident -> assertThat(incident.calls().get(1).received())
                        .isBetween(
                                incident.calls().get(0).received(),
                                incident.calls().get(0).received().plusSeconds(3 * 3600)));
        assertThat(present(RegionFiles.of(REGION).get("duplicates.csv")).lines().skip(1))
                .hasSameSizeAs(twice);
    }

    private static <T> T present(@Nullable T value) {
        return Objects.requireNonNull(value);
    }

    private static List<CallOf> collisions(GivenPlace.Kind kind) {
        List<CallOf> calls = CallOf.inOrder(REGION.incidents()).stream()
                .filter(callOf -> callOf.incident().point() != null)
                .filter(callOf -> callOf.call().place().kind() == kind)
                .toList();
        assertThat(calls).as(kind.word()).hasSizeGreaterThan(50);
        return calls;
    }

    private static double metresFromTruth(CallOf callOf, double latitude, double longitude) {
        Spot truth = callOf.incident().spot();
        return Geodesic.WGS84.Inverse(truth.latitude(), truth.longitude(), latitude, longitude).s12;
    }
}
