package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Settles what happens where two drawn roads cross: a junction, which is a vertex common to both, or a bridge of the one
 * over the other, which is not. The motorway is crossed on bridges only.
 */
final class Noder {
    private static final double CELL_METRES = 600;
    private static final double BRIDGE_HALF_METRES = 60;
    private static final double SNAP_METRES = 3;

    /** Segment {@code i} of a road runs from its vertex {@code i} to {@code i + 1}. */
    record Crossing(RoadDraft a, int segmentA, RoadDraft b, int segmentB, Spot spot) {
        boolean touches(RoadDraft road) {
            return a == road || b == road;
        }

        RoadDraft other(RoadDraft road) {
            return a == road ? b : a;
        }

        int segmentOn(RoadDraft road) {
            return a == road ? segmentA : segmentB;
        }
    }

    private record Insert(int segment, Spot spot) {}

    private record Segment(RoadDraft road, int index) {}

    private Noder() {}

    static void settle(Ground ground, List<RoadDraft> drafts, Dice dice) {
        Map<RoadDraft, List<Insert>> inserts = new LinkedHashMap<>();
        Map<RoadDraft, List<Insert>> bridged = new LinkedHashMap<>();
        int traps = 0;
        for (Crossing crossing : crossings(ground, drafts)) {
            RoadDraft over = over(ground, crossing, dice);
            if (over == null) {
                Spot spot = snapped(ground, crossing);
                insert(inserts, crossing.a(), crossing.segmentA(), spot);
                insert(inserts, crossing.b(), crossing.segmentB(), spot);
            } else {
                insert(bridged, over, crossing.segmentOn(over), crossing.spot());
                if (traps++ % 4 == 0) {
                    // a vertex of both that is yet no junction, for their levels differ
                    insert(inserts, crossing.a(), crossing.segmentA(), crossing.spot());
                    insert(inserts, crossing.b(), crossing.segmentB(), crossing.spot());
                }
            }
        }
        for (RoadDraft draft : drafts) {
            for (Insert bridge : bridged.getOrDefault(draft, List.of())) {
                Insert start = alongFrom(ground, draft.spots(), bridge, -BRIDGE_HALF_METRES);
                Insert end = alongFrom(ground, draft.spots(), bridge, BRIDGE_HALF_METRES);
                insert(inserts, draft, start.segment(), start.spot());
                insert(inserts, draft, end.segment(), end.spot());
                draft.bridges().add(new RoadDraft.Bridge(start.spot(), end.spot()));
            }
            weave(ground, draft, inserts.getOrDefault(draft, List.of()));
        }
    }

    private static void insert(Map<RoadDraft, List<Insert>> inserts, RoadDraft road, int segment, Spot spot) {
        inserts.computeIfAbsent(road, key -> new ArrayList<>()).add(new Insert(segment, spot));
    }

    /** Which of two crossing roads goes over the other, or null for a junction. */
    private static @Nullable RoadDraft over(Ground ground, Crossing crossing, Dice dice) {
        RoadDraft a = crossing.a();
        RoadDraft b = crossing.b();
        for (RoadDraft road : List.of(a, b)) {
            RoadDraft other = crossing.other(road);
            if (road.kind() == RoadClass.MOTORWAY && other.kind() != RoadClass.MOTORWAY) {
                Spot first = road.spots().get(0);
                Spot last = road.spots().get(road.spots().size() - 1);
                boolean atItsEnd =
                        ground.distance(first, crossing.spot()) < 400 || ground.distance(last, crossing.spot()) < 400;
                return atItsEnd ? null : other;
            }
        }
        if (a.over() != b.over()) {
            RoadDraft over = a.over() ? a : b;
            boolean large = crossing.other(over).kind().compareTo(RoadClass.UNCLASSIFIED) < 0;
            return large && dice.chance(0.6) ? over : null;
        }
        return null;
    }

    /** The crossing, or a vertex that is so near that it serves as the junction. */
    private static Spot snapped(Ground ground, Crossing crossing) {
        for (RoadDraft road : List.of(crossing.a(), crossing.b())) {
            int segment = crossing.segmentOn(road);
            for (int i = segment; i <= segment + 1; i++) {
                if (ground.distance(road.spots().get(i), crossing.spot()) < SNAP_METRES) {
                    return road.spots().get(i);
                }
            }
        }
        return crossing.spot();
    }

    private static Insert alongFrom(Ground ground, List<Spot> spots, Insert start, double metres) {
        int step = metres < 0 ? -1 : 1;
        double left = StrictMath.abs(metres);
        Spot at = start.spot();
        int segment = start.segment();
        while (true) {
            Spot next = spots.get(step < 0 ? segment : segment + 1);
            double length = ground.distance(at, next);
            if (length > left) {
                return new Insert(segment, at.towards(next, left / length));
            }
            if (segment + step < 0 || segment + step >= spots.size() - 1) {
                return new Insert(segment, next);
            }
            left -= length;
            at = next;
            segment += step;
        }
    }

    /** Puts the inserts into the road in their order along it; a vertex that is there already is not repeated. */
    private static void weave(Ground ground, RoadDraft draft, List<Insert> inserts) {
        Map<Integer, List<Insert>> bySegment = new HashMap<>();
        inserts.forEach(insert -> bySegment
                .computeIfAbsent(insert.segment(), key -> new ArrayList<>())
                .add(insert));
        List<Spot> woven = new ArrayList<>();
        Set<Spot> present = new HashSet<>(draft.spots());
        for (int i = 0; i < draft.spots().size(); i++) {
            Spot start = draft.spots().get(i);
            woven.add(start);
            List<Insert> here = new ArrayList<>(bySegment.getOrDefault(i, List.of()));
            here.sort(Comparator.comparingDouble(insert -> ground.distance(start, insert.spot())));
            for (Insert insert : here) {
                if (present.add(insert.spot())) {
                    woven.add(insert.spot());
                }
            }
        }
        draft.spots().clear();
        draft.spots().addAll(woven);
    }

    /** Every place where segments of two roads cross between their vertices, in a fixed order. */
    static List<Crossing> crossings(Ground ground, List<RoadDraft> drafts) {
        Map<Long, List<Segment>> cells = new HashMap<>();
        List<Crossing> found = new ArrayList<>();
        for (RoadDraft draft : drafts) {
            for (int i = 0; i + 1 < draft.spots().size(); i++) {
                Segment segment = new Segment(draft, i);
                Set<Segment> near = new LinkedHashSet<>();
                List<Long> own =
                        cellsOf(ground, draft.spots().get(i), draft.spots().get(i + 1));
                own.forEach(cell -> near.addAll(cells.getOrDefault(cell, List.of())));
                for (Segment other : near) {
                    if (other.road() != draft) {
                        cross(ground, other, segment, found);
                    }
                }
                own.forEach(cell ->
                        cells.computeIfAbsent(cell, key -> new ArrayList<>()).add(segment));
            }
        }
        return found;
    }

    private static List<Long> cellsOf(Ground ground, Spot a, Spot b) {
        List<Long> cells = new ArrayList<>();
        int west = (int) StrictMath.floor(StrictMath.min(ground.x(a), ground.x(b)) / CELL_METRES);
        int east = (int) StrictMath.floor(StrictMath.max(ground.x(a), ground.x(b)) / CELL_METRES);
        int south = (int) StrictMath.floor(StrictMath.min(ground.y(a), ground.y(b)) / CELL_METRES);
        int north = (int) StrictMath.floor(StrictMath.max(ground.y(a), ground.y(b)) / CELL_METRES);
        for (int column = west; column <= east; column++) {
            for (int row = south; row <= north; row++) {
                cells.add(column * 100_000L + row);
            }
        }
        return cells;
    }

    private static void cross(Ground ground, Segment first, Segment second, List<Crossing> found) {
        Spot a = first.road().spots().get(first.index());
        Spot b = first.road().spots().get(first.index() + 1);
        Spot c = second.road().spots().get(second.index());
        Spot d = second.road().spots().get(second.index() + 1);
        if (a.equals(c) || a.equals(d) || b.equals(c) || b.equals(d)) {
            return;
        }
        double rx = ground.x(b) - ground.x(a);
        double ry = ground.y(b) - ground.y(a);
        double sx = ground.x(d) - ground.x(c);
        double sy = ground.y(d) - ground.y(c);
        double turn = rx * sy - ry * sx;
        if (turn == 0) {
            return;
        }
        double qx = ground.x(c) - ground.x(a);
        double qy = ground.y(c) - ground.y(a);
        double t = (qx * sy - qy * sx) / turn;
        double u = (qx * ry - qy * rx) / turn;
        if (t >= 0 && t <= 1 && u >= 0 && u <= 1) {
            found.add(new Crossing(first.road(), first.index(), second.road(), second.index(), a.towards(b, t)));
        }
    }
}
