package org.culvert.road;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.geo.EastingNorthing;
import org.culvert.geo.Position;
import org.culvert.geo.Projections;
import org.culvert.platform.InvalidException;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Many places at once are understood as each of them would be. */
@QuarkusTest
class ManyPlacesTest {
    private static final int PLACES = 500;
    private static final long SEED = 20261129;

    @Inject
    PlaceReading reading;

    @Inject
    ManyPlaces many;

    @BeforeEach
    void layRoads() {
        World.shared();
    }

    @Test
    void fiveHundredPlacesAreUnderstoodAlikeBothWays() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(SEED);
        PlacesOnRoads opened = many.open();
        Map<String, Integer> outcomes = new TreeMap<>();
        for (int i = 0; i < PLACES; i++) {
            PlaceAsGiven given = given(random, i);
            Object one = outcome(reading, given);
            // Twice, since names are remembered
            assertThat(outcome(opened, given))
                    .as("seed %d, place %d: %s", SEED, i, given)
                    .isEqualTo(one);
            assertThat(outcome(opened, given)).isEqualTo(one);
            outcomes.merge(kind(one), 1, Integer::sum);
        }
        assertThat(outcomes.keySet()).contains("refused", "on a road", "in doubt", "off the roads");
        assertThat(outcomes.values()).allMatch(count -> count >= 10);
    }

    private static Object outcome(PlaceReading way, PlaceAsGiven given) {
        try {
            return way.understand(given);
        } catch (InvalidException wrong) {
            return wrong.errors();
        }
    }

    private static String kind(Object outcome) {
        if (!(outcome instanceof PlaceUnderstood place)) {
            return "refused";
        }
        return place.onRoad() == null ? "off the roads" : place.roadInDoubt() ? "in doubt" : "on a road";
    }

    private static PlaceAsGiven given(UniformRandomProvider random, int i) {
        double latitude = -30.5 + random.nextDouble(-0.004, 0.004);
        double longitude = 150.05 + random.nextDouble(-0.055, 0.055);
        if (random.nextInt(4) == 0) {
            longitude = 150.05 + random.nextDouble(-0.0004, 0.0004);
        }
        Double uncertainty = List.of(5.0, 30.0, 300.0, -1.0).get(random.nextInt(4));
        String road = List.of("Mill Rd", "RIVER LANE", "school st", "Nowhere Road", "")
                .get(random.nextInt(5));
        String direction = List.of("northbound", "west", "").get(random.nextInt(3));
        String north = String.format(Locale.ROOT, "%." + (2 + i % 5) + "f", latitude);
        String east = String.format(Locale.ROOT, "%." + (2 + i % 5) + "f", longitude);
        PlaceAsGiven.DecimalDegrees degrees = null;
        String text = null;
        PlaceAsGiven.Grid grid = null;
        String code = null;
        PlaceAsGiven.RoadAndChainage chainage = null;
        PlaceAsGiven.CrossingRoads crossing = null;
        switch (i % 8) {
            case 0, 1 -> degrees = new PlaceAsGiven.DecimalDegrees(north, east);
            // under each other's headings, and without a sign
            case 2 ->
                degrees = new PlaceAsGiven.DecimalDegrees(random.nextBoolean() ? east : north.substring(1), north);
            case 3 ->
                text = String.format(
                        Locale.ROOT, "30 %.3f S 150 %.3f E", (-latitude - 30) * 60, (longitude - 150) * 60);
            case 4 -> {
                EastingNorthing on = Projections.grid(28356).forward(new Position(latitude, longitude));
                grid = new PlaceAsGiven.Grid(
                        28356, String.valueOf(Math.round(on.easting())), String.valueOf(Math.round(on.northing())));
            }
            case 5 -> code = List.of("4RR4G2X2+22", "G322+2C", "nothing").get(random.nextInt(3));
            case 6 ->
                chainage = new PlaceAsGiven.RoadAndChainage(
                        road.isEmpty() ? "Mill Road" : road,
                        String.format(Locale.ROOT, "%." + random.nextInt(4) + "f", random.nextDouble(0, 13)),
                        null);
            default ->
                crossing = new PlaceAsGiven.CrossingRoads(
                        road.isEmpty() ? "Mill Road" : road, random.nextBoolean() ? "River Ln" : "School Street");
        }
        return new PlaceAsGiven(
                degrees,
                text,
                grid,
                code,
                chainage,
                crossing,
                uncertainty < 0 ? null : uncertainty,
                road.isEmpty() ? null : road,
                direction.isEmpty() ? null : direction);
    }
}
