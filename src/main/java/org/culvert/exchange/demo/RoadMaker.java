package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Turns drawn roads into roads with a measure, traffic, limits, owners and pieces. */
final class RoadMaker {
    private final Settings settings;
    private final Ground ground;
    private final Terrain terrain;
    private final Dice dice;

    private RoadMaker(Settings settings, Terrain terrain) {
        this.settings = settings;
        this.ground = settings.ground();
        this.terrain = terrain;
        this.dice = new Dice(settings.seed(), "what is known of roads");
    }

    static List<Road> make(Settings settings, Terrain terrain) {
        List<RoadDraft> drafts = RoadDrawing.draw(settings);
        Noder.settle(settings.ground(), drafts, new Dice(settings.seed(), "bridges"));
        RoadMaker maker = new RoadMaker(settings, terrain);
        Map<Spot, List<RoadDraft>> meeting = meeting(drafts);
        Map<String, Integer> motorwayTraffic = new LinkedHashMap<>();
        List<Road> roads = new ArrayList<>();
        for (RoadDraft draft : drafts) {
            roads.add(maker.road(roads.size(), draft, meeting, motorwayTraffic));
        }
        return List.copyOf(roads);
    }

    private static Map<Spot, List<RoadDraft>> meeting(List<RoadDraft> drafts) {
        Map<Spot, List<RoadDraft>> meeting = new HashMap<>();
        for (RoadDraft draft : drafts) {
            draft.spots()
                    .forEach(spot -> meeting.computeIfAbsent(spot, key -> new ArrayList<>())
                            .add(draft));
        }
        return meeting;
    }

    private Road road(
            int number, RoadDraft draft, Map<Spot, List<RoadDraft>> meeting, Map<String, Integer> dualTraffic) {
        List<Spot> spots = List.copyOf(draft.spots());
        RoadClass kind = draft.kind();
        boolean measured = kind.isCalibrated() || kind == RoadClass.UNCLASSIFIED;
        double[] measures = new double[spots.size()];
        measures[0] =
                kind.isCalibrated() && draft.carriageway() == null && dice.chance(0.35) ? dice.from(8, 900) * 50.0 : 0;
        for (int i = 1; i < measures.length; i++) {
            measures[i] = measures[i - 1] + spots.get(i - 1).metresTo(spots.get(i));
        }
        Spot middle = spots.get(spots.size() / 2);
        boolean busy = ground.distance(middle, mainTown()) < settings.townFarMetres();
        int aadt = dualTraffic.computeIfAbsent(
                draft.name(), name -> (int) dice.logNormal(kind.medianAadt() * (busy ? 1.6 : 1), 0.35));
        int[] levels = levels(draft, spots);
        List<Road.Junction> junctions = new ArrayList<>();
        for (int i = 0; i < spots.size(); i++) {
            boolean onBridge = i > 0 && i < levels.length && levels[i - 1] > 0 && levels[i] > 0;
            for (RoadDraft other : meeting.getOrDefault(spots.get(i), List.of())) {
                if (!onBridge && !other.name().equals(draft.name()) && !isOnBridge(other, spots.get(i))) {
                    junctions.add(new Road.Junction(measures[i], other.name()));
                }
            }
        }
        return new Road(
                number,
                draft.name(),
                kind,
                draft.carriageway(),
                spots,
                measures,
                measured,
                aadt,
                dice.chance(kind.aadtMissingShare()) ? null : (int) StrictMath.round(aadt / 10.0) * 10,
                limit(kind),
                pieces(kind, spots, levels),
                List.copyOf(junctions));
    }

    private Spot mainTown() {
        return ground.spot(settings.mainTown().x(), settings.mainTown().y());
    }

    private @Nullable Integer limit(RoadClass kind) {
        Integer usual = kind.speedLimit();
        if (usual == null || dice.chance(kind.limitMissingShare())) {
            return null;
        }
        return kind != RoadClass.MOTORWAY && usual > 50 && dice.chance(0.25) ? usual - 20 : usual;
    }

    /** The level of each segment: 1 on a bridge, else 0. */
    private static int[] levels(RoadDraft draft, List<Spot> spots) {
        int[] levels = new int[spots.size() - 1];
        for (RoadDraft.Bridge bridge : draft.bridges()) {
            for (int i = spots.indexOf(bridge.from()); i < spots.indexOf(bridge.to()); i++) {
                levels[i] = 1;
            }
        }
        return levels;
    }

    private static boolean isOnBridge(RoadDraft draft, Spot spot) {
        int at = draft.spots().indexOf(spot);
        for (RoadDraft.Bridge bridge : draft.bridges()) {
            if (draft.spots().indexOf(bridge.from()) < at && at < draft.spots().indexOf(bridge.to())) {
                return true;
            }
        }
        return false;
    }

    private List<Road.Piece> pieces(RoadClass kind, List<Spot> spots, int[] levels) {
        String[] owners = new String[levels.length];
        for (int i = 0; i < owners.length; i++) {
            owners[i] = kind.isState()
                    ? settings.roadsAuthority()
                    : terrain.councilAt(spots.get(i).towards(spots.get(i + 1), 0.5));
        }
        TreeSet<Integer> cuts = new TreeSet<>(List.of(0, levels.length));
        for (int i = 1; i < levels.length; i++) {
            if (levels[i] != levels[i - 1] || !owners[i].equals(owners[i - 1])) {
                cuts.add(i);
            }
        }
        List<Road.Piece> pieces = new ArrayList<>();
        int from = 0;
        for (int to : cuts.tailSet(1)) {
            pieces.add(new Road.Piece(from, to, levels[from], owners[from]));
            from = to;
        }
        return List.copyOf(pieces);
    }
}
