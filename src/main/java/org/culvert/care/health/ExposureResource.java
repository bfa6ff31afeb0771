package org.culvert.care.health;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Bites, scratches, licks, needles and venom: entered by all who work with animals, read by very few. */
@Ledgered
@Path("/api")
public class ExposureResource {
    private final ExposureService exposures;

    ExposureResource(ExposureService exposures) {
        this.exposures = exposures;
    }

    /** Enters an exposure and says what to do now; the animal that it names is held from then on. */
    @POST
    @Path("/exposures")
    @ResponseStatus(201)
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public ExposureReceipt enterExposure(@NotNull @Valid ExposureEntries.ExposureEntry entry) {
        return exposures.enter(entry);
    }

    /** Exposures in the order in which they were entered; with {@code untold}, of whom the health unit knows nothing yet. */
    @GET
    @Path("/exposures")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Page<ExposureView> listExposures(
            @QueryParam("untold") @DefaultValue("false") boolean untold,
            @QueryParam("caseId") @Nullable String caseId,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor) {
        return exposures.listExposures(
                untold,
                caseId == null ? null : Paging.uuid("caseId", caseId),
                Paging.limit(limit),
                Paging.cursor(cursor));
    }

    /** What is kept of the asker's own exposures; no other member's are in it. */
    @GET
    @Path("/my-exposures")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public List<MyExposureView> listMyExposures() {
        return exposures.listOwn();
    }

    @GET
    @Tagged
    @Path("/exposures/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public ExposureView getExposure(@PathParam("id") String id) {
        return exposures.getExposure(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("exposure")
    @Path("/exposures/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public ExposureView correctExposure(
            @PathParam("id") String id, @NotNull @Valid ExposureEntries.ExposureCorrection correction) {
        return exposures.correct(Paging.uuid("id", id), correction);
    }

    /** Records that the public health unit was told. */
    @POST
    @NeedsTag("exposure")
    @Path("/exposures/{id}/telling")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public ExposureView tell(@PathParam("id") String id, @NotNull @Valid ExposureEntries.UnitTelling telling) {
        return exposures.tell(Paging.uuid("id", id), telling);
    }

    /** Ends it for the person; the animal stays held until the authority clears that. */
    @POST
    @NeedsTag("exposure")
    @Path("/exposures/{id}/closing")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public ExposureView close(@PathParam("id") String id, @NotNull @Valid ExposureEntries.ExposureClosing closing) {
        return exposures.close(Paging.uuid("id", id), closing);
    }

    /** Takes back what should not have been entered; the animal stays held until the authority clears that. */
    @POST
    @NeedsTag("exposure")
    @Path("/exposures/{id}/withdrawal")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public ExposureView withdraw(
            @PathParam("id") String id, @NotNull @Valid ExposureEntries.ExposureWithdrawal withdrawal) {
        return exposures.withdraw(Paging.uuid("id", id), withdrawal);
    }
}
