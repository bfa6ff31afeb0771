package org.culvert.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVRecord;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CoordinatesTest {
    private static final Bounds NEW_SOUTH_WALES = new Bounds(-37.6, 140.9, -28.1, 153.7);

    /** Source: Chapman and Wieczorek 2020, doi:10.15468/doc-gg7h-s853; the table rounds up. */
    @Test
    void digitsOfDegreesCostWhatTheGeoreferencingGuideSays() {
        for (CSVRecord row : CheckFiles.rows("georeferencing/coordinate_precision.csv")) {
            double unit = Double.parseDouble(row.get("unit_degrees"));
            for (int latitude : new int[] {0, 30, 60, 85}) {
                double ours = Uncertainty.resolutionMetres(latitude, unit);
                double theirs = Double.parseDouble(row.get("lat" + latitude));
                // Their table gives 1,570 for 1,569.04 and the like: rounded up, some rows from rounded figures.
                assertThat(ours).as("%s at %d", unit, latitude).isBetween(theirs - 1.5, theirs + 0.5);
            }
        }
    }

    /** Source: the worked example of the same guide: 10.27, -123.6 is given to 0.01 degrees, 1.5568 km. */
    @Test
    void finerOfTheTwoCoordinatesTellsTheResolution() {
        CoordinateReading reading = Coordinates.decimal("10.27", "-123.6", 1.0);
        assertThat(reading.uncertaintyMetres()).isCloseTo(1556.8, within(0.2));
    }

    @Test
    void anUnstatedUncertaintyCountsTheReceiverToo() {
        CoordinateReading reading = Coordinates.decimal("-33.86880", "151.20930", null);
        assertThat(reading.position()).isEqualTo(new Position(-33.8688, 151.2093));
        assertThat(reading.uncertaintyMetres()).isCloseTo(30 + 1.44, within(0.05));
        assertThat(Coordinates.decimal("-33.87", "151.21", null).uncertaintyMetres())
                .isGreaterThan(1400);
    }

    @Test
    void aStatedUncertaintyStandsUnlessTheDigitsAreCoarser() {
        assertThat(Coordinates.decimal("-33.86880", "151.20930", 8.0).uncertaintyMetres())
                .isEqualTo(8);
        assertThat(Coordinates.decimal("-33.87", "151.21", 8.0).uncertaintyMetres())
                .isGreaterThan(1400);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "33\u00b052'07.68\"S 151\u00b012'33.48\"E",
                "33\u00b0 52\u2032 07.68\u2033 S, 151\u00b0 12\u2032 33.48\u2033 E",
                "33 52 07.68 S 151 12 33.48 E",
                "S33 52 07.68 E151 12 33.48",
                "S 33\u00b052'07.68'' E 151\u00b012'33.48''",
                "151\u00b012'33.48\"E 33\u00b052'07.68\"S",
                "-33 52 07.68 151 12 33.48",
                "-33\u00b052'07.68\", 151\u00b012'33.48\"",
                "33d52m07.68S 151d12m33.48E",
                "33:52:07.68S 151:12:33.48E",
                "33 deg 52 min 07.68 sec South, 151 deg 12 min 33.48 sec East",
                "Lat: 33\u00b052'07.68\"S Lon: 151\u00b012'33.48\"E",
                "\u221233\u00b052\u2019 07.68\u201d 151\u00b012\u2019 33.48\u201d"
            })
    void degreesMinutesSecondsAreReadInUsualNotations(String text) {
        CoordinateReading reading = Coordinates.text(text, null);
        assertThat(reading.position().latitude()).isCloseTo(-33.8688, within(1e-9));
        assertThat(reading.position().longitude()).isCloseTo(151.2093, within(1e-9));
        assertThat(reading.givenAs()).isEqualTo(GivenAs.DEGREES_MINUTES_SECONDS);
        assertThat(reading.verbatim()).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "S 33 52.128 E 151 12.558; DEGREES_DECIMAL_MINUTES; 2.41",
                "33\u00b052.128'S 151\u00b012.558'E; DEGREES_DECIMAL_MINUTES; 2.41",
                "-33.8688, 151.2093; DECIMAL_DEGREES; 15",
                "33.8688S 151.2093E; DECIMAL_DEGREES; 15",
                "-33.8688 151.2093; DECIMAL_DEGREES; 15",
                "33\u00b052'08\"S 151\u00b012'33\"E; DEGREES_MINUTES_SECONDS; 41",
                "33\u00b052'S 151\u00b013'E; DEGREES_DECIMAL_MINUTES; 2400"
            })
    void resolutionFollowsTheLastPartGiven(String text, GivenAs givenAs, double metres) {
        CoordinateReading reading = Coordinates.text(text, null);
        assertThat(reading.givenAs()).isEqualTo(givenAs);
        assertThat(reading.uncertaintyMetres() - Uncertainty.RECEIVER_METRES).isCloseTo(metres, within(0.06 * metres));
        assertThat(Geodesy.metresBetween(reading.position(), new Position(-33.8688, 151.2093)))
                .isLessThan(metres);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "33\u00b060'00\"S 151\u00b012'33\"E; under 60",
                "33\u00b052'61\"S 151\u00b012'33\"E; under 60",
                "33.5\u00b052'S 151\u00b012'E; decimals",
                "33 52 S 151 12 S; same axis",
                "33 52 151 12 E; only one",
                "-33 52 S 151 12 E; both a sign and a letter",
                "33,8688 S 151,2093 E; under 60",
                "near the old mill; not understood",
                "33 52 7 151 12; cannot be shared out"
            })
    void whatCannotBeIsRefusedWithASentence(String text, String sentence) {
        CoordinateException refused = refusal(() -> Coordinates.text(text, null));
        assertThat(refused.field()).isEqualTo("verbatimCoordinates");
        assertThat(refused.whatIsWrong()).contains(sentence);
        assertThat(refused.whatWouldBeRight()).contains("151");
    }

    @Test
    void impossibleLatitudeOffersTheSwappedReading() {
        CoordinateException refused = refusal(() -> Coordinates.decimal("151.2093", "-33.8688", null));
        assertThat(refused.field()).isEqualTo("decimalLatitude");
        assertThat(refused.otherReading()).isEqualTo(new Position(-33.8688, 151.2093));
    }

    @Test
    void impossibleBothWaysOffersNothing() {
        CoordinateException refused = refusal(() -> Coordinates.decimal("151.2", "133.8", null));
        assertThat(refused.otherReading()).isNull();
        assertThat(refusal(() -> Coordinates.decimal("-33.8", "1511.2", null)).field())
                .isEqualTo("decimalLongitude");
        assertThat(refusal(() -> Coordinates.decimal("abc", "1", null)).whatIsWrong())
                .contains("abc");
        assertThat(refusal(() -> Coordinates.decimal("NaN", "1", null)).field()).isEqualTo("decimalLatitude");
    }

    @Test
    void legalButOutsideTheRegionIsADoubtNeverACorrection() {
        Bounds europe = new Bounds(45, 5, 55, 15);
        List<CoordinateDoubt> swapped = Coordinates.doubts(new Position(7.53, 51.95), europe);
        assertThat(swapped).extracting(CoordinateDoubt::otherReading).containsExactly(new Position(51.95, 7.53));
        assertThat(swapped.get(0).reason()).contains("swapped");
        List<CoordinateDoubt> sign = Coordinates.doubts(new Position(33.8688, 151.2093), NEW_SOUTH_WALES);
        assertThat(sign).extracting(CoordinateDoubt::otherReading).containsExactly(new Position(-33.8688, 151.2093));
        assertThat(Coordinates.doubts(new Position(-33.8688, 151.2093), NEW_SOUTH_WALES))
                .isEmpty();
        assertThat(Coordinates.doubts(new Position(10, 10), NEW_SOUTH_WALES)).isEmpty();
    }

    /** Source: PROJ 9.1.1, UTM zone 56 south of -33.8688, 151.2093. */
    @Test
    void gridIsReadByItsCode() {
        CoordinateReading reading = Coordinates.grid(32756, "334368.6", "6250948.3", null);
        assertThat(Geodesy.metresBetween(reading.position(), new Position(-33.8688, 151.2093)))
                .isLessThan(0.1);
        assertThat(reading.uncertaintyMetres()).isCloseTo(30.14, within(0.01));
        assertThat(reading.verbatimSrs()).isEqualTo("EPSG:32756");
    }

    /** EPSG:2263 counts in US survey feet; gdaltransform of GDAL 3.6.2 gives 40.7033992758838, -74.0113392633327. */
    @Test
    void aGridOfFeetIsReadInFeet() {
        CoordinateReading reading = Coordinates.grid(2263, "981106", "195544", null);
        assertThat(reading.position().latitude()).isCloseTo(40.7033992758838, within(1e-6));
        assertThat(reading.position().longitude()).isCloseTo(-74.0113392633327, within(1e-6));
    }

    @Test
    void zerosOfAGridAreItsResolutionAndADatumShiftIsAdded() {
        double shift = Projections.grid(28356).datumShiftMetres();
        assertThat(shift).isPositive();
        CoordinateReading hundreds = Coordinates.grid(28356, "334400", "6250900", 1.0);
        assertThat(hundreds.uncertaintyMetres()).isCloseTo(141.42 + shift, within(0.01));
        CoordinateReading metres = Coordinates.grid(28356, "334400", "6250948", 1.0);
        assertThat(metres.uncertaintyMetres()).isCloseTo(1.414 + shift, within(0.001));
    }

    @Test
    void swappedGridOffersTheOtherReading() {
        CoordinateException refused = refusal(() -> Coordinates.grid(28356, "6250948", "334368", null));
        assertThat(refused.field()).isEqualTo("easting");
        Position other = Objects.requireNonNull(refused.otherReading());
        assertThat(Geodesy.metresBetween(other, new Position(-33.8688, 151.2093)))
                .isLessThan(2);
        assertThat(refusal(() -> Coordinates.grid(28356, "1", "2", null)).otherReading())
                .isNull();
        assertThat(refusal(() -> Coordinates.grid(28356, "6622221", "212472", null))
                        .field())
                .isEqualTo("easting");
        assertThat(refusal(() -> Coordinates.grid(4326, "1", "2", null)).field())
                .isEqualTo("epsg");
        assertThat(refusal(() -> Coordinates.grid(99999, "1", "2", null)).field())
                .isEqualTo("epsg");
    }

    /** Source: test data of the Open Location Code project. */
    @Test
    void plusCodesAreTheMiddleOfTheirCell() {
        List<CSVRecord> rows = CheckFiles.rows("georeferencing/plus_codes.csv");
        assertThat(rows).hasSize(7);
        for (CSVRecord row : rows) {
            Position near = row.get("near_latitude").isBlank()
                    ? null
                    : new Position(number(row, "near_latitude"), number(row, "near_longitude"));
            CoordinateReading reading = Coordinates.plusCode(row.get("code"), near, null);
            Position southWest = new Position(number(row, "south"), number(row, "west"));
            Position northEast = new Position(number(row, "north"), number(row, "east"));
            assertThat(reading.position().latitude())
                    .isCloseTo((southWest.latitude() + northEast.latitude()) / 2, within(1e-9));
            assertThat(reading.position().longitude())
                    .isCloseTo((southWest.longitude() + northEast.longitude()) / 2, within(1e-9));
            assertThat(reading.uncertaintyMetres())
                    .isCloseTo(30 + Geodesy.metresBetween(southWest, northEast) / 2, within(0.001));
        }
    }

    @Test
    void shortPlusCodeNeedsAPlaceNearWhichToLook() {
        CoordinateException refused = refusal(() -> Coordinates.plusCode("9QCJ+2VX", null, null));
        assertThat(refused.whatIsWrong()).contains("short");
        assertThat(refusal(() -> Coordinates.plusCode("not a code", null, null)).field())
                .isEqualTo("plusCode");
    }

    @Test
    void impossibleUncertaintyIsRefused() {
        assertThat(refusal(() -> Coordinates.decimal("1.0", "1.0", -5.0)).field())
                .isEqualTo("coordinateUncertaintyInMeters");
    }

    private static double number(CSVRecord row, String name) {
        return Double.parseDouble(row.get(name));
    }

    private static CoordinateException refusal(ThrowingCallable call) {
        CoordinateException refused = catchThrowableOfType(CoordinateException.class, call);
        assertThat(refused).isNotNull();
        return refused;
    }
}
