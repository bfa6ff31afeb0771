package org.culvert.web.overview;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.animal.CaseView;
import org.culvert.animal.CustodyLists;
import org.culvert.care.clock.ClockService;
import org.culvert.care.clock.ClockViews.CaseClockView;
import org.culvert.care.clock.limit.Running.State;
import org.culvert.care.day.MissedTaskService;
import org.culvert.care.health.AlertService;
import org.culvert.care.health.SyndromeEntries.AcknowledgementEntry;
import org.culvert.care.placement.CarerPlaces;
import org.culvert.care.placement.CarerPlaces.PlacesOfCarer;
import org.culvert.care.placement.LapseService;
import org.culvert.dispatch.OpenIncidentService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.OwnForm;
import org.culvert.roster.Holder;
import org.culvert.roster.RosterService;
import org.culvert.taxon.TaxonService;
import org.culvert.taxon.TaxonService.GroupView;
import org.culvert.web.PageForms;
import org.jspecify.annotations.Nullable;

/** What waits for a coordinator: each thing with the next one to look at, and nothing that waits for nobody. */
@OwnForm
@Path("/overview")
@Produces(MediaType.TEXT_HTML)
public class OverviewPageResource {
    private static final int SHOWN = 8;
    private static final int LAPSE_DAYS = 56;
    private static final int LONGEST_NAME = 200;
    private static final int LONGEST_WORDS = 4000;

    private final Template overview;
    private final Template lapsing;
    private final OpenIncidentService incidents;
    private final ClockService clocks;
    private final MissedTaskService missed;
    private final CustodyLists custody;
    private final AlertService alerts;
    private final LapseService lapses;
    private final RosterService roster;
    private final TaxonService taxa;
    private final CarerPlaces places;
    private final PageForms forms;

    OverviewPageResource(
            @Location("overview.html") Template overview,
            @Location("overview-lapsing.html") Template lapsing,
            OpenIncidentService incidents,
            ClockService clocks,
            MissedTaskService missed,
            CustodyLists custody,
            AlertService alerts,
            LapseService lapses,
            RosterService roster,
            TaxonService taxa,
            CarerPlaces places,
            PageForms forms) {
        this.overview = overview;
        this.lapsing = lapsing;
        this.incidents = incidents;
        this.clocks = clocks;
        this.missed = missed;
        this.custody = custody;
        this.alerts = alerts;
        this.lapses = lapses;
        this.roster = roster;
        this.taxa = taxa;
        this.places = places;
        this.forms = forms;
    }

    @GET
    @RolesAllowed(Role.COORDINATOR)
    public Response show() {
        return page(200, List.of());
    }

    /** Somebody has read an alert: who, and what they make of it. */
    @POST
    @Path("/alerts/{id}/reading")
    @RolesAllowed(Role.COORDINATOR)
    public Response read(
            @PathParam("id") String id,
            @FormParam("name") @Nullable String name,
            @FormParam("words") @Nullable String words,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        UUID alert = Paging.uuid("id", id);
        return forms.tried(
                () -> {
                    var entry = new AcknowledgementEntry(
                            given("name", name, LONGEST_NAME), given("words", words, LONGEST_WORDS));
                    return forms.take("/overview/alerts/" + id + "/reading", key, entry, () -> {
                        alerts.acknowledge(alert, entry);
                        return URI.create("/overview#alerts");
                    });
                },
                (why, errors) -> page(why.status(), errors));
    }

    /** Takes some seconds where many hold animals: a way out is looked for, for each of them. */
    @GET
    @Path("/lapsing")
    @RolesAllowed(Role.COORDINATOR)
    public TemplateInstance listLapsing(@HeaderParam("HX-Request") @Nullable String partOfPage) {
        return lapsing.data("lapses", lapses.listLapses(LAPSE_DAYS))
                .data("groups", taxa.listGroups().stream().collect(Collectors.toMap(GroupView::key, GroupView::name)))
                .data("whole", partOfPage == null);
    }

    private static String given(String field, @Nullable String typed, int most) {
        String text = typed == null ? "" : typed.strip();
        if (text.isEmpty() || text.length() > most) {
            throw InvalidException.of(
                    field, text.isEmpty() ? "This is missing." : "This is too long.", "1 to " + most + " characters");
        }
        return text;
    }

    /**
     * A hand-over that waits.
     *
     * @param taker call sign or name; null for a person outside the network, who is named to nobody here
     */
    public record Offer(
            @Nullable String taker, UUID caseId, @Nullable Instant at) {}

    private Offer offer(CaseView.HandOverView offered) {
        Holder taker = offered.taker();
        UUID member = taker.memberId();
        UUID organisation = taker.organisationId();
        String name = member != null
                ? roster.getMember(member).callSign()
                : organisation == null
                        ? null
                        : roster.getOrganisation(organisation).name();
        return new Offer(name, offered.caseId(), offered.offeredAt());
    }

    private Response page(int status, List<FieldError> errors) {
        List<OpenIncidentService.OpenIncidentView> open = incidents.listOpen();
        List<CaseClockView> due = new ArrayList<>();
        boolean moreDue = false;
        for (State state : List.of(State.overdue, State.warned, State.cantTell)) {
            Page<CaseClockView> some = clocks.listClocks(state, SHOWN, null);
            due.addAll(some.items());
            moreDue |= some.next() != null;
        }
        Page<CaseView.HandOverView> offers = custody.listHandOvers(true, SHOWN, null);
        List<PlacesOfCarer> free = places.listPlaces().stream()
                .filter(carer -> carer.free() > 0)
                .sorted(Comparator.comparing(PlacesOfCarer::free).reversed())
                .toList();
        return PageForms.html(
                status,
                overview.data("errors", errors)
                        .data("free", free.subList(0, Math.min(SHOWN, free.size())))
                        .data(
                                "freeCount",
                                free.stream().mapToInt(PlacesOfCarer::free).sum())
                        .data("key", UUID.randomUUID().toString())
                        .data("open", open.subList(0, Math.min(SHOWN, open.size())))
                        .data("openCount", open.size())
                        .data("clocks", due)
                        .data("moreClocks", moreDue)
                        .data("missed", missed.listMissed(SHOWN, null))
                        .data(
                                "handOvers",
                                offers.items().stream().map(this::offer).toList())
                        .data("moreHandOvers", offers.next() != null)
                        .data("gaps", custody.listGaps(SHOWN, null))
                        .data("alerts", alerts.listAlerts(true, SHOWN, null)));
    }
}
