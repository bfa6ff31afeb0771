package org.culvert.hotspot.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntConsumer;
import org.culvert.road.network.RoadGraph;

/**
 * Searches a road network for places where events are denser than a kind of chance allows.
 *
 * <p>The density at a place is the sum over the events of a kernel along the roads, reflected at dead ends: the heat kernel
 * ({@link HeatField}), or the equal-split discontinuous Epanechnikov ({@link KernelRows}), which is faster. How surprising it
 * is there is judged against the mean and variance that the kind of chance gives it there ({@link Surprise}); how surprising
 * anything anywhere may be, against simulated sets that go through the same rounding, spreading and smoothing ({@link
 * MonteCarlo}). So the chance of naming anything where only that kind of chance is at work is at most alpha for the whole
 * network.
 */
public final class HotspotSearch {
    /** Changes whenever the same input may give another result. */
    public static final String VERSION = "6";

    private final RoadGraph graph;
    private final Chainage chainage;
    private final Carriageways carriageways;
    private final Settings settings;

    /** A search on a network without divided roads. */
    public HotspotSearch(RoadGraph graph, Chainage chainage, Settings settings) {
        this(graph, chainage, Carriageways.NONE, settings);
    }

    public HotspotSearch(RoadGraph graph, Chainage chainage, Carriageways carriageways, Settings settings) {
        if (chainage.linkCount() != graph.linkCount()) {
            throw new IllegalArgumentException("every link of the network needs its chainage");
        }
        this.graph = graph;
        this.chainage = chainage;
        this.carriageways = carriageways;
        this.settings = settings;
    }

    /**
     * @param events the events of the group, in any order
     * @param chance what they are judged against; for a {@link Chance.Relabelling} the events must be among its reports
     * @param threads how many threads to use, at least 1; the result does not depend on it
     * @param done hears how many simulations are done, from several threads and not always in order
     * @throws java.util.concurrent.CancellationException if the thread is interrupted meanwhile
     */
    public Findings search(List<RoadEvent> events, Chance chance, int threads, IntConsumer done) {
        var pieces = new Pieces(graph, settings.pieceMetres());
        var twins = new Twins(pieces, carriageways);
        List<RoadEvent> lookedUp = new ArrayList<>(events);
        boolean everywhere = true;
        if (chance instanceof Chance.Relabelling all) {
            lookedUp.addAll(all.reports());
            everywhere = false;
        }
        Smoother smoother = Smoother.of(
                settings.kernel(), pieces, chainage, twins, settings.pieceMetres(), lookedUp, everywhere, threads);
        return search(events, chance, smoother, twins, threads, done);
    }

    /** With a smoother made before, that has the rows of these events and of this chance. */
    Findings search(
            List<RoadEvent> events, Chance chance, Smoother smoother, Twins twins, int threads, IntConsumer done) {
        var judged = new Judged(events, chance, smoother);
        Pieces pieces = judged.pieces;
        int[] eventsIn = new int[pieces.count()];
        for (int row : judged.rows) {
            eventsIn[smoother.responses().pieceOf(row)]++;
        }
        Smoother.Brush brush = smoother.newBrush();
        brush.smooth(judged.rows);
        double[] density = brush.density(0);
        MonteCarlo simulated = MonteCarlo.run(
                smoother, judged.model, judged.surprise, settings.simulations(), settings.seed(), threads, done);
        double[] adjustedP = new double[pieces.count()];
        Arrays.fill(adjustedP, 1);
        for (int i = 0; i < brush.touchedCount(0); i++) {
            int piece = brush.touched(0)[i];
            adjustedP[piece] = simulated.adjustedP(judged.surprise.at(piece, density[piece]));
        }
        var naming = new HotspotNaming(pieces, chainage, twins, eventsIn, judged.moments.recorded(), settings);
        double critical = simulated.critical(settings.alpha());
        return new Findings(pieces, density, judged.moments.mean(), adjustedP, judged.surprise, critical, naming);
    }

    /** A set of events, and by which yardstick it is judged. */
    final class Judged {
        final Pieces pieces;
        final NullModel model;
        final NullModel.Moments moments;
        final Surprise surprise;

        /** Of the events, in an order that does not depend on how they came. */
        final int[] rows;

        Judged(List<RoadEvent> events, Chance chance, Smoother smoother) {
            Responses responses = smoother.responses();
            List<RoadEvent> ordered = Responses.inOrder(events);
            this.pieces = responses.pieces();
            this.model = model(chance, responses, ordered);
            this.moments = smoother.moments(model);
            this.surprise = new Surprise(moments, model.backgroundVariance());
            this.rows = ordered.stream().mapToInt(responses::row).toArray();
        }
    }

    private NullModel model(Chance chance, Responses responses, List<RoadEvent> ordered) {
        if (chance instanceof Chance.Relabelling all) {
            return new ShuffledReports(responses, Responses.inOrder(all.reports()), ordered.size());
        }
        if (chance instanceof Chance.Patchy patchy) {
            RedrawnPlaces even = redrawn(patchy.even(), responses, ordered);
            int[] counted = new int[responses.pieces().count()];
            for (RoadEvent event : ordered) {
                counted[responses.pieceOf(responses.row(event))]++;
            }
            return new PatchyPlaces(
                    even,
                    responses.pieces(),
                    chainage,
                    even.moments().recorded(),
                    counted,
                    patchy.patchMetres(),
                    settings.kernel().averagedMetres());
        }
        return redrawn(chance, responses, ordered);
    }

    private RedrawnPlaces redrawn(Chance chance, Responses responses, List<RoadEvent> ordered) {
        if (chance instanceof Chance.PerSurveyEffort effort) {
            return RedrawnPlaces.bySurveys(responses, ordered, effort.metresIn(responses.pieces()));
        }
        int[] stratumOfPiece = new int[responses.pieces().count()];
        if (chance instanceof Chance.PerTrafficAndClass strata) {
            int[] stratumOfLink = strata(strata);
            Arrays.setAll(
                    stratumOfPiece, piece -> stratumOfLink[responses.pieces().linkOf(piece)]);
        }
        return new RedrawnPlaces(responses, ordered, stratumOfPiece);
    }

    /** Strata by class and band of traffic; the bands hold equal lengths of the roads whose traffic is known. */
    private int[] strata(Chance.PerTrafficAndClass chance) {
        int links = graph.linkCount();
        if (chance.aadt().length != links) {
            throw new IllegalArgumentException("every link of the network needs a class and a traffic");
        }
        TreeMap<Double, Double> lengthAt = new TreeMap<>();
        double known = 0;
        for (int link = 0; link < links; link++) {
            if (!Double.isNaN(chance.aadt()[link])) {
                lengthAt.merge(chance.aadt()[link], graph.length(link), Double::sum);
                known += graph.length(link);
            }
        }
        TreeMap<Double, Integer> bandAt = new TreeMap<>();
        double below = 0;
        for (Map.Entry<Double, Double> entry : lengthAt.entrySet()) {
            double middle = below + entry.getValue() / 2;
            bandAt.put(entry.getKey(), (int) Math.min(chance.bands() - 1.0, middle / known * chance.bands()));
            below += entry.getValue();
        }
        int[] stratum = new int[links];
        for (int link = 0; link < links; link++) {
            double aadt = chance.aadt()[link];
            int band = Double.isNaN(aadt) ? chance.bands() : bandAt.getOrDefault(aadt, 0);
            stratum[link] = chance.roadClass()[link] * (chance.bands() + 1) + band;
        }
        return stratum;
    }
}
