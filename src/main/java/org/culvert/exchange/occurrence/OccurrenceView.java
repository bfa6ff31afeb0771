package org.culvert.exchange.occurrence;

import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.culvert.geo.Generalisation;
import org.culvert.geo.Position;
import org.culvert.platform.sight.Generalised;
import org.culvert.platform.sight.SelfTold;
import org.culvert.platform.sight.Sight;
import org.jspecify.annotations.Nullable;

/**
 * One kind of animal at one incident, with the field names of Darwin Core (https://dwc.tdwg.org/terms).
 *
 * @param occurrenceID stable, and made so that it tells nothing
 * @param eventDate as it is: a time, or the span in which it happened (ISO 8601-1); generalised: a day, and of a sensitive
 *     species a year
 * @param verbatimLocality the place as it was said
 * @param locality the road
 * @param dataGeneralizations what is told roughly, and how
 * @param informationWithheld what is not told
 * @param own whether the asker may see it exactly; not shown
 * @param strictness how strictly its place is kept; not shown
 */
public record OccurrenceView(
        String occurrenceID,
        String basisOfRecord,
        String eventDate,
        @Nullable String scientificName,
        @Nullable String vernacularName,
        @Nullable String taxonRank,
        @Nullable String taxonGroup,
        int individualCount,
        String cause,
        @Nullable Double decimalLatitude,
        @Nullable Double decimalLongitude,
        @Nullable Double coordinateUncertaintyInMeters,
        @Nullable String geodeticDatum,
        @Nullable String countryCode,
        @Nullable String verbatimLocality,
        @Nullable String locality,
        @Nullable String dataGeneralizations,
        @Nullable String informationWithheld,
        UUID incidentId,
        boolean own,
        double strictness,
        String day)
        implements Generalised, SelfTold {

    @Override
    public Map<String, Object> generalised(double gridDegrees) {
        if (gridDegrees == 0 || decimalLatitude == null || decimalLongitude == null) {
            return Map.of();
        }
        Generalisation cell = Generalisation.of(
                new Position(decimalLatitude, decimalLongitude),
                coordinateUncertaintyInMeters == null ? 0 : coordinateUncertaintyInMeters,
                gridDegrees);
        boolean sensitive = strictness > 0 && strictness < Sight.WITHHELD;
        Map<String, Object> rough = new HashMap<>();
        rough.put("decimalLatitude", cell.centre().latitude());
        rough.put("decimalLongitude", cell.centre().longitude());
        rough.put("coordinateUncertaintyInMeters", cell.uncertaintyMetres());
        rough.put("eventDate", sensitive ? day.substring(0, 4) : day);
        rough.put(
                "dataGeneralizations",
                "The place is the centre of a cell of " + plain(gridDegrees) + " degree"
                        + (sensitive ? ", by the category of the species; the date is told to the year." : "."));
        rough.put(
                "informationWithheld",
                "The exact place, its words and its road" + (sensitive ? ", and the season" : "")
                        + ". They are given under an agreement.");
        return rough;
    }

    private static String plain(double grid) {
        return java.math.BigDecimal.valueOf(grid).stripTrailingZeros().toPlainString();
    }
}
