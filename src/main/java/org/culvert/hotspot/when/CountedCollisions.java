package org.culvert.hotspot.when;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import org.culvert.call.CollisionReport;
import org.culvert.hotspot.stats.season.TimeBounds;
import org.culvert.hotspot.stats.season.TimedCollision;
import org.jspecify.annotations.Nullable;

/** The collisions of one group that count for its season, and why the other incidents of the period do not. */
final class CountedCollisions {
    /** Within a month the middle is near enough for a season, whose spread is of months. */
    private static final Duration LONGEST_DOUBT = Duration.ofDays(31);

    /** Why an incident does not count, in the order in which it is asked. */
    enum LeftOut {
        JOINED("joined to another incident, which counts"),
        NOT_A_COLLISION("the cause is not a collision"),
        KIND_UNKNOWN("the kind of animal is not known"),
        OTHER_KIND("another kind of animal"),
        OTHER_ROADS("not on a road of that owner as the roads are now"),
        TIME_UNKNOWN("the time is not known to within 31 days"),
        OUT_OF_PERIOD("reported within the period, and happened outside it");

        private final String words;

        LeftOut(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    private final List<UUID> incidents = new ArrayList<>();
    private final List<LocalDate> days = new ArrayList<>();
    private final List<TimedCollision> timed = new ArrayList<>();
    private final Map<LeftOut, Integer> leftOut = new EnumMap<>(LeftOut.class);
    private int onDayOfReport;

    /** @param onTheRoads whether an incident is on the roads that were asked about */
    static CountedCollisions of(
            List<CollisionReport> reports,
            LocalDate first,
            LocalDate last,
            @Nullable String taxonGroup,
            Predicate<CollisionReport> onTheRoads,
            ZoneId zone) {
        var counted = new CountedCollisions();
        for (LeftOut reason : LeftOut.values()) {
            counted.leftOut.put(reason, 0);
        }
        for (CollisionReport report : reports) {
            LeftOut reason = counted.take(report, first, last, taxonGroup, onTheRoads, zone);
            if (reason != null) {
                counted.leftOut.merge(reason, 1, Integer::sum);
            }
        }
        return counted;
    }

    private @Nullable LeftOut take(
            CollisionReport report,
            LocalDate first,
            LocalDate last,
            @Nullable String taxonGroup,
            Predicate<CollisionReport> onTheRoads,
            ZoneId zone) {
        if (report.joined()) {
            return LeftOut.JOINED;
        }
        if (!report.collision()) {
            return LeftOut.NOT_A_COLLISION;
        }
        if (taxonGroup != null && !report.taxonGroups().contains(taxonGroup)) {
            return report.taxonGroups().isEmpty() ? LeftOut.KIND_UNKNOWN : LeftOut.OTHER_KIND;
        }
        if (!onTheRoads.test(report)) {
            return LeftOut.OTHER_ROADS;
        }
        TimeBounds happened = happened(report);
        if (happened != null && happened.width().compareTo(LONGEST_DOUBT) > 0) {
            return LeftOut.TIME_UNKNOWN;
        }
        Instant counts = happened == null ? report.reportedAt() : happened.middle();
        LocalDate day = counts.atZone(zone).toLocalDate();
        if (day.isBefore(first) || day.isAfter(last)) {
            return LeftOut.OUT_OF_PERIOD;
        }
        incidents.add(report.incidentId());
        days.add(day);
        timed.add(new TimedCollision(happened, report.reportedAt(), report.position()));
        onDayOfReport += happened == null ? 1 : 0;
        return null;
    }

    /** Between when and when, or null where only the report has a time. */
    private static @Nullable TimeBounds happened(CollisionReport report) {
        Instant at = report.happenedAt();
        if (at != null) {
            return TimeBounds.at(at);
        }
        Instant notBefore = report.happenedNotBefore();
        return notBefore == null || notBefore.isAfter(report.reportedAt())
                ? null
                : new TimeBounds(notBefore, report.reportedAt());
    }

    int count() {
        return days.size();
    }

    List<LocalDate> days() {
        return days;
    }

    /** The days of incidents that are not among some. */
    List<LocalDate> daysWithout(Set<UUID> others) {
        List<LocalDate> without = new ArrayList<>();
        for (int i = 0; i < days.size(); i++) {
            if (!others.contains(incidents.get(i))) {
                without.add(days.get(i));
            }
        }
        return without;
    }

    Set<UUID> alsoIn(CountedCollisions other) {
        Set<UUID> both = new HashSet<>(incidents);
        both.retainAll(new HashSet<>(other.incidents));
        return both;
    }

    List<TimedCollision> timed() {
        return timed;
    }

    int onDayOfReport() {
        return onDayOfReport;
    }

    int[] months() {
        int[] months = new int[12];
        for (LocalDate day : days) {
            months[day.getMonthValue() - 1]++;
        }
        return months;
    }

    List<CollisionSeasonsView.LeftOut> leftOut() {
        return leftOut.entrySet().stream()
                .map(entry -> new CollisionSeasonsView.LeftOut(entry.getKey().words(), entry.getValue()))
                .toList();
    }
}
