package org.culvert.exchange.reports;

import com.fasterxml.jackson.databind.JsonNode;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.culvert.exchange.geopackage.GeoPackageFile;
import org.jspecify.annotations.Nullable;

/**
 * A part of a report as rows.
 *
 * @param name of files and layers, in small letters
 */
record ReportTable(String name, String title, String description, List<GeoPackageFile.Column> columns, List<Row> rows) {
    private static final Map<Class<?>, GeoPackageFile.Type> TYPES = Map.of(
            String.class, GeoPackageFile.Type.TEXT,
            int.class, GeoPackageFile.Type.INTEGER,
            Integer.class, GeoPackageFile.Type.INTEGER,
            double.class, GeoPackageFile.Type.REAL,
            Double.class, GeoPackageFile.Type.REAL,
            boolean.class, GeoPackageFile.Type.BOOLEAN);

    /**
     * A row.
     *
     * @param values in the order of the columns
     * @param lines of longitude and latitude; none where it has no place
     */
    record Row(List<@Nullable Object> values, List<double[][]> lines) {}

    /**
     * Rows of records as they were told.
     *
     * @param record whose components are the columns, all of them scalars
     * @param told an array of its instances as JSON
     * @param lines where each lies
     */
    static ReportTable of(
            String name,
            String title,
            String description,
            Class<? extends Record> record,
            JsonNode told,
            Function<JsonNode, List<double[][]>> lines) {
        List<GeoPackageFile.Column> columns = new ArrayList<>();
        for (RecordComponent component : record.getRecordComponents()) {
            GeoPackageFile.Type type = TYPES.get(component.getType());
            if (type == null) {
                throw new IllegalArgumentException(component + " is no scalar");
            }
            columns.add(new GeoPackageFile.Column(component.getName(), type));
        }
        List<Row> rows = new ArrayList<>();
        for (JsonNode one : told) {
            List<@Nullable Object> values = new ArrayList<>();
            columns.forEach(column -> values.add(value(one.path(column.name()), column.type())));
            rows.add(new Row(values, lines.apply(one)));
        }
        return new ReportTable(name, title, description, columns, rows);
    }

    static @Nullable Object value(JsonNode told, GeoPackageFile.Type type) {
        if (told.isMissingNode() || told.isNull()) {
            return null;
        }
        return switch (type) {
            case INTEGER -> told.asLong();
            case REAL -> told.asDouble();
            case BOOLEAN -> told.asBoolean();
            default -> told.asText();
        };
    }
}
