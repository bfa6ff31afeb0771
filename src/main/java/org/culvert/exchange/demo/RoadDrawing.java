package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Draws the roads of the region one by one; where they cross is settled afterwards by {@link Noder}. */
final class RoadDrawing {
    private static final int SPURS = 210;
    private static final double HALF_MEDIAN_METRES = 15;

    private final Settings settings;
    private final Ground ground;
    private final Shapes shapes;
    private final Names names;
    private final List<RoadDraft> drafts = new ArrayList<>();

    private RoadDrawing(Settings settings) {
        this.settings = settings;
        this.ground = settings.ground();
        this.shapes = new Shapes(ground);
        this.names = new Names(new Dice(settings.seed(), "names of roads"));
    }

    static List<RoadDraft> draw(Settings settings) {
        RoadDrawing drawing = new RoadDrawing(settings);
        Skeleton skeleton = Skeleton.make(settings);
        drawing.countryRoads(skeleton);
        drawing.motorway(skeleton);
        drawing.longRoads(skeleton);
        drawing.spurs();
        settings.towns().forEach(drawing::streets);
        drawing.interchanges();
        return drawing.drafts;
    }

    private void add(RoadClass kind, boolean over, List<Spot> spots) {
        drafts.add(new RoadDraft(names.road(kind), kind, null, over, spots));
    }

    private void countryRoads(Skeleton skeleton) {
        Dice dice = new Dice(settings.seed(), "country roads");
        for (Skeleton.Chain chain : skeleton.chains()) {
            List<Spot> spots = new ArrayList<>(List.of(chain.nodes().get(0)));
            for (int i = 1; i < chain.nodes().size(); i++) {
                double sway = chain.kind() == RoadClass.PRIMARY ? 0.018 : 0.03;
                List<Spot> bend = shapes.winding(
                        dice, chain.nodes().get(i - 1), chain.nodes().get(i), sway, 100, 300);
                spots.addAll(bend.subList(1, bend.size()));
            }
            add(chain.kind(), false, spots);
        }
    }

    /** Two carriageways either side of one middle line, which part and meet at its ends. */
    private void motorway(Skeleton skeleton) {
        Dice dice = new Dice(settings.seed(), "motorway");
        List<Spot> middle = shapes.winding(
                dice, skeleton.nodeNear(60_000, 9_000), skeleton.nodeNear(59_000, 70_000), 0.012, 150, 300);
        String name = names.road(RoadClass.MOTORWAY);
        drafts.add(new RoadDraft(name, RoadClass.MOTORWAY, "northbound", false, beside(middle, -HALF_MEDIAN_METRES)));
        drafts.add(new RoadDraft(name, RoadClass.MOTORWAY, "southbound", false, beside(middle, HALF_MEDIAN_METRES)));
    }

    /** The line shifted to its right by some metres, its two ends left where they are. */
    private List<Spot> beside(List<Spot> middle, double metres) {
        List<Spot> line = new ArrayList<>();
        line.add(middle.get(0));
        for (int i = 1; i < middle.size() - 1; i++) {
            double east = ground.x(middle.get(i + 1)) - ground.x(middle.get(i - 1));
            double north = ground.y(middle.get(i + 1)) - ground.y(middle.get(i - 1));
            double length = Ground.hypotenuse(east, north);
            line.add(ground.moved(middle.get(i), metres * north / length, -metres * east / length));
        }
        line.add(middle.get(middle.size() - 1));
        return line;
    }

    /** A few roads that cut across the others, partly on bridges. */
    private void longRoads(Skeleton skeleton) {
        Dice dice = new Dice(settings.seed(), "long roads");
        double[][] ends = {
            {14_000, 14_000, 40_000, 33_000}, {90_000, 84_000, 113_000, 62_000}, {84_000, 8_000, 112_000, 30_000}
        };
        for (double[] end : ends) {
            add(
                    RoadClass.SECONDARY,
                    true,
                    shapes.winding(
                            dice,
                            skeleton.nodeNear(end[0], end[1]),
                            skeleton.nodeNear(end[2], end[3]),
                            0.015,
                            120,
                            300));
        }
    }

    /** Dead ends that leave the country roads. */
    private void spurs() {
        Dice dice = new Dice(settings.seed(), "spurs");
        List<RoadDraft> parents = drafts.stream()
                .filter(draft -> draft.kind() != RoadClass.MOTORWAY)
                .toList();
        int drawn = 0;
        while (drawn < SPURS) {
            RoadDraft parent = dice.pick(parents);
            int at = dice.from(1, parent.spots().size() - 2);
            Spot before = parent.spots().get(at - 1);
            Spot start = parent.spots().get(at);
            double east = ground.x(start) - ground.x(before);
            double north = ground.y(start) - ground.y(before);
            double turn = (dice.chance(0.5) ? 1 : -1) * dice.between(0.9, 2.2);
            double length = dice.between(700, 5_200);
            double scale = length / Ground.hypotenuse(east, north);
            Spot end = ground.moved(
                    start,
                    scale * (east * StrictMath.cos(turn) - north * StrictMath.sin(turn)),
                    scale * (east * StrictMath.sin(turn) + north * StrictMath.cos(turn)));
            if (ground.contains(ground.x(end), ground.y(end), 1_000)) {
                add(
                        dice.chance(0.55) ? RoadClass.UNCLASSIFIED : RoadClass.TRACK,
                        false,
                        shapes.winding(dice, start, end, 0.04, 100, 250));
                drawn++;
            }
        }
    }

    /** A somewhat crooked grid of streets around a town's crossroads. */
    private void streets(Settings.Town town) {
        Dice dice = new Dice(settings.seed(), "streets of " + town.name());
        int n = town.streets();
        Spot[][] corners = new Spot[n][n];
        double turn = StrictMath.toRadians(town.turnDegrees());
        for (int row = 0; row < n; row++) {
            for (int column = 0; column < n; column++) {
                double loose = row == n / 2 && column == n / 2 ? 0 : 0.09 * town.spacingMetres();
                double across = (column - n / 2) * town.spacingMetres() + dice.normal(0, loose);
                double up = (row - n / 2) * town.spacingMetres() + dice.normal(0, loose);
                corners[row][column] = ground.spot(
                        town.x() + across * StrictMath.cos(turn) - up * StrictMath.sin(turn),
                        town.y() + across * StrictMath.sin(turn) + up * StrictMath.cos(turn));
            }
        }
        for (int i = 0; i < n; i++) {
            List<Spot> row = new ArrayList<>();
            List<Spot> column = new ArrayList<>();
            for (int j = dice.below(2); j < n - dice.below(2); j++) {
                row.add(corners[i][j]);
            }
            for (int j = dice.below(2); j < n - dice.below(2); j++) {
                column.add(corners[j][i]);
            }
            if (row.size() > 1) {
                add(RoadClass.RESIDENTIAL, false, row);
            }
            if (column.size() > 1) {
                add(RoadClass.RESIDENTIAL, false, column);
            }
        }
    }

    /** Ramps between the motorway and some of the larger roads that cross it. */
    private void interchanges() {
        List<RoadDraft> carriageways = drafts.stream()
                .filter(draft -> draft.kind() == RoadClass.MOTORWAY)
                .toList();
        RoadDraft northbound = carriageways.get(0);
        RoadDraft southbound = carriageways.get(1);
        List<Noder.Crossing> candidates = Noder.crossings(ground, drafts).stream()
                .filter(crossing -> crossing.touches(northbound))
                .filter(crossing -> crossing.other(northbound).kind() == RoadClass.PRIMARY
                        || crossing.other(northbound).kind() == RoadClass.SECONDARY)
                .sorted(Comparator.comparing(crossing -> crossing.spot().latitudeE7()))
                .toList();
        @Nullable Spot last = null;
        for (Noder.Crossing crossing : candidates) {
            boolean apart = last == null || ground.distance(last, crossing.spot()) > 6_000;
            boolean inside = ground.distance(crossing.spot(), northbound.spots().get(0)) > 2_000
                    && ground.distance(
                                    crossing.spot(),
                                    northbound.spots().get(northbound.spots().size() - 1))
                            > 2_000;
            if (apart && inside && ramps(crossing, northbound, southbound)) {
                last = crossing.spot();
            }
        }
    }

    private boolean ramps(Noder.Crossing crossing, RoadDraft northbound, RoadDraft southbound) {
        RoadDraft road = crossing.other(northbound);
        int segment = crossing.segmentOn(road);
        int towardsStart = away(road.spots(), segment, -1, crossing.spot());
        int towardsEnd = away(road.spots(), segment + 1, 1, crossing.spot());
        if (towardsStart < 0 || towardsEnd < 0) {
            return false;
        }
        boolean startIsWest = ground.x(road.spots().get(towardsStart)) < ground.x(crossing.spot());
        Spot west = road.spots().get(startIsWest ? towardsStart : towardsEnd);
        Spot east = road.spots().get(startIsWest ? towardsEnd : towardsStart);
        String name = names.place() + " Interchange Ramp";
        for (RoadDraft carriageway : List.of(northbound, southbound)) {
            Spot side = carriageway == northbound ? west : east;
            int nearest = nearest(carriageway.spots(), crossing.spot());
            for (int way : new int[] {-1, 1}) {
                int at = away(carriageway.spots(), nearest, way, crossing.spot());
                Spot join = carriageway.spots().get(at);
                boolean leaves = (way < 0) == (carriageway == northbound);
                String carriagewayName =
                        (carriageway == northbound ? "northbound " : "southbound ") + (leaves ? "exit" : "entry");
                List<Spot> line =
                        List.of(join, join.towards(side, 0.3), join.towards(side, 0.6), join.towards(side, 0.85), side);
                drafts.add(new RoadDraft(name, RoadClass.MOTORWAY_LINK, carriagewayName, false, line));
            }
        }
        return true;
    }

    /** The first vertex in one direction that is at least 220 m away from a point; -1 when the road ends before. */
    private int away(List<Spot> spots, int from, int step, Spot point) {
        for (int i = from; i >= 0 && i < spots.size(); i += step) {
            if (ground.distance(spots.get(i), point) > 220) {
                return i;
            }
        }
        return -1;
    }

    private int nearest(List<Spot> spots, Spot point) {
        int best = 0;
        for (int i = 1; i < spots.size(); i++) {
            if (ground.distance(spots.get(i), point) < ground.distance(spots.get(best), point)) {
                best = i;
            }
        }
        return best;
    }
}
