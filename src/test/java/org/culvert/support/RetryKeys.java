package org.culvert.support;

import io.quarkus.runtime.StartupEvent;
import io.restassured.RestAssured;
import io.restassured.filter.Filter;
import io.restassured.filter.FilterContext;
import io.restassured.response.Response;
import io.restassured.specification.FilterableRequestSpecification;
import io.restassured.specification.FilterableResponseSpecification;
import io.restassured.specification.RequestSpecification;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.net.URI;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Does for tests what every client does: gives each change a key of its own, and reads a record before it changes it, so as
 * to send its tag. A test that is about keys or tags brings its own, or says that it wants none.
 */
@ApplicationScoped
public class RetryKeys implements Filter {
    public static final String HEADER = "Idempotency-Key";
    /** A header with this name says that the request shall go without a key; it is not sent itself. */
    public static final String WITHOUT = "Test-Without-Key";

    /** Likewise for the tag of the record that is changed. */
    public static final String WITHOUT_TAG = "Test-Without-Tag";

    /** Changes of a record, by how their paths begin: what is in brackets is the record that is read first. */
    private static final Pattern CHANGES = Pattern.compile("(/api/region)$|(/api/incidents/[^/]+)/place$"
            + "|(/api/cases/[^/]+)/(?:fate|body/disposal)$"
            + "|(/api/(?:attendances|hand-overs|joins|release-rules)/[^/]+)/[a-z-]+$"
            + "|(/api/accounts/[^/]+)/(?:disabling|enabling|roles)$"
            + "|(/api/visits/[^/]+)/discharge$|(/api/clutches/[^/]+)/[a-z-]+$");

    private static final Set<String> UNSAFE = Set.of("POST", "PUT", "PATCH", "DELETE");

    void register(@Observes StartupEvent event) {
        RestAssured.replaceFiltersWith(this);
    }

    @Override
    public Response filter(
            FilterableRequestSpecification request, FilterableResponseSpecification response, FilterContext context) {
        if (request.getHeaders().hasHeaderWithName(WITHOUT)) {
            request.removeHeader(WITHOUT);
        } else if (UNSAFE.contains(request.getMethod()) && !request.getHeaders().hasHeaderWithName(HEADER)) {
            request.header(HEADER, UUID.randomUUID().toString());
        }
        if (request.getHeaders().hasHeaderWithName(WITHOUT_TAG)) {
            request.removeHeader(WITHOUT_TAG);
        } else if (UNSAFE.contains(request.getMethod()) && !request.getHeaders().hasHeaderWithName("If-Match")) {
            Matcher change = CHANGES.matcher(URI.create(request.getURI()).getPath());
            if (change.find()) {
                String tag = tag(request, change);
                if (tag != null) {
                    request.header("If-Match", tag);
                }
            }
        }
        return context.next(request, response);
    }

    /** The tag of the record as the same asker reads it, or null where there is nothing to read. */
    private static @Nullable String tag(FilterableRequestSpecification request, Matcher change) {
        int group = 1;
        while (change.group(group) == null) {
            group++;
        }
        RequestSpecification read = RestAssured.given();
        if (request.getHeaders().hasHeaderWithName("Authorization")) {
            read.header("Authorization", request.getHeaders().getValue("Authorization"));
        }
        return read.get(change.group(group)).header("ETag");
    }
}
