package org.culvert.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

class GeodesyTest {
    /** Source: GeodSolve of GeographicLib 2.1.2, see checks/geodesy. */
    @Test
    void distancesAgreeWithGeodSolveToAMicrometre() {
        List<CSVRecord> rows = CheckFiles.rows("geodesy/geodesic_inverse_wgs84.csv");
        assertThat(rows).hasSize(24);
        for (CSVRecord row : rows) {
            // The last row's echoed positions, not its input, are what was computed.
            boolean echoed = row.get("in_lat1").equals("1e-8");
            String prefix = echoed ? "" : "in_";
            Position from = new Position(number(row, prefix + "lat1"), number(row, prefix + "lon1"));
            Position to = new Position(number(row, prefix + "lat2"), number(row, prefix + "lon2"));
            assertThat(Geodesy.metresBetween(from, to))
                    .as(row.toString())
                    .isCloseTo(number(row, "s12_m"), within(1e-6));
        }
    }

    /** Source: Geocentric Datum of Australia Technical Manual, Flinders Peak to Buninyong on GRS80. */
    @Test
    void flindersPeakToBuninyongIsAsTheManualHasIt() {
        Position flindersPeak = new Position(-(37 + 57 / 60.0 + 3.72030 / 3600), 144 + 25 / 60.0 + 29.52440 / 3600);
        Position buninyong = new Position(-(37 + 39 / 60.0 + 10.15610 / 3600), 143 + 55 / 60.0 + 35.38390 / 3600);
        Geodesy.Line line = Geodesy.GRS80.inverse(flindersPeak, buninyong);
        assertThat(line.metres()).isCloseTo(54972.271, within(0.0005));
        assertThat(line.azimuthAtStartDegrees()).isCloseTo(306 + 52 / 60.0 + 5.37 / 3600, within(0.005 / 3600));
        assertThat(line.azimuthBackDegrees()).isCloseTo(127 + 10 / 60.0 + 25.07 / 3600, within(0.005 / 3600));
    }

    @Test
    void goingAlongAGeodesicEndsWhereItsInverseBegan() {
        Position from = new Position(-33.8688, 151.2093);
        Position to = new Position(-37.8136, 144.9631);
        Geodesy.Line line = Geodesy.WGS84.inverse(from, to);
        Position reached = Geodesy.WGS84.direct(from, line.azimuthAtStartDegrees(), line.metres());
        assertThat(Geodesy.metresBetween(reached, to)).isLessThan(1e-6);
    }

    private static double number(CSVRecord row, String name) {
        return Double.parseDouble(row.get(name));
    }
}
