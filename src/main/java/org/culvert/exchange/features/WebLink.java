package org.culvert.exchange.features;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.jspecify.annotations.Nullable;

/**
 * A link (RFC 8288).
 *
 * @param href absolute: programs do not follow others
 */
public record WebLink(
        String href,
        String rel,
        String type,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable String title) {
    static final String JSON = "application/json";
    static final String GEO_JSON = "application/geo+json";
    static final String HTML = "text/html";
    static final String OPENAPI = "application/vnd.oai.openapi+json;version=3.0";
    /** Registered with IANA. */
    static final String GEOPACKAGE = "application/geopackage+sqlite3";

    static final String CSV = "text/csv;charset=UTF-8;header=present";
    static final String SCHEMA = "application/schema+json";

    static WebLink of(String href, String rel, String type) {
        return new WebLink(href, rel, type, null);
    }
}
