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
    private final RoutingContext routing;
    private final ResourceInfo resource;

    AnswerWatch(RoutingContext routing, @Context ResourceInfo resource) {
        this.routing = routing;
        this.resource = resource;
    }

    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) {
        Operation.found(routing, resource.getResourceClass(), resource.getResourceMethod());
        String id = RequestId.find(routing);
        if (id != null
                && response.getEntity() instanceof HttpProblem problem
                && !problem.getParameters().containsKey(RequestId.KEY)) {
            response.setEntity(
                    HttpProblem.builder(problem).with(RequestId.KEY, id).build());
        }
    }
}
