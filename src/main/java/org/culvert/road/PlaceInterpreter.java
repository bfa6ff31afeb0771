package org.culvert.road;

import io.micrometer.core.annotation.Timed;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.culvert.geo.Bounds;
import org.culvert.geo.CoordinateDoubt;
import org.culvert.geo.CoordinateException;
import org.culvert.geo.CoordinateReading;
import org.culvert.geo.Coordinates;
import org.culvert.geo.Position;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Region;
import org.culvert.platform.RegionService;
import org.jspecify.annotations.Nullable;

/**
 * Understands a place however it is said: coordinates are read and put on a road, roads are turned into a position. What
 * cannot be is refused with the other reading beside it; what is in doubt says so.
 */
@ApplicationScoped
class PlaceInterpreter implements PlaceReading {
    /** A place this near the region is taken as it is said, even if another reading of it would lie inside. */
    static final double NEAR_THE_REGION_DEGREES = 1;

    private static final Map<String, String> FIELDS = Map.of(
            "decimalLatitude", "place.decimalDegrees.latitude",
            "decimalLongitude", "place.decimalDegrees.longitude",
            "verbatimCoordinates", "place.degreesMinutesSeconds",
            "epsg", "place.grid.epsg",
            "easting", "place.grid.easting",
            "northing", "place.grid.northing",
            "plusCode", "place.plusCode",
            "chainageKm", "place.roadAndChainage.chainageKilometres",
            "coordinateUncertaintyInMeters", "place.uncertaintyMetres");

    private final RoadService roads;
    private final RegionService regions;

    PlaceInterpreter(RoadService roads, RegionService regions) {
        this.roads = roads;
        this.regions = regions;
    }

    @Override
    @Timed(
            value = "culvert.place.reading",
            percentiles = {0.5, 0.95, 0.99})
    public PlaceUnderstood understand(PlaceAsGiven given) {
        requireOneWay(given);
        try {
            if (given.roadAndChainage() != null) {
                return new RoadPlaces(requireRoads()).atChainage(given.roadAndChainage(), given);
            }
            if (given.crossingRoads() != null) {
                return new RoadPlaces(requireRoads()).atCrossing(given.crossingRoads(), given);
            }
            return coordinates(given);
        } catch (CoordinateException wrong) {
            throw InvalidException.of(
                    fieldOf(wrong, given),
                    sentence(wrong.whatIsWrong()),
                    wrong.whatWouldBeRight(),
                    shown(wrong.otherReading()));
        }
    }

    private static void requireOneWay(PlaceAsGiven given) {
        long ways = Stream.of(
                        given.decimalDegrees(),
                        given.degreesMinutesSeconds(),
                        given.grid(),
                        given.plusCode(),
                        given.roadAndChainage(),
                        given.crossingRoads())
                .filter(way -> way != null)
                .count();
        if (ways != 1) {
            throw InvalidException.of(
                    "place",
                    ways == 0 ? "No place is given." : "The place is given in more than one way.",
                    "exactly one of decimalDegrees, degreesMinutesSeconds, grid, plusCode, roadAndChainage,"
                            + " crossingRoads");
        }
    }

    private CurrentRoads requireRoads() {
        return roads.findCurrent()
                .orElseThrow(() -> InvalidException.of(
                        "place",
                        "No road network has been imported yet, so a place cannot be found by road.",
                        "coordinates, or a road network first"));
    }

    private PlaceUnderstood coordinates(PlaceAsGiven given) {
        CoordinateReading reading;
        String way;
        PlaceAsGiven.DecimalDegrees degrees = given.decimalDegrees();
        PlaceAsGiven.Grid grid = given.grid();
        if (degrees != null) {
            way = "decimalDegrees";
            reading = Coordinates.decimal(degrees.latitude(), degrees.longitude(), given.uncertaintyMetres());
        } else if (given.degreesMinutesSeconds() != null) {
            way = "degreesMinutesSeconds";
            reading = Coordinates.text(given.degreesMinutesSeconds(), given.uncertaintyMetres());
        } else if (grid != null) {
            way = "grid";
            reading = Coordinates.grid(grid.epsg(), grid.easting(), grid.northing(), given.uncertaintyMetres());
        } else {
            way = "plusCode";
            String code = given.plusCode() == null ? "" : given.plusCode();
            Position middle =
                    regions.findRegion().map(region -> boxOf(region).centre()).orElse(null);
            reading = Coordinates.plusCode(code, middle, given.uncertaintyMetres());
        }
        refuseSlip(reading.position(), way, given);
        String srs = reading.verbatimSrs();
        String verbatim = srs == null ? reading.verbatim() : reading.verbatim() + " " + srs;
        Optional<CurrentRoads> current = roads.findCurrent();
        if (current.isEmpty()) {
            Position position = reading.position();
            return new PlaceUnderstood(
                    way,
                    verbatim,
                    position.latitude(),
                    position.longitude(),
                    reading.uncertaintyMetres(),
                    null,
                    false,
                    List.of());
        }
        return new RoadPlaces(current.get()).nearPosition(way, verbatim, reading, given);
    }

    /** A legal position far outside the region, while another reading of the same numbers lies inside, is a slip. */
    private void refuseSlip(Position position, String way, PlaceAsGiven given) {
        Region region = regions.findRegion().orElse(null);
        if (region == null || boxOf(region).grownBy(NEAR_THE_REGION_DEGREES).contains(position)) {
            return;
        }
        List<CoordinateDoubt> doubts = Coordinates.doubts(position, boxOf(region));
        if (doubts.isEmpty()) {
            return;
        }
        List<Map<String, Object>> readings = new ArrayList<>();
        doubts.forEach(doubt -> readings.add(shownReading(doubt.otherReading())));
        String field = way.equals("decimalDegrees") ? "place.decimalDegrees" : "place." + way;
        throw InvalidException.of(
                field,
                "That is at " + position.asText() + ", outside the region " + region.name() + ": "
                        + doubts.get(0).reason() + ".",
                "a place in or near the region; give the coordinates again as they are meant",
                readings.size() == 1 ? readings.get(0) : readings);
    }

    private static Bounds boxOf(Region region) {
        return new Bounds(region.south(), region.west(), region.north(), region.east());
    }

    private static String fieldOf(CoordinateException wrong, PlaceAsGiven given) {
        if (given.degreesMinutesSeconds() != null && wrong.field().startsWith("decimal")) {
            return "place.degreesMinutesSeconds";
        }
        return FIELDS.getOrDefault(wrong.field(), "place");
    }

    private static @Nullable Map<String, Object> shown(@Nullable Position position) {
        return position == null ? null : shownReading(position);
    }

    private static Map<String, Object> shownReading(Position position) {
        return Map.of("decimalLatitude", position.latitude(), "decimalLongitude", position.longitude());
    }

    static String sentence(String text) {
        String begun = Character.toUpperCase(text.charAt(0)) + text.substring(1);
        return begun.endsWith(".") ? begun : begun + ".";
    }
}
