package org.culvert.web;

import io.quarkiverse.resteasy.problem.HttpProblem;
import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.annotation.Priority;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.ext.Provider;
import org.culvert.platform.PageRequest;

/** Answers a person with a page that says what the API's problem document says. */
@Provider
// After whatever completes the problem: of answers' filters those with high numbers come first.
@Priority(1000)
class ProblemAnswer implements ContainerResponseFilter {
    private static final MediaType HTML = MediaType.TEXT_HTML_TYPE.withCharset("UTF-8");

    private final Template framed;
    private final BareProblemPage bare;

    ProblemAnswer(@Location("problem-answer.html") Template framed, BareProblemPage bare) {
        this.framed = framed;
        this.bare = bare;
    }

    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) {
        String path = request.getUriInfo().getRequestUri().getPath();
        if (response.getEntity() instanceof HttpProblem problem
                && PageRequest.wantsPage(path, request.getHeaderString(HttpHeaders.ACCEPT))) {
            // The frame says who is signed in, which may be the very thing that could not be found out.
            boolean knowsWhoAsks = problem.getStatusCode() != 401 && problem.getStatusCode() < 500;
            ToldProblem told = ToldProblem.of(problem);
            String text = knowsWhoAsks ? framed.data("problem", told).render() : bare.render(told);
            response.setEntity(text, null, HTML);
        }
    }
}
