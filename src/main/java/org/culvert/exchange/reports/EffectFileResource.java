package org.culvert.exchange.reports;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.culvert.hotspot.works.EffectService;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.jspecify.annotations.Nullable;

/** What works did as files: the same question as of the effect in JSON, and the same answer. */
@Ledgered
@Path("/api/works/{id}/effect.{form}")
public class EffectFileResource {
    private final ReportFileService files;
    private final EffectService effects;

    EffectFileResource(ReportFileService files, EffectService effects) {
        this.files = files;
        this.effects = effects;
    }

    /**
     * What works did, part by part; what lies inside has its stretch.
     *
     * @param form csv, geojson or gpkg
     */
    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.ADMIN})
    @APIResponse(
            responseCode = "200",
            description = "The parts",
            content = {
                @Content(mediaType = ReportForm.CSV, schema = @Schema(type = SchemaType.STRING)),
                @Content(mediaType = ReportForm.GEO_JSON, schema = @Schema(type = SchemaType.OBJECT)),
                @Content(
                        mediaType = ReportForm.GEOPACKAGE,
                        schema = @Schema(type = SchemaType.STRING, format = "binary"))
            })
    public Response effect(
            @PathParam("id") String id,
            @PathParam("form") String form,
            @QueryParam("taxonGroup") @Nullable String taxonGroup,
            @QueryParam("months") @Nullable String months,
            @QueryParam("seasonWindow") @Nullable String seasonWindow,
            @QueryParam("yearsBefore") @Nullable Integer yearsBefore,
            @QueryParam("yearsAfter") @Nullable Integer yearsAfter,
            @QueryParam("beyondMetres") @Nullable Double beyondMetres,
            @QueryParam("windowMetres") @Nullable Double windowMetres,
            @QueryParam("comparison") List<String> comparison) {
        ReportForm as = ReportForm.require(form);
        ReportTable table = files.parts(effects.effect(
                Paging.uuid("id", id),
                taxonGroup,
                months,
                seasonWindow,
                yearsBefore,
                yearsAfter,
                beyondMetres,
                windowMetres,
                comparison));
        return Response.ok(files.write(table, as), as.mediaType())
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + as.fileName(table) + '"')
                .build();
    }
}
