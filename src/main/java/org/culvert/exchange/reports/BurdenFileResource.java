package org.culvert.exchange.reports;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import org.culvert.hotspot.works.BurdenService;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.jspecify.annotations.Nullable;

/** Windows along roads as files: the same question as of the burden in JSON, and the same answer. */
@Ledgered
@Path("/api/burden/windows.{form}")
public class BurdenFileResource {
    private final ReportFileService files;
    private final BurdenService burdens;

    BurdenFileResource(ReportFileService files, BurdenService burdens) {
        this.files = files;
        this.burdens = burdens;
    }

    /** What a burden is asked by. */
    public static class BurdenParameters {
        @QueryParam("yearFrom")
        @Nullable
        Integer yearFrom;

        @QueryParam("yearTo")
        @Nullable
        Integer yearTo;

        @QueryParam("taxonGroup")
        @Nullable
        String taxonGroup;

        @QueryParam("months")
        @Nullable
        String months;

        @QueryParam("seasonWindow")
        @Nullable
        String seasonWindow;

        @QueryParam("windowMetres")
        @Nullable
        Double windowMetres;

        @QueryParam("stepMetres")
        @Nullable
        Double stepMetres;

        @QueryParam("limit")
        @Nullable
        Integer limit;

        @QueryParam("largestVariation")
        @Nullable
        Double largestVariation;

        @QueryParam("council")
        @Nullable
        String council;
    }

    /**
     * Windows along roads by their excess, each on its stretch.
     *
     * @param form csv, geojson or gpkg
     */
    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    @APIResponse(
            responseCode = "200",
            description = "The windows",
            content = {
                @Content(mediaType = ReportForm.CSV, schema = @Schema(type = SchemaType.STRING)),
                @Content(mediaType = ReportForm.GEO_JSON, schema = @Schema(type = SchemaType.OBJECT)),
                @Content(
                        mediaType = ReportForm.GEOPACKAGE,
                        schema = @Schema(type = SchemaType.STRING, format = "binary"))
            })
    public Response burden(@PathParam("form") String form, @BeanParam BurdenParameters asked) {
        ReportForm as = ReportForm.require(form);
        ReportTable table = files.windows(burdens.burden(
                asked.yearFrom,
                asked.yearTo,
                asked.taxonGroup,
                asked.months,
                asked.seasonWindow,
                asked.windowMetres,
                asked.stepMetres,
                asked.limit,
                asked.largestVariation,
                asked.council));
        return Response.ok(files.write(table, as), as.mediaType())
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + as.fileName(table) + '"')
                .build();
    }
}
