package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.PermitAll;
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
import java.util.Objects;
import java.util.UUID;
import org.culvert.hotspot.HotspotReport;
import org.culvert.hotspot.HotspotRunService;
import org.culvert.hotspot.OpenEvidence;
import org.culvert.hotspot.RunEntry;
import org.culvert.hotspot.RunView;
import org.culvert.hotspot.SeasonWindowService;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.road.RoadService;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/**
 * Road evidence for people: runs, a form to ask for one, what came of each, and a card a hotspot. Where the network opens its
 * evidence, everybody reads the runs of its latest declared year.
 */
@OwnForm
@Path("/hotspots")
@Produces(MediaType.TEXT_HTML)
public class HotspotPageResource {
    private static final int RUNS_A_PAGE = 20;
    private static final int LONGEST_REASON = 2000;

    private final Template list;
    private final Template run;
    private final Template stretch;
    private final Template making;
    private final HotspotRunService service;
    private final OpenEvidence evidence;
    private final EvidencePages pages;
    private final RoadService roads;
    private final TaxonService taxa;
    private final SeasonWindowService windows;
    private final RoadReportPaper paper;
    private final PageForms forms;
    private final Languages languages;

    HotspotPageResource(
            @Location("hotspots.html") Template list,
            @Location("hotspot-run.html") Template run,
            @Location("hotspot-stretch.html") Template stretch,
            @Location("hotspot-paper.html") Template making,
            HotspotRunService service,
            OpenEvidence evidence,
            EvidencePages pages,
            RoadService roads,
            TaxonService taxa,
            SeasonWindowService windows,
            RoadReportPaper paper,
            PageForms forms,
            Languages languages) {
        this.list = list;
        this.run = run;
        this.stretch = stretch;
        this.making = making;
        this.service = service;
        this.evidence = evidence;
        this.pages = pages;
        this.roads = roads;
        this.taxa = taxa;
        this.windows = windows;
        this.paper = paper;
        this.forms = forms;
        this.languages = languages;
    }

    /** Runs; the other parameters fill the form in. */
    @GET
    @PermitAll
    public TemplateInstance listRuns(
            @QueryParam("cursor") @Nullable String cursor,
            @QueryParam("periodFrom") @Nullable String periodFrom,
            @QueryParam("periodTo") @Nullable String periodTo,
            @QueryParam("taxonGroup") @Nullable String taxonGroup,
            @QueryParam("seasonWindow") @Nullable String seasonWindow) {
        if (!evidence.isOwn()) {
            return list.data(
                            "runs",
                            evidence.listOpen().stream().map(RunSummary::of).toList())
                    .data("next", null)
                    .data("own", false);
        }
        return page(cursor, List.of(), RunForm.filled(periodFrom, periodTo, taxonGroup, seasonWindow));
    }

    private TemplateInstance page(@Nullable String cursor, List<FieldError> errors, RunForm form) {
        Page<RunView> runs = service.listRuns(RUNS_A_PAGE, Paging.cursor(cursor));
        return list.data("runs", runs.items().stream().map(RunSummary::of).toList())
                .data("next", runs.next())
                .data("own", true)
                .data("key", UUID.randomUUID())
                .data("errors", errors)
                .data("form", form)
                .data("groups", taxa.listGroups())
                .data("windows", windows.listWindows());
    }

    @GET
    @Path("/{id}")
    @PermitAll
    public TemplateInstance showRun(@PathParam("id") String id) {
        return runPage(Paging.uuid("id", id), List.of(), "");
    }

    private TemplateInstance runPage(UUID runId, List<FieldError> errors, String reason) {
        boolean own = evidence.isOwn();
        RunView view = evidence.getRun(runId);
        HotspotReport report = evidence.findReport(runId).orElse(null);
        return run.data("run", RunSummary.of(view))
                .data("report", report == null ? null : ReportPage.of(report, languages.ofPage()))
                .data("own", own)
                .data("paper", false)
                .data(
                        "map",
                        report == null || own
                                ? null
                                : RoadMap.of(
                                        report.hotspots(), roads.findCurrent().orElse(null)))
                .data(
                        "links",
                        own && report != null
                                ? RunLinks.of(
                                        view, service.listOfSamePeriod(runId), taxa.listGroups(), windows.listWindows())
                                : null)
                .data("key", UUID.randomUUID())
                .data("errors", errors)
                .data("reason", reason);
    }

    /** The card of one hotspot. */
    @GET
    @Path("/{id}/stretches/{rank}")
    @PermitAll
    public TemplateInstance showStretch(@PathParam("id") String id, @PathParam("rank") String rank) {
        UUID runId = Paging.uuid("id", id);
        RunView view = evidence.getRun(runId);
        HotspotReport report = requireReport(runId);
        int asked = rank(rank);
        StretchCardPage card =
                pages.card(report, asked).orElseThrow(() -> new NotFoundException("hotspot of that run", rank));
        List<Integer> ranks =
                report.hotspots().stream().map(HotspotReport.Stretch::rank).toList();
        int at = ranks.indexOf(asked);
        return stretch.data("run", RunSummary.of(view))
                .data("report", ReportPage.of(report, languages.ofPage()))
                .data("card", card)
                .data("own", evidence.isOwn())
                .data("paper", false)
                .data("before", at > 0 ? ranks.get(at - 1) : null)
                .data("after", at + 1 < ranks.size() ? ranks.get(at + 1) : null);
    }

    private static int rank(String text) {
        try {
            return Integer.parseInt(text);
        } catch (NumberFormatException notANumber) {
            throw InvalidException.of("rank", "That is no rank.", "a whole number, 1 for the first hotspot");
        }
    }

    private HotspotReport requireReport(UUID runId) {
        return evidence.findReport(runId)
                .orElseThrow(() -> new ConflictException("That run has no result yet; look at its state."));
    }

    /** Says what is in the report on paper while that is made, which takes some seconds, and gives it when it is ready. */
    @GET
    @Path("/{id}/paper")
    @PermitAll
    public TemplateInstance showPaper(@PathParam("id") String id) {
        UUID runId = Paging.uuid("id", id);
        RunView view = evidence.getRun(runId);
        int hotspots = requireReport(runId).hotspots().size();
        return making.data("run", RunSummary.of(view))
                .data("hotspots", hotspots)
                .data("cards", Math.min(hotspots, RoadReportPaper.MOST_CARDS));
    }

    /** The report on paper. */
    @GET
    @Path("/{id}/report.pdf")
    @Produces("application/pdf")
    @PermitAll
    public Response printReport(@PathParam("id") String id) {
        UUID runId = Paging.uuid("id", id);
        RunView view = evidence.getRun(runId);
        return Response.ok(paper.print(view, requireReport(runId)))
                .header("Content-Disposition", "attachment; filename=\"road-report.pdf\"")
                .build();
    }

    /** Asks for a run by the form of the page. */
    @POST
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public Response start(
            @BeanParam RunForm form, @FormParam("key") @Nullable String key, @FormParam("csrf") @Nullable String csrf) {
        return forms.tried(
                () -> {
                    RunEntry entry = form.entry();
                    return forms.take(
                            "/hotspots",
                            key,
                            entry,
                            () -> URI.create("/hotspots/" + service.start(entry).id()));
                },
                (why, errors) -> again(why.status(), page(null, errors, form)));
    }

    /** Calls a run off by the form of its page. */
    @POST
    @Path("/{id}/cancellation")
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public Response cancel(
            @PathParam("id") String id,
            @FormParam("reason") @Nullable String reason,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        UUID runId = Paging.uuid("id", id);
        String typed = Objects.requireNonNullElse(reason, "");
        String path = "/hotspots/" + runId + "/cancellation";
        return forms.once(
                path,
                key,
                typed,
                () -> {
                    if (typed.isBlank() || typed.length() > LONGEST_REASON) {
                        throw InvalidException.of(
                                "reason", "It is not said why.", "a reason, in at most 2000 characters");
                    }
                    service.cancel(runId, typed.strip());
                    return URI.create("/hotspots/" + runId);
                },
                (why, errors) -> again(why.status(), runPage(runId, errors, typed)));
    }

    private static Response again(int status, TemplateInstance page) {
        return PageForms.html(status, page);
    }
}
