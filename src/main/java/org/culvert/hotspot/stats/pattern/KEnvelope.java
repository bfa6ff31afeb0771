package org.culvert.hotspot.stats.pattern;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.culvert.hotspot.stats.Parallel;
import org.culvert.road.network.RoadGraph;

/**
 * One answer to "are events nearer together, or farther apart, than chance": the K function of the events against those of
 * simulated sets, over a range of radii fixed beforehand, by a single number.
 *
 * <p>MAD: the greatest difference from the mean curve; DCLF: the sum of squared differences over the radii (Diggle 2003,
 * Statistical Analysis of Spatial Point Patterns, section 2.2; Loosmore and Ford 2006, Statistical inference using the G or K
 * point pattern spatial statistics, Ecology 87, 1925-1931; Baddeley, Diggle, Hardegen, Lawrence, Milne and Nair 2014, On tests
 * of spatial pattern based on simulation envelopes, Ecological Monographs 84, 477-489). The mean is that of all curves, the
 * observed one among them, so that under chance all are alike and p is exact. A band of simulated values at each radius is not
 * a test and is not given.
 *
 * @param radiiMetres the radii
 * @param observed K of the events
 * @param mean mean of all the curves
 * @param madP p of the greatest difference
 * @param madRadiusMetres where it is
 * @param madAbove whether K is above the mean there: nearer together
 * @param dclfP p of the sum of squares
 * @param simulations how many sets were simulated
 * @param seed of the generators
 */
public record KEnvelope(
        List<Double> radiiMetres,
        List<Double> observed,
        List<Double> mean,
        double madP,
        double madRadiusMetres,
        boolean madAbove,
        double dclfP,
        int simulations,
        long seed) {
    public KEnvelope {
        radiiMetres = List.copyOf(radiiMetres);
        observed = List.copyOf(observed);
        mean = List.copyOf(mean);
    }

    /**
     * @param events at least 2
     * @param radiiMetres ascending; all take part in both tests
     * @param correction how pairs are counted
     * @param weightPerMetre of each link: how likely a metre of it is to have an event by chance, such as traffic; in any unit,
     *     zero or more. All ones for even chance
     * @param simulations such as 199
     * @param seed of the generators, one for each simulation
     * @param threads how many threads may be used; the result is the same for any
     * @throws IllegalArgumentException if a setting is out of range or there is no weight
     */
    public static KEnvelope of(
            PlacedEvents events,
            double[] radiiMetres,
            NetworkK.Correction correction,
            double[] weightPerMetre,
            int simulations,
            long seed,
            int threads) {
        NetworkK.requireAscending(radiiMetres);
        RoadGraph graph = events.graph();
        if (simulations < 1 || events.count() < 2 || weightPerMetre.length != graph.linkCount()) {
            throw new IllegalArgumentException("a simulation, two events and a weight for every link are needed");
        }
        double[] upTo = new double[weightPerMetre.length];
        double total = 0;
        for (int link = 0; link < upTo.length; link++) {
            if (!(weightPerMetre[link] >= 0) || Double.isInfinite(weightPerMetre[link])) {
                throw new IllegalArgumentException("the weight of link " + link + " is zero or more and finite");
            }
            total += weightPerMetre[link] * graph.length(link);
            upTo[link] = total;
        }
        if (!(total > 0)) {
            throw new IllegalArgumentException("no link has any weight");
        }
        double all = total;
        double[][] curves = new double[simulations + 1][];
        Parallel.forEach(simulations + 1, threads, () -> (IntConsumer) curve -> {
            PlacedEvents set = curve == simulations
                    ? events
                    : draw(graph, upTo, all, events.count(), Simulations.generator(seed, curve));
            curves[curve] = NetworkK.of(set, radiiMetres, correction);
        });
        double[] mean = new double[radiiMetres.length];
        for (double[] curve : curves) {
            for (int i = 0; i < mean.length; i++) {
                mean[i] += curve[i] / curves.length;
            }
        }
        double[] mad = new double[simulations];
        double[] dclf = new double[simulations];
        for (int i = 0; i < simulations; i++) {
            mad[i] = Math.abs(difference(curves[i], mean, farthest(curves[i], mean)));
            dclf[i] = squares(curves[i], mean);
        }
        double[] observed = curves[simulations];
        int at = farthest(observed, mean);
        double greatest = difference(observed, mean, at);
        return new KEnvelope(
                boxed(radiiMetres),
                boxed(observed),
                boxed(mean),
                Simulations.chance(Math.abs(greatest), mad),
                radiiMetres[at],
                greatest > 0,
                Simulations.chance(squares(observed, mean), dclf),
                simulations,
                seed);
    }

    private static PlacedEvents draw(
            RoadGraph graph, double[] upTo, double total, int count, UniformRandomProvider random) {
        int[] link = new int[count];
        double[] metres = new double[count];
        for (int event = 0; event < count; event++) {
            double u = random.nextDouble() * total;
            int at = Arrays.binarySearch(upTo, u);
            at = at < 0 ? -at - 1 : at + 1;
            while (at + 1 < upTo.length && upTo[at] <= u) {
                at++;
            }
            link[event] = at;
            metres[event] = random.nextDouble() * graph.length(at);
        }
        return PlacedEvents.of(graph, link, metres);
    }

    private static int farthest(double[] curve, double[] mean) {
        return IntStream.range(0, mean.length)
                .boxed()
                .max((a, b) ->
                        Double.compare(Math.abs(difference(curve, mean, a)), Math.abs(difference(curve, mean, b))))
                .orElseThrow();
    }

    private static double difference(double[] curve, double[] mean, int at) {
        return curve[at] - mean[at];
    }

    private static double squares(double[] curve, double[] mean) {
        double sum = 0;
        for (int i = 0; i < mean.length; i++) {
            sum += difference(curve, mean, i) * difference(curve, mean, i);
        }
        return sum;
    }

    private static List<Double> boxed(double[] values) {
        return Arrays.stream(values).boxed().toList();
    }
}
