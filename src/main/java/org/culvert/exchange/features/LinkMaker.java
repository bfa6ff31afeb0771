package org.culvert.exchange.features;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Makes links, all of them absolute.
 *
 * @param root address of the landing page, without a slash at its end
 * @param asked path below it that was asked for, such as {@code /collections}
 * @param parameters with which it was asked for
 * @param html whether it is answered as a page
 */
record LinkMaker(String root, String asked, Map<String, String> parameters, boolean html) {
    static final String FORMAT = "f";

    private static final List<String> SCHEMA_RELATIONS =
            List.of("http://www.opengis.net/def/rel/ogc/1.0/schema", "describedby", "describedBy");

    String to(String path) {
        return root + path;
    }

    static String items(String collection) {
        return "/collections/" + encoded(collection) + "/items";
    }

    static String collection(String collection) {
        return "/collections/" + encoded(collection);
    }

    static String item(String collection, String feature) {
        return items(collection) + "/" + encoded(feature);
    }

    private String asked(Map<String, String> changed) {
        Map<String, String> all = new LinkedHashMap<>(parameters);
        all.remove(FORMAT);
        all.putAll(changed);
        return to(asked)
                + (all.isEmpty()
                        ? ""
                        : all.entrySet().stream()
                                .map(one -> encoded(one.getKey()) + "=" + encoded(one.getValue()))
                                .collect(Collectors.joining("&", "?", "")));
    }

    /** The document itself, and the same in its other form. */
    List<WebLink> selfAndAlternate(String type) {
        var program = new WebLink(asked(Map.of(FORMAT, "json")), html ? "alternate" : "self", type, "For programs");
        var page = new WebLink(asked(Map.of(FORMAT, "html")), html ? "self" : "alternate", WebLink.HTML, "As a page");
        return new ArrayList<>(html ? List.of(page, program) : List.of(program, page));
    }

    /** The next page, in the form of this one. */
    WebLink next(String cursor) {
        Map<String, String> changed = new LinkedHashMap<>();
        changed.put("cursor", cursor);
        if (parameters.containsKey(FORMAT)) {
            changed.put(FORMAT, parameters.get(FORMAT));
        }
        return new WebLink(asked(changed), "next", html ? WebLink.HTML : WebLink.GEO_JSON, "Next page");
    }

    /** Links of a collection, the same wherever it is described. */
    List<WebLink> ofCollection(FeatureSource source) {
        String self = to(collection(source.id()));
        String items = to(items(source.id()));
        List<WebLink> links = new ArrayList<>(List.of(
                new WebLink(self, "self", WebLink.JSON, "This collection"),
                new WebLink(self + "?f=html", "alternate", WebLink.HTML, "This collection as a page"),
                new WebLink(items, "items", WebLink.GEO_JSON, source.title()),
                new WebLink(items + "?f=html", "items", WebLink.HTML, source.title() + ", as a page"),
                new WebLink(self + "/layer.gpkg", "enclosure", WebLink.GEOPACKAGE, "All of it as a GeoPackage"),
                new WebLink(self + "/layer.geojson", "enclosure", WebLink.GEO_JSON, "All of it as GeoJSON"),
                new WebLink(self + "/layer.csv", "enclosure", WebLink.CSV, "All of it as a table (CSV)")));
        for (String relation : SCHEMA_RELATIONS) {
            links.add(new WebLink(
                    to(collection(source.id()) + "/schema"),
                    relation,
                    WebLink.SCHEMA,
                    "Properties of " + source.title()));
        }
        return links;
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
