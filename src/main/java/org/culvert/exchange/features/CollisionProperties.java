package org.culvert.exchange.features;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.culvert.exchange.occurrence.OccurrenceView;
import org.culvert.platform.sight.EveryFieldTold;
import org.culvert.platform.sight.Generalised;
import org.culvert.platform.sight.SelfTold;
import org.jspecify.annotations.Nullable;

/**
 * An occurrence with the field names of Darwin Core, its time as a day and a year.
 *
 * @param eventDay null where only the year is told
 * @param occurrence what it is made of; not shown
 */
public record CollisionProperties(
        @Nullable String scientificName,
        @Nullable String vernacularName,
        @Nullable String taxonRank,
        @Nullable String taxonGroup,
        int individualCount,
        String cause,
        @Nullable LocalDate eventDay,
        int eventYear,
        @Nullable Double coordinateUncertaintyInMeters,
        @Nullable String locality,
        @Nullable String dataGeneralizations,
        @Nullable String informationWithheld,
        OccurrenceView occurrence)
        implements Generalised, SelfTold, EveryFieldTold {
    private static final int DAY_LENGTH = "2026-11-25".length();

    static CollisionProperties of(OccurrenceView told) {
        LocalDate day = LocalDate.parse(told.day());
        return new CollisionProperties(
                told.scientificName(),
                told.vernacularName(),
                told.taxonRank(),
                told.taxonGroup(),
                told.individualCount(),
                told.cause(),
                day,
                day.getYear(),
                told.coordinateUncertaintyInMeters(),
                told.locality(),
                told.dataGeneralizations(),
                told.informationWithheld(),
                told);
    }

    @Override
    public boolean own() {
        return occurrence.own();
    }

    @Override
    public double strictness() {
        return occurrence.strictness();
    }

    @Override
    public Map<String, Object> generalised(double gridDegrees) {
        Map<String, Object> rough = occurrence.generalised(gridDegrees);
        Map<String, Object> told = new HashMap<>();
        for (String same : List.of("coordinateUncertaintyInMeters", "dataGeneralizations", "informationWithheld")) {
            if (rough.containsKey(same)) {
                told.put(same, rough.get(same));
            }
        }
        if (rough.get("eventDate") instanceof String date) {
            told.put("eventYear", eventYear);
            if (date.length() == DAY_LENGTH) {
                told.put("eventDay", LocalDate.parse(date));
            }
        }
        return told;
    }
}
