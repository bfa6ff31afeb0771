package org.culvert.exchange.annualreturn;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;

/** Forms of annual returns. */
@Ledgered
@Path("/api/return-forms")
public class ReturnFormResource {
    private final ReturnForms forms;

    ReturnFormResource(ReturnForms forms) {
        this.forms = forms;
    }

    @GET
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public List<ReturnForms.ReturnFormView> listForms() {
        return forms.listForms();
    }

    @GET
    @Tagged
    @Path("/{id}")
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public ReturnForms.ReturnFormView getForm(@PathParam("id") String id) {
        return forms.getForm(Paging.uuid("id", id));
    }

    @POST
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public ReturnForms.ReturnFormView createForm(@NotNull @Valid ReturnForms.ReturnFormEntry entry) {
        return forms.createForm(entry);
    }

    /** Someone has read the source again. */
    @POST
    @NeedsTag("return-form")
    @Path("/{id}/reviews")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public ReturnForms.ReturnFormView review(
            @PathParam("id") String id, @NotNull @Valid ReturnForms.ReturnFormReview review) {
        return forms.review(Paging.uuid("id", id), review);
    }
}
