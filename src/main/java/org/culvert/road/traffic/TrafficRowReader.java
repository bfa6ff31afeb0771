package org.culvert.road.traffic;

import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Objects;
import org.culvert.geo.GeoPackageGeometry.Kind;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.platform.InvalidException;
import org.culvert.road.PlaceAsGiven;
import org.culvert.road.PlaceReading;
import org.culvert.road.file.FileOfFeatures.Feature;
import org.jspecify.annotations.Nullable;

/** Reads one feature of a file of counts after another. */
final class TrafficRowReader {
    private static final int LONGEST_ROAD = 300;

    /** What a row says. */
    record Read(TrafficFigures figures, CountedPlace place) {}

    private final TrafficFileSettings settings;
    private final PlaceReading places;
    private final int networkNumber;
    private final Clock clock;
    private final ZoneId zone;

    TrafficRowReader(TrafficFileSettings settings, PlaceReading places, int networkNumber, Clock clock, ZoneId zone) {
        this.settings = settings;
        this.places = places;
        this.networkNumber = networkNumber;
        this.clock = clock;
        this.zone = zone;
    }

    /** @throws InvalidException naming attributes or the place */
    Read read(Feature feature) {
        LocalDate from;
        LocalDate to;
        String first = text(feature, TrafficColumn.FROM);
        if (first != null) {
            from = day(TrafficColumn.FROM, first);
            to = day(TrafficColumn.TO, required(feature, TrafficColumn.TO));
        } else {
            int year = year(feature);
            from = LocalDate.of(year, 1, 1);
            to = LocalDate.of(year, 12, 31);
        }
        String direction = text(feature, TrafficColumn.DIRECTION);
        TrafficDirections directions = direction == null
                ? settings.directions()
                : TrafficWords.isBoth(direction) ? TrafficDirections.both : TrafficDirections.one;
        if (directions == null) {
            throw missing(TrafficColumn.DIRECTION, "a direction, or both; or the parameter directions for such rows");
        }
        String kind = text(feature, TrafficColumn.KIND);
        TrafficCountKind howCounted =
                kind == null ? settings.kind() : TrafficWords.kind(attribute(TrafficColumn.KIND), kind);
        if (howCounted == null) {
            throw missing(TrafficColumn.KIND, "how it was counted; or the parameter kind for such rows");
        }
        Double days = number(feature, TrafficColumn.DAYS);
        Double heavy = number(feature, TrafficColumn.HEAVY);
        var figures = new TrafficFigures(
                text(feature, TrafficColumn.STATION),
                from,
                to,
                TrafficWords.number(attribute(TrafficColumn.VEHICLES), required(feature, TrafficColumn.VEHICLES)),
                Objects.requireNonNull(settings.measure()),
                number(feature, TrafficColumn.STANDARD_ERROR),
                days == null ? null : wholeDays(days),
                directions,
                directions == TrafficDirections.one ? direction : null,
                heavy == null || !settings.heavyInPercent() ? heavy : Double.valueOf(heavy / 100),
                howCounted,
                Objects.requireNonNull(settings.source()),
                null);
        figures.check(clock, zone);
        return new Read(figures, place(feature, figures.direction()));
    }

    private CountedPlace place(Feature feature, @Nullable String direction) {
        if (feature.shape().parts().size() > 1) {
            throw InvalidException.of("geometry", "These are several places.", "one point, or one line along a road");
        }
        double[] positions = feature.shape().parts().get(0).get(0);
        String road = text(feature, TrafficColumn.ROAD);
        if (feature.shape().kind() == Kind.POINT) {
            return at(positions[0], positions[1], road, direction);
        }
        double[] middle = middle(positions);
        return CountedPlace.between(
                at(positions[0], positions[1], road, direction),
                at(middle[0], middle[1], road, direction),
                at(positions[positions.length - 2], positions[positions.length - 1], road, direction));
    }

    private CountedPlace at(double longitude, double latitude, @Nullable String road, @Nullable String direction) {
        return CountedPlace.at(
                places,
                new PlaceAsGiven(
                        new PlaceAsGiven.DecimalDegrees(degrees(latitude), degrees(longitude)),
                        null,
                        null,
                        null,
                        null,
                        null,
                        settings.uncertaintyMetres(),
                        road,
                        direction),
                networkNumber);
    }

    /** To a tenth of a millimetre: how sure the place is says its own radius. */
    private static String degrees(double value) {
        return String.format(Locale.ROOT, "%.9f", value);
    }

    /** The point halfway along a line, straight between its vertices. */
    private static double[] middle(double[] line) {
        double[] lengths = new double[line.length / 2];
        double whole = 0;
        for (int i = 1; i < lengths.length; i++) {
            lengths[i] = Geodesy.metresBetween(
                    new Position(line[2 * i - 1], line[2 * i - 2]), new Position(line[2 * i + 1], line[2 * i]));
            whole += lengths[i];
        }
        double left = whole / 2;
        for (int i = 1; i < lengths.length; i++) {
            if (left <= lengths[i] && lengths[i] > 0) {
                double share = left / lengths[i];
                return new double[] {
                    line[2 * i - 2] + share * (line[2 * i] - line[2 * i - 2]),
                    line[2 * i - 1] + share * (line[2 * i + 1] - line[2 * i - 1])
                };
            }
            left -= lengths[i];
        }
        return new double[] {line[0], line[1]};
    }

    private int year(Feature feature) {
        String text = text(feature, TrafficColumn.YEAR);
        Integer year = settings.year();
        if (text == null && year != null) {
            return year;
        }
        if (text == null) {
            throw missing(TrafficColumn.YEAR, "a calendar year; or the parameter year for such rows");
        }
        if (!text.matches("[0-9]{4}(\\.0+)?")) {
            throw InvalidException.of(attribute(TrafficColumn.YEAR), "This is no year.", "a year such as 2024");
        }
        return Integer.parseInt(text.substring(0, 4));
    }

    private LocalDate day(TrafficColumn column, String text) {
        try {
            return LocalDate.parse(text.length() > 10 && text.charAt(10) == 'T' ? text.substring(0, 10) : text);
        } catch (DateTimeException wrong) {
            throw InvalidException.of(attribute(column), "This is no day.", "a day such as 2024-03-01 (ISO 8601)");
        }
    }

    private static int wholeDays(double days) {
        if (!(days >= 0 && days <= TrafficFigures.MOST_DAYS) || days != Math.rint(days)) {
            throw InvalidException.of(
                    "daysCounted", "This is no number of days of a year.", "1 to " + TrafficFigures.MOST_DAYS);
        }
        return (int) days;
    }

    private @Nullable Double number(Feature feature, TrafficColumn column) {
        String text = text(feature, column);
        return text == null ? null : TrafficWords.number(attribute(column), text);
    }

    private String required(Feature feature, TrafficColumn column) {
        String text = text(feature, column);
        if (text == null) {
            throw missing(column, "a value");
        }
        return text;
    }

    private InvalidException missing(TrafficColumn column, String wanted) {
        return InvalidException.of(attribute(column), "This is missing.", wanted);
    }

    private @Nullable String text(Feature feature, TrafficColumn column) {
        String text = feature.text(settings.column(column));
        int longest = column == TrafficColumn.ROAD ? LONGEST_ROAD : TrafficFigures.LONGEST_NAME;
        if (text != null && text.length() > longest) {
            throw InvalidException.of(
                    attribute(column), "This is longer than can be kept.", "at most " + longest + " characters");
        }
        return text;
    }

    private String attribute(TrafficColumn column) {
        String attribute = settings.column(column);
        return attribute == null ? column.parameter() : "properties." + attribute;
    }
}
