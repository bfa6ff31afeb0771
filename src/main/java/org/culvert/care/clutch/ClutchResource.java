package org.culvert.care.clutch;

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
import java.io.InputStream;
import java.net.URI;
import java.util.List;
import org.culvert.animal.CaseCorrections;
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

/** Clutches. */
@Ledgered
@Path("/api")
public class ClutchResource {
    private final ClutchService clutches;
    private final ClutchLog log;
    private final TemperatureService temperatures;

    ClutchResource(ClutchService clutches, ClutchLog log, TemperatureService temperatures) {
        this.clutches = clutches;
        this.log = log;
        this.temperatures = temperatures;
    }

    @POST
    @Path("/clutches")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public RestResponse<ClutchViews.ClutchView> createClutch(@NotNull @Valid ClutchEntries.ClutchEntry entry) {
        ClutchViews.ClutchView view = clutches.createClutch(entry);
        return RestResponse.ResponseBuilder.<ClutchViews.ClutchView>created(URI.create("/api/clutches/" + view.id()))
                .entity(view)
                .build();
    }

    /** Clutches, the newest first. */
    @GET
    @Path("/clutches")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Page<ClutchViews.ClutchView> listAll(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return clutches.listClutches(Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Tagged
    @Path("/clutches/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public ClutchViews.ClutchView getClutch(@PathParam("id") String id) {
        return clutches.getClutch(Paging.uuid("id", id));
    }

    @GET
    @Path("/cases/{id}/clutches")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<ClutchViews.ClutchView> listClutches(@PathParam("id") String id) {
        return clutches.listClutches(Paging.uuid("id", id));
    }

    @POST
    @NeedsTag("clutch")
    @Path("/clutches/{id}/eggs")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchViews.ClutchView addEggs(@PathParam("id") String id, @NotNull @Valid ClutchEntries.EggsEntry eggs) {
        return clutches.addEggs(Paging.uuid("id", id), eggs);
    }

    @POST
    @NeedsTag("clutch")
    @Path("/clutches/{id}/hand-overs")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchViews.ClutchView handOver(
            @PathParam("id") String id, @NotNull @Valid ClutchEntries.ClutchHandOverEntry entry) {
        return clutches.handOver(Paging.uuid("id", id), entry);
    }

    @POST
    @NeedsTag("clutch")
    @Path("/clutches/{id}/hatchings")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CARER, Role.CLINIC})
    public ClutchViews.HatchingView hatch(
            @PathParam("id") String id, @NotNull @Valid ClutchEntries.HatchingEntry entry) {
        return clutches.hatch(Paging.uuid("id", id), entry);
    }

    /** Eggs that somebody gives up: no date and no count does that. */
    @POST
    @NeedsTag("clutch")
    @Path("/clutches/{id}/failed-eggs")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchViews.ClutchView fail(
            @PathParam("id") String id, @NotNull @Valid ClutchEntries.FailedEggsEntry entry) {
        return log.fail(Paging.uuid("id", id), entry);
    }

    /** How many eggs somebody says are still in the mother. */
    @POST
    @Path("/clutches/{id}/eggs-left-inside")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchViews.ClutchView readInside(
            @PathParam("id") String id, @NotNull @Valid ClutchEntries.EggsInsideEntry entry) {
        return log.readInside(Paging.uuid("id", id), entry);
    }

    @POST
    @Path("/clutches/{id}/set-ups")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchViews.ClutchView setUp(@PathParam("id") String id, @NotNull @Valid ClutchEntries.SetUpEntry entry) {
        return log.setUp(Paging.uuid("id", id), entry);
    }

    /** What was seen when light was held to the eggs; none of them fails by it. */
    @POST
    @Path("/clutches/{id}/candlings")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchViews.ClutchView candle(
            @PathParam("id") String id, @NotNull @Valid ClutchEntries.CandlingEntry entry) {
        return log.candle(Paging.uuid("id", id), entry);
    }

    @POST
    @Path("/clutches/{id}/temperatures")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchViews.ClutchView addTemperature(
            @PathParam("id") String id, @NotNull @Valid ClutchEntries.TemperatureEntry entry) {
        return temperatures.add(Paging.uuid("id", id), entry);
    }

    /**
     * The file of a logger, all of it or nothing; what its source has told already is left out.
     *
     * @param source which logger
     * @param timeColumn name of the column of times; left out: the one whose name says time or date
     * @param temperatureColumn likewise; left out: the one whose name says °C, Celsius or temperature
     * @param utcOffset of times that bear none, such as +10:00; left out: they are in the region's time zone
     * @param csv a header, then a row for each reading; up to 50,000 of them
     */
    @POST
    @Path("/clutches/{id}/temperature-files")
    @Consumes("text/csv")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchViews.LoggerFileView addTemperatureFile(
            @PathParam("id") String id,
            @QueryParam("source") @Nullable String source,
            @QueryParam("timeColumn") @Nullable String timeColumn,
            @QueryParam("temperatureColumn") @Nullable String temperatureColumn,
            @QueryParam("utcOffset") @Nullable String utcOffset,
            InputStream csv) {
        return temperatures.addFile(
                Paging.uuid("id", id),
                new ClutchEntries.LoggerFileEntry(source, timeColumn, temperatureColumn, utcOffset),
                csv);
    }

    /** Temperatures that stand, in the order of time. */
    @GET
    @Path("/clutches/{id}/temperatures")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public Page<ClutchViews.TemperatureReadingView> listTemperatures(
            @PathParam("id") String id,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return temperatures.list(Paging.uuid("id", id), Paging.limit(limit), cursor);
    }

    /** Takes back an entry of a clutch, whatever it is of but a hatching; it stays readable, and counts for nothing. */
    @POST
    @NeedsTag("clutch")
    @Path("/clutches/{id}/entries/{entryId}/withdrawal")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchViews.ClutchView withdraw(
            @PathParam("id") String id,
            @PathParam("entryId") String entryId,
            @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        return log.withdraw(Paging.uuid("id", id), Paging.uuid("entryId", entryId), withdrawal.reason());
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("clutch")
    @Path("/clutches/{id}/failed-eggs/{failureId}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchViews.ClutchView correctFailed(
            @PathParam("id") String id,
            @PathParam("failureId") String failureId,
            @NotNull @Valid ClutchCorrections.FailedEggsCorrection correction) {
        return log.correctFailed(Paging.uuid("id", id), Paging.uuid("failureId", failureId), correction);
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("clutch")
    @Path("/clutches/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchViews.ClutchView correctClutch(
            @PathParam("id") String id, @NotNull @Valid ClutchCorrections.ClutchCorrection correction) {
        return clutches.correct(Paging.uuid("id", id), correction);
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("clutch")
    @Path("/clutches/{id}/eggs/{recoveryId}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchViews.ClutchView correctEggs(
            @PathParam("id") String id,
            @PathParam("recoveryId") String recoveryId,
            @NotNull @Valid ClutchCorrections.EggsCorrection correction) {
        return clutches.correctEggs(Paging.uuid("id", id), Paging.uuid("recoveryId", recoveryId), correction);
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("clutch")
    @Path("/clutches/{id}/custody-links/{linkId}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchViews.ClutchView correctCustody(
            @PathParam("id") String id,
            @PathParam("linkId") String linkId,
            @NotNull @Valid ClutchCorrections.ClutchCustodyCorrection correction) {
        return clutches.correctCustody(Paging.uuid("id", id), Paging.uuid("linkId", linkId), correction);
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("clutch")
    @Path("/clutches/{id}/hatchings/{hatchingId}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public ClutchViews.ClutchView correctHatching(
            @PathParam("id") String id,
            @PathParam("hatchingId") String hatchingId,
            @NotNull @Valid ClutchCorrections.HatchedCorrection correction) {
        return clutches.correctHatching(Paging.uuid("id", id), Paging.uuid("hatchingId", hatchingId), correction);
    }
}
