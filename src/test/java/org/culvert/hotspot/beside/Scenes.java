package org.culvert.hotspot.beside;

import java.time.LocalDate;
import java.util.List;
import org.culvert.hotspot.stats.Chainage;
import org.culvert.hotspot.stats.Hotspot;
import org.culvert.hotspot.stats.Recording;
import org.culvert.hotspot.stats.RoadEvent;
import org.culvert.road.network.NetworkBuilder;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.RoadLine;
import org.culvert.road.network.Structure;

/** Two roads that meet, on a plane: "Long Road" of 10 km from west to east, link 0 and 1, and "Lane" from its middle, link 2. */
final class Scenes {
    private Scenes() {}

    static RoadScene scene() {
        return new RoadScene(NetworkBuilder.planar()
                .add(line("Long Road", 0, 0, 5000, 0))
                .add(line("Long Road", 5000, 0, 10_000, 0))
                .add(line("Lane", 5000, 0, 5000, 3000))
                .build()
                .network());
    }

    private static RoadLine line(String name, double... vertices) {
        return new RoadLine(
                name, new RoadAttributes(name, null, null, null, null, null, null, 0, Structure.NONE), null, vertices);
    }

    /** Chainage from 0 at the west end of Long Road, and from 0 at the foot of Lane. */
    static Chainage chainage() {
        return new Chainage(
                new int[] {0, 0, 1},
                new int[] {0, 0, 0},
                new double[] {0, 5000, 0},
                new double[] {5000, 10_000, 3000},
                new double[] {5000, 5000, 3000});
    }

    static DatedEvent event(int link, double metres, String day) {
        return event(link, metres, day, 0, 0);
    }

    static DatedEvent event(int link, double metres, String day, double rounding, double spread) {
        return new DatedEvent(LocalDate.parse(day), new RoadEvent(link, metres, new Recording(rounding, spread)));
    }

    static Hotspot hotspot(int rank, int link, double from, double to) {
        return new Hotspot(
                rank, 0, List.of(new Hotspot.Span(link, from, to, 5)), from, to, to - from, 5, 1, 2, 11, 0.01);
    }
}
