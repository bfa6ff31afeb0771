package org.culvert.web.desk;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.culvert.geo.Bounds;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.Position;
import org.culvert.road.CurrentRoads;
import org.culvert.road.network.RoadNetwork;
import org.jspecify.annotations.Nullable;

/**
 * The surroundings of a place as a drawing, north up: the ring within which it is, the roads, and on its road the chainage. Lengths
 * are true (transverse Mercator around the place). A unit is a CSS pixel.
 *
 * @param roads one path a link
 * @param itsRoad likewise, of the road that it is on
 * @param ring radius of the ring
 * @param marks chainages of its road, at most some
 * @param names of roads, each once
 */
public record PlacePicture(
        String width,
        String height,
        String middleX,
        String middleY,
        List<String> roads,
        List<Course> itsRoad,
        String ring,
        List<Post> marks,
        List<Mark> names,
        String scaleEnd,
        String scaleWords) {
    /**
     * A link of the road that the place is on.
     *
     * @param course latitudes and longitudes by turns, of its part in the surroundings
     */
    public record Course(String path, String course) {}

    /** A chainage; {@code at} is its latitude and longitude. */
    public record Post(String words, String x, String y, String dy, String at) {}

    /** Words at a place of the drawing, and how far beneath it (above, where below 0) they keep clear of the road. */
    public record Mark(String words, String x, String y, String dy) {}

    private static final double WIDTH = 640;
    private static final double HEIGHT = 420;
    private static final double LEAST_METRES = 350;

    /** How much further than the drawing a map may be moved before the road ends on it. */
    private static final double MAP_REACH = 4;

    private static final int MOST_NAMES = 8;
    private static final int MOST_MARKS = 14;
    private static final double NEAREST_LABELS = 46;
    private static final double LABEL_DISTANCE = 150;

    static PlacePicture of(
            Position place, double uncertaintyMetres, @Nullable String roadName, @Nullable CurrentRoads roads) {
        return new Drawing(place, uncertaintyMetres, roadName, roads).picture();
    }

    private static final class Drawing {
        private final Position place;
        private final double uncertaintyMetres;
        private final @Nullable String roadName;
        private final @Nullable CurrentRoads roads;
        private final LocalPlane plane;
        private final double halfMetres;
        private final double scale;
        private final List<String> others = new ArrayList<>();
        private final List<Course> own = new ArrayList<>();
        private final List<Post> marks = new ArrayList<>();
        private final List<double[]> taken = new ArrayList<>();

        Drawing(Position place, double uncertaintyMetres, @Nullable String roadName, @Nullable CurrentRoads roads) {
            this.place = place;
            this.uncertaintyMetres = uncertaintyMetres;
            this.roadName = roadName;
            this.roads = roads;
            this.plane = LocalPlane.around(place);
            this.halfMetres = Math.max(LEAST_METRES, 1.4 * uncertaintyMetres);
            this.scale = HEIGHT / 2 / halfMetres;
        }

        PlacePicture picture() {
            Map<String, double[]> labels = new LinkedHashMap<>();
            if (roads != null) {
                RoadNetwork network = roads.network();
                double reach = halfMetres * Math.hypot(WIDTH, HEIGHT) / HEIGHT;
                for (int link : network.linksIn(Bounds.around(place, reach))) {
                    draw(network, link, labels);
                }
            }
            double bar = roundMetres(WIDTH / 5 / scale);
            return new PlacePicture(
                    text(WIDTH),
                    text(HEIGHT),
                    text(WIDTH / 2),
                    text(HEIGHT / 2),
                    others,
                    own,
                    text(Math.max(3, uncertaintyMetres * scale)),
                    marks,
                    names(labels),
                    text(14 + bar * scale),
                    bar < 1000
                            ? String.format(Locale.ROOT, "%.0f m", bar)
                            : String.format(Locale.ROOT, "%.0f km", bar / 1000));
        }

        private void draw(RoadNetwork network, int link, Map<String, double[]> labels) {
            double[] course = network.link(link).vertices();
            var path = new StringBuilder();
            for (int i = 0; i < course.length; i += 2) {
                double[] at = at(new Position(course[i + 1], course[i]));
                path.append(i == 0 ? 'M' : 'L').append(text(at[0])).append(' ').append(text(at[1]));
            }
            String label = network.roadOf(link).label();
            boolean itself = label.equals(roadName);
            if (itself) {
                own.add(new Course(path.toString(), course(course)));
                mark(network, link);
            } else {
                others.add(path.toString());
            }
            if (network.roadOf(link).named()) {
                double[] spot = labelSpot(network, link);
                if (spot != null) {
                    labels.putIfAbsent(label, spot);
                }
            }
        }

        private String course(double[] vertices) {
            Bounds near = Bounds.around(place, MAP_REACH * halfMetres);
            var text = new StringBuilder();
            for (int i = 0; i < vertices.length; i += 2) {
                boolean shown = near.contains(at(vertices, i))
                        || i > 0 && near.contains(at(vertices, i - 2))
                        || i + 2 < vertices.length && near.contains(at(vertices, i + 2));
                if (shown) {
                    text.append(text.isEmpty() ? "" : " ").append(degrees(at(vertices, i)));
                }
            }
            return text.toString();
        }

        private static Position at(double[] vertices, int i) {
            return new Position(vertices[i + 1], vertices[i]);
        }

        /** Where on a link its road's name is read best: in the picture, and off the middle; null where there is no such place. */
        private double @Nullable [] labelSpot(RoadNetwork network, int link) {
            double length = network.graph().length(link);
            double[] best = null;
            double bestOff = Double.POSITIVE_INFINITY;
            int steps = (int) Math.min(200, Math.max(2, Math.ceil(length * scale / 20)));
            for (int step = 0; step <= steps; step++) {
                double[] at = at(network.positionAt(link, length * step / steps));
                double off = Math.abs(Math.hypot(at[0] - WIDTH / 2, at[1] - HEIGHT / 2) - LABEL_DISTANCE);
                if (inside(at, 70) && off < bestOff) {
                    best = at;
                    bestOff = off;
                }
            }
            return best;
        }

        private void mark(RoadNetwork network, int link) {
            double step = halfMetres < 800 ? 100 : halfMetres < 4000 ? 500 : 5000;
            double from = network.fromChainage(link);
            for (double chainage = Math.ceil(from / step) * step;
                    chainage <= network.toChainage(link) && marks.size() < MOST_MARKS;
                    chainage += step) {
                Position post = network.positionAt(link, chainage - from);
                double[] at = at(post);
                if (inside(at, 20) && isFree(at)) {
                    taken.add(at);
                    marks.add(new Post(
                            String.format(Locale.ROOT, step < 1000 ? "%.1f" : "%.0f", chainage / 1000),
                            text(at[0]),
                            text(at[1]),
                            risesToTheRight(network, link, chainage - from) ? "17" : "-8",
                            degrees(post)));
                }
            }
        }

        private boolean risesToTheRight(RoadNetwork network, int link, double metres) {
            double length = network.graph().length(link);
            double[] one = at(network.positionAt(link, Math.max(0, metres - 10)));
            double[] other = at(network.positionAt(link, Math.min(length, metres + 10)));
            return (other[0] - one[0]) * (other[1] - one[1]) < 0;
        }

        private List<Mark> names(Map<String, double[]> labels) {
            List<Mark> names = new ArrayList<>();
            labels.forEach((label, at) -> {
                // Beneath its line, where no chainage stands
                if (names.size() < MOST_NAMES && names.stream().noneMatch(other -> near(other, at))) {
                    names.add(new Mark(label, text(at[0]), text(at[1]), "16"));
                }
            });
            return names;
        }

        private static boolean near(Mark other, double[] at) {
            return Math.abs(Double.parseDouble(other.x()) - at[0]) < 2 * NEAREST_LABELS
                    && Math.abs(Double.parseDouble(other.y()) - at[1]) < 20;
        }

        private boolean isFree(double[] at) {
            return taken.stream().allMatch(other -> Math.hypot(at[0] - other[0], at[1] - other[1]) > NEAREST_LABELS);
        }

        private static boolean inside(double[] at, double margin) {
            return at[0] > margin && at[0] < WIDTH - margin && at[1] > 16 && at[1] < HEIGHT - 16;
        }

        private double[] at(Position position) {
            double[] metres = plane.forward(position);
            return new double[] {WIDTH / 2 + metres[0] * scale, HEIGHT / 2 - metres[1] * scale};
        }

        private static double roundMetres(double most) {
            double ten = Math.pow(10, Math.floor(Math.log10(most)));
            return most >= 5 * ten ? 5 * ten : most >= 2 * ten ? 2 * ten : ten;
        }
    }

    private static String degrees(Position position) {
        return String.format(Locale.ROOT, "%.5f %.5f", position.latitude(), position.longitude());
    }

    private static String text(double number) {
        return String.format(Locale.ROOT, "%.1f", number);
    }
}
