package org.culvert.release.approvals;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.net.URI;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.RestResponse;
import org.jboss.resteasy.reactive.RestResponse.ResponseBuilder;

/** Answers to whether animals may be let go at a site, or whether the animal of a case may. */
@Ledgered
@Path("/api")
public class ApprovalResource {
    private final ApprovalService approvals;

    ApprovalResource(ApprovalService approvals) {
        this.approvals = approvals;
    }

    @POST
    @Path("/release-sites/{id}/approvals")
    @RolesAllowed(Role.COORDINATOR)
    public RestResponse<ApprovalService.ReleaseApprovalView> recordForSite(
            @PathParam("id") String id, @NotNull @Valid ApprovalService.ApprovalEntry entry) {
        return created(approvals.recordForSite(Paging.uuid("id", id), entry));
    }

    /** Answers about a site, those that were withdrawn or have run out among them, the newest first. */
    @GET
    @Path("/release-sites/{id}/approvals")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<ApprovalService.ReleaseApprovalView> listForSite(@PathParam("id") String id) {
        return approvals.listForSite(Paging.uuid("id", id));
    }

    @POST
    @Path("/cases/{id}/release-approvals")
    @RolesAllowed(Role.COORDINATOR)
    public RestResponse<ApprovalService.ReleaseApprovalView> recordForCase(
            @PathParam("id") String id, @NotNull @Valid ApprovalService.ApprovalEntry entry) {
        return created(approvals.recordForCase(Paging.uuid("id", id), entry));
    }

    /** Answers about the animal of a case, those that were withdrawn or have run out among them, the newest first. */
    @GET
    @Path("/cases/{id}/release-approvals")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<ApprovalService.ReleaseApprovalView> listForCase(@PathParam("id") String id) {
        return approvals.listForCase(Paging.uuid("id", id));
    }

    @GET
    @Tagged
    @Path("/release-approvals/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER})
    public ApprovalService.ReleaseApprovalView getApproval(@PathParam("id") String id) {
        return approvals.getApproval(Paging.uuid("id", id));
    }

    /** Takes an answer back: it is kept and shown, and stands no longer. */
    @POST
    @NeedsTag("release-approval")
    @Path("/release-approvals/{id}/withdrawal")
    @RolesAllowed(Role.COORDINATOR)
    public ApprovalService.ReleaseApprovalView withdraw(
            @PathParam("id") String id, @NotNull @Valid ApprovalService.ApprovalWithdrawal withdrawal) {
        return approvals.withdraw(Paging.uuid("id", id), withdrawal.reason());
    }

    private static RestResponse<ApprovalService.ReleaseApprovalView> created(
            ApprovalService.ReleaseApprovalView approval) {
        return ResponseBuilder.<ApprovalService.ReleaseApprovalView>created(
                        URI.create("/api/release-approvals/" + approval.id()))
                .entity(approval)
                .build();
    }
}
