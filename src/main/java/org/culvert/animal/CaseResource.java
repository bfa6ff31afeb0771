package org.culvert.animal;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.referral.ReferralService;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Cases and their chain of custody. */
@Ledgered
@Path("/api")
public class CaseResource {
    /** Identifier of a pending hand-over. */
    public record HandOverMade(UUID id, List<ReferralService.ReferOutView> referOut) {}

    private final CaseService cases;
    private final CustodyService custody;
    private final CustodyLists lists;

    CaseResource(CaseService cases, CustodyService custody, CustodyLists lists) {
        this.cases = cases;
        this.custody = custody;
        this.lists = lists;
    }

    @POST
    @Path("/cases")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public RestResponse<CaseView> open(@NotNull @Valid CaseEntries.CaseEntry entry) {
        CaseView view = cases.open(entry);
        return RestResponse.ResponseBuilder.<CaseView>created(URI.create("/api/cases/" + view.id()))
                .entity(view)
                .build();
    }

    /**
     * Cases, newest first.
     *
     * @param temporaryNumber only those taken in under this number, in whichever surge
     */
    @GET
    @Path("/cases")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Page<CaseView> listCases(
            @QueryParam("late") @DefaultValue("false") boolean late,
            @QueryParam("temporaryNumber") @Nullable String temporaryNumber,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        int most = Paging.limit(limit);
        UUID before = Paging.cursor(cursor);
        return temporaryNumber == null
                ? cases.listCases(most, before, late)
                : cases.listByTemporaryNumber(temporaryNumber);
    }

    @GET
    @Tagged
    @Path("/cases/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public CaseView getCase(@PathParam("id") String id) {
        return cases.getCase(Paging.uuid("id", id));
    }

    @POST
    @Path("/cases/{id}/hand-overs")
    @ResponseStatus(201)
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public HandOverMade offer(@PathParam("id") String id, @NotNull @Valid CaseEntries.HandOverEntry entry) {
        UUID caseId = Paging.uuid("id", id);
        UUID handOver = custody.offer(caseId, entry);
        return new HandOverMade(handOver, cases.referOut(caseId, entry));
    }

    /**
     * Hand-overs, the oldest offer first.
     *
     * @param pending whether those that wait, or those that were accepted or refused
     */
    @GET
    @Path("/hand-overs")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Page<CaseView.HandOverView> listHandOvers(
            @QueryParam("pending") @DefaultValue("true") boolean pending,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return lists.listHandOvers(pending, Paging.limit(limit), cursor);
    }

    /** Spans in which nobody is recorded as holder, of open and of ended cases. */
    @GET
    @Path("/custody-gaps")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER})
    public Page<CustodyLists.CustodyGapView> listGaps(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return lists.listGaps(Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Tagged
    @Path("/hand-overs/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public CaseView.HandOverView getHandOver(@PathParam("id") String id) {
        return cases.getHandOver(Paging.uuid("id", id));
    }

    @POST
    @NeedsTag("hand-over")
    @Path("/hand-overs/{id}/acceptance")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public CaseView accept(@PathParam("id") String id, @NotNull @Valid CaseEntries.AcceptanceEntry entry) {
        return cases.getCase(custody.accept(Paging.uuid("id", id), entry));
    }

    @POST
    @NeedsTag("hand-over")
    @Path("/hand-overs/{id}/refusal")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public CaseView refuse(@PathParam("id") String id, @NotNull @Valid CaseEntries.RefusalEntry entry) {
        return cases.getCase(custody.refuse(Paging.uuid("id", id), entry));
    }

    @GET
    @Path("/cases/{id}/whereabouts")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<CaseView.WhereaboutsView> listWhereabouts(@PathParam("id") String id) {
        return cases.listWhereabouts(Paging.uuid("id", id));
    }

    @POST
    @Path("/cases/{id}/whereabouts")
    @RolesAllowed({Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public CaseView move(@PathParam("id") String id, @NotNull @Valid CaseEntries.WhereaboutsEntry entry) {
        return cases.move(Paging.uuid("id", id), entry);
    }

    @POST
    @NeedsTag("case")
    @Path("/cases/{id}/fate")
    @RolesAllowed({Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public CaseView end(@PathParam("id") String id, @NotNull @Valid CaseEntries.FateEntry entry) {
        return cases.end(Paging.uuid("id", id), entry);
    }

    @POST
    @NeedsTag("case")
    @Path("/cases/{id}/body/disposal")
    @RolesAllowed({Role.COORDINATOR, Role.RESCUER, Role.CLINIC})
    public CaseView dispose(@PathParam("id") String id, @NotNull @Valid CaseEntries.DisposalEntry entry) {
        return cases.dispose(Paging.uuid("id", id), entry);
    }
}
