package org.culvert.exchange.auditfile;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import java.util.List;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jspecify.annotations.Nullable;

/** Audit files, and the log of who read them. */
@Ledgered
@Path("/api")
public class AuditResource {
    private final AuditService audits;
    private final Inspections inspections;

    AuditResource(AuditService audits, Inspections inspections) {
        this.audits = audits;
        this.inspections = inspections;
    }

    /**
     * Everything that is recorded of the animal of a case, in one document. Each reading by an officer is kept.
     *
     * @param reason why it is read; an officer has to say it
     */
    @GET
    @Path("/cases/{id}/audit-file")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER})
    public AuditFile openAuditFile(@PathParam("id") String id, @QueryParam("reason") @Nullable String reason) {
        return audits.open(Paging.uuid("id", id), reason);
    }

    /** Who read the audit file of a case, the latest first. */
    @GET
    @Path("/cases/{id}/inspections")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER})
    public List<Inspections.InspectionView> listOfCase(@PathParam("id") String id) {
        return inspections.listOfCase(Paging.uuid("id", id));
    }

    /** All inspections, the latest first. */
    @GET
    @Path("/inspections")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER})
    public Page<Inspections.InspectionView> listInspections(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return inspections.listInspections(Paging.limit(limit), Paging.cursor(cursor));
    }
}
