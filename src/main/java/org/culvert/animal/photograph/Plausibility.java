package org.culvert.animal.photograph;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What speaks against what a picture says of itself. It refuses nothing, and says no picture right. */
final class Plausibility {
    /** From how far on a place is doubted, beyond both uncertainties: common practice, no source. */
    static final double FAR_METRES = 1000;

    /** By how much clocks may differ, and be ahead of ours: common practice, no source. */
    static final Duration SLACK = Duration.ofMinutes(10);

    /** How long before its report an incident is photographed: common practice, no source. */
    static final Duration LONG_BEFORE = Duration.ofHours(24);

    /** Whole hundreds beyond the shore of the Dead Sea and the top of Everest: from memory. */
    private static final double LOWEST_METRES = -500;

    private static final double HIGHEST_METRES = 8900;

    private final List<String> doubts = new ArrayList<>();

    List<String> doubts() {
        return List.copyOf(doubts);
    }

    /**
     * @param insideRegion null where no region is told
     * @param metresFromIncident null where the incident is pinned nowhere
     * @param uncertaintyMetres of both places together
     */
    Plausibility ofPlace(
            @Nullable Boolean insideRegion,
            @Nullable Double metresFromIncident,
            double uncertaintyMetres,
            @Nullable Double altitudeMetres) {
        if (Boolean.FALSE.equals(insideRegion)) {
            doubts.add("Its place lies outside the region.");
        }
        if (metresFromIncident != null && metresFromIncident > FAR_METRES + uncertaintyMetres) {
            doubts.add(String.format(
                    Locale.ROOT,
                    "Its place lies %.1f km from where the incident is pinned: one of the two may be wrong, or the picture"
                            + " was taken elsewhere.",
                    metresFromIncident / 1000));
        }
        if (altitudeMetres != null && (altitudeMetres < LOWEST_METRES || altitudeMetres > HIGHEST_METRES)) {
            doubts.add(String.format(Locale.ROOT, "Nobody stands at an altitude of %.0f m.", altitudeMetres));
        }
        return this;
    }

    /**
     * @param zone in which a clock without an offset is read
     * @param reportedAt when the incident was reported
     * @param receivedAt when the picture came in
     */
    Plausibility ofTime(
            @Nullable LocalDateTime clock,
            @Nullable ZoneOffset offset,
            @Nullable Instant gpsTime,
            ZoneId zone,
            Instant reportedAt,
            Instant receivedAt) {
        Instant camera = clock == null
                ? null
                : clock.atZone(offset == null ? zone : offset).toInstant();
        String read = offset == null ? ", read in the region's time zone," : "";
        if (camera != null && gpsTime != null) {
            Duration apart = Duration.between(gpsTime, camera);
            if (apart.abs().compareTo(SLACK) >= 0) {
                doubts.add("The camera's clock" + read + " is " + words(apart.abs())
                        + (apart.isNegative() ? " behind" : " ahead of")
                        + " the satellites' time: it may be wrong or keep another zone, or the fix is an older one.");
            }
        }
        if (camera != null && camera.isAfter(receivedAt.plus(SLACK))) {
            doubts.add("The camera's clock" + read + " is ahead of when the picture came in.");
        }
        if (gpsTime != null && gpsTime.isAfter(receivedAt.plus(SLACK))) {
            doubts.add("The satellites' time is ahead of when the picture came in.");
        }
        Instant taken = gpsTime == null ? camera : gpsTime;
        if (taken != null && taken.isBefore(reportedAt.minus(LONG_BEFORE))) {
            doubts.add("It was taken " + words(Duration.between(taken, reportedAt))
                    + " before the incident was reported: it may be an older picture.");
        }
        return this;
    }

    private static String words(Duration span) {
        if (span.toDays() >= 2) {
            return span.toDays() + " days";
        }
        return span.toHours() > 0 ? span.toHours() + " h " + span.toMinutesPart() + " min" : span.toMinutes() + " min";
    }
}
