package org.culvert.hotspot.works;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.culvert.hotspot.Evidence.LeftOut;
import org.culvert.road.traffic.PeriodTraffic;
import org.culvert.road.traffic.TrafficUsed;
import org.jspecify.annotations.Nullable;

/**
 * The collisions of a period that lie on the current roads.
 *
 * @param all those of all animals in the season
 * @param reportDays days of all incidents of the period, whatever their cause
 * @param leftOut how many incidents were left out, by reason, in a fixed order
 * @param traffic that they are held against; null where none is
 */
record Collisions(
        List<Placed> all,
        TreeSet<LocalDate> reportDays,
        Map<LeftOut, Integer> leftOut,
        Tally tally,
        @Nullable TrafficUsed traffic) {
    /**
     * One collision.
     *
     * @param metres along the link
     * @param uncertaintyMetres how far it may be from there; NaN where not known
     * @param ofGroup whether it is of the group that is asked about
     */
    record Placed(
            LocalDate day, int link, double metres, double uncertaintyMetres, Set<String> groups, boolean ofGroup) {}

    /** What the counts rest on. */
    record Tally(int incidentsInPeriod, int timedByReport, int placedByJunction) {}

    /** The same, held against some traffic. */
    Collisions at(PeriodTraffic period) {
        return new Collisions(all, reportDays, leftOut, tally, period.used());
    }

    List<Placed> ofGroup() {
        return all.stream().filter(Placed::ofGroup).toList();
    }

    /** The first day of the period with a report of anything, or null where there is none. */
    @Nullable
    LocalDate firstReport() {
        return reportDays.isEmpty() ? null : reportDays.first();
    }

    AnswerBasis basis(int networkNumber, List<String> notControlled) {
        return new AnswerBasis(
                tally.incidentsInPeriod(),
                ofGroup().size(),
                all.size(),
                tally.timedByReport(),
                tally.placedByJunction(),
                leftOut.entrySet().stream()
                        .map(entry -> new AnswerBasis.Reason(entry.getKey().words(), entry.getValue()))
                        .toList(),
                networkNumber,
                traffic,
                notControlled);
    }
}
