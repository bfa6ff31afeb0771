package org.culvert.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class ProjectionsTest {
    private static final double ONE_CENTIMETRE = 0.01;
    private static final double BUNINYONG_LATITUDE = -(37 + 39 / 60.0 + 10.15610 / 3600);
    private static final double BUNINYONG_LONGITUDE = 143 + 55 / 60.0 + 35.38390 / 3600;
    private static final double FLINDERS_LATITUDE = -(37 + 57 / 60.0 + 3.72030 / 3600);
    private static final double FLINDERS_LONGITUDE = 144 + 25 / 60.0 + 29.52440 / 3600;

    /** Source: Geocentric Datum of Australia Technical Manual. */
    @Test
    void mapGridOfAustraliaIsAsItsManualHasIt() {
        for (int epsg : new int[] {28355, 7855}) {
            Grid mga55 = Projections.grid(epsg);
            assertGrid(mga55.forwardFromOwnDatum(BUNINYONG_LATITUDE, BUNINYONG_LONGITUDE), 228854.0513, 5828259.0384);
            assertGrid(mga55.forwardFromOwnDatum(FLINDERS_LATITUDE, FLINDERS_LONGITUDE), 273741.2966, 5796489.7769);
        }
    }

    /** Source: PROJ 9.1.1, the "WGS84 -> UTM" rows of checks/geodesy/projection_checks.txt. */
    @Test
    void utmAgreesWithProj() {
        List<String> rows = CheckFiles.lines("geodesy/projection_checks.txt").stream()
                .filter(line -> line.contains(" -> ") && !line.startsWith("#"))
                .toList();
        assertThat(rows).hasSize(9);
        for (String row : rows) {
            String[] words = row.split("[ \t]+", -1);
            Grid utm = Projections.grid(Integer.parseInt(words[0]));
            Position position = new Position(Double.parseDouble(words[1]), Double.parseDouble(words[2]));
            EastingNorthing expected = new EastingNorthing(Double.parseDouble(words[4]), Double.parseDouble(words[5]));
            assertGrid(utm.forward(position), expected.easting(), expected.northing());
            Position back = utm.inverse(expected.easting(), expected.northing());
            assertThat(Geodesy.metresBetween(back, position)).as(row).isLessThan(ONE_CENTIMETRE);
        }
    }

    /** Source: PROJ 9.1.1; the register puts the north first here, callers never see that. */
    @Test
    void newZealandGivesEastingFirst() {
        assertGrid(Projections.grid(2193).forward(new Position(-36.8485, 174.7633)), 1757209.2535, 5920482.8089);
        Position back = Projections.grid(2193).inverse(1757209.2535, 5920482.8089);
        assertThat(Geodesy.metresBetween(back, new Position(-36.8485, 174.7633)))
                .isLessThan(ONE_CENTIMETRE);
    }

    /** Source: EPSG Guidance Note 7-2, Lambert azimuthal equal area for Europe; north first in the register. */
    @Test
    void europeanEqualAreaGivesEastingFirst() {
        assertGrid(Projections.grid(3035).forward(new Position(50, 5)), 3962799.45, 2999718.85);
    }

    /** Source: EPSG Guidance Note 7-2, transverse Mercator example on the datum's own latitude and longitude. */
    @Test
    void britishNationalGridIsAsTheGuidanceNoteHasIt() {
        EastingNorthing point = Projections.grid(27700).forwardFromOwnDatum(50.5, 0.5);
        assertThat(point.easting()).isCloseTo(577274.9838, within(ONE_CENTIMETRE));
        assertThat(point.northing()).isCloseTo(69740.4923, within(ONE_CENTIMETRE));
    }

    /** Source: EPSG Guidance Note 7-2, popular visualisation pseudo-Mercator. */
    @Test
    void webMercatorIsAsTheGuidanceNoteHasIt() {
        Position position = new Position(24 + 22 / 60.0 + 54.433 / 3600, -(100 + 20 / 60.0));
        assertGrid(Projections.grid(3857).forward(position), -11169055.58, 2800000.00);
    }

    @Test
    void namesOfFilesAreUnderstood() {
        for (String name : List.of(
                "EPSG:28356",
                "epsg:28356",
                "urn:ogc:def:crs:EPSG::28356",
                "urn:ogc:def:crs:EPSG:9.8:28356",
                "http://www.opengis.net/def/crs/EPSG/0/28356",
                "28356")) {
            assertThat(Projections.named(name).name()).as(name).isEqualTo("EPSG:28356");
        }
        for (String name : List.of("CRS84", "OGC:CRS84", "urn:ogc:def:crs:OGC:1.3:CRS84")) {
            assertThat(Projections.named(name).isGeographic()).as(name).isTrue();
        }
    }

    @Test
    void degreesComeLongitudeFirstWhateverTheRegisterSays() {
        Position position = Projections.named("EPSG:4326").inverse(151.2093, -33.8688);
        assertThat(position).isEqualTo(new Position(-33.8688, 151.2093));
    }

    @Test
    void unknownCodesAreRefusedByName() {
        for (int epsg : new int[] {99999, 5773, 4978}) {
            assertThatThrownBy(() -> Projections.grid(epsg))
                    .isInstanceOfSatisfying(CoordinateException.class, refused -> {
                        assertThat(refused.field()).isEqualTo("epsg");
                        assertThat(refused.whatIsWrong()).contains(String.valueOf(epsg));
                    });
        }
        assertThatThrownBy(() -> Projections.named("WGS84 or so"))
                .isInstanceOfSatisfying(
                        CoordinateException.class,
                        refused -> assertThat(refused.field()).isEqualTo("crs"));
    }

    private static void assertGrid(EastingNorthing point, double easting, double northing) {
        assertThat(point.easting()).isCloseTo(easting, within(ONE_CENTIMETRE));
        assertThat(point.northing()).isCloseTo(northing, within(ONE_CENTIMETRE));
    }
}
