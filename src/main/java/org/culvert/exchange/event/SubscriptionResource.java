package org.culvert.exchange.event;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import java.util.List;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.ShownOnce;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Addresses that are told of what happens. */
@Ledgered
@Path("/api/event-subscriptions")
public class SubscriptionResource {
    /** Why nothing is to be sent there any more. */
    public record SubscriptionEnding(
            @NotBlank @Size(max = 2000) String reason) {}

    private final SubscriptionService service;

    SubscriptionResource(SubscriptionService service) {
        this.service = service;
    }

    /** Makes a subscription; the secret of its signatures is shown this once. */
    @POST
    @ShownOnce
    @ResponseStatus(201)
    @RolesAllowed(Role.ADMIN)
    public SubscriptionService.SubscriptionMade subscribe(@NotNull @Valid SubscriptionService.SubscriptionEntry entry) {
        return service.subscribe(entry);
    }

    @GET
    @RolesAllowed(Role.ADMIN)
    public Page<SubscriptionService.EventSubscriptionView> listSubscriptions(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return service.listSubscriptions(Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Tagged
    @Path("/{id}")
    @RolesAllowed(Role.ADMIN)
    public SubscriptionService.EventSubscriptionView getSubscription(@PathParam("id") String id) {
        return service.getSubscription(Paging.uuid("id", id));
    }

    /** The last messages and what became of them. */
    @GET
    @Path("/{id}/deliveries")
    @RolesAllowed(Role.ADMIN)
    public List<SubscriptionService.EventDeliveryView> listDeliveries(
            @PathParam("id") String id, @QueryParam("limit") @Nullable Integer limit) {
        return service.listDeliveries(Paging.uuid("id", id), Paging.limit(limit));
    }

    @POST
    @Path("/{id}/ending")
    @NeedsTag("event-subscription")
    @RolesAllowed(Role.ADMIN)
    public SubscriptionService.EventSubscriptionView endSubscription(
            @PathParam("id") String id, @NotNull @Valid SubscriptionEnding ending) {
        return service.end(Paging.uuid("id", id), ending.reason());
    }
}
