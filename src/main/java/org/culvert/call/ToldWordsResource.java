package org.culvert.call;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.culvert.call.ToldWordsService.ToldWordsEntry;
import org.culvert.call.ToldWordsService.ToldWordsView;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.RestResponse;

/** What a caller was told. */
@Ledgered
@Path("/api")
public class ToldWordsResource {
    private final ToldWordsService service;
    private final CallService calls;

    ToldWordsResource(ToldWordsService service, CallService calls) {
        this.service = service;
        this.calls = calls;
    }

    /** What there is to say of a call as it is known now: people first, cautions, and incidents it may be about. */
    @GET
    @Path("/calls/{id}/receipt")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public CallReceipt getReceipt(@PathParam("id") String id) {
        return calls.getReceipt(Paging.uuid("id", id));
    }

    @POST
    @Path("/calls/{id}/told-words")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public RestResponse<ToldWordsView> tell(@PathParam("id") String id, @NotNull @Valid ToldWordsEntry entry) {
        ToldWordsView view = service.tell(Paging.uuid("id", id), entry);
        return RestResponse.ResponseBuilder.<ToldWordsView>created(URI.create("/api/told-words/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Path("/calls/{id}/told-words")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.OFFICER})
    public List<ToldWordsView> listTold(@PathParam("id") String id) {
        UUID call = Paging.uuid("id", id);
        return service.list(call);
    }

    @GET
    @Tagged
    @Path("/told-words/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.OFFICER})
    public ToldWordsView getTold(@PathParam("id") String id) {
        return service.get(Paging.uuid("id", id));
    }

    /** It was not said after all. */
    @POST
    @NeedsTag("told-words")
    @Path("/told-words/{id}/withdrawal")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR})
    public ToldWordsView withdraw(@PathParam("id") String id, @NotNull @Valid CallResource.Reason reason) {
        return service.withdraw(Paging.uuid("id", id), reason.reason());
    }
}
