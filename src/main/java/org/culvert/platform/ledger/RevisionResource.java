package org.culvert.platform.ledger;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;

/** Who changed what when, and why. */
@Ledgered
@Path("/api/records")
public class RevisionResource {
    private final RevisionHistory history;

    RevisionResource(RevisionHistory history) {
        this.history = history;
    }

    /** The revisions of a record. What it held at any of them is read from the record itself with {@code asOf}. */
    @GET
    @Path("/{id}/revisions")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER, Role.ADMIN})
    public List<RevisionHistory.RevisionView> listRevisions(@PathParam("id") String id) {
        return history.listRevisions(Paging.uuid("id", id));
    }
}
