package org.culvert.hotspot.stats;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.culvert.road.network.RoadGraph;

/**
 * Times a search. With a folder that holds {@code V.csv} (id,x,y), {@code E.csv} (id,from,to) and {@code P20k.csv}
 * (id,x,y,seg,tp), on that network and its events; without one, on a grid of 3,000 km with 15,000 events, some of them
 * rounded or uncertain.
 *
 * <pre>java -cp target/classes:target/test-classes:... org.culvert.hotspot.stats.SearchTiming [folder]</pre>
 */
public final class SearchTiming {
    private SearchTiming() {}

    public static void main(String[] arguments) throws IOException {
        RoadGraph graph;
        List<RoadEvent> events = new ArrayList<>();
        Chainage chainage;
        if (arguments.length > 0) {
            Path folder = Path.of(arguments[0]);
            List<String[]> nodes = rows(folder.resolve("V.csv"));
            List<String[]> links = rows(folder.resolve("E.csv"));
            int[] from =
                    links.stream().mapToInt(row -> Integer.parseInt(row[1]) - 1).toArray();
            int[] to =
                    links.stream().mapToInt(row -> Integer.parseInt(row[2]) - 1).toArray();
            double[] length = new double[from.length];
            for (int link = 0; link < from.length; link++) {
                length[link] = Math.hypot(
                        number(nodes, from[link], 1) - number(nodes, to[link], 1),
                        number(nodes, from[link], 2) - number(nodes, to[link], 2));
            }
            graph = new RoadGraph(nodes.size(), from, to, length);
            chainage = Networks.ownChainage(graph);
            for (String[] row : rows(folder.resolve("P20k.csv"))) {
                int link = Integer.parseInt(row[3]) - 1;
                events.add(new RoadEvent(link, Double.parseDouble(row[4]) * length[link], Recording.EXACT));
            }
        } else {
            int side = 40;
            graph = Networks.grid(side, 3_000_000.0 / (2 * side * (side - 1)));
            chainage = Networks.gridChainage(side, graph);
            var random = Networks.random(1);
            Recording[] recordings = {
                Recording.EXACT, Recording.EXACT, new Recording(1000, 0), new Recording(100, 50), new Recording(0, 300)
            };
            for (int i = 0; i < 15_000; i++) {
                int link = random.nextInt(graph.linkCount());
                events.add(new RoadEvent(
                        link, random.nextDouble() * graph.length(link), recordings[random.nextInt(recordings.length)]));
            }
        }
        System.out.printf(
                "%d links, %.0f km, %d events%n", graph.linkCount(), graph.totalLength() / 1000, events.size());
        List<RoadKernel> kernels = List.of(new RoadKernel.Epanechnikov(500), new RoadKernel.Gaussian(500));
        for (RoadKernel kernel : kernels) {
            timeSearches(graph, chainage, events, new Settings(kernel, 100, 999, 1, 0.05, 3));
        }
        int[] links = events.stream().mapToInt(RoadEvent::link).toArray();
        double[] metres = events.stream().mapToDouble(RoadEvent::metres).toArray();
        for (int round = 0; round < 6; round++) {
            timeDensity(graph, links, metres);
        }
    }

    private static void timeSearches(RoadGraph graph, Chainage chainage, List<RoadEvent> events, Settings settings) {
        for (Chance chance : List.of(new Chance.PerKilometre(), new Chance.PerAllReports(events))) {
            for (int threads : new int[] {1, 2}) {
                long start = System.nanoTime();
                List<RoadEvent> group =
                        chance instanceof Chance.PerAllReports ? events.subList(0, events.size() / 3) : events;
                Findings findings =
                        new HotspotSearch(graph, chainage, settings).search(group, chance, threads, done -> {});
                System.out.printf(
                        "%s, %s, %d events, %d pieces, %d threads: %.2f s, %d hotspots%n",
                        settings.kernel(),
                        chance.name(),
                        group.size(),
                        findings.pieces().count(),
                        threads,
                        seconds(start),
                        findings.hotspots().size());
            }
        }
    }

    private static void timeDensity(RoadGraph graph, int[] links, double[] metres) {
        long start = System.nanoTime();
        var pieces = new Pieces(graph, 100);
        KernelRows rows = KernelRows.build(
                pieces, new RoadKernel.Epanechnikov(500 * Math.sqrt(5)), Networks.all(pieces.count()), 2);
        double[] field = new double[pieces.count()];
        int[] touched = new int[pieces.count()];
        for (int event = 0; event < links.length; event++) {
            rows.addTo(pieces.at(links[event], metres[event]), field, touched, 0);
        }
        System.out.printf("density alone, sigma 500 m, equal-split discontinuous: %.3f s%n", seconds(start));
        start = System.nanoTime();
        EliminationOrder order = EliminationOrder.of(graph);
        double ordering = seconds(start);
        start = System.nanoTime();
        new HeatField(pieces, order, 500, 2).density(links, metres, 2);
        System.out.printf(
                "density alone, sigma 500 m, heat: %.3f s, and %.3f s once for the network%n",
                seconds(start), ordering);
    }

    private static double seconds(long since) {
        return (System.nanoTime() - since) / 1e9;
    }

    private static List<String[]> rows(Path file) throws IOException {
        return Files.readAllLines(file).stream()
                .skip(1)
                .map(line -> line.split(",", -1))
                .toList();
    }

    private static double number(List<String[]> rows, int row, int column) {
        return Double.parseDouble(rows.get(row)[column]);
    }
}
