package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.List;

/** The land under the roads: councils, rivers, catchments, waters and parks. */
record Terrain(
        List<Area> councils, List<Area> catchments, List<Watercourse> rivers, List<Area> waters, List<Area> parks) {

    /** A named ring; the kind is {@code council}, {@code catchment}, {@code lake}, {@code wetland} and so on. */
    record Area(String name, String kind, List<Spot> ring) {}

    record Watercourse(String name, String kind, String catchment, List<Spot> line) {}

    private static final double[] RIVER_NORTHINGS = {12_000, 34_000, 56_500, 78_000};
    private static final double[] DIVIDES = {23_000, 45_500, 67_000};

    static Terrain make(Settings settings) {
        Ground ground = settings.ground();
        Shapes shapes = new Shapes(ground);
        Names names = new Names(new Dice(settings.seed(), "names of waters"));
        Dice dice = new Dice(settings.seed(), "terrain");

        List<Watercourse> rivers = new ArrayList<>();
        List<String> basins = new ArrayList<>();
        for (double northing : RIVER_NORTHINGS) {
            String name = names.place();
            basins.add(name);
            rivers.add(new Watercourse(
                    name + " River",
                    "river",
                    name,
                    shapes.winding(
                            dice,
                            ground.spot(dice.between(3_000, 14_000), northing + dice.normal(0, 2_000)),
                            ground.spot(ground.widthMetres(), northing + dice.normal(0, 2_000)),
                            0.012,
                            200,
                            500)));
        }
        for (int basin = 0; basin < basins.size(); basin++) {
            List<Spot> river = rivers.get(basin).line();
            for (int i = 1; i <= 4; i++) {
                Spot mouth = river.get(river.size() * i / 5);
                double side = dice.chance(0.5) ? 1 : -1;
                Spot source = ground.moved(mouth, dice.between(-6_000, -1_000), side * dice.between(5_000, 8_500));
                if (ground.contains(ground.x(source), ground.y(source), 500)) {
                    rivers.add(new Watercourse(
                            names.place() + " Creek",
                            "stream",
                            basins.get(basin),
                            shapes.winding(dice, source, mouth, 0.04, 150, 350)));
                }
            }
        }
        return new Terrain(
                councils(settings, shapes, dice),
                catchments(ground, shapes, dice, basins),
                List.copyOf(rivers),
                waters(ground, shapes, dice, names, rivers),
                parks(settings, shapes, dice, names));
    }

    private static List<Area> councils(Settings settings, Shapes shapes, Dice dice) {
        Ground ground = settings.ground();
        double width = ground.widthMetres();
        double height = ground.heightMetres();
        List<Spot> upright =
                shapes.winding(dice, ground.spot(42_000, 0), ground.spot(46_000, height), 0.02, 1_200, 2_400);
        int fork = 0;
        while (ground.y(upright.get(fork)) < 49_000) {
            fork++;
        }
        List<Spot> level = shapes.winding(dice, upright.get(fork), ground.spot(width, 52_000), 0.02, 1_200, 2_400);

        List<Spot> west = new ArrayList<>(upright);
        west.add(ground.spot(0, height));
        west.add(ground.spot(0, 0));
        west.add(upright.get(0));
        List<Spot> north = new ArrayList<>(level);
        north.add(ground.spot(width, height));
        for (int i = upright.size() - 1; i >= fork; i--) {
            north.add(upright.get(i));
        }
        List<Spot> south = new ArrayList<>();
        south.add(upright.get(0));
        south.add(ground.spot(width, 0));
        for (int i = level.size() - 1; i >= 0; i--) {
            south.add(level.get(i));
        }
        for (int i = fork - 1; i >= 0; i--) {
            south.add(upright.get(i));
        }
        List<Area> areas = new ArrayList<>();
        for (Settings.Council council : settings.councils()) {
            List<Spot> ring = switch (council.code()) {
                case "west" -> west;
                case "north" -> north;
                case "south" -> south;
                default -> throw new IllegalArgumentException("no land for the council " + council.code());
            };
            areas.add(new Area(council.name(), "council", List.copyOf(ring)));
        }
        return areas;
    }

    private static List<Area> catchments(Ground ground, Shapes shapes, Dice dice, List<String> basins) {
        List<List<Spot>> divides = new ArrayList<>();
        divides.add(List.of(ground.spot(0, 0), ground.spot(ground.widthMetres(), 0)));
        for (double northing : DIVIDES) {
            divides.add(shapes.winding(
                    dice,
                    ground.spot(0, northing + dice.normal(0, 1_000)),
                    ground.spot(ground.widthMetres(), northing + dice.normal(0, 1_000)),
                    0.01,
                    1_000,
                    2_500));
        }
        double top = ground.heightMetres();
        divides.add(List.of(ground.spot(0, top), ground.spot(ground.widthMetres(), top)));
        List<Area> areas = new ArrayList<>();
        for (int basin = 0; basin < basins.size(); basin++) {
            List<Spot> ring = new ArrayList<>(divides.get(basin));
            List<Spot> upper = divides.get(basin + 1);
            for (int i = upper.size() - 1; i >= 0; i--) {
                ring.add(upper.get(i));
            }
            ring.add(ring.get(0));
            areas.add(new Area(basins.get(basin) + " catchment", "catchment", ring));
        }
        return areas;
    }

    private static List<Area> waters(Ground ground, Shapes shapes, Dice dice, Names names, List<Watercourse> rivers) {
        List<Area> areas = new ArrayList<>();
        while (areas.size() < 48) {
            Spot near = dice.pick(dice.pick(rivers).line());
            double x = ground.x(near) + dice.normal(0, 900);
            double y = ground.y(near) + dice.normal(0, 900);
            double radius = dice.logNormal(170, 0.5);
            if (ground.contains(x, y, 1_000)) {
                String kind = dice.pick(List.of("wetland", "wetland", "lagoon", "lake", "reservoir"));
                String suffix = switch (kind) {
                    case "wetland" -> " Swamp";
                    case "lagoon" -> " Lagoon";
                    case "lake" -> " Lake";
                    default -> " Dam";
                };
                areas.add(new Area(names.place() + suffix, kind, shapes.patch(dice, x, y, radius, 18)));
            }
        }
        return areas;
    }

    private static List<Area> parks(Settings settings, Shapes shapes, Dice dice, Names names) {
        Ground ground = settings.ground();
        List<Area> areas = new ArrayList<>();
        while (areas.size() < 9) {
            double x = dice.between(0, ground.widthMetres());
            double y = dice.between(0, ground.heightMetres());
            double radius = dice.between(2_500, 6_000);
            boolean clear = ground.contains(x, y, 1.5 * radius)
                    && settings.towns().stream()
                            .allMatch(town -> Ground.hypotenuse(town.x() - x, town.y() - y) > 1.5 * radius + 2_000)
                    && areas.stream()
                            .allMatch(area -> ground.distance(area.ring().get(0), ground.spot(x, y)) > 2.6 * radius);
            if (clear) {
                String kind = areas.size() < 3 ? "national park" : "state forest";
                areas.add(new Area(
                        names.place() + (areas.size() < 3 ? " National Park" : " State Forest"),
                        kind,
                        shapes.patch(dice, x, y, radius, 36)));
            }
        }
        return areas;
    }

    String councilAt(Spot spot) {
        return nameAt(councils, spot);
    }

    String catchmentAt(Spot spot) {
        return nameAt(catchments, spot);
    }

    String parkAt(Spot spot) {
        return nameAt(parks, spot);
    }

    /** The name of the area that holds a point, or an empty string. */
    private static String nameAt(List<Area> areas, Spot spot) {
        for (Area area : areas) {
            if (Shapes.holds(area.ring(), spot)) {
                return area.name();
            }
        }
        return "";
    }
}
