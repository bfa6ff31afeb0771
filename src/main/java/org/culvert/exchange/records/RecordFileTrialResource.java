package org.culvert.exchange.records;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.net.URI;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jboss.resteasy.reactive.RestResponse;

/** Trials of a file of old records, as they are asked for. */
@Ledgered
@Path("/api/record-files/{id}/trials")
public class RecordFileTrialResource {
    private final TrialService trials;

    RecordFileTrialResource(TrialService trials) {
        this.trials = trials;
    }

    /**
     * Tries a file: every row is read as was decided last, and looked up; nothing is entered. It runs in the background: look at
     * {@code Location} for how far it has come.
     */
    @POST
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RestResponse<RecordTrialView> startTrial(@PathParam("id") String id) {
        RecordTrialView trial = trials.start(Paging.uuid("id", id));
        return RestResponse.ResponseBuilder.create(RestResponse.Status.ACCEPTED, trial)
                .location(URI.create("/api/record-trials/" + trial.id()))
                .build();
    }
}
