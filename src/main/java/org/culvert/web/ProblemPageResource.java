package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.culvert.platform.NotFoundException;

/** A page for each type of problem, since a problem's type is an address. */
@Path("/problems")
@PermitAll
@Produces(MediaType.TEXT_HTML)
public class ProblemPageResource {
    private final Template problem;
    private final Template problems;

    ProblemPageResource(@Location("problem.html") Template problem, @Location("problems.html") Template problems) {
        this.problem = problem;
        this.problems = problems;
    }

    @GET
    public TemplateInstance list() {
        return problems.data("all", ProblemPage.ALL);
    }

    @GET
    @Path("/{type}")
    public TemplateInstance show(@PathParam("type") String type) {
        return problem.data(
                "problem",
                ProblemPage.ALL.stream()
                        .filter(page -> page.type().equals(type))
                        .findFirst()
                        .orElseThrow(() -> new NotFoundException("problem type", type)));
    }
}
