package org.culvert.platform.watch;

import io.quarkiverse.resteasy.problem.HttpProblem;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.ext.Provider;

/** Notes which operation was asked for, and names the request in a problem, so that its sender can tell us which it was. */
@Provider
class AnswerWatch implements ContainerResponseFilter {
    /** By this the ledger marks an answer that it gave before. */
    private static final String REPLAYED = "Idempotency-Replayed";

    private final RoutingContext routing;
    private final ResourceInfo resource;
    private final Figures figures;

    AnswerWatch(RoutingContext routing, @Context ResourceInfo resource, Figures figures) {
        this.routing = routing;
        this.resource = resource;
        this.figures = figures;
    }

    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) {
        Operation.found(routing, resource.getResourceClass(), resource.getResourceMethod());
        if (response.getHeaders().containsKey(REPLAYED)) {
            figures.countReplay();
        }
        if (response.getEntity() instanceof HttpProblem problem) {
            figures.countProblem(problem.getType());
            name(problem, response);
        }
    }

    private void name(HttpProblem problem, ContainerResponseContext response) {
        String id = RequestId.find(routing);
        if (id != null && !problem.getParameters().containsKey(RequestId.KEY)) {
            response.setEntity(
                    HttpProblem.builder(problem).with(RequestId.KEY, id).build());
        }
    }
}
