package org.culvert.hotspot;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import java.util.List;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jboss.resteasy.reactive.ResponseStatus;

/** Season windows of groups of animals. */
@Ledgered
@Path("/api/season-windows")
public class SeasonWindowResource {
    private final SeasonWindowService windows;

    SeasonWindowResource(SeasonWindowService windows) {
        this.windows = windows;
    }

    @GET
    @RolesAllowed("**")
    public List<SeasonWindowService.WindowView> listWindows() {
        return windows.listWindows();
    }

    @POST
    @ResponseStatus(201)
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public SeasonWindowService.WindowView enter(@NotNull @Valid SeasonWindowService.WindowEntry entry) {
        return windows.enter(entry);
    }
}
