package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.care.clutch.ClutchService;
import org.culvert.care.clutch.ClutchViews.ClutchCustodyView;
import org.culvert.care.clutch.ClutchViews.ClutchView;
import org.culvert.care.clutch.TemperatureService;
import org.culvert.platform.Paging;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.sight.Sight;
import org.culvert.roster.Holder;
import org.culvert.roster.RosterService;

/** A clutch, for people: its sum, its temperatures drawn, when it may hatch, and what happened. */
@Path("/clutches")
@Produces(MediaType.TEXT_HTML)
public class ClutchPageResource {
    private final Template template;
    private final ClutchService clutches;
    private final TemperatureService temperatures;
    private final CaseService cases;
    private final RosterService roster;
    private final RegionService region;
    private final Sight sight;
    private final Clock clock;

    ClutchPageResource(
            @Location("clutch.html") Template template,
            ClutchService clutches,
            TemperatureService temperatures,
            CaseService cases,
            RosterService roster,
            RegionService region,
            Sight sight,
            Clock clock) {
        this.template = template;
        this.clutches = clutches;
        this.temperatures = temperatures;
        this.cases = cases;
        this.roster = roster;
        this.region = region;
        this.sight = sight;
        this.clock = clock;
    }

    @GET
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public TemplateInstance show(@PathParam("id") String id) {
        UUID clutchId = Paging.uuid("id", id);
        sight.requireSeen("clutch", clutchId);
        ClutchView clutch = clutches.getClutch(clutchId);
        return template.data(
                "page",
                ClutchPage.of(
                        clutch,
                        cases.getCase(clutch.motherCaseId()),
                        holder(clutch.custody()),
                        temperatures.series(clutchId),
                        clock.instant(),
                        region.zone()));
    }

    private String holder(List<ClutchCustodyView> custody) {
        return custody.stream()
                .filter(link -> link.to() == null)
                .findFirst()
                .map(link -> name(link.holder()) + ", authorisation " + link.authorisation())
                .orElse("nobody is recorded");
    }

    private String name(Holder holder) {
        return holder.memberId() != null
                ? "member " + roster.getMember(holder.memberId()).callSign()
                : holder.organisationId() != null
                        ? roster.getOrganisation(holder.organisationId()).name()
                        : "somebody without an account";
    }
}
