package org.culvert.exchange;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.culvert.hotspot.stats.RoadSpan;
import org.culvert.hotspot.works.RoadPieces;
import org.culvert.platform.InvalidException;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadService;
import org.jspecify.annotations.Nullable;

/** Draws stretches of road, told by chainages, on the current network. */
@ApplicationScoped
public class StretchShapes {
    /** Roads as pieces, which are made once a network. */
    private record Drawn(UUID networkId, RoadPieces pieces) {}

    private final RoadService roads;
    private final AtomicReference<@Nullable Drawn> drawn = new AtomicReference<>();

    StretchShapes(RoadService roads) {
        this.roads = roads;
    }

    /** Lines of longitude and latitude, one a carriageway or unbroken run; none where the roads have no such stretch. */
    public List<double[][]> find(String road, double fromChainageMetres, double toChainageMetres) {
        CurrentRoads current = roads.findCurrent().orElse(null);
        if (current == null) {
            return List.of();
        }
        RoadPieces pieces = pieces(current);
        List<List<double[]>> lines = new ArrayList<>();
        try {
            for (RoadPieces.Part part : pieces.requireStretch("", road, fromChainageMetres, toChainageMetres)) {
                pieces.spans(part).forEach(span -> add(course(current, span), lines));
            }
        } catch (InvalidException noLongerThere) {
            return List.of();
        }
        return lines.stream().map(line -> line.toArray(double[][]::new)).toList();
    }

    private RoadPieces pieces(CurrentRoads current) {
        Drawn known = drawn.get();
        if (known == null || !known.networkId().equals(current.networkId())) {
            known = new Drawn(current.networkId(), RoadPieces.of(current.network()));
            drawn.set(known);
        }
        return known.pieces();
    }

    /** What goes on where a line ends becomes a part of it. */
    private static void add(List<double[]> course, List<List<double[]>> lines) {
        for (List<double[]> line : lines) {
            if (Arrays.equals(line.get(line.size() - 1), course.get(0))) {
                line.addAll(course.subList(1, course.size()));
                return;
            }
        }
        lines.add(course);
    }

    private static List<double[]> course(CurrentRoads current, RoadSpan span) {
        double[] flat = current.network().course(span.link(), span.fromMetres(), span.toMetres());
        List<double[]> course = new ArrayList<>();
        for (int i = 0; i < flat.length; i += 2) {
            course.add(new double[] {Math.round(flat[i] * 1e7) / 1e7, Math.round(flat[i + 1] * 1e7) / 1e7});
        }
        return course;
    }
}
