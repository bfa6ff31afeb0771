package org.culvert.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.culvert.geo.Bounds;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.Position;
import org.culvert.geo.Shapes;
import org.culvert.hotspot.HotspotReport;
import org.culvert.road.CurrentRoads;
import org.culvert.road.network.RoadNetwork;
import org.jspecify.annotations.Nullable;

/**
 * Hotspots on their roads, as a drawing. North is up; lengths are true in the middle (transverse Mercator around it). A unit is a
 * CSS pixel.
 *
 * @param width of the drawing
 * @param roads one path a link, of those that reach into the drawing
 * @param hotspots one path a line
 * @param labels numbers of the hotspots, where they do not cover each other
 * @param scaleEnd where the bar ends that stands for {@code scaleWords}; it begins at {@link #BAR}
 * @param roadsVersion number of the network that is drawn; null where none is
 * @param partly whether short links were left out, since there are so many
 */
public record RoadMap(
        String width,
        String height,
        List<String> roads,
        List<String> hotspots,
        List<Label> labels,
        String scaleEnd,
        String scaleWords,
        @Nullable Integer roadsVersion,
        boolean partly) {
    /** A number beside its hotspot. */
    public record Label(String words, String x, String y) {
        /** Where the box around it begins. */
        public String boxX() {
            return text(Double.parseDouble(x) - LABEL_WIDTH / 2);
        }

        public String boxY() {
            return text(Double.parseDouble(y) - LABEL_HEIGHT / 2);
        }

        /** The line that its figures stand on. */
        public String textY() {
            return text(Double.parseDouble(y) + 3.5);
        }
    }

    private static final double BAR = 14;
    private static final double MARGIN = 30;

    /**
     * How large a drawing is.
     *
     * @param leastMetres how much it shows at least, each way
     */
    record Frame(double width, double highest, double lowest, double leastMetres) {
        /** All hotspots of a run. */
        static final Frame ALL = new Frame(700, 430, 220, 1000);

        /** One hotspot with the roads around it. */
        static final Frame ONE = new Frame(340, 250, 250, 2500);
    }

    /** Points nearer together than this are one in the drawing. */
    private static final double FINEST = 0.6;

    /** Of more links than these, the shortest add nothing that an eye could tell apart. */
    private static final int MANY_LINKS = 20_000;

    private static final double LABEL_WIDTH = 18;
    private static final double LABEL_HEIGHT = 14;

    static @Nullable RoadMap of(List<HotspotReport.Stretch> stretches, @Nullable CurrentRoads roads) {
        return of(stretches, roads, Frame.ALL);
    }

    static @Nullable RoadMap of(List<HotspotReport.Stretch> stretches, @Nullable CurrentRoads roads, Frame frame) {
        List<double[][]> lines = new ArrayList<>();
        stretches.forEach(stretch -> lines.addAll(stretch.lines()));
        return lines.isEmpty() ? null : new Drawn(stretches, lines, frame).map(roads);
    }

    private static final class Drawn {
        private final List<HotspotReport.Stretch> stretches;
        private final List<double[][]> lines;
        private final Frame frame;
        private final LocalPlane plane;
        private final double left;
        private final double top;
        private final double scale;
        private final double height;

        Drawn(List<HotspotReport.Stretch> stretches, List<double[][]> lines, Frame frame) {
            this.frame = frame;
            this.stretches = stretches;
            this.lines = lines;
            double[] first = lines.get(0)[0];
            this.plane = LocalPlane.around(new Position(first[1], first[0]));
            double west = Double.POSITIVE_INFINITY;
            double south = Double.POSITIVE_INFINITY;
            double east = Double.NEGATIVE_INFINITY;
            double north = Double.NEGATIVE_INFINITY;
            for (double[][] line : lines) {
                for (double[] point : line) {
                    double[] at = plane.forward(point[1], point[0]);
                    west = Math.min(west, at[0]);
                    east = Math.max(east, at[0]);
                    south = Math.min(south, at[1]);
                    north = Math.max(north, at[1]);
                }
            }
            double wide = Math.max(east - west, frame.leastMetres());
            double high = Math.max(north - south, frame.leastMetres());
            this.scale = Math.min((frame.width() - 2 * MARGIN) / wide, (frame.highest() - 2 * MARGIN) / high);
            this.height = Math.max(frame.lowest(), high * scale + 2 * MARGIN);
            this.left = (west + east) / 2 - frame.width() / 2 / scale;
            this.top = (south + north) / 2 + height / 2 / scale;
        }

        RoadMap map(@Nullable CurrentRoads roads) {
            List<String> links = new ArrayList<>();
            boolean partly = false;
            if (roads != null) {
                RoadNetwork network = roads.network();
                int[] found = network.linksIn(box());
                partly = found.length > MANY_LINKS;
                for (int link : found) {
                    double[] course = network.link(link).vertices();
                    if (!partly || network.graph().length(link) * scale > 4) {
                        links.add(path(course));
                    }
                }
            }
            double metres = roundLength(frame.width() / 5 / scale);
            return new RoadMap(
                    text(frame.width()),
                    text(height),
                    links,
                    lines.stream().map(line -> path(Shapes.flat(line))).toList(),
                    labels(),
                    text(BAR + metres * scale),
                    metres < 1000 ? text(metres, "%.0f") + " m" : text(metres / 1000, "%.0f") + " km",
                    roads == null ? null : roads.number(),
                    partly);
        }

        private Bounds box() {
            Position middle = plane.inverse(left + frame.width() / 2 / scale, top - height / 2 / scale);
            return Bounds.around(middle, Math.hypot(frame.width(), height) / 2 / scale);
        }

        private List<Label> labels() {
            List<Label> labels = new ArrayList<>();
            List<double[]> taken = new ArrayList<>();
            for (HotspotReport.Stretch stretch : stretches) {
                double[][] line = stretch.lines().get(0);
                double[] at = at(line[line.length / 2][0], line[line.length / 2][1]);
                double[] free = free(at, taken);
                taken.add(free);
                labels.add(new Label(Integer.toString(stretch.rank()), text(free[0]), text(free[1])));
            }
            return labels;
        }

        /** The nearest place around a point where no other label is, on rings that grow; the point's own side first. */
        private double[] free(double[] at, List<double[]> taken) {
            for (int ring = 1; ring < 12; ring++) {
                for (int eighth = 0; eighth < 8; eighth++) {
                    double angle = Math.PI / 4 * eighth - Math.PI / 4;
                    double[] place = {
                        at[0] + ring * LABEL_WIDTH * Math.cos(angle), at[1] + ring * LABEL_HEIGHT * Math.sin(angle)
                    };
                    boolean inside = place[0] > LABEL_WIDTH
                            && place[0] < frame.width() - LABEL_WIDTH
                            && place[1] > LABEL_HEIGHT
                            && place[1] < height - LABEL_HEIGHT;
                    boolean apart = taken.stream()
                            .allMatch(other -> Math.abs(other[0] - place[0]) >= LABEL_WIDTH
                                    || Math.abs(other[1] - place[1]) >= LABEL_HEIGHT);
                    if (inside && apart) {
                        return place;
                    }
                }
            }
            return at;
        }

        private double[] at(double longitude, double latitude) {
            double[] metres = plane.forward(latitude, longitude);
            return new double[] {(metres[0] - left) * scale, (top - metres[1]) * scale};
        }

        /** @param course longitude and latitude in turn */
        private String path(double[] course) {
            var path = new StringBuilder();
            double[] last = null;
            for (int i = 0; i < course.length; i += 2) {
                double[] next = at(course[i], course[i + 1]);
                boolean isEnd = i + 2 == course.length;
                if (last == null || isEnd || Math.hypot(next[0] - last[0], next[1] - last[1]) > FINEST) {
                    path.append(last == null ? 'M' : 'L')
                            .append(text(next[0]))
                            .append(' ')
                            .append(text(next[1]));
                    last = next;
                }
            }
            return path.toString();
        }
    }

    /** The greatest of 1, 2 and 5 times a power of ten that is not longer. */
    static double roundLength(double metres) {
        double power = Math.pow(10, Math.floor(Math.log10(metres)));
        return metres >= 5 * power ? 5 * power : metres >= 2 * power ? 2 * power : power;
    }

    /** To a tenth; there are some ten thousand of them in a report, too many for a format. */
    private static String text(double value) {
        return Double.toString(Math.round(value * 10) / 10.0);
    }

    private static String text(double value, String format) {
        return String.format(Locale.ROOT, format, value);
    }
}
