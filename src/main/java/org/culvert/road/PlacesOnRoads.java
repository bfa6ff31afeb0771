package org.culvert.road;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.culvert.geo.Bounds;
import org.culvert.geo.CoordinateDoubt;
import org.culvert.geo.CoordinateException;
import org.culvert.geo.CoordinateReading;
import org.culvert.geo.Coordinates;
import org.culvert.geo.Position;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Region;
import org.jspecify.annotations.Nullable;

/**
 * How a place is understood on some roads in some region. One that was opened for many places keeps both as they were then and
 * asks the database nothing; it is safe for several threads.
 */
public final class PlacesOnRoads implements PlaceReading {
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

    private final Supplier<Optional<CurrentRoads>> roads;
    private final Supplier<Optional<Region>> region;
    private final @Nullable RoadPlaces kept;

    /** For one place: asks for what it needs, and for nothing else. */
    PlacesOnRoads(Supplier<Optional<CurrentRoads>> roads, Supplier<Optional<Region>> region) {
        this.roads = roads;
        this.region = region;
        this.kept = null;
    }

    /** For many places. */
    PlacesOnRoads(@Nullable CurrentRoads roads, @Nullable Region region) {
        Optional<CurrentRoads> current = Optional.ofNullable(roads);
        Optional<Region> here = Optional.ofNullable(region);
        this.roads = () -> current;
        this.region = () -> here;
        this.kept = roads == null ? null : new RoadPlaces(roads, RoadLookup.remembering(roads.network()));
    }

    /** The roads that places are put on; empty where none were imported yet. */
    public Optional<CurrentRoads> roads() {
        return roads.get();
    }

    @Override
    public PlaceUnderstood understand(PlaceAsGiven given) {
        requireOneWay(given);
        try {
            if (given.roadAndChainage() != null) {
                return placesOn(requireRoads()).atChainage(given.roadAndChainage(), given);
            }
            if (given.crossingRoads() != null) {
                return placesOn(requireRoads()).atCrossing(given.crossingRoads(), given);
            }
            return coordinates(given);
        } catch (CoordinateException wrong) {
            throw InvalidException.of(
                    fieldOf(wrong, given),
                    PlaceInterpreter.sentence(wrong.whatIsWrong()),
                    wrong.whatWouldBeRight(),
                    shown(wrong.otherReading()));
        }
    }

    /** Whether a name that somebody gave may mean the road of a place. */
    public boolean mayBe(PlaceUnderstood.OnRoad road, String name) {
        return roads.get()
                .map(current -> placesOn(current).mayMean(name, road.roadName()))
                .orElse(false);
    }

    private RoadPlaces placesOn(CurrentRoads current) {
        return kept != null ? kept : new RoadPlaces(current, RoadLookup.of(current.network()));
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
        return roads.get()
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
                    region.get().map(PlacesOnRoads::boxOf).map(Bounds::centre).orElse(null);
            reading = Coordinates.plusCode(code, middle, given.uncertaintyMetres());
        }
        refuseSlip(reading.position(), way, given);
        String srs = reading.verbatimSrs();
        String verbatim = srs == null ? reading.verbatim() : reading.verbatim() + " " + srs;
        Optional<CurrentRoads> current = roads.get();
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
        return placesOn(current.get()).nearPosition(way, verbatim, reading, given);
    }

    /** A legal position far outside the region, while another reading of the same numbers lies inside, is a slip. */
    private void refuseSlip(Position position, String way, PlaceAsGiven given) {
        Region here = region.get().orElse(null);
        if (here == null
                || boxOf(here).grownBy(PlaceInterpreter.NEAR_THE_REGION_DEGREES).contains(position)) {
            return;
        }
        List<CoordinateDoubt> doubts = Coordinates.doubts(position, boxOf(here));
        if (doubts.isEmpty()) {
            return;
        }
        List<Map<String, Object>> readings = new ArrayList<>();
        doubts.forEach(doubt -> readings.add(shownReading(doubt.otherReading())));
        String field = way.equals("decimalDegrees") ? "place.decimalDegrees" : "place." + way;
        throw InvalidException.of(
                field,
                "That is at " + position.asText() + ", outside the region " + here.name() + ": "
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
}
