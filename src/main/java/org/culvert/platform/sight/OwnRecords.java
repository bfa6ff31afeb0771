package org.culvert.platform.sight;

import jakarta.annotation.Priority;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.ext.Provider;
import java.util.Optional;
import java.util.UUID;

/**
 * Answers for another organisation's record as for one that does not exist, whatever is asked of it: its address is enough,
 * so that no operation can forget it.
 */
@Provider
@Priority(Priorities.AUTHORIZATION + 100)
class OwnRecords implements ContainerRequestFilter {
    private final Sight sight;

    OwnRecords(Sight sight) {
        this.sight = sight;
    }

    @Override
    public void filter(ContainerRequestContext request) {
        String path = request.getUriInfo().getPath();
        Optional<SightTable.HeldPath> asked = sight.table().findHeldPath(path.startsWith("/") ? path : "/" + path);
        if (asked.isPresent() && isIdentifier(asked.get().id())) {
            UUID id = UUID.fromString(asked.get().id());
            sight.requireSeen(asked.get().resource(), id);
            sight.asksAbout(asked.get().resource(), id);
        }
    }

    private static boolean isIdentifier(String text) {
        return text.matches("[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}");
    }
}
