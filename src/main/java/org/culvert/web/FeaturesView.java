package org.culvert.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.culvert.web.words.LayerWords;

/**
 * A document for GIS programs as a page shows it.
 *
 * @param own whether the title is the document's own
 * @param steps the documents above it
 * @param facts what it says of itself
 * @param links to others
 * @param table its features, collections, properties or operations
 */
record FeaturesView(
        String title,
        boolean own,
        String description,
        List<Link> steps,
        List<Fact> facts,
        List<Link> links,
        Table table) {
    record Fact(String name, String value) {}

    record Link(String href, String title) {}

    /** Cells in the order of the columns; the first is the name of the row. */
    record Row(Link first, List<Cell> cells) {}

    record Cell(String column, String value) {}

    record Table(String title, String first, List<String> columns, List<Row> rows) {
        static final Table NONE = new Table("", "", List.of(), List.of());

        public boolean isShown() {
            return !rows.isEmpty();
        }
    }

    /** Links that the page has in other places. */
    private static final Set<String> ELSEWHERE = Set.of("self", "collection", "describedBy", "describedby");

    static FeaturesView of(JsonNode document, String path, LayerWords words) {
        String own = document.path("title").asText(document.at("/info/title").asText());
        return new FeaturesView(
                own.isEmpty() ? words.layers() + path.replaceFirst("^/ogc", "").replace("/", " · ") : own,
                !own.isEmpty(),
                document.path("description")
                        .asText(document.at("/info/description").asText()),
                steps(path, words),
                facts(document, words),
                links(document),
                table(document, path, words));
    }

    private static List<Link> steps(String path, LayerWords words) {
        List<Link> steps = new ArrayList<>();
        int end = "/ogc".length();
        while (end > 0 && end < path.length()) {
            String above = path.substring(0, end);
            steps.add(new Link(
                    above + "?f=html", end == "/ogc".length() ? words.layers() : above.replaceFirst(".*/", "")));
            end = path.indexOf('/', end + 1);
        }
        return steps;
    }

    private static List<Fact> facts(JsonNode document, LayerWords words) {
        List<Fact> facts = new ArrayList<>();
        for (String counted : List.of("numberMatched", "numberReturned", "timeStamp")) {
            if (document.has(counted)) {
                facts.add(new Fact(counted, document.get(counted).asText()));
            }
        }
        if (document.path("type").asText().equals("Feature")) {
            document.path("properties")
                    .properties()
                    .forEach(one -> facts.add(new Fact(one.getKey(), text(one.getValue()))));
            JsonNode geometry = document.path("geometry");
            facts.add(new Fact(
                    "geometry",
                    geometry.isNull()
                            ? "–"
                            : geometry.path("type").asText() + " "
                                    + geometry.path("coordinates").toString()));
        }
        JsonNode box = document.at("/extent/spatial/bbox/0");
        if (!box.isMissingNode()) {
            facts.add(new Fact(words.box(), box.toString().replaceAll("[\\[\\]]", "")));
        }
        document.path("conformsTo").forEach(one -> facts.add(new Fact(words.keeps(), one.asText())));
        return facts;
    }

    private static List<Link> links(JsonNode document) {
        List<Link> links = new ArrayList<>();
        for (JsonNode link : document.path("links")) {
            String relation = link.path("rel").asText();
            boolean page = link.path("type").asText().equals("text/html");
            boolean twice = relation.equals("items") && !page;
            if (!ELSEWHERE.contains(relation) && !twice) {
                links.add(
                        new Link(link.path("href").asText(), link.path("title").asText(relation)));
            }
        }
        return links;
    }

    private static Table table(JsonNode document, String path, LayerWords words) {
        if (document.has("features")) {
            return features(document.get("features"), path, words);
        }
        if (document.has("collections")) {
            List<Row> rows = new ArrayList<>();
            for (JsonNode one : document.get("collections")) {
                rows.add(new Row(
                        new Link(
                                "/ogc/collections/" + one.path("id").asText() + "?f=html",
                                one.path("title").asText()),
                        List.of(new Cell(words.holds(), one.path("description").asText()))));
            }
            return new Table(words.collections(), words.collection(), List.of(words.holds()), rows);
        }
        if (document.has("openapi")) {
            List<Row> rows = new ArrayList<>();
            document.path("paths")
                    .properties()
                    .forEach(one -> rows.add(row(
                            "/ogc" + one.getKey(),
                            words.answers(),
                            one.getValue().at("/get/summary").asText(),
                            words.parameters(),
                            parameters(one.getValue().at("/get/parameters")))));
            return new Table(words.askable(), words.address(), List.of(words.answers(), words.parameters()), rows);
        }
        if (document.has("$schema")) {
            List<Row> rows = new ArrayList<>();
            document.path("properties")
                    .properties()
                    .forEach(one -> rows.add(row(
                            one.getKey(),
                            words.type(),
                            one.getValue().path("type").asText() + " "
                                    + one.getValue().path("format").asText(),
                            words.means(),
                            one.getValue().path("description").asText())));
            return new Table(words.properties(), words.property(), List.of(words.type(), words.means()), rows);
        }
        return Table.NONE;
    }

    private static Row row(String name, String first, String one, String second, String other) {
        return new Row(new Link("", name), List.of(new Cell(first, one.strip()), new Cell(second, other)));
    }

    private static String parameters(JsonNode parameters) {
        List<String> names = new ArrayList<>();
        for (JsonNode one : parameters) {
            names.add(one.path("name").asText(one.path("$ref").asText().replaceFirst(".*/", "")));
        }
        return String.join(", ", names);
    }

    private static Table features(JsonNode features, String path, LayerWords words) {
        List<String> columns = new ArrayList<>();
        List<Row> rows = new ArrayList<>();
        for (JsonNode feature : features) {
            if (columns.isEmpty()) {
                feature.path("properties").fieldNames().forEachRemaining(columns::add);
            }
            String id = feature.path("id").asText();
            rows.add(new Row(
                    new Link(path.replaceFirst("/+$", "") + "/" + id + "?f=html", id),
                    columns.stream()
                            .map(column -> new Cell(
                                    column, text(feature.path("properties").path(column))))
                            .toList()));
        }
        return new Table(words.features(), words.feature(), columns, rows);
    }

    private static String text(JsonNode value) {
        return value.isNull() || value.isMissingNode() ? "–" : value.asText();
    }
}
