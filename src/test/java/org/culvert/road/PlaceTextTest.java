package org.culvert.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Set;
import org.culvert.platform.InvalidException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Places in one line. How people say a distance along a road: common practice, no source. */
class PlaceTextTest {
    private static final Set<String> ROADS =
            Set.of("mill road", "creek street", "route 7", "7", "black and white road", "the parade");

    private static PlaceAsGiven read(String text) {
        return PlaceText.read(text, name -> ROADS.contains(name.toLowerCase(java.util.Locale.ROOT)));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Mill Road 12.4|Mill Road|12.4",
                "Mill Road km 12.4|Mill Road|12.4",
                "mill road, 12,4 km|mill road|12.4",
                "Mill Road at kilometre post 12|Mill Road|12",
                "near Mill Road 12+400|Mill Road|12+400",
                "Mill Road 12400 m|Mill Road|12400 m",
                "Mill Road 12400 metres|Mill Road|12400 m",
                "12.4 km along Mill Road|Mill Road|12.4",
                "km 12.4 on the Mill Road|Mill Road|12.4",
                "12.4 km Route 7|Route 7|12.4",
                "Route 7 12.4|Route 7|12.4",
                "Black and White Road 3|Black and White Road|3",
                "Black and White Road km 3.25|Black and White Road|3.25"
            })
    void aRoadAndADistance(String said, String road, String distance) {
        PlaceAsGiven.RoadAndChainage given = read(said).roadAndChainage();
        assertThat(given).isNotNull();
        assertThat(given.road()).isEqualTo(road);
        assertThat(given.chainageKilometres()).isEqualTo(distance);
    }

    @ParameterizedTest
    @CsvSource({"Mill Road 12.4 northbound,northbound", "Mill Road km 12.4 SW,SW", "Mill Road 12.4 km east,east"})
    void whicheverWayTheyDrive(String said, String direction) {
        assertThat(read(said).direction()).isEqualTo(direction);
        assertThat(read(said).roadAndChainage()).isNotNull();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Mill Road / Creek Street|Mill Road|Creek Street",
                "corner of Mill Road and Creek Street|Mill Road|Creek Street",
                "Mill Road & Creek Street|Mill Road|Creek Street",
                "Mill Road at Creek Street|Mill Road|Creek Street",
                "Black and White Road and Creek Street|Black and White Road|Creek Street"
            })
    void twoRoadsThatMeet(String said, String road, String other) {
        assertThat(read(said).crossingRoads()).isEqualTo(new PlaceAsGiven.CrossingRoads(road, other));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "-33.8688, 151.2093|-33.8688|151.2093",
                "-33.8688 151.2093|-33.8688|151.2093",
                "(−33.8688; 151.2093)|-33.8688|151.2093",
                "-33,8688 151,2093|-33.8688|151.2093",
                "geo:-33.8688,151.2093;u=35|-33.8688|151.2093"
            })
    void degreesInDecimals(String said, String latitude, String longitude) {
        assertThat(read(said).decimalDegrees()).isEqualTo(new PlaceAsGiven.DecimalDegrees(latitude, longitude));
    }

    /** 55 is a zone of the south: EPSG 32755. Letters of latitude bands: MGRS, from memory. */
    @Test
    void aGridWithItsZone() {
        assertThat(read("55H 334368 6250948").grid()).isEqualTo(new PlaceAsGiven.Grid(32755, "334368", "6250948"));
        assertThat(read("UTM 32U 500000 5500000").grid()).isEqualTo(new PlaceAsGiven.Grid(32632, "500000", "5500000"));
        assertThat(read("EPSG:28356 334368 6250948").grid())
                .isEqualTo(new PlaceAsGiven.Grid(28356, "334368", "6250948"));
    }

    @Test
    void degreesMinutesAndSeconds() {
        String said = "33°51'31\"S 151°12'53\"E";
        assertThat(read(said).degreesMinutesSeconds()).isEqualTo(said);
    }

    /** The example of the Open Location Code specification. */
    @Test
    void aPlusCode() {
        assertThat(read("8FVC2222+22").plusCode()).isEqualTo("8FVC2222+22");
    }

    /** The sign for a plus-minus of metres is that of ISO 80000-1; the rest are ways to type it, from memory. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "-33.8688, 151.2093 ± 50 m|50",
                "Mill Road 12.4 +/- 200 m|200",
                "Mill Road / Creek Street, ±1 km|1000",
                "8FVC2222+22 ±30m|30"
            })
    void howSureIsSaidBehindIt(String said, double metres) {
        assertThat(read(said).uncertaintyMetres()).isEqualTo(metres);
        assertThat(read(said.replaceFirst("[ ,]*(±|\\+/-).*", "")).uncertaintyMetres())
                .isNull();
    }

    /** A number before a road without a word for kilometres is a house's. */
    @ParameterizedTest
    @ValueSource(strings = {"12 Mill Road", "the old mill", "?", "Mill Road"})
    void whatIsNoPlaceSaysWhatWouldBe(String said) {
        assertThatThrownBy(() -> read(said)).isInstanceOfSatisfying(InvalidException.class, wrong -> {
            assertThat(wrong.errors()).hasSize(1);
            assertThat(wrong.errors().get(0).field()).isEqualTo("place");
            assertThat(wrong.errors().get(0).wanted()).contains("12.4");
        });
    }

    /** An unknown road goes on to where the known ones are told. */
    @Test
    void anUnknownRoadIsReadAsOne() {
        PlaceAsGiven.RoadAndChainage given = read("Mil Road km 12.4").roadAndChainage();
        assertThat(given).isEqualTo(new PlaceAsGiven.RoadAndChainage("Mil Road", "12.4", null));
    }
}
