package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Says where something is the way people do: more or less exactly, by figures, by posts, by crossroads or not at all. */
final class PlaceGiver {
    private static final double CREW_SHARE = 0.7;
    private static final double USUAL_WHOLE_KM_SHARE = 0.2;

    private final Ground ground;
    private final Road crewRoad;

    PlaceGiver(Ground ground, Road crewRoad) {
        this.ground = ground;
        this.crewRoad = crewRoad;
    }

    /**
     * @param wholeKmShare share of all records at this stretch that are to the whole kilometre, or null for the usual
     */
    GivenPlace onRoad(Dice dice, Exposure.RoadPoint point, @Nullable Double wholeKmShare) {
        Road road = point.road();
        if (road == crewRoad && dice.chance(CREW_SHARE)) {
            return chainage(dice, point, true);
        }
        if (wholeKmShare != null && dice.chance(wholeKmShare)) {
            return chainage(dice, point, true);
        }
        double of = dice.unit();
        if (of < 0.2 && road.kind().isCalibrated()) {
            return chainage(dice, point, dice.chance(USUAL_WHOLE_KM_SHARE));
        }
        if (of >= 0.2 && of < (road.kind() == RoadClass.RESIDENTIAL ? 0.4 : 0.25)) {
            String other = junctionNear(point);
            if (other != null) {
                return GivenPlace.crossing(road.name(), other);
            }
        }
        if (of >= 0.94) {
            return GivenPlace.none("somewhere on " + road.name());
        }
        Spot verge = ground.moved(point.spot(), dice.normal(0, 4), dice.normal(0, 4));
        return pinned(dice, verge, dice.chance(0.3) ? road.name() : null);
    }

    /** A place given by its position. */
    GivenPlace pinned(Dice dice, Spot spot, @Nullable String roadName) {
        double of = dice.unit();
        if (of < 0.06) {
            return GivenPlace.degreesMinutesSeconds(PlaceText.degreesMinutesSeconds(spot, dice.chance(0.5) ? 1 : 0));
        }
        if (of < 0.1) {
            double[] grid = PlaceText.eastingNorthing(spot);
            int unit = dice.chance(0.7) ? 10 : 1;
            return GivenPlace.grid(StrictMath.round(grid[0] / unit) * unit, StrictMath.round(grid[1] / unit) * unit);
        }
        if (of < 0.13) {
            return GivenPlace.plusCode(PlaceText.plusCode(spot));
        }
        Spot fix = ground.moved(spot, dice.normal(0, 5), dice.normal(0, 5));
        int decimals = 4 + dice.weighted(new double[] {1, 3, 6});
        Integer uncertainty = decimals > 4 && dice.chance(0.6) ? dice.from(4, 25) : null;
        return GivenPlace.decimalDegrees(
                PlaceText.decimal(fix.latitude(), decimals),
                PlaceText.decimal(fix.longitude(), decimals),
                uncertainty,
                roadName);
    }

    private GivenPlace chainage(Dice dice, Exposure.RoadPoint point, boolean wholeKm) {
        Road road = point.road();
        double kilometres = (point.measure() + (wholeKm ? 0 : dice.normal(0, 20))) / 1000;
        double low = road.startMeasure() / 1000;
        double high = road.endMeasure() / 1000;
        double rounded = wholeKm ? StrictMath.rint(kilometres) : StrictMath.rint(kilometres * 10) / 10;
        if (rounded < low || rounded > high) {
            rounded = StrictMath.floor(StrictMath.min(high, StrictMath.max(low, kilometres)) * 10) / 10;
            if (rounded < low) {
                rounded += 0.1;
            }
            return GivenPlace.roadAndChainage(
                    road.name(), road.carriageway(), String.format(Locale.ROOT, "%.1f", rounded));
        }
        return GivenPlace.roadAndChainage(
                road.name(), road.carriageway(), String.format(Locale.ROOT, wholeKm ? "%.0f" : "%.1f", rounded));
    }

    private static @Nullable String junctionNear(Exposure.RoadPoint point) {
        List<String> names = new ArrayList<>();
        for (Road.Junction junction : point.road().junctions()) {
            if (StrictMath.abs(junction.measure() - point.measure()) < 200) {
                names.add(junction.otherRoad());
            }
        }
        return names.isEmpty() ? null : names.get(0);
    }
}
