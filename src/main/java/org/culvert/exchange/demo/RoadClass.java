package org.culvert.exchange.demo;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Classes of road, in the words of OpenStreetMap's key {@code highway}, with what the region makes of each. The shares
 * are those of roads whose speed limit or traffic nobody wrote down.
 */
enum RoadClass {
    MOTORWAY(14_000, 110, 0, 0, 1),
    MOTORWAY_LINK(1_500, 80, 0.5, 0.5, 0.5),
    PRIMARY(4_500, 100, 0, 0.05, 1),
    SECONDARY(1_600, 100, 0.05, 0.15, 1),
    TERTIARY(420, 80, 0.25, 0.35, 1),
    UNCLASSIFIED(120, 80, 0.5, 0.7, 1),
    RESIDENTIAL(500, 50, 0.1, 0.6, 0.35),
    TRACK(25, null, 1, 1, 0.3);

    private final double medianAadt;
    private final @Nullable Integer speedLimit;
    private final double limitMissingShare;
    private final double aadtMissingShare;
    private final double danger;

    RoadClass(
            double medianAadt,
            @Nullable Integer speedLimit,
            double limitMissingShare,
            double aadtMissingShare,
            double danger) {
        this.medianAadt = medianAadt;
        this.speedLimit = speedLimit;
        this.limitMissingShare = limitMissingShare;
        this.aadtMissingShare = aadtMissingShare;
        this.danger = danger;
    }

    static RoadClass of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }

    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    double medianAadt() {
        return medianAadt;
    }

    @Nullable
    Integer speedLimit() {
        return speedLimit;
    }

    double limitMissingShare() {
        return limitMissingShare;
    }

    double aadtMissingShare() {
        return aadtMissingShare;
    }

    /** Collisions a kilometre beside an ordinary road with the same traffic. */
    double danger() {
        return danger;
    }

    boolean isState() {
        return this == MOTORWAY || this == MOTORWAY_LINK || this == PRIMARY;
    }

    /** Whether kilometre posts stand beside it. */
    boolean isCalibrated() {
        return this == MOTORWAY || this == PRIMARY || this == SECONDARY || this == TERTIARY;
    }
}
