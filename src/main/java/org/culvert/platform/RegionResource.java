package org.culvert.platform;

import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;

/** The region that this server serves. */
@Ledgered
@Path("/api/region")
public class RegionResource {
    private final RegionService service;
    private final DemoMark demoMark;

    RegionResource(RegionService service, DemoMark demoMark) {
        this.service = service;
        this.demoMark = demoMark;
    }

    @GET
    @Tagged
    @PermitAll
    public RegionService.RegionDescription getRegion() {
        return service.describe();
    }

    @PUT
    @NeedsTag("region")
    @RolesAllowed(Role.ADMIN)
    public RegionService.RegionDescription settle(@NotNull @Valid RegionService.RegionDescription wanted) {
        RegionService.RegionDescription settled = service.settle(wanted);
        demoMark.read();
        return settled;
    }
}
