package org.culvert.support;

import io.quarkus.runtime.StartupEvent;
import io.restassured.RestAssured;
import io.restassured.filter.Filter;
import io.restassured.filter.FilterContext;
import io.restassured.response.Response;
import io.restassured.specification.FilterableRequestSpecification;
import io.restassured.specification.FilterableResponseSpecification;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.Set;
import java.util.UUID;

/** Gives every change that a test sends a key of its own, as a client would, unless the test brings one or wants none. */
@ApplicationScoped
public class RetryKeys implements Filter {
    public static final String HEADER = "Idempotency-Key";
    /** A header with this name says that the request shall go without a key; it is not sent itself. */
    public static final String WITHOUT = "Test-Without-Key";

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
        return context.next(request, response);
    }
}
