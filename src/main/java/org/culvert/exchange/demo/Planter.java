package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Chooses where the planted stretches lie, and names places that are busy or rounded but not hot. */
final class Planter {
    private static final double APART_METRES = 3_000;
    private static final double END_METRES = 450;

    private final Settings settings;
    private final Ground ground;
    private final Terrain terrain;
    private final List<Road> roads;
    private final Exposure exposure;
    private final Spot mainTown;
    private final List<Plant> plants = new ArrayList<>();

    private Planter(Settings settings, Terrain terrain, List<Road> roads, Exposure exposure) {
        this.settings = settings;
        this.ground = settings.ground();
        this.terrain = terrain;
        this.roads = roads;
        this.exposure = exposure;
        this.mainTown = ground.spot(settings.mainTown().x(), settings.mainTown().y());
    }

    static List<Plant> plant(Settings settings, Terrain terrain, List<Road> roads, Exposure exposure) {
        Planter planter = new Planter(settings, terrain, roads, exposure);
        planter.busyNearTown();
        planter.wholeKilometrePosts();
        for (Settings.PlantSpec spec : settings.plants()) {
            planter.plants.add(planter.place(spec));
        }
        return List.copyOf(planter.plants);
    }

    private double fromTown(Spot spot) {
        return ground.distance(spot, mainTown);
    }

    private Plant place(Settings.PlantSpec spec) {
        Dice dice = new Dice(settings.seed(), "place of " + spec.id());
        Predicate<Spot> where = switch (spec.trait()) {
            case "town" -> spot -> fromTown(spot) > 2_500 && fromTown(spot) < settings.townNearMetres();
            case "far" -> spot -> fromTown(spot) > 25_000;
            default -> spot -> fromTown(spot) > settings.townFarMetres() + 2_000;
        };
        Road crewRoad = crewRoad(settings, roads);
        List<Road> fit = roads.stream()
                .filter(road -> spec.roadClasses().contains(road.kind()) && road != crewRoad)
                .filter(road -> !spec.trait().equals("quiet") || road.aadt() < 600)
                .filter(road -> road.lengthMetres() > spec.lengthMetres() + 2 * END_METRES + 500)
                .toList();
        boolean mustBeNearWater =
                spec.taxonGroup().equals("turtles") && !spec.trait().equals("boundary");
        for (int attempt = 0; attempt < 20_000; attempt++) {
            Road road = dice.pick(fit);
            @Nullable Double from = from(dice, spec, road);
            if (from != null
                    && from >= road.startMeasure() + END_METRES
                    && from + spec.lengthMetres() <= road.endMeasure() - END_METRES) {
                Plant plant = plant(spec.id(), true, spec, road, from, from + spec.lengthMetres());
                boolean fits = where.test(plant.middle())
                        && plants.stream()
                                .allMatch(other -> ground.distance(other.middle(), plant.middle()) > APART_METRES)
                        && (!mustBeNearWater || isNearWater(plant.middle()));
                if (fits) {
                    return plant;
                }
            }
        }
        throw new IllegalStateException("no road fits the planted stretch " + spec.id());
    }

    private @Nullable Double from(Dice dice, Settings.PlantSpec spec, Road road) {
        return switch (spec.trait()) {
            case "boundary" -> {
                List<Road.Piece> ends = IntStream.range(1, road.pieces().size())
                        .filter(i -> !road.pieces()
                                .get(i)
                                .owner()
                                .equals(road.pieces().get(i - 1).owner()))
                        .mapToObj(road.pieces()::get)
                        .toList();
                yield ends.isEmpty()
                        ? null
                        : (Double) (road.measures()[dice.pick(ends).fromVertex()] - 0.45 * spec.lengthMetres());
            }
            case "calibrated" -> {
                double post = StrictMath.ceil(dice.between(road.startMeasure(), road.endMeasure()) / 1000) * 1000;
                yield post - 0.4 * spec.lengthMetres();
            }
            default ->
                StrictMath.rint(dice.between(road.startMeasure(), road.endMeasure() - spec.lengthMetres()) / 10) * 10;
        };
    }

    private Plant plant(String id, boolean hot, Settings.PlantSpec spec, Road road, double from, double to) {
        List<Road> both = Exposure.named(roads, road.name());
        double weight = both.stream()
                .mapToDouble(each -> exposure.weightOf(each, from, to))
                .sum();
        return new Plant(id, hot, spec, both, from, to, weight / exposure.total());
    }

    private boolean isNearWater(Spot spot) {
        return terrain.rivers().stream()
                        .anyMatch(
                                river -> river.line().stream().anyMatch(vertex -> ground.distance(vertex, spot) < 800))
                || terrain.waters().stream()
                        .anyMatch(
                                water -> water.ring().stream().anyMatch(vertex -> ground.distance(vertex, spot) < 800));
    }

    /** The kilometres near the town with most reports: burden, not a hotspot. */
    private void busyNearTown() {
        List<Plant> candidates = new ArrayList<>();
        for (Road road : roads) {
            if (road.kind() == RoadClass.PRIMARY || road.kind() == RoadClass.SECONDARY) {
                for (double at = road.startMeasure() + END_METRES; at < road.endMeasure() - 1_500; at += 500) {
                    double distance = fromTown(road.spotAt(at + 500));
                    if (distance > 2_500 && distance < settings.townNearMetres()) {
                        candidates.add(notHot("N0", road, at, at + 1_000, "a busy road among many callers"));
                    }
                }
            }
        }
        candidates.sort(Comparator.comparingDouble(Plant::expectedShare).reversed());
        for (Plant candidate : candidates) {
            boolean apart = plants.stream()
                    .allMatch(other -> ground.distance(other.middle(), candidate.middle()) > APART_METRES);
            if (apart && plants.size() < 2) {
                plants.add(renumbered(candidate, "N0" + (plants.size() + 1)));
            }
        }
    }

    /** Posts of the road whose works crew reports to the whole kilometre. */
    private void wholeKilometrePosts() {
        Road road = crewRoad(settings, roads);
        double first = StrictMath.ceil((road.startMeasure() + 2_000) / 1000) * 1000;
        for (int i = 0; i < 3; i++) {
            double post = first + 4_000 * i;
            plants.add(notHot(
                    "N0" + (plants.size() + 1), road, post - 100, post + 100, "reports rounded to the kilometre post"));
        }
    }

    /** The long, busy road far from the town whose crew tells places by the nearest post. */
    static Road crewRoad(Settings settings, List<Road> roads) {
        Ground ground = settings.ground();
        Spot town = ground.spot(settings.mainTown().x(), settings.mainTown().y());
        return roads.stream()
                .filter(road -> road.kind() == RoadClass.PRIMARY || road.kind() == RoadClass.SECONDARY)
                .filter(road -> road.spots().stream().allMatch(spot -> ground.distance(spot, town) > 16_000))
                .max(Comparator.comparingDouble(road -> road.lengthMetres() * StrictMath.sqrt(road.aadt())))
                .orElseThrow();
    }

    private Plant notHot(String id, Road road, double from, double to, String note) {
        Settings.PlantSpec spec = new Settings.PlantSpec(
                id,
                "not hot",
                List.of(road.kind()),
                "",
                IntStream.rangeClosed(1, 12).boxed().toList(),
                to - from,
                0,
                null,
                null,
                note);
        return plant(id, false, spec, road, from, to);
    }

    private static Plant renumbered(Plant plant, String id) {
        return new Plant(
                id,
                plant.hot(),
                plant.spec(),
                plant.roads(),
                plant.fromMetres(),
                plant.toMetres(),
                plant.expectedShare());
    }
}
