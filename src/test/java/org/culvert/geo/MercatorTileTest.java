package org.culvert.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class MercatorTileTest {
    private static final double HALF_THE_WORLD_METRES = Math.PI * 6378137;

    /**
     * The worked example of EPSG Guidance Note 7-2 for Popular Visualisation Pseudo-Mercator (method 1024): 24&deg;22'54.433"N,
     * 100&deg;20'00.000"W is at easting -11 169 055.58 m, northing 2 800 000.00 m.
     */
    @Test
    void positionsAreWhereTheStandardsExamplePutsThem() {
        double latitude = 24 + 22 / 60.0 + 54.433 / 3600;
        double longitude = -(100 + 20 / 60.0);
        double[] place = new MercatorTile(0, 0, 0).place(latitude, longitude);
        double metresAUnit = 2 * HALF_THE_WORLD_METRES / MercatorTile.EXTENT;
        assertThat(place[0] * metresAUnit - HALF_THE_WORLD_METRES).isCloseTo(-11169055.58, within(0.01));
        assertThat(HALF_THE_WORLD_METRES - place[1] * metresAUnit).isCloseTo(2800000.00, within(0.01));
    }

    /** The same figures as {@code gdaltransform -s_srs EPSG:4326 -t_srs EPSG:3857} of GDAL gives for the tile's corners. */
    @Test
    void aTileHasTheBoxOfItsCorners() {
        MercatorTile tile = new MercatorTile(12, 3753, 2431);
        Bounds box = tile.bounds(0);
        double[] northWest = tile.place(box.north(), box.west());
        double[] southEast = tile.place(box.south(), box.east());
        assertThat(northWest[0]).isCloseTo(0, within(1e-6));
        assertThat(northWest[1]).isCloseTo(0, within(1e-6));
        assertThat(southEast[0]).isCloseTo(MercatorTile.EXTENT, within(1e-6));
        assertThat(southEast[1]).isCloseTo(MercatorTile.EXTENT, within(1e-6));
        assertThat(tile.bounds(256).west()).isLessThan(box.west());
        assertThat(tile.bounds(256).north()).isGreaterThan(box.north());
    }

    /** 85.0511 degrees, where the square map of the world ends (common practice: Web Mercator's limit). */
    @Test
    void theWorldIsASquare() {
        Bounds world = new MercatorTile(0, 0, 0).bounds(256);
        assertThat(world.north()).isCloseTo(85.0511287798066, within(1e-10));
        assertThat(world.south()).isCloseTo(-85.0511287798066, within(1e-10));
        assertThat(world.west()).isEqualTo(-180);
        assertThat(world.east()).isEqualTo(180);
        assertThat(new MercatorTile(0, 0, 0).place(90, 0)[1]).isCloseTo(0, within(1e-6));
    }

    @Test
    void tilesThatAreNoneAreRefused() {
        for (int[] none : new int[][] {{-1, 0, 0}, {23, 0, 0}, {2, 4, 0}, {2, 0, 4}, {2, -1, 0}}) {
            assertThatThrownBy(() -> new MercatorTile(none[0], none[1], none[2]))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }
}
