package org.culvert.exchange.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;

/** The region is invented for the demo; these tests ask that it is what its settings and its README say. */
class DemoRegionTest {
    private static final DemoRegion REGION = DemoRegion.committed();

    @Test
    void sameSeedGivesTheSameBytesAndAnotherSeedOthers() {
        Map<String, String> first = RegionFiles.of(REGION);

        assertThat(RegionFiles.of(DemoRegion.committed())).isEqualTo(first);
        assertThat(RegionFiles.of(DemoRegion.withSeed(7)).get("calls.csv")).isNotEqualTo(first.get("calls.csv"));
    }

    @Test
    void committedTruthIsWhatTheGeneratorMakes() throws IOException {
        assertThat(Truth.stretches(REGION)).isEqualTo(Files.readString(Path.of("demo-data/truth.csv")));
    }

    @Test
    void roadsAreSomeThreeThousandKilometres() {
        assertThat(REGION.totalRoadMetres()).isBetween(2_850_000.0, 3_250_000.0);
    }

    @Test
    void sixYearsHaveSomeFifteenThousandCalls() {
        Instant end = Truth.endOfSixYears(REGION.settings());
        long calls = CallOf.inOrder(REGION.incidents()).stream()
                .filter(callOf -> callOf.call().received().isBefore(end))
                .count();

        assertThat(calls).isBetween(14_500L, 15_500L);
    }

    /** Geodesics of GeographicLib (Karney 2013) are the outside measure here. */
    @Test
    void measuresAreMetresOnTheEllipsoid() {
        for (Road road : REGION.roads()) {
            double metres = 0;
            for (int i = 1; i < road.spots().size(); i++) {
                Spot a = road.spots().get(i - 1);
                Spot b = road.spots().get(i);
                metres += Geodesic.WGS84.Inverse(a.latitude(), a.longitude(), b.latitude(), b.longitude()).s12;
            }
            assertThat(road.lengthMetres()).as(road.name()).isCloseTo(metres, within(0.001 + 1e-7 * metres));
        }
    }

    @Test
    void piecesOfARoadFollowOneAnotherWithoutGap() {
        for (Road road : REGION.roads()) {
            int vertex = 0;
            for (Road.Piece piece : road.pieces()) {
                assertThat(piece.fromVertex()).as(road.name()).isEqualTo(vertex);
                assertThat(piece.toVertex()).as(road.name()).isGreaterThan(vertex);
                vertex = piece.toVertex();
            }
            assertThat(vertex).as(road.name()).isEqualTo(road.spots().size() - 1);
            assertThat(new HashSet<>(road.spots())).as(road.name()).hasSameSizeAs(road.spots());
        }
    }

    @Test
    void roadsThatCrossOnOneLevelShareAVertex() {
        List<RoadDraft> pieces = REGION.roads().stream()
                .flatMap(road -> road.pieces().stream()
                        .filter(piece -> piece.level() == 0)
                        .map(piece -> new RoadDraft(
                                road.name(),
                                road.kind(),
                                road.carriageway(),
                                false,
                                road.spots().subList(piece.fromVertex(), piece.toVertex() + 1))))
                .toList();
        Ground ground = REGION.settings().ground();

        // a crossing within centimetres of a vertex of both is that junction, moved by rounding
        List<Noder.Crossing> unsettled = Noder.crossings(ground, pieces).stream()
                .filter(crossing -> crossing.a().spots().stream()
                        .filter(new HashSet<>(crossing.b().spots())::contains)
                        .noneMatch(spot -> ground.distance(spot, crossing.spot()) < 0.5))
                .toList();

        assertThat(unsettled).isEmpty();
    }

    @Test
    void mostOfTheRegionHangsTogether() {
        Set<Spot> reached = new HashSet<>(REGION.roads().get(0).spots());
        boolean grown = true;
        while (grown) {
            grown = false;
            for (Road road : REGION.roads()) {
                if (road.spots().stream().anyMatch(reached::contains)) {
                    grown |= reached.addAll(road.spots());
                }
            }
        }
        double metres = REGION.roads().stream()
                .filter(road -> reached.containsAll(road.spots()))
                .mapToDouble(Road::lengthMetres)
                .sum();

        assertThat(metres / REGION.totalRoadMetres()).isGreaterThan(0.99);
    }

    @Test
    void plantedCollisionsAreAsManyAsTheSettingsSay() {
        Instant end = Truth.endOfSixYears(REGION.settings());
        for (Plant plant : REGION.plants()) {
            List<Incident> extra = REGION.incidents().stream()
                    .filter(incident -> plant.id().equals(incident.plantId()))
                    .toList();
            assertThat(extra)
                    .as(plant.id())
                    .allMatch(incident -> Truth.matches(REGION, plant, incident))
                    .filteredOn(incident -> incident.happened().isBefore(end))
                    .hasSize(plant.spec().extraCollisions());
        }
    }

    @Test
    void plantedStretchesLieWhereTheirTraitSays() {
        Ground ground = REGION.settings().ground();
        Spot town = ground.spot(
                REGION.settings().mainTown().x(), REGION.settings().mainTown().y());
        for (Plant plant : REGION.plants()) {
            Road road = plant.roads().get(0);
            double distance = ground.distance(plant.middle(), town);
            switch (plant.spec().trait()) {
                case "quiet" -> assertThat(road.aadt()).as(plant.id()).isLessThan(600);
                case "town" -> assertThat(distance).as(plant.id()).isLessThan(9_000);
                case "far" -> assertThat(distance).as(plant.id()).isGreaterThan(25_000);
                case "motorway" -> assertThat(plant.roads()).as(plant.id()).hasSize(2);
                case "boundary" ->
                    assertThat(road.ownerAt(plant.fromMetres()))
                            .as(plant.id())
                            .isNotEqualTo(road.ownerAt(plant.toMetres()));
                default -> assertThat(road.measured()).as(plant.id()).isTrue();
            }
        }
    }

    @Test
    void turtlesAreStruckAtNestingTimeAndMacropodsAroundDusk() {
        assertThat(shareOf("turtles", when -> List.of(10, 11, 12, 1).contains(when.getMonthValue())))
                .isBetween(0.65, 0.9);
        assertThat(shareOf("macropods", when -> List.of(5, 6, 7, 8).contains(when.getMonthValue())))
                .isBetween(0.4, 0.6);
        assertThat(shareOf("macropods", when -> {
                    double minutes = when.getHour() * 60.0 + when.getMinute();
                    return Math.abs(minutes - Sun.set(when.toLocalDate())) < 120;
                }))
                .isGreaterThan(0.45);
    }

    @Test
    void joeysAreMostlyASpringMatter() {
        List<Incident> withYoung = REGION.incidents().stream()
                .filter(incident -> incident.taxonGroup().equals("macropods"))
                .filter(incident -> incident.calls().get(0).animals().size() > 1)
                .toList();
        long spring = withYoung.stream()
                .filter(incident -> {
                    int month = local(incident).getMonthValue();
                    return month >= 8 && month <= 12;
                })
                .count();

        assertThat(withYoung).hasSizeGreaterThan(200);
        assertThat((double) spring / withYoung.size()).isGreaterThan(0.5);
    }

    @Test
    void callersNearTheTownAreThreeTimesAsLikelyForEveryGroup() {
        Ground ground = REGION.settings().ground();
        Spot town = ground.spot(
                REGION.settings().mainTown().x(), REGION.settings().mainTown().y());

        assertThat(REGION.exposure().reporting(town)).isEqualTo(3);
        assertThat(REGION.exposure().reporting(ground.moved(town, 13_000, 0))).isEqualTo(1);
        double near = 0;
        for (Road road : REGION.roads()) {
            for (double at = road.startMeasure(); at < road.endMeasure(); at += 250) {
                double to = Math.min(at + 250, road.endMeasure());
                if (ground.distance(road.spotAt((at + to) / 2), town) < 9_000) {
                    near += REGION.exposure().weightOf(road, at, to);
                }
            }
        }
        double expected = near / REGION.exposure().total();
        for (String group : List.of("macropods", "possums-and-gliders", "other-birds", "turtles")) {
            List<Incident> background = REGION.incidents().stream()
                    .filter(incident -> incident.taxonGroup().equals(group) && incident.plantId() == null)
                    .filter(incident -> incident.point() != null)
                    .toList();
            double observed = (double) background.stream()
                            .filter(incident -> ground.distance(incident.spot(), town) < 9_000)
                            .count()
                    / background.size();
            double deviation = Math.sqrt(expected * (1 - expected) / background.size());
            assertThat(observed).as(group).isCloseTo(expected, within(3.5 * deviation));
        }
    }

    private static double shareOf(String group, Predicate<LocalDateTime> when) {
        List<Incident> all = REGION.incidents().stream()
                .filter(incident ->
                        incident.taxonGroup().equals(group) && incident.cause().equals(CallMaker.COLLISION))
                .toList();
        return (double) all.stream()
                        .filter(incident -> when.test(local(incident)))
                        .count()
                / all.size();
    }

    private static LocalDateTime local(Incident incident) {
        return incident.happened().atZone(REGION.settings().zone()).toLocalDateTime();
    }
}
