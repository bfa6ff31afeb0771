package org.culvert.platform.personal;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.time.LocalDate;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;

/** Duties to keep people. */
@Ledgered
@Path("/api/retention-rules")
public class RetentionResource {
    /**
     * The last day on which a duty holds.
     *
     * @param reason why it ends
     */
    public record EndOfRule(
            @NotNull LocalDate validTo,
            @NotBlank @Size(max = 2000) String reason) {}

    private final RetentionService retention;

    RetentionResource(RetentionService retention) {
        this.retention = retention;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public List<RetentionService.RetentionRuleView> listRules() {
        return retention.listRules();
    }

    @GET
    @Path("/{id}")
    @Tagged
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public RetentionService.RetentionRuleView getRule(@PathParam("id") String id) {
        return retention.getRule(Paging.uuid("id", id));
    }

    @POST
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RetentionService.RetentionRuleView makeRule(@NotNull @Valid RetentionService.RetentionRuleEntry entry) {
        return retention.make(entry);
    }

    @POST
    @Path("/{id}/ending")
    @NeedsTag("retention-rule")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RetentionService.RetentionRuleView endRule(@PathParam("id") String id, @NotNull @Valid EndOfRule end) {
        return retention.end(Paging.uuid("id", id), end.validTo(), end.reason());
    }
}
