package org.culvert.road;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.ledger.KeepsNothing;
import org.culvert.platform.ledger.Ledgered;
import org.jspecify.annotations.Nullable;

/** What is meant by a place as it is said; nothing is kept. */
@Ledgered
@Path("/api")
public class PlaceResource {
    private static final int MOST_SUGGESTIONS = 20;

    private final PlaceReading reading;
    private final RoadService roads;

    PlaceResource(PlaceReading reading, RoadService roads) {
        this.reading = reading;
        this.roads = roads;
    }

    @POST
    @KeepsNothing
    @Path("/places/readings")
    @RolesAllowed("**")
    public PlaceUnderstood readPlace(@NotNull PlaceAsGiven place) {
        return reading.understand(place);
    }

    @GET
    @Path("/roads")
    @RolesAllowed("**")
    public List<RoadService.Suggestion> suggestRoads(
            @QueryParam("q") @Nullable String typed, @QueryParam("limit") @Nullable Integer limit) {
        int most = limit == null ? MOST_SUGGESTIONS : Paging.limit(limit);
        return roads.suggestRoads(typed == null ? "" : typed, most);
    }
}
