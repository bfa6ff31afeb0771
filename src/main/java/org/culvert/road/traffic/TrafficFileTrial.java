package org.culvert.road.traffic;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What would come of a file of counts; nothing is kept.
 *
 * @param sha256 of its octets
 * @param features that it has
 * @param attributes names of all attributes
 * @param columns what each is read as, and what else may be meant
 * @param stillMissing what must be said before any row can be read; then there are no rows
 * @param understood rows of which a record would be made
 * @param refused rows of which none would be
 * @param rows the first thousand, in the order of the file
 * @param rowsNotShown further rows
 */
public record TrafficFileTrial(
        String sha256,
        int features,
        List<String> attributes,
        List<CountColumn> columns,
        List<CountFault> stillMissing,
        int understood,
        int refused,
        List<CountRow> rows,
        int rowsNotShown) {
    /** The same with so many rows at most. */
    public TrafficFileTrial withRows(int most) {
        return rows.size() <= most
                ? this
                : new TrafficFileTrial(
                        sha256,
                        features,
                        attributes,
                        columns,
                        stillMissing,
                        understood,
                        refused,
                        List.copyOf(rows.subList(0, most)),
                        rowsNotShown + rows.size() - most);
    }

    /**
     * What a column holds.
     *
     * @param parameter that names it
     * @param attribute that is read as such; null where none is
     * @param proposed whether nobody said so, and the name of the attribute alone speaks for it
     * @param others attributes whose names say the same
     */
    public record CountColumn(String parameter, @Nullable String attribute, boolean proposed, List<String> others) {}

    /** What is wrong with a field of a row or of the whole. */
    public record CountFault(String field, String detail, String wanted) {}

    /**
     * One row.
     *
     * @param feature where it is in the file
     * @param count what was understood; null where it is refused
     * @param refused why; none where it is understood
     */
    public record CountRow(String feature, @Nullable CountUnderstood count, List<CountFault> refused) {}

    /** A count as it would be entered. */
    public record CountUnderstood(
            @Nullable String station,
            String road,
            @Nullable String carriageway,
            double fromChainageMetres,
            double toChainageMetres,
            double decimalLatitude,
            double decimalLongitude,
            double offsetMetres,
            LocalDate from,
            LocalDate to,
            double vehiclesPerDay,
            String measure,
            @Nullable Double standardError,
            @Nullable Integer daysCounted,
            String directions,
            @Nullable String direction,
            @Nullable Double heavyVehicleShare,
            String kind) {
        static CountUnderstood of(TrafficFigures figures, CountedPlace place) {
            return new CountUnderstood(
                    figures.station(),
                    place.road(),
                    place.carriageway(),
                    place.fromChainageMetres(),
                    place.toChainageMetres(),
                    place.decimalLatitude(),
                    place.decimalLongitude(),
                    place.offsetMetres(),
                    figures.from(),
                    figures.to(),
                    figures.vehiclesPerDay(),
                    figures.measure().name(),
                    figures.standardError(),
                    figures.daysCounted(),
                    figures.directions().name(),
                    figures.direction(),
                    figures.heavyVehicleShare(),
                    figures.kind().name());
        }
    }
}
