package org.culvert.web.release;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.Position;
import org.culvert.release.ReleaseAreaFeature;
import org.culvert.release.ReleaseAreaFeature.RankedSite;
import org.culvert.release.rules.UncertainPosition;
import org.culvert.web.Tick;
import org.culvert.web.words.ReleaseWords;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/**
 * The area where an animal may go back as a drawing, north up, on a plane laid around where it was found. Outlines are those that
 * a picture of 700 pixels can show: a line strays by half a pixel at most, and what is smaller than a pixel is left out.
 *
 * @param height of the drawing, which is {@value #WIDTH} wide: the map and a strip below it
 * @param mapHeight of the map alone
 * @param paths outlines of the area, to be filled by the even-odd rule
 * @param asked parks, properties and land across a border, in the order of the answer
 * @param uncertainty radius of the circle in which it was found
 * @param bar length of the scale bar
 * @param barWords what it is long
 * @param words what the drawing shows
 * @param sitesOutside how many known sites lie outside the drawing
 */
public record AreaPicture(
        String height,
        String mapHeight,
        List<String> paths,
        List<Asked> asked,
        Spot origin,
        String uncertainty,
        @Nullable Lead nearest,
        @Nullable Lead lookFirst,
        List<Site> sites,
        int sitesOutside,
        String bar,
        String barWords,
        String foot,
        String words) {
    static final double WIDTH = 400;
    static final double PIXELS = 700;
    private static final double STRIP = 30;
    private static final double MARGIN = 0.06;
    private static final double LEAST_METRES = 200;
    private static final int MOST_SITES = 40;
    private static final int LETTERS = 26;
    private static final double AWAY = 40;
    private static final double TURNED = 25;
    private static final double EDGE = 12;
    private static final double ABOVE = 6;
    private static final int EIGHTHS = 8;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    public record Spot(String x, String y) {}

    /** A place, and where its sign stands beside it, for it may be nearer to another than a sign is wide. */
    public record Lead(Spot at, Spot sign) {}

    public record Site(Spot at, int rank) {}

    /** @param sign its letter: a for the first of the answer, and so on */
    public record Asked(List<String> paths, Spot at, String sign) {}

    /** The letter of one of those to be asked first; after z there is none, and they are not drawn. */
    static String letter(int i) {
        return i < LETTERS ? String.valueOf((char) ('a' + i)) : "";
    }

    /** Whether the known site of a rank is drawn. */
    boolean shows(int rank) {
        return sites.stream().anyMatch(site -> site.rank() == rank);
    }

    /** The area of an answer that has one. */
    static AreaPicture draw(ReleaseAreaFeature area, UncertainPosition origin, ReleaseTongue tongue) {
        ReleaseAreaFeature.Geometry geometry = area.geometry();
        if (geometry == null) {
            throw new IllegalArgumentException("there is nothing to draw");
        }
        return new Drawing(geometry, area.properties(), origin, tongue).draw();
    }

    /** Which of eight ways another place lies, from north by the sun. */
    static int eighth(Position from, Position to) {
        double[] xy = LocalPlane.around(from).forward(to);
        double eighths = Math.toDegrees(Math.atan2(xy[0], xy[1])) / 45;
        return Math.floorMod((int) Math.round(eighths), EIGHTHS);
    }

    private static final class Drawing {
        private final ReleaseAreaFeature.Properties told;
        private final UncertainPosition origin;
        private final ReleaseTongue tongue;
        private final LocalPlane plane;
        private final List<List<Coordinate[]>> polygons;
        private final Envelope frame = new Envelope();
        private final double metresPerUnit;

        Drawing(
                ReleaseAreaFeature.Geometry geometry,
                ReleaseAreaFeature.Properties told,
                UncertainPosition origin,
                ReleaseTongue tongue) {
            this.tongue = tongue;
            this.told = told;
            this.origin = origin;
            this.plane = LocalPlane.around(origin.position());
            this.polygons = polygons(geometry);
            frame.expandToInclude(new Coordinate(0, 0));
            frame.expandBy(Math.max(origin.uncertaintyMetres(), LEAST_METRES / 2));
            polygons.forEach(rings -> rings.forEach(ring -> {
                for (Coordinate corner : ring) {
                    frame.expandToInclude(corner);
                }
            }));
            double margin = MARGIN * Math.max(frame.getWidth(), frame.getHeight());
            // Not flatter or narrower than one to two, so that signs have room
            frame.expandBy(
                    margin + Math.max(0, (frame.getHeight() / 2 - frame.getWidth()) / 2),
                    margin + Math.max(0, (frame.getWidth() / 2 - frame.getHeight()) / 2));
            this.metresPerUnit = frame.getWidth() / WIDTH;
        }

        private List<List<Coordinate[]>> polygons(ReleaseAreaFeature.Geometry geometry) {
            List<List<Coordinate[]>> polygons = new ArrayList<>();
            for (double[][][] polygon : geometry.coordinates()) {
                List<Coordinate[]> rings = new ArrayList<>();
                for (double[][] ring : polygon) {
                    rings.add(onPlane(ring));
                }
                polygons.add(rings);
            }
            return polygons;
        }

        private Coordinate[] onPlane(double[][] ring) {
            Coordinate[] corners = new Coordinate[ring.length];
            for (int i = 0; i < ring.length; i++) {
                double[] xy = plane.forward(ring[i][1], ring[i][0]);
                corners[i] = new Coordinate(xy[0], xy[1]);
            }
            return corners;
        }

        AreaPicture draw() {
            double mapHeight = frame.getHeight() / metresPerUnit;
            Coordinate found = new Coordinate(0, 0);
            ReleaseAreaFeature.Point nearest = told.nearest();
            ReleaseAreaFeature.LookFirst first = told.lookFirst();
            List<Site> sites = new ArrayList<>();
            int outside = 0;
            for (RankedSite site : told.sites()) {
                Position position = new Position(site.decimalLatitude(), site.decimalLongitude());
                Coordinate at = plane.covers(position) ? place(site.decimalLatitude(), site.decimalLongitude()) : null;
                if (at == null || !frame.contains(at)) {
                    outside++;
                } else if (sites.size() < MOST_SITES) {
                    sites.add(new Site(spot(at), site.rank()));
                }
            }
            double metres = barMetres(frame.getWidth() / 3);
            return new AreaPicture(
                    text(mapHeight + STRIP),
                    text(mapHeight),
                    paths(polygons),
                    asked(),
                    spot(found),
                    text(origin.uncertaintyMetres() / metresPerUnit),
                    nearest == null ? null : lead(place(nearest.decimalLatitude(), nearest.decimalLongitude()), TURNED),
                    first == null ? null : lead(place(first.decimalLatitude(), first.decimalLongitude()), -TURNED),
                    sites,
                    outside,
                    text(metres / metresPerUnit),
                    Tick.number(metres / 1000) + " km",
                    text(mapHeight + STRIP / 2),
                    words(sites));
        }

        private List<Asked> asked() {
            List<Asked> asked = new ArrayList<>();
            for (int i = 0; i < Math.min(LETTERS, told.askFirst().size()); i++) {
                List<List<Coordinate[]>> parts = polygons(told.askFirst().get(i).geometry());
                asked.add(new Asked(paths(parts), above(parts), letter(i)));
            }
            return asked;
        }

        /** Just above the northernmost corner of the greatest part: known sites often lie in the middle of one. */
        private Spot above(List<List<Coordinate[]>> parts) {
            Polygon greatest = parts.stream()
                    .map(rings -> FACTORY.createPolygon(rings.get(0)))
                    .max(Comparator.comparingDouble(Polygon::getArea))
                    .orElseThrow();
            Coordinate top = Arrays.stream(greatest.getCoordinates())
                    .max(Comparator.comparingDouble(Coordinate::getY))
                    .orElseThrow();
            return new Spot(text(held(x(top), EDGE, WIDTH - EDGE)), text(Math.max(EDGE, y(top) - ABOVE)));
        }

        private List<String> paths(List<List<Coordinate[]>> polygons) {
            double pixel = frame.getWidth() / PIXELS;
            List<String> paths = new ArrayList<>();
            for (List<Coordinate[]> polygon : polygons) {
                var path = new StringBuilder();
                for (int i = 0; i < polygon.size(); i++) {
                    Coordinate[] ring = simplified(polygon.get(i), pixel);
                    if (ring.length >= 4) {
                        path.append(outline(ring));
                    } else if (i == 0) {
                        break;
                    }
                }
                if (!path.isEmpty()) {
                    paths.add(path.toString());
                }
            }
            return paths;
        }

        /** Nothing where it is smaller than a pixel. */
        private static Coordinate[] simplified(Coordinate[] ring, double pixel) {
            var box = new Envelope();
            for (Coordinate corner : ring) {
                box.expandToInclude(corner);
            }
            if (Math.max(box.getWidth(), box.getHeight()) < pixel) {
                return new Coordinate[0];
            }
            return DouglasPeuckerSimplifier.simplify(FACTORY.createLineString(ring), pixel / 2)
                    .getCoordinates();
        }

        private String outline(Coordinate[] ring) {
            var path = new StringBuilder();
            for (int i = 0; i < ring.length - 1; i++) {
                path.append(i == 0 ? 'M' : 'L')
                        .append(text(x(ring[i])))
                        .append(' ')
                        .append(text(y(ring[i])));
            }
            return path.append('Z').toString();
        }

        /** The sign stands on from where it was found, past the place, so that it is on the same side of a road. */
        private Lead lead(Coordinate at, double turnedDegrees) {
            double mapHeight = frame.getHeight() / metresPerUnit;
            double direction = Math.atan2(at.x, at.y) + Math.toRadians(turnedDegrees);
            return new Lead(
                    spot(at),
                    new Spot(
                            text(held(x(at) + AWAY * Math.sin(direction), EDGE, WIDTH - EDGE)),
                            text(held(y(at) - AWAY * Math.cos(direction), EDGE, mapHeight - EDGE))));
        }

        private Coordinate place(double latitude, double longitude) {
            double[] xy = plane.forward(latitude, longitude);
            return new Coordinate(xy[0], xy[1]);
        }

        private double x(Coordinate at) {
            return (at.x - frame.getMinX()) / metresPerUnit;
        }

        private double y(Coordinate at) {
            return (frame.getMaxY() - at.y) / metresPerUnit;
        }

        private Spot spot(Coordinate at) {
            return new Spot(text(x(at)), text(y(at)));
        }

        private String words(List<Site> sites) {
            int parts = polygons.size();
            ReleaseWords words = tongue.words();
            return words.pictureWords(
                    tongue.distance(frame.getWidth()),
                    tongue.distance(frame.getHeight()),
                    tongue.size(told.squareMetres()),
                    parts == 1 ? words.onePart() : words.parts(parts),
                    tongue.distance(origin.uncertaintyMetres()),
                    sites.isEmpty()
                            ? words.noSiteDrawn()
                            : sites.size() == 1
                                    ? words.oneSiteDrawn(sites.get(0).rank())
                                    : words.sitesDrawn(sites.size()));
        }
    }

    /** The greatest of 1, 2 and 5 times a power of ten that is no longer than that. */
    static double barMetres(double longest) {
        double power = Math.pow(10, Math.floor(Math.log10(longest)));
        return longest >= 5 * power ? 5 * power : longest >= 2 * power ? 2 * power : power;
    }

    private static double held(double value, double least, double most) {
        return Math.max(least, Math.min(most, value));
    }

    private static String text(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
