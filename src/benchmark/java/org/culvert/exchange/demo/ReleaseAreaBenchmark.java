package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.Position;
import org.culvert.release.rules.Barrier;
import org.culvert.release.rules.Lifting;
import org.culvert.release.rules.UncertainPosition;
import org.culvert.release.rules.Verdict;
import org.culvert.release.rules.area.AreaFinder;
import org.culvert.release.rules.area.AreaQuestion;
import org.culvert.release.rules.area.LandBetweenRoads;
import org.culvert.release.rules.area.Limit;
import org.culvert.release.rules.area.ReleaseArea;
import org.culvert.release.rules.area.SiteRanking;
import org.culvert.road.network.RoadCrossings;
import org.culvert.road.network.RoadNetwork;
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

/** Where an animal of the demo region may go, among its 3,120 km of roads; a time is of one origin. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class ReleaseAreaBenchmark {
    /** The two distances of Queensland's koala code. */
    @Param({"10000", "20000"})
    private double metres;

    private RoadNetwork network;
    private LandBetweenRoads land;
    private List<Position> origins;
    private List<SiteRanking.Candidate> sites;
    private ReleaseArea area;
    private int next;

    @Setup
    public void build() {
        network = RoadsForBenchmark.network();
        land = LandBetweenRoads.of(network, 10);
        var random = new Random(1);
        origins = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            int link = random.nextInt(network.linkCount());
            origins.add(network.positionAt(
                    link, random.nextDouble() * network.graph().length(link)));
        }
        LocalPlane plane = LocalPlane.around(origins.get(0));
        sites = new ArrayList<>();
        for (int i = 0; i < 1000; i++) {
            double way = 2 * Math.PI * random.nextDouble();
            double out = metres * Math.sqrt(random.nextDouble());
            sites.add(new SiteRanking.Candidate(
                    "site " + i,
                    "site " + i,
                    new UncertainPosition(plane.inverse(out * Math.cos(way), out * Math.sin(way)), 50),
                    random.nextBoolean(),
                    Verdict.pass,
                    Barrier.NONE));
        }
        area = find(origins.get(0));
    }

    private ReleaseArea find(Position origin) {
        return AreaFinder.find(
                land,
                new AreaQuestion(
                        new UncertainPosition(origin, 30),
                        List.of(new Limit("rule", "At most so far.", metres, Lifting.byPermit)),
                        List.of(),
                        false));
    }

    @Benchmark
    public ReleaseArea area() {
        next = (next + 1) % origins.size();
        return find(origins.get(next));
    }

    /** With the roads between each and the origin. */
    @Benchmark
    public List<SiteRanking.Ranked> rankAThousandSites() {
        var origin = new UncertainPosition(origins.get(0), 30);
        var crossings = new RoadCrossings(network);
        return SiteRanking.rank(
                origin,
                area,
                sites.stream()
                        .map(site -> new SiteRanking.Candidate(
                                site.key(),
                                site.name(),
                                site.at(),
                                site.fitForKind(),
                                site.verdict(),
                                Barrier.between(
                                        network,
                                        crossings,
                                        origin.position(),
                                        site.at().position(),
                                        30)))
                        .toList());
    }

    /** Done once for a version of the network. */
    @Benchmark
    public int landBetweenRoads() {
        return LandBetweenRoads.of(network, 10).count();
    }
}
