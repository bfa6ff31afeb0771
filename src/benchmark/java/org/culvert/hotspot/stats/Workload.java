package org.culvert.hotspot.stats;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.rng.UniformRandomProvider;
import org.culvert.road.network.NetworkBuilder;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.RoadGraph;
import org.culvert.road.network.RoadLine;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.network.Structure;

/**
 * Invented roads and events to time with: 100 x 100 nodes about 500 m apart, two per cent of the links left out, and events of
 * which four in ten lie on 300 of the links, beside the road by 8 m of noise. The same every time. As a program it writes them
 * as CSV files, for others to be timed on.
 *
 * @param x of each node, metres
 * @param y of each node, metres
 */
record Workload(RoadGraph graph, double[] x, double[] y) {
    private static final int SIDE = 100;

    /** Ten times the nodes. */
    private static final int LONG_SIDE = 316;

    private static final double SPACING = 500;
    private static final int HOT_LINKS = 300;

    /** Events on the links, and the points that were given for them. */
    record Events(int[] link, double[] metres, double[] x, double[] y) {}

    static Workload make() {
        return make(SIDE);
    }

    /** Ten times the roads. */
    static Workload makeLarge() {
        return make(LONG_SIDE);
    }

    private static Workload make(int side) {
        UniformRandomProvider random = MonteCarlo.generator(42, 0);
        double[] x = new double[side * side];
        double[] y = new double[side * side];
        for (int node = 0; node < x.length; node++) {
            x[node] = node / side * SPACING + 300 * random.nextDouble() - 150;
            y[node] = node % side * SPACING + 300 * random.nextDouble() - 150;
        }
        List<int[]> links = new ArrayList<>();
        for (int node = 0; node < x.length; node++) {
            if (node + side < x.length && random.nextDouble() < 0.98) {
                links.add(new int[] {node, node + side});
            }
            if (node % side + 1 < side && random.nextDouble() < 0.98) {
                links.add(new int[] {node, node + 1});
            }
        }
        int[] from = links.stream().mapToInt(link -> link[0]).toArray();
        int[] to = links.stream().mapToInt(link -> link[1]).toArray();
        double[] length = new double[from.length];
        for (int link = 0; link < from.length; link++) {
            length[link] = Math.hypot(x[from[link]] - x[to[link]], y[from[link]] - y[to[link]]);
        }
        return new Workload(new RoadGraph(x.length, from, to, length), x, y);
    }

    Events events(int count) {
        UniformRandomProvider random = MonteCarlo.generator(42, count);
        int[] hot = new int[HOT_LINKS];
        java.util.Arrays.setAll(hot, i -> random.nextInt(graph.linkCount()));
        var events = new Events(new int[count], new double[count], new double[count], new double[count]);
        for (int event = 0; event < count; event++) {
            int link = random.nextDouble() < 0.4 ? hot[random.nextInt(HOT_LINKS)] : random.nextInt(graph.linkCount());
            double part = random.nextDouble();
            int from = graph.from(link);
            int to = graph.to(link);
            events.link[event] = link;
            events.metres[event] = part * graph.length(link);
            events.x[event] = x[from] + part * (x[to] - x[from]) + noise(random);
            events.y[event] = y[from] + part * (y[to] - y[from]) + noise(random);
        }
        return events;
    }

    /** Nearly normal, with a standard deviation of 8 m. */
    private static double noise(UniformRandomProvider random) {
        double sum = -6;
        for (int i = 0; i < 12; i++) {
            sum += random.nextDouble();
        }
        return 8 * sum;
    }

    List<RoadEvent> roadEvents(int count) {
        Events events = events(count);
        List<RoadEvent> road = new ArrayList<>(count);
        for (int event = 0; event < count; event++) {
            road.add(new RoadEvent(events.link[event], events.metres[event], Recording.EXACT));
        }
        return road;
    }

    Chainage chainage() {
        int links = graph.linkCount();
        int[] road = new int[links];
        double[] length = new double[links];
        java.util.Arrays.setAll(road, link -> link);
        java.util.Arrays.setAll(length, graph::length);
        return new Chainage(road, new int[links], new double[links], length, length);
    }

    RoadNetwork network() {
        NetworkBuilder builder = NetworkBuilder.planar();
        for (int link = 0; link < graph.linkCount(); link++) {
            int from = graph.from(link);
            int to = graph.to(link);
            String name = "road " + link;
            builder.add(new RoadLine(
                    name,
                    new RoadAttributes(name, null, null, null, null, null, null, 0, Structure.NONE),
                    null,
                    new double[] {x[from], y[from], x[to], y[to]}));
        }
        return builder.build().network();
    }

    /** Writes V.csv, E.csv, P20k.csv, P100k.csv and P1M.csv into a folder. */
    public static void main(String[] arguments) throws IOException {
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        Workload workload = make();
        var nodes = new StringBuilder("id,x,y\n");
        for (int node = 0; node < workload.x.length; node++) {
            nodes.append(String.format(Locale.ROOT, "%d,%.3f,%.3f%n", node + 1, workload.x[node], workload.y[node]));
        }
        Files.writeString(folder.resolve("V.csv"), nodes);
        var links = new StringBuilder("id,from,to\n");
        for (int link = 0; link < workload.graph.linkCount(); link++) {
            links.append(
                    String.format("%d,%d,%d%n", link + 1, workload.graph.from(link) + 1, workload.graph.to(link) + 1));
        }
        Files.writeString(folder.resolve("E.csv"), links);
        workload.write(20_000, folder.resolve("P20k.csv"));
        workload.write(100_000, folder.resolve("P100k.csv"));
        workload.write(1_000_000, folder.resolve("P1M.csv"));
    }

    private void write(int count, Path file) {
        Events events = events(count);
        try (var writer = Files.newBufferedWriter(file)) {
            writer.write("id,x,y,seg,tp\n");
            for (int event = 0; event < count; event++) {
                writer.write(String.format(
                        Locale.ROOT,
                        "%d,%.3f,%.3f,%d,%.6f%n",
                        event + 1,
                        events.x[event],
                        events.y[event],
                        events.link[event] + 1,
                        events.metres[event] / graph.length(events.link[event])));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
