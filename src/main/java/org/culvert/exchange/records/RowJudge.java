package org.culvert.exchange.records;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.culvert.exchange.reading.Finding;
import org.culvert.exchange.reading.Finding.Kind;
import org.culvert.exchange.reading.ReadRow;
import org.culvert.exchange.reading.Spot;
import org.culvert.geo.Bounds;
import org.culvert.geo.Position;
import org.culvert.platform.InvalidException;
import org.culvert.road.PlaceAsGiven;
import org.culvert.road.PlaceUnderstood;
import org.culvert.road.PlacesOnRoads;
import org.jspecify.annotations.Nullable;

/** Looks up what a row tells of, and says whether it can be taken. Safe for several threads. */
final class RowJudge {
    private static final int MOST_ANIMALS = 1000;
    private static final Set<String> COMPASS =
            Set.of("north", "northEast", "east", "southEast", "south", "southWest", "west", "northWest");

    private final AnimalWords animals;
    private final PlacesOnRoads places;
    private final @Nullable Bounds region;
    private final ZoneId zone;
    private final Set<String> causes;
    private final Instant now;

    /**
     * @param region null where nobody has told which it is
     * @param causes keys of all causes
     */
    RowJudge(
            AnimalWords animals,
            PlacesOnRoads places,
            @Nullable Bounds region,
            ZoneId zone,
            Set<String> causes,
            Instant now) {
        this.animals = animals;
        this.places = places;
        this.region = region;
        this.zone = zone;
        this.causes = causes;
        this.now = now;
    }

    private record When(
            @Nullable Instant at,
            @Nullable Instant notBefore,
            @Nullable Instant before) {}

    JudgedRow judge(ReadRow row) {
        List<Finding> findings = new ArrayList<>(row.findings());
        When when = when(row, findings);
        PlaceUnderstood place = place(row, findings);
        AnimalWords.Animal animal = row.isDomestic() ? AnimalWords.Animal.UNTOLD : animals.find(row);
        Finding ofAnimal = row.isDomestic() ? animals.besideDomestic(row) : animal.finding();
        if (ofAnimal != null) {
            findings.add(ofAnimal);
        }
        if (row.individualCount() < 1 || row.individualCount() > MOST_ANIMALS) {
            findings.add(Finding.refusal(
                    Kind.unreadableCount,
                    null,
                    row.individualCount() + " is no number of animals.",
                    "1 to " + MOST_ANIMALS));
        }
        String cause = row.cause();
        if (cause != null && !causes.contains(cause)) {
            findings.add(Finding.refusal(
                    Kind.unknownWord, null, "There is no cause " + cause + ".", String.join(", ", causes)));
        }
        Double precision = row.spot() == null ? row.chainagePrecisionMetres() : null;
        return new JudgedRow(
                row,
                verdict(row, findings),
                when.at,
                when.notBefore,
                when.before,
                place,
                precision,
                animal.taxonId(),
                animal.groupId(),
                findings);
    }

    private static Verdict verdict(ReadRow row, List<Finding> findings) {
        boolean namesDisagree = findings.stream().anyMatch(finding -> finding.kind() == Kind.namesDisagree);
        if (row.isDomestic() && !namesDisagree) {
            return Verdict.apart;
        }
        Verdict verdict = Verdict.right;
        for (Finding finding : findings) {
            if (finding.weight() == Finding.Weight.refusal) {
                return Verdict.refused;
            }
            if (finding.weight() == Finding.Weight.doubt) {
                verdict = Verdict.doubtful;
            }
        }
        return verdict;
    }

    /**
     * A day without an hour, and a year without a day, are intervals in the region's zone. A year alone is so long a one that
     * evidence counts the record in no season.
     */
    private When when(ReadRow row, List<Finding> findings) {
        LocalDate day = row.day();
        LocalTime time = row.time();
        Integer year = row.year();
        Instant from;
        if (day != null && time != null) {
            Instant at = day.atTime(time).atZone(zone).toInstant();
            if (at.isAfter(now)) {
                findings.add(
                        Finding.refusal(Kind.dayInFuture, null, "This is still to come.", "a time that has passed"));
            }
            return new When(at, null, null);
        } else if (day != null) {
            from = day.atStartOfDay(zone).toInstant();
            requireBegun(from, findings);
            LocalDate last = row.lastDay() == null ? day : row.lastDay();
            return new When(null, from, last.plusDays(1).atStartOfDay(zone).toInstant());
        } else if (year != null) {
            LocalDate first = LocalDate.of(year, 1, 1);
            from = first.atStartOfDay(zone).toInstant();
            requireBegun(from, findings);
            return new When(null, from, first.plusYears(1).atStartOfDay(zone).toInstant());
        }
        if (findings.stream().noneMatch(finding -> finding.weight() == Finding.Weight.refusal)) {
            findings.add(Finding.refusal(
                    Kind.missingDay, null, "Nothing tells when it happened.", "a day, or at least a year"));
        }
        return new When(null, null, null);
    }

    private void requireBegun(Instant from, List<Finding> findings) {
        if (from.isAfter(now)) {
            findings.add(Finding.refusal(Kind.dayInFuture, null, "This is still to come.", "a day that has passed"));
        }
    }

    private @Nullable PlaceUnderstood place(ReadRow row, List<Finding> findings) {
        PlaceAsGiven given = given(row);
        if (given == null) {
            return null;
        }
        try {
            PlaceUnderstood place = places.understand(given);
            look(row, place, findings);
            return place;
        } catch (InvalidException wrong) {
            findings.add(refused(row, wrong.errors().get(0)));
            return null;
        }
    }

    /** The one way in which a row says where it was; coordinates before roads, which then decide between roads. */
    private static @Nullable PlaceAsGiven given(ReadRow row) {
        Spot spot = row.spot();
        String direction = row.direction();
        String compass = direction != null && COMPASS.contains(direction) ? direction : null;
        Double uncertainty = row.uncertaintyMetres();
        String road = row.road();
        if (spot != null) {
            PlaceAsGiven.DecimalDegrees degrees = null;
            PlaceAsGiven.Grid grid = null;
            String text = null;
            String code = null;
            switch (spot.kind()) {
                case decimalDegrees ->
                    degrees = new PlaceAsGiven.DecimalDegrees(told(spot.first()), told(spot.second()));
                case grid ->
                    grid = new PlaceAsGiven.Grid(
                            spot.epsg() == null ? 0 : spot.epsg(), told(spot.first()), told(spot.second()));
                case text -> text = told(spot.text());
                case plusCode -> code = told(spot.text());
            }
            return new PlaceAsGiven(degrees, text, grid, code, null, null, uncertainty, road, compass);
        }
        Double chainage = row.chainageMetres();
        if (road != null && chainage != null) {
            double step = row.chainagePrecisionMetres() == null ? 1 : row.chainagePrecisionMetres();
            return new PlaceAsGiven(
                    null,
                    null,
                    null,
                    null,
                    new PlaceAsGiven.RoadAndChainage(road, kilometres(chainage, step), null),
                    null,
                    uncertainty == null ? Math.max(1, step / 2) : Math.max(uncertainty, step / 2),
                    null,
                    compass);
        }
        String crossing = row.crossingRoad();
        if (road != null && crossing != null) {
            return new PlaceAsGiven(
                    null,
                    null,
                    null,
                    null,
                    null,
                    new PlaceAsGiven.CrossingRoads(road, crossing),
                    uncertainty,
                    null,
                    compass);
        }
        return null;
    }

    private static String told(@Nullable String text) {
        return text == null ? "" : text;
    }

    /** With as many decimals as the step tells; a step that is no power of ten, such as of miles, is kept beside it. */
    static String kilometres(double chainageMetres, double stepMetres) {
        long power = Math.round(Math.log10(Math.max(0.001, stepMetres)));
        boolean decimal = Math.abs(stepMetres / Math.pow(10, power) - 1) < 1e-9;
        int scale = decimal ? (int) Math.max(0, Math.min(6, 3 - power)) : 3;
        return BigDecimal.valueOf(chainageMetres)
                .movePointLeft(3)
                .setScale(scale, RoundingMode.HALF_UP)
                .toPlainString();
    }

    private void look(ReadRow row, PlaceUnderstood place, List<Finding> findings) {
        if (region != null && !region.contains(new Position(place.decimalLatitude(), place.decimalLongitude()))) {
            findings.add(Finding.doubt(
                    Kind.outsideRegion, null, "The place lies outside the region.", "a place in the region"));
        }
        if (places.roads().isEmpty()) {
            return;
        }
        PlaceUnderstood.OnRoad road = place.onRoad();
        String named = row.road();
        if (road == null) {
            findings.add(Finding.doubt(
                    Kind.noRoadNear,
                    null,
                    "No road of the network is within the place's uncertainty; it is kept without a road.",
                    "a place on a road, or a larger uncertainty"));
        } else if (place.roadInDoubt() && row.spot() != null && named != null && !places.mayBe(road, named)) {
            findings.add(Finding.doubt(
                    Kind.roadInDoubt,
                    null,
                    "The row names " + named + "; near its place is " + road.roadName() + ".",
                    "the name of the road at the place, or the place on that road"));
        } else if (place.roadInDoubt()) {
            findings.add(Finding.note(Kind.roadInDoubt, null, "Another road is about as likely."));
        }
    }

    /** A road that is not in the network leaves the row to be counted without a place; coordinates that cannot be do not. */
    private static Finding refused(ReadRow row, InvalidException.FieldError error) {
        String field = error.field();
        String detail = error.detail();
        if (field.contains("chainageKilometres")) {
            return Finding.doubt(Kind.noChainageThere, null, detail, error.wanted());
        }
        if (row.spot() == null) {
            return Finding.doubt(Kind.unknownRoad, null, detail, error.wanted());
        }
        if (error.otherReading() != null) {
            Kind kind = detail.contains("swapped") ? Kind.swappedAxes : Kind.outsideRegion;
            return Finding.refusal(kind, null, detail, error.wanted());
        }
        return Finding.refusal(Kind.unreadableCoordinates, null, detail, error.wanted());
    }
}
