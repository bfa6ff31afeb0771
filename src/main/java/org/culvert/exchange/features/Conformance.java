package org.culvert.exchange.features;

import java.util.List;

/** The parts of the standards that are kept. */
public record Conformance(List<String> conformsTo) {
    static final Conformance HERE = new Conformance(List.of(
            "http://www.opengis.net/spec/ogcapi-features-1/1.0/conf/core",
            "http://www.opengis.net/spec/ogcapi-features-1/1.0/conf/oas30",
            "http://www.opengis.net/spec/ogcapi-features-1/1.0/conf/html",
            "http://www.opengis.net/spec/ogcapi-features-1/1.0/conf/geojson",
            "http://www.opengis.net/spec/ogcapi-features-5/1.0/conf/schemas"));
}
