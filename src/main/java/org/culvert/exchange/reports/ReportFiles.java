package org.culvert.exchange.reports;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVPrinter;
import org.culvert.exchange.geopackage.GeoPackageFile;
import org.culvert.geo.Shapes;
import org.culvert.platform.CsvText;
import org.jspecify.annotations.Nullable;

/** Writes a table of a report as CSV (RFC 4180), GeoJSON (RFC 7946) or a GeoPackage (OGC 12-128). */
final class ReportFiles {
    private ReportFiles() {}

    static String csv(ReportTable table) {
        var text = new StringBuilder();
        try (CSVPrinter printer = CsvText.printer(
                text, table.columns().stream().map(GeoPackageFile.Column::name).toList())) {
            for (ReportTable.Row row : table.rows()) {
                List<@Nullable Object> cells = new ArrayList<>();
                row.values().forEach(value -> cells.add(CsvText.harmless(value)));
                printer.printRecord(cells);
            }
        } catch (IOException impossible) {
            throw new IllegalStateException("text is written to memory", impossible);
        }
        return text.toString();
    }

    /** Features are numbered from 1. */
    static ObjectNode geoJson(ReportTable table) {
        ObjectNode collection = JsonNodeFactory.instance.objectNode();
        collection.put("type", "FeatureCollection").put("description", table.description());
        ArrayNode features = collection.putArray("features");
        for (ReportTable.Row row : table.rows()) {
            ObjectNode feature = features.addObject().put("type", "Feature").put("id", features.size());
            if (row.lines().isEmpty()) {
                feature.putNull("geometry");
            } else {
                ArrayNode lines = feature.putObject("geometry")
                        .put("type", "MultiLineString")
                        .putArray("coordinates");
                for (double[][] line : row.lines()) {
                    ArrayNode positions = lines.addArray();
                    for (double[] position : line) {
                        positions.addArray().add(position[0]).add(position[1]);
                    }
                }
            }
            ObjectNode properties = feature.putObject("properties");
            for (int i = 0; i < table.columns().size(); i++) {
                properties.putPOJO(table.columns().get(i).name(), row.values().get(i));
            }
        }
        return collection;
    }

    /** @param madeAt what the file says of when it was made */
    static byte[] geoPackage(ReportTable table, Instant madeAt) {
        List<GeoPackageFile.Feature> features = new ArrayList<>();
        for (ReportTable.Row row : table.rows()) {
            features.add(new GeoPackageFile.Feature(
                    features.size() + 1,
                    row.lines().isEmpty()
                            ? null
                            : Shapes.lines(
                                    row.lines().stream().map(Shapes::flat).toList()),
                    row.values()));
        }
        return GeoPackageFile.write(
                new GeoPackageFile.Layer(
                        table.name(), table.title(), table.description(), "MULTILINESTRING", table.columns(), madeAt),
                features);
    }
}
