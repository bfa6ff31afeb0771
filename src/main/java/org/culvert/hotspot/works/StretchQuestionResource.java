package org.culvert.hotspot.works;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.KeepsNothing;
import org.culvert.platform.ledger.Ledgered;

/** Questions about any stretch of a road; nothing is kept of them. */
@Ledgered
@Path("/api/stretch-questions")
public class StretchQuestionResource {
    private final StretchQuestionService service;

    StretchQuestionResource(StretchQuestionService service) {
        this.service = service;
    }

    @POST
    @KeepsNothing
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    public StretchAnswer ask(@NotNull @Valid StretchQuestion question) {
        return service.answer(question);
    }
}
