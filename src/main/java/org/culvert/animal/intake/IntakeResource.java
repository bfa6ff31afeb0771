package org.culvert.animal.intake;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import java.util.List;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Surges, and the animals taken in at their tents. */
@Ledgered
@Path("/api/surges")
public class IntakeResource {
    private final SurgeRegister surges;
    private final IntakeService intakes;
    private final IntakeReader reader;

    IntakeResource(SurgeRegister surges, IntakeService intakes, IntakeReader reader) {
        this.surges = surges;
        this.intakes = intakes;
        this.reader = reader;
    }

    @POST
    @RolesAllowed({Role.COORDINATOR, Role.DISPATCHER})
    public RestResponse<SurgeView> declare(@NotNull @Valid SurgeEntries.SurgeEntry entry) {
        SurgeView view = surges.declare(entry);
        return RestResponse.ResponseBuilder.<SurgeView>created(URI.create("/api/surges/" + view.id()))
                .entity(view)
                .build();
    }

    /**
     * Surges, the latest first.
     *
     * @param open only those that go on, or only those that ended
     */
    @GET
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<SurgeView> listSurges(@QueryParam("open") @Nullable Boolean open) {
        return surges.listSurges(open);
    }

    @GET
    @Tagged
    @Path("/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public SurgeView getSurge(@PathParam("id") String id) {
        return surges.getSurge(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("surge")
    @Path("/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.DISPATCHER})
    public SurgeView correct(@PathParam("id") String id, @NotNull @Valid SurgeEntries.SurgeCorrection correction) {
        return surges.correct(Paging.uuid("id", id), correction);
    }

    /** The surge is over; who came to the tent before that may still be entered. */
    @POST
    @NeedsTag("surge")
    @Path("/{id}/ending")
    @RolesAllowed({Role.COORDINATOR, Role.DISPATCHER})
    public SurgeView end(@PathParam("id") String id, @NotNull @Valid SurgeEntries.SurgeEnding ending) {
        return surges.end(Paging.uuid("id", id), ending);
    }

    @POST
    @Path("/{id}/sectors")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.DISPATCHER})
    public SurgeView addSector(@PathParam("id") String id, @NotNull @Valid SurgeEntries.SectorEntry entry) {
        return surges.addSector(Paging.uuid("id", id), entry);
    }

    /** Takes in up to 200 animals at once: all of them, or none. */
    @POST
    @Path("/{id}/intakes")
    @ResponseStatus(201)
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER})
    public IntakeReceipt takeIn(@PathParam("id") String id, @NotNull @Valid SurgeEntries.IntakeEntry entry) {
        return intakes.takeIn(Paging.uuid("id", id), entry);
    }

    /**
     * Those who were taken in, the latest first.
     *
     * @param sector code of a sector
     * @param temporaryNumber however it is written
     * @param taxon scientific name as it is identified now
     * @param vitality as they came
     */
    @GET
    @Path("/{id}/intakes")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Page<SurgeIntakeView> listIntakes(
            @PathParam("id") String id,
            @QueryParam("sector") @Nullable String sector,
            @QueryParam("temporaryNumber") @Nullable String temporaryNumber,
            @QueryParam("taxon") @Nullable String taxon,
            @QueryParam("vitality") SurgeEntries.@Nullable IntakeVitality vitality,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return reader.listIntakes(
                Paging.uuid("id", id),
                new IntakeReader.IntakeFilter(sector, temporaryNumber, taxon, vitality),
                Paging.limit(limit),
                Paging.cursor(cursor));
    }

    /** How many animals are where now, by sector and by taxon. */
    @GET
    @Path("/{id}/counts")
    @RolesAllowed({Role.DISPATCHER, Role.COORDINATOR, Role.RESCUER, Role.CLINIC, Role.CARER, Role.OFFICER})
    public SurgeCountsView count(@PathParam("id") String id) {
        return reader.count(Paging.uuid("id", id));
    }
}
