package org.culvert.hotspot;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVPrinter;
import org.culvert.platform.CsvText;
import org.jspecify.annotations.Nullable;

/** A report as files that others open: GeoJSON (RFC 7946) and CSV (RFC 4180). Flat, and every field always there. */
public final class HotspotFiles {
    private HotspotFiles() {}

    /** A feature collection; lines are all of one type, so that every program takes them as one layer. */
    record FeatureCollection(String type, String description, List<Feature> features) {}

    record Feature(String type, int id, Geometry geometry, Map<String, @Nullable Object> properties) {}

    record Geometry(String type, Object coordinates) {}

    static FeatureCollection geoJson(HotspotReport report) {
        boolean single =
                report.hotspots().stream().allMatch(stretch -> stretch.lines().size() == 1);
        List<Feature> features = report.hotspots().stream()
                .map(stretch -> new Feature(
                        "Feature",
                        stretch.rank(),
                        single
                                ? new Geometry("LineString", stretch.lines().get(0))
                                : new Geometry("MultiLineString", stretch.lines()),
                        fields(stretch, report)))
                .toList();
        return new FeatureCollection("FeatureCollection", report.errorRate().sentence(), features);
    }

    static String csv(HotspotReport report) {
        var text = new StringBuilder();
        List<String> header = new ArrayList<>(examples(report).keySet());
        header.addAll(
                List.of("fromDecimalLatitude", "fromDecimalLongitude", "toDecimalLatitude", "toDecimalLongitude"));
        try (CSVPrinter printer = CsvText.printer(text, header)) {
            for (HotspotReport.Stretch stretch : report.hotspots()) {
                List<@Nullable Object> row = new ArrayList<>();
                fields(stretch, report).values().forEach(value -> row.add(CsvText.harmless(value)));
                row.add(stretch.from().decimalLatitude());
                row.add(stretch.from().decimalLongitude());
                row.add(stretch.to().decimalLatitude());
                row.add(stretch.to().decimalLongitude());
                printer.printRecord(row);
            }
        } catch (IOException impossible) {
            throw new IllegalStateException("text is written to memory", impossible);
        }
        return text.toString();
    }

    /** A value of each field's kind, where there is no hotspot to look at; null where it is a text that may be missing. */
    public static Map<String, @Nullable Object> examples(HotspotReport report) {
        return fields(NOTHING, report);
    }

    private static final HotspotReport.Stretch NOTHING = new HotspotReport.Stretch(
            0,
            "",
            null,
            0,
            0,
            0,
            0,
            0,
            0,
            0,
            0,
            1,
            0,
            new HotspotReport.Point(0, 0),
            new HotspotReport.Point(0, 0),
            List.of(),
            null);

    /** What is told of a hotspot, by name, in a stable order. */
    public static Map<String, @Nullable Object> fields(HotspotReport.Stretch stretch, HotspotReport report) {
        Map<String, @Nullable Object> fields = new LinkedHashMap<>();
        fields.put("rank", stretch.rank());
        fields.put("road", stretch.road());
        fields.put("owner", stretch.owner());
        fields.put("fromChainageMetres", stretch.fromChainageMetres());
        fields.put("toChainageMetres", stretch.toChainageMetres());
        fields.put("lengthMetres", stretch.lengthMetres());
        fields.put("incidents", stretch.incidents());
        fields.put("intervalLow", stretch.intervalLow());
        fields.put("intervalHigh", stretch.intervalHigh());
        fields.put("expected", stretch.expected());
        fields.put("excess", stretch.excess());
        fields.put("adjustedP", stretch.adjustedP());
        fields.put("incidentsPerKilometreAndYear", stretch.incidentsPerKilometreAndYear());
        fields.put("taxonGroup", report.settings().taxonGroup());
        fields.put("periodFrom", report.settings().periodFrom().toString());
        fields.put("periodTo", report.settings().periodTo().toString());
        fields.put("season", report.settings().season().words());
        fields.put("chance", report.settings().chance());
        fields.put("alpha", report.errorRate().alpha());
        fields.put("errorRateClaimed", report.errorRate().claimed());
        return fields;
    }
}
