package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.culvert.hotspot.HotspotRunService;
import org.culvert.hotspot.RunEntry;
import org.culvert.hotspot.RunView;
import org.culvert.hotspot.SeasonWindowService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Road evidence for people: runs, a form to ask for one, and what came of each. */
@OwnForm
@Path("/hotspots")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
public class HotspotPageResource {
    private static final int RUNS_A_PAGE = 20;

    private final Template list;
    private final Template run;
    private final HotspotRunService service;
    private final TaxonService taxa;
    private final SeasonWindowService windows;
    private final RoadReportPaper paper;

    HotspotPageResource(
            @Location("hotspots.html") Template list,
            @Location("hotspot-run.html") Template run,
            HotspotRunService service,
            TaxonService taxa,
            SeasonWindowService windows,
            RoadReportPaper paper) {
        this.list = list;
        this.run = run;
        this.service = service;
        this.taxa = taxa;
        this.windows = windows;
        this.paper = paper;
    }

    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public TemplateInstance listRuns(@QueryParam("cursor") @Nullable String cursor) {
        return page(cursor, List.of(), new RunForm());
    }

    private TemplateInstance page(@Nullable String cursor, List<InvalidException.FieldError> errors, RunForm form) {
        Page<RunView> runs = service.listRuns(RUNS_A_PAGE, Paging.cursor(cursor));
        return list.data("runs", runs.items().stream().map(RunSummary::of).toList())
                .data("next", runs.next())
                .data("errors", errors)
                .data("form", form)
                .data("groups", taxa.listGroups())
                .data("windows", windows.listWindows());
    }

    @GET
    @Path("/{id}")
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public TemplateInstance showRun(@PathParam("id") String id) {
        UUID runId = Paging.uuid("id", id);
        RunView view = service.getRun(runId);
        return run.data("run", RunSummary.of(view))
                .data("report", service.findReport(runId).map(ReportPage::of).orElse(null));
    }

    /** The report on paper. */
    @GET
    @Path("/{id}/report.pdf")
    @Produces("application/pdf")
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public Response printReport(@PathParam("id") String id) {
        UUID runId = Paging.uuid("id", id);
        return Response.ok(paper.print(service.getRun(runId), service.getReport(runId)))
                .header("Content-Disposition", "attachment; filename=\"road-report.pdf\"")
                .build();
    }

    /** Asks for a run by the form of the page. */
    @POST
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public Response start(@BeanParam RunForm form, @FormParam("csrf") @Nullable String csrf) {
        try {
            RunEntry entry = form.entry();
            return Response.seeOther(
                            URI.create("/hotspots/" + service.start(entry).id()))
                    .build();
        } catch (InvalidException e) {
            return Response.status(400)
                    .entity(page(null, e.errors(), form))
                    .type(MediaType.TEXT_HTML_TYPE)
                    .build();
        }
    }

    /** Calls a run off by the form of its page; without a reason, or too late, the problem says so. */
    @POST
    @Path("/{id}/cancellation")
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public Response cancel(
            @PathParam("id") String id,
            @FormParam("reason") @Nullable String reason,
            @FormParam("csrf") @Nullable String csrf) {
        UUID run = Paging.uuid("id", id);
        if (reason == null || reason.isBlank() || reason.length() > 2000) {
            throw InvalidException.of("reason", "It is not said why.", "a reason, in at most 2000 characters");
        }
        service.cancel(run, reason.strip());
        return Response.seeOther(URI.create("/hotspots/" + run)).build();
    }
}
