package org.culvert.hotspot;

import java.time.LocalDate;
import java.util.List;
import java.util.function.Predicate;
import org.culvert.hotspot.stats.RoadSpan;
import org.culvert.road.CurrentRoads;
import org.jspecify.annotations.Nullable;

/** Tells where and when people looked for struck animals; implemented by the room that keeps surveys. */
public interface SurveyedGround {
    /**
     * The surveys that began on some days and looked for a group.
     *
     * @param from first day
     * @param to last day, included
     * @param taxonGroup key of the group that is asked about, or null for all animals, which only those looked for that
     *     looked for all
     */
    Surveys find(LocalDate from, LocalDate to, @Nullable String taxonGroup, CurrentRoads roads);

    /** Surveys on the current roads. */
    record Surveys(List<Survey> all) {
        static final Surveys NONE = new Surveys(List.of());

        public Surveys {
            all = List.copyOf(all);
        }

        /** Those that began on some of the days. */
        Surveys begunOn(Predicate<LocalDate> days) {
            return new Surveys(
                    all.stream().filter(survey -> days.test(survey.firstDay())).toList());
        }

        /** Where each went that the current roads have a place for. */
        List<List<RoadSpan>> passes() {
            return all.stream()
                    .map(Survey::spans)
                    .filter(spans -> !spans.isEmpty())
                    .toList();
        }

        /** How many the current roads have no place for. */
        int notPlaced() {
            return all.size() - passes().size();
        }

        /** Whether a place lies on ground that was surveyed on a day. */
        boolean cover(LocalDate day, int link, double metres) {
            return all.stream().anyMatch(survey -> survey.covers(day, link, metres));
        }
    }

    /**
     * One survey: somebody went once over some road.
     *
     * @param firstDay the day on which it began, in the region's zone
     * @param lastDay the day on which it ended
     * @param spans where it went; none where the current roads have no place for it
     */
    record Survey(LocalDate firstDay, LocalDate lastDay, List<RoadSpan> spans) {
        /** Chainages are told in whole metres. */
        private static final double SLACK_METRES = 0.5;

        public Survey {
            spans = List.copyOf(spans);
        }

        boolean covers(LocalDate day, int link, double metres) {
            return !day.isBefore(firstDay)
                    && !day.isAfter(lastDay)
                    && spans.stream()
                            .anyMatch(span -> span.link() == link
                                    && metres >= span.fromMetres() - SLACK_METRES
                                    && metres <= span.toMetres() + SLACK_METRES);
        }
    }
}
