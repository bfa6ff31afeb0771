package org.culvert.care.growth;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import java.util.List;
import org.culvert.animal.CaseCorrections;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;

/** Tables of growth, and how an animal grows against them. */
@Ledgered
@Path("/api")
public class GrowthResource {
    private final GrowthTableService tables;
    private final GrowthService growth;

    GrowthResource(GrowthTableService tables, GrowthService growth) {
        this.tables = tables;
        this.growth = growth;
    }

    @GET
    @Path("/growth-tables")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<GrowthViews.GrowthTableView> listTables() {
        return tables.listTables();
    }

    /** Loads a table; nothing is compared with it before a vet adopts it. */
    @POST
    @Path("/growth-tables")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public RestResponse<GrowthViews.GrowthTableView> load(@NotNull @Valid GrowthEntries.GrowthTableEntry entry) {
        GrowthViews.GrowthTableView view = tables.load(entry);
        return RestResponse.ResponseBuilder.<GrowthViews.GrowthTableView>created(
                        URI.create("/api/growth-tables/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Tagged
    @Path("/growth-tables/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public GrowthViews.GrowthTableView getTable(@PathParam("id") String id) {
        return tables.getTable(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. It wants adopting again. */
    @PATCH
    @NeedsTag("growth-table")
    @Path("/growth-tables/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public GrowthViews.GrowthTableView correctTable(
            @PathParam("id") String id, @NotNull @Valid GrowthEntries.GrowthTableCorrection correction) {
        return tables.correct(Paging.uuid("id", id), correction);
    }

    /** A vet adopts the table as it was read. */
    @POST
    @NeedsTag("growth-table")
    @Path("/growth-tables/{id}/adoptions")
    @ResponseStatus(201)
    @RolesAllowed(Role.CLINIC)
    public GrowthViews.GrowthTableView adopt(
            @PathParam("id") String id, @NotNull @Valid GrowthEntries.TableAdoptionEntry entry) {
        return tables.adopt(Paging.uuid("id", id), entry);
    }

    /** Takes an adoption back: nothing is compared with the table any more. */
    @POST
    @NeedsTag("growth-table")
    @Path("/growth-tables/{id}/adoptions/{tableAdoptionId}/withdrawal")
    @RolesAllowed(Role.CLINIC)
    public GrowthViews.GrowthTableView withdrawAdoption(
            @PathParam("id") String id,
            @PathParam("tableAdoptionId") String adoptionId,
            @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        return tables.withdraw(Paging.uuid("id", id), Paging.uuid("tableAdoptionId", adoptionId), withdrawal.reason());
    }

    /** Measures from which no age is told, by taxon. */
    @GET
    @Path("/age-cautions")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public List<GrowthViews.AgeCautionView> listCautions() {
        return tables.listCautions();
    }

    @POST
    @Path("/age-cautions")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC})
    public GrowthViews.AgeCautionView enterCaution(@NotNull @Valid GrowthEntries.AgeCautionEntry entry) {
        return tables.enterCaution(entry);
    }

    /** The measurements of a case against the tables that a vet has adopted. */
    @GET
    @Path("/cases/{id}/growth")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public GrowthViews.GrowthView grow(@PathParam("id") String id) {
        return growth.grow(Paging.uuid("id", id));
    }

    @POST
    @Path("/cases/{id}/body-measurements")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public RestResponse<GrowthViews.BodyMeasurementView> measure(
            @PathParam("id") String id, @NotNull @Valid GrowthEntries.BodyMeasurementEntry entry) {
        GrowthViews.BodyMeasurementView view = growth.measure(Paging.uuid("id", id), entry);
        return RestResponse.ResponseBuilder.<GrowthViews.BodyMeasurementView>created(
                        URI.create("/api/body-measurements/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Tagged
    @Path("/body-measurements/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.OFFICER})
    public GrowthViews.BodyMeasurementView getMeasurement(@PathParam("id") String id) {
        return growth.getMeasurement(Paging.uuid("id", id));
    }

    /** It was measured wrongly. */
    @POST
    @NeedsTag("body-measurement")
    @Path("/body-measurements/{id}/withdrawal")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER})
    public GrowthViews.BodyMeasurementView withdrawMeasurement(
            @PathParam("id") String id, @NotNull @Valid CaseCorrections.Withdrawal withdrawal) {
        return growth.withdraw(Paging.uuid("id", id), withdrawal.reason());
    }
}
