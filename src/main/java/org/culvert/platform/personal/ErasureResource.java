package org.culvert.platform.personal;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jspecify.annotations.Nullable;

/** Erasures: those that were made, and those that are due. */
@Ledgered
@Path("/api/erasures")
public class ErasureResource {
    private final ErasureService erasures;

    ErasureResource(ErasureService erasures) {
        this.erasures = erasures;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public Page<ErasureService.ErasureView> listErasures(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return erasures.listErasures(Paging.limit(limit), Paging.cursor(cursor));
    }

    /** Erases the next few who are due now, for somebody who does not wait for the night; to be asked again while more are. */
    @POST
    @RolesAllowed(Role.ADMIN)
    public ErasureService.Erased eraseDue() {
        return erasures.eraseDue();
    }
}
