package org.culvert.hotspot.stats;

import java.util.concurrent.TimeUnit;
import org.culvert.hotspot.stats.pattern.NetworkClusters;
import org.culvert.hotspot.stats.pattern.NetworkK;
import org.culvert.hotspot.stats.pattern.PlacedEvents;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.network.SnapHints;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The engine's heavy work on {@link Workload}, on two threads; a time is of one whole job. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(value = 1, jvmArgsAppend = "-Xmx1g")
@Warmup(iterations = 3)
@Measurement(iterations = 5)
public class EngineBenchmark {
    private static final int THREADS = 2;
    private static final double PIECE_METRES = 100;

    private final Workload workload = Workload.make();
    private final Workload.Events thousands = workload.events(20_000);
    private final Workload.Events hundredThousand = workload.events(100_000);
    private final Workload.Events million = workload.events(1_000_000);
    private final double[] radii = new double[30];
    private RoadNetwork network;

    @Setup
    public void build() {
        network = workload.network();
        java.util.Arrays.setAll(radii, i -> 100.0 * (i + 1));
    }

    /** 100,000 points to their road and the distance along it. */
    @Benchmark
    public double snapAndChainage() {
        double sum = 0;
        for (int event = 0; event < hundredThousand.x().length; event++) {
            sum += network.snap(hundredThousand.x()[event], hundredThousand.y()[event], 50, SnapHints.NONE)
                    .candidates()
                    .get(0)
                    .metres();
        }
        return sum;
    }

    /** 20,000 events, sigma 500 m, the order of elimination and the factoring included. */
    @Benchmark
    public double[] heatDensity() {
        var pieces = new Pieces(workload.graph(), PIECE_METRES);
        return new HeatField(pieces, EliminationOrder.of(workload.graph()), 500)
                .density(thousands.link(), thousands.metres(), THREADS);
    }

    /** 20,000 events, 999 simulated sets, half-width 500 m. */
    @Benchmark
    public double seasonRunCompact() {
        return season(new RoadKernel.Epanechnikov(500));
    }

    /** 20,000 events, 999 simulated sets, heat kernel of sigma 500 m. */
    @Benchmark
    public double seasonRunHeat() {
        return season(new RoadKernel.Gaussian(500));
    }

    private double season(RoadKernel kernel) {
        var settings = new Settings(kernel, PIECE_METRES, 999, 1, 0.05, 3);
        return new HotspotSearch(workload.graph(), workload.chainage(), settings)
                .search(workload.roadEvents(20_000), new Chance.PerKilometre(), THREADS, done -> {})
                .smallestP();
    }

    /** K to 3 km by steps of 100 m, 20,000 events. */
    @Benchmark
    public double[] networkK() {
        return NetworkK.of(
                PlacedEvents.of(workload.graph(), thousands.link(), thousands.metres()),
                radii,
                NetworkK.Correction.NONE,
                THREADS);
    }

    /** DBSCAN by distance along the roads, 1,000,000 events, eps 20 m, 5 events. */
    @Benchmark
    public int networkDbscan() {
        return NetworkClusters.dbscan(
                        PlacedEvents.of(workload.graph(), million.link(), million.metres()), 20, 5, THREADS)
                .count();
    }
}
