package org.culvert.dispatch;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.util.List;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;

/** What is open at the desk. */
@Ledgered
@Path("/api/open-incidents")
public class OpenIncidentResource {
    private final OpenIncidentService service;

    OpenIncidentResource(OpenIncidentService service) {
        this.service = service;
    }

    /** Most pressing first; of those that are equally so, the one that waits longest. */
    @GET
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public List<OpenIncidentService.OpenIncidentView> listOpen() {
        return service.listOpen();
    }
}
