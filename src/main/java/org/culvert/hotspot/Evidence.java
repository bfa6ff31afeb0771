package org.culvert.hotspot;

import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import org.culvert.hotspot.beside.DatedEvent;
import org.culvert.hotspot.stats.RoadEvent;

/**
 * What a run counts.
 *
 * @param datedGroup the collisions that it asks about
 * @param datedReports those of all animals in the same period and season, the group's among them
 * @param datedWholeYear those of the group in all seasons of the period, where the run compares with them; else none
 * @param surveys that the run counts on, where it counts what surveys found; else none
 * @param incidentsByYear incidents of any cause by year, each once
 * @param incidentsInPeriod incidents of any cause in the period
 * @param timedByReport how many of the group have no known time, and count at the time of their report
 * @param placedByJunction how many of the group lie by a junction whose roads are equally likely, and count on the nearest
 *     with a spread that reaches the others
 * @param leftOut how many incidents were left out, by reason, in a fixed order; reasons that did not occur have 0,
 *     save those that the run does not ask for
 * @param months the group's collisions by month of the year, twelve numbers from January
 * @param sha256 of everything that goes into the search
 */
public record Evidence(
        List<DatedEvent> datedGroup,
        List<DatedEvent> datedReports,
        List<DatedEvent> datedWholeYear,
        SurveyedGround.Surveys surveys,
        SortedMap<Integer, Integer> incidentsByYear,
        int incidentsInPeriod,
        int timedByReport,
        int placedByJunction,
        Map<LeftOut, Integer> leftOut,
        int[] months,
        String sha256) {

    /** Why an incident does not count, in the order in which it is asked. */
    public enum LeftOut {
        JOINED("joined to another incident, which counts"),
        NOT_A_COLLISION("the cause is not a collision"),
        TIME_UNKNOWN("the time is not known well enough to say whether it was in the season"),
        OUT_OF_SEASON("outside the season"),
        NO_PLACE("no place was given"),
        NO_ROAD("no road is near the place"),
        ROAD_IN_DOUBT("roads that do not meet near there are equally likely"),
        OLDER_ROADS("placed on an older version of the roads"),
        PLACE_UNSURE("the place is less sure than the run allows"),
        KIND_UNKNOWN("the kind of animal is not known"),
        OTHER_KIND("another kind of animal"),
        NOT_SURVEYED("not on ground that was surveyed on its day");

        /** Those of questions that do not ask about surveys. */
        public static final Set<LeftOut> WITHOUT_SURVEYS =
                Collections.unmodifiableSet(EnumSet.complementOf(EnumSet.of(NOT_SURVEYED)));

        private final String words;

        LeftOut(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public List<RoadEvent> group() {
        return DatedEvent.events(datedGroup);
    }

    public List<RoadEvent> reports() {
        return DatedEvent.events(datedReports);
    }

    public List<RoadEvent> wholeYear() {
        return DatedEvent.events(datedWholeYear);
    }

    /** The same of some days alone, without what was left out. */
    Evidence within(LocalDate first, LocalDate last) {
        return new Evidence(
                DatedEvent.within(datedGroup, first, last),
                DatedEvent.within(datedReports, first, last),
                DatedEvent.within(datedWholeYear, first, last),
                surveys.begunOn(day -> !day.isBefore(first) && !day.isAfter(last)),
                incidentsByYear,
                incidentsInPeriod,
                timedByReport,
                placedByJunction,
                leftOut,
                months,
                sha256);
    }

    /** The same, with more that goes into the search. */
    Evidence on(String sha256OfAll) {
        return new Evidence(
                datedGroup,
                datedReports,
                datedWholeYear,
                surveys,
                incidentsByYear,
                incidentsInPeriod,
                timedByReport,
                placedByJunction,
                leftOut,
                months,
                sha256OfAll);
    }
}
