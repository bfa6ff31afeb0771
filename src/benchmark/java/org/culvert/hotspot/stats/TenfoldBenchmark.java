package org.culvert.hotspot.stats;

import java.util.concurrent.TimeUnit;
import org.culvert.hotspot.stats.pattern.NetworkClusters;
import org.culvert.hotspot.stats.pattern.PlacedEvents;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** How a search grows with the country: the {@link Workload}, and ten times its roads with ten times its events. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(value = 1, jvmArgsAppend = "-Xmx2g")
@Warmup(iterations = 1)
@Measurement(iterations = 2)
public class TenfoldBenchmark {
    private static final int THREADS = 2;
    private static final double PIECE_METRES = 100;

    /** Enough that drawing and smoothing outweigh what is done once. */
    private static final int SIMULATIONS = 99;

    /** Events: 20,000 on 19,000 links; 200,000 and a million on 196,000. */
    @Param({"20000", "200000", "1000000"})
    private int events;

    private Workload workload;

    @Setup
    public void build() {
        workload = events > 20_000 ? Workload.makeLarge() : Workload.make();
    }

    @Benchmark
    public double compact() {
        return season(new RoadKernel.Epanechnikov(500));
    }

    @Benchmark
    public double heat() {
        return season(new RoadKernel.Gaussian(500));
    }

    /** Groups by distance along the roads, eps 20 m, 5 events. */
    @Benchmark
    public int dbscan() {
        Workload.Events placed = workload.events(events);
        return NetworkClusters.dbscan(PlacedEvents.of(workload.graph(), placed.link(), placed.metres()), 20, 5, THREADS)
                .count();
    }

    private double season(RoadKernel kernel) {
        var settings = new Settings(kernel, PIECE_METRES, SIMULATIONS, 1, 0.05, 3);
        return new HotspotSearch(workload.graph(), workload.chainage(), settings)
                .search(workload.roadEvents(events), new Chance.PerKilometre(), THREADS, done -> {})
                .smallestP();
    }
}
