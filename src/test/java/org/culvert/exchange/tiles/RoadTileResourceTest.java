package org.culvert.exchange.tiles;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;

import io.github.sebasbaumh.mapbox.vectortile.VectorTile;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import org.culvert.geo.MercatorTile;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.hamcrest.Matchers;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Tiles by the Mapbox Vector Tile specification 2.1 and TileJSON 3.0.0. */
@QuarkusTest
class RoadTileResourceTest {
    private static final double LATITUDE = -30.5;
    private static final double LONGITUDE = 150.05;

    @BeforeEach
    void makeWorld() {
        World.shared();
    }

    /** The tile that a position lies in, by the formula of the tiles' own map. */
    static String tile(int zoom) {
        double[] place = new MercatorTile(0, 0, 0).place(LATITUDE, LONGITUDE);
        int tiles = 1 << zoom;
        return "/tiles/roads/" + zoom + "/" + (int) (place[0] / MercatorTile.EXTENT * tiles) + "/"
                + (int) (place[1] / MercatorTile.EXTENT * tiles) + ".mvt";
    }

    @Test
    void aTileHasOneLayerOfVersion2WithLinesAndTheirNames() throws Exception {
        byte[] octets = Api.as(CARER)
                .get(tile(14))
                .then()
                .statusCode(200)
                .contentType("application/vnd.mapbox-vector-tile")
                .extract()
                .asByteArray();
        VectorTile.Tile tile = VectorTile.Tile.parseFrom(octets);
        assertThat(tile.getLayersCount()).isEqualTo(1);
        VectorTile.Tile.Layer roads = tile.getLayers(0);
        assertThat(roads.getVersion()).as("4.1: a version").isEqualTo(2);
        assertThat(roads.getName()).isEqualTo("roads");
        assertThat(roads.getExtent()).isEqualTo(4096);
        assertThat(roads.getFeaturesCount()).isGreaterThan(3);
        assertThat(roads.getKeysList()).contains("id", "road");
        for (VectorTile.Tile.Feature feature : roads.getFeaturesList()) {
            assertThat(feature.getType()).isEqualTo(VectorTile.Tile.GeomType.LINESTRING);
            assertThat(feature.getTagsCount() % 2)
                    .as("4.4: keys and values in pairs")
                    .isZero();
            assertThat(feature.getGeometry(0) & 7)
                    .as("4.3.1: a line begins with MoveTo")
                    .isEqualTo(1);
        }
    }

    @Test
    void theSameVersionNeedNotBeSentTwice() {
        String tag =
                Api.as(CARER).get(tile(14)).then().statusCode(200).extract().header("ETag");
        Api.as(CARER).header("If-None-Match", tag).get(tile(14)).then().statusCode(304);
        assertThat(Api.as(CARER).get(tile(13)).then().extract().header("ETag")).isNotEqualTo(tag);
    }

    @Test
    void aTileWithoutRoadsIsEmpty() {
        for (String none : List.of("/tiles/roads/6/0/0.mvt", "/tiles/roads/16/40000/20000.mvt")) {
            assertThat(Api.as(CARER).get(none).then().statusCode(200).extract().asByteArray())
                    .isEmpty();
        }
    }

    @Test
    void tilesThatAreNoneAreRefusedByName() {
        Map.of(
                        "/tiles/roads/5/1/1.mvt", "z",
                        "/tiles/roads/17/1/1.mvt", "z",
                        "/tiles/roads/6/64/1.mvt", "x",
                        "/tiles/roads/6/1/64.mvt", "y",
                        "/tiles/roads/6/1/a.mvt", "y",
                        "/tiles/roads/-6/1/1.mvt", "z",
                        "/tiles/roads/6/99999999999/1.mvt", "x")
                .forEach((path, field) -> Api.as(CARER)
                        .get(path)
                        .then()
                        .statusCode(400)
                        .body("errors[0].field", Matchers.equalTo(field)));
    }

    @Test
    void theyAreDescribedAsTileJson() {
        var told = Api.get(ADMIN, "/tiles/roads/tiles.json");
        assertThat(told.getString("tilejson")).isEqualTo("3.0.0");
        assertThat(told.getString("tiles[0]")).startsWith("http").endsWith("/tiles/roads/{z}/{x}/{y}.mvt");
        assertThat(told.getString("vector_layers[0].id")).isEqualTo("roads");
        assertThat(told.getInt("minzoom")).isLessThan(told.getInt("maxzoom"));
        assertThat(told.getList("bounds")).hasSize(4);
    }
}
