package org.culvert.platform.sight;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;

/** How finely figures leave the network. */
@Ledgered
@Path("/api/disclosure-settings")
public class DisclosureSettingsResource {
    private final DisclosureService service;

    DisclosureSettingsResource(DisclosureService service) {
        this.service = service;
    }

    @GET
    @Tagged
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public DisclosureService.DisclosureSettingsView getSettings() {
        return service.settings();
    }

    @PUT
    @NeedsTag("disclosure-settings")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public DisclosureService.DisclosureSettingsView settle(
            @NotNull @Valid DisclosureService.DisclosureSettingsView wanted) {
        return service.settle(wanted);
    }
}
