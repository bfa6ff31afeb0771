package org.culvert.release;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import java.util.List;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.culvert.release.rules.Rule;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Release rules and release sites. */
@Ledgered
@Path("/api")
public class RuleResource {
    private final RuleService rules;
    private final SiteService sites;

    RuleResource(RuleService rules, SiteService sites) {
        this.rules = rules;
        this.sites = sites;
    }

    @GET
    @Path("/release-rules")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER, Role.ADMIN})
    public List<Rule> listRules() {
        return rules.listRules();
    }

    @GET
    @Tagged
    @Path("/release-rules/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER, Role.ADMIN})
    public Rule getRule(@PathParam("id") String id) {
        return rules.getRule(Paging.uuid("id", id));
    }

    @POST
    @Path("/release-rules")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Rule createRule(@NotNull @Valid RuleService.RuleEntry entry) {
        return rules.createRule(entry);
    }

    @POST
    @NeedsTag("release-rule")
    @Path("/release-rules/{id}/reviews")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Rule review(@PathParam("id") String id, @NotNull @Valid RuleService.ReviewEntry entry) {
        return rules.review(Paging.uuid("id", id), entry);
    }

    @GET
    @Path("/release-sites")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Page<SiteService.SiteView> listSites(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return sites.listSites(Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Tagged
    @Path("/release-sites/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public SiteService.SiteView getSite(@PathParam("id") String id) {
        return sites.getSite(Paging.uuid("id", id));
    }

    @POST
    @Path("/release-sites")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RestResponse<SiteService.SiteView> createSite(@NotNull @Valid SiteService.SiteEntry entry) {
        SiteService.SiteView view = sites.createSite(entry);
        return RestResponse.ResponseBuilder.<SiteService.SiteView>created(URI.create("/api/release-sites/" + view.id()))
                .entity(view)
                .build();
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("release-site")
    @Path("/release-sites/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public SiteService.SiteView correctSite(
            @PathParam("id") String id, @NotNull @Valid SiteService.SiteCorrection correction) {
        return sites.correct(Paging.uuid("id", id), correction);
    }
}
