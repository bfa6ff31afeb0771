package org.culvert.exchange.reports;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.culvert.exchange.StretchShapes;
import org.culvert.exchange.geopackage.GeoPackageFile.Column;
import org.culvert.exchange.geopackage.GeoPackageFile.Type;
import org.culvert.hotspot.CollisionCountsView;
import org.culvert.hotspot.when.CollisionSeasonsView;
import org.culvert.hotspot.works.BurdenView;
import org.culvert.hotspot.works.EffectView;
import org.jspecify.annotations.Nullable;

/**
 * Turns reports into tables. What the asker may see of them is told by what they would be as JSON, so that a file tells no more.
 */
@ApplicationScoped
class ReportFileService {
    private static final int MONTHS = 12;

    private final StretchShapes shapes;
    private final ObjectMapper mapper;
    private final Clock clock;

    ReportFileService(StretchShapes shapes, ObjectMapper mapper, Clock clock) {
        this.shapes = shapes;
        this.mapper = mapper;
        this.clock = clock;
    }

    /** A file's octets, or its text. */
    Object write(ReportTable table, ReportForm form) {
        return switch (form) {
            case gpkg -> ReportFiles.geoPackage(table, clock.instant());
            case geojson -> ReportFiles.geoJson(table).toString();
            case csv -> ReportFiles.csv(table);
        };
    }

    /** The windows of a burden, by rank, each on its stretch of road. */
    ReportTable windows(BurdenView burden) {
        JsonNode told = mapper.valueToTree(burden);
        String basis = told.path("basisSentence").asText("");
        return ReportTable.of(
                "burden_windows",
                "Windows along roads by excess",
                (basis + " " + String.join(" ", texts(told.path("saidPlainly")))).strip(),
                BurdenView.Window.class,
                told.path("windows"),
                this::stretch);
    }

    /** The parts of what works did; what lies inside has its stretch. */
    ReportTable parts(EffectView effect) {
        JsonNode told = mapper.valueToTree(effect);
        List<double[][]> inside = stretch(told);
        return ReportTable.of(
                "works_effect",
                "What the works did: " + told.path("words").asText(""),
                String.join(" ", texts(told.path("saidPlainly"))),
                EffectView.PartView.class,
                told.path("parts"),
                part -> part.path("part").asText().equals("inside") ? inside : List.of());
    }

    /** A row a road, a column a year; empty where a number is not told. */
    ReportTable counts(CollisionCountsView counts) {
        JsonNode told = mapper.valueToTree(counts);
        List<Column> columns = new ArrayList<>();
        columns.add(new Column("roadName", Type.TEXT));
        told.path("years").forEach(year -> columns.add(new Column(year.asText(), Type.INTEGER)));
        columns.add(new Column("total", Type.INTEGER));
        List<ReportTable.Row> rows = new ArrayList<>();
        for (JsonNode road : told.path("roads")) {
            rows.add(row(road.path("roadName").asText(), road.path("incidents"), road.path("total")));
        }
        rows.add(row("all roads", told.path("incidents"), told.path("total")));
        return new ReportTable(
                "collision_counts",
                "Collisions by road and year",
                told.path("note").asText(""),
                columns,
                rows);
    }

    private static ReportTable.Row row(String name, JsonNode counts, JsonNode total) {
        List<@Nullable Object> values = new ArrayList<>();
        values.add(name);
        counts.forEach(count -> values.add(ReportTable.value(count, Type.INTEGER)));
        values.add(ReportTable.value(total, Type.INTEGER));
        return new ReportTable.Row(values, List.of());
    }

    /** Rows of months, hours and classes of light, of each group that was asked about; empty where a number is not told. */
    ReportTable seasons(CollisionSeasonsView seasons) {
        JsonNode told = mapper.valueToTree(seasons);
        List<Column> columns = List.of(
                new Column("taxonGroup", Type.TEXT),
                new Column("by", Type.TEXT),
                new Column("value", Type.TEXT),
                new Column("collisions", Type.INTEGER),
                new Column("callsOfAnyCause", Type.INTEGER));
        List<ReportTable.Row> rows = new ArrayList<>();
        for (String name : List.of("season", "comparedWith")) {
            JsonNode group = told.path(name);
            if (group.isObject()) {
                add(rows, group, told);
            }
        }
        return new ReportTable(
                "collision_seasons",
                "When collisions happened",
                String.join(" ", texts(told.path("restsOn"))),
                columns,
                rows);
    }

    private static void add(List<ReportTable.Row> rows, JsonNode group, JsonNode told) {
        String of = group.path("taxonGroup").asText("");
        String name = of.isEmpty() || of.equals("null") ? "all animals" : of;
        JsonNode months = group.path("months");
        for (int month = 0; month < Math.min(MONTHS, months.size()); month++) {
            rows.add(new ReportTable.Row(
                    cells(
                            name,
                            "month",
                            String.format(Locale.ROOT, "%02d", month + 1),
                            months.get(month),
                            group.path("effort").path("calls").path(month)),
                    List.of()));
        }
        JsonNode hours = group.path("hours").path("counts");
        for (int hour = 0; hour < hours.size(); hour++) {
            rows.add(new ReportTable.Row(
                    cells(name, "hour", String.format(Locale.ROOT, "%02d", hour), hours.get(hour), told.path("none")),
                    List.of()));
        }
        for (JsonNode light : group.path("light").path("classes")) {
            rows.add(new ReportTable.Row(
                    cells(name, "light", light.path("light").asText(), light.path("collisions"), told.path("none")),
                    List.of()));
        }
    }

    private static List<@Nullable Object> cells(String group, String by, String value, JsonNode count, JsonNode calls) {
        List<@Nullable Object> cells = new ArrayList<>(List.of(group, by, value));
        cells.add(ReportTable.value(count, Type.INTEGER));
        cells.add(ReportTable.value(calls, Type.INTEGER));
        return cells;
    }

    private List<double[][]> stretch(JsonNode of) {
        return shapes.find(
                of.path("road").asText(),
                of.path("fromChainageMetres").asDouble(),
                of.path("toChainageMetres").asDouble());
    }

    private static List<String> texts(JsonNode array) {
        List<String> texts = new ArrayList<>();
        array.forEach(text -> texts.add(text.asText()));
        return texts;
    }
}
