package org.culvert.hotspot.stats.pattern;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.culvert.road.network.RoadGraph;

/**
 * Times groups of 1,000,000 events and the K function of 20,000. The folder holds {@code V.csv} (id,x,y), {@code E.csv}
 * (id,from,to), and {@code P1M.csv} and {@code P20k.csv} (id,x,y,seg,tp).
 *
 * <pre>java -cp target/classes:target/test-classes:... org.culvert.hotspot.stats.pattern.PatternTiming folder</pre>
 */
public final class PatternTiming {
    private PatternTiming() {}

    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments[0]);
        List<String[]> nodes = rows(folder.resolve("V.csv"));
        List<String[]> links = rows(folder.resolve("E.csv"));
        int[] from =
                links.stream().mapToInt(row -> Integer.parseInt(row[1]) - 1).toArray();
        int[] to = links.stream().mapToInt(row -> Integer.parseInt(row[2]) - 1).toArray();
        double[] length = new double[from.length];
        for (int link = 0; link < length.length; link++) {
            String[] a = nodes.get(from[link]);
            String[] b = nodes.get(to[link]);
            length[link] = Math.hypot(
                    Double.parseDouble(a[1]) - Double.parseDouble(b[1]),
                    Double.parseDouble(a[2]) - Double.parseDouble(b[2]));
        }
        var graph = new RoadGraph(nodes.size(), from, to, length);
        List<String[]> million = rows(folder.resolve("P1M.csv"));
        int[] link = links(million);
        double[] metres = metres(million, graph);
        for (int threads : new int[] {2, 1, 2, 1, 2}) {
            for (double eps : new double[] {20, 100}) {
                long start = System.nanoTime();
                PlacedEvents events = PlacedEvents.of(graph, link, metres);
                double placed = (System.nanoTime() - start) / 1e9;
                NetworkClusters.Groups groups = NetworkClusters.dbscan(events, eps, 5, threads);
                say(
                        "DBSCAN, %d events, eps %.0f, %d threads: %.2f s, of which placing %.2f s; %d groups, %d in none",
                        link.length,
                        eps,
                        threads,
                        (System.nanoTime() - start) / 1e9,
                        placed,
                        groups.count(),
                        groups.ungrouped());
            }
        }
        List<String[]> thousands = rows(folder.resolve("P20k.csv"));
        PlacedEvents events = PlacedEvents.of(graph, links(thousands), metres(thousands, graph));
        double[] radii = new double[30];
        for (int i = 0; i < radii.length; i++) {
            radii[i] = 100.0 * (i + 1);
        }
        for (int threads : new int[] {2, 1, 2}) {
            for (NetworkK.Correction correction : NetworkK.Correction.values()) {
                long start = System.nanoTime();
                double[] k = NetworkK.of(events, radii, correction, threads);
                say(
                        "K to 3 km, %d events, %s, %d threads: %.2f s; K(3 km) = %.1f",
                        events.count(), correction, threads, (System.nanoTime() - start) / 1e9, k[29]);
            }
        }
    }

    private static int[] links(List<String[]> rows) {
        return rows.stream().mapToInt(row -> Integer.parseInt(row[3]) - 1).toArray();
    }

    private static double[] metres(List<String[]> rows, RoadGraph graph) {
        return rows.stream()
                .mapToDouble(row -> Double.parseDouble(row[4]) * graph.length(Integer.parseInt(row[3]) - 1))
                .toArray();
    }

    private static void say(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }

    private static List<String[]> rows(Path file) throws IOException {
        try (var lines = Files.lines(file)) {
            return lines.skip(1).map(line -> line.split(",", -1)).toList();
        }
    }
}
