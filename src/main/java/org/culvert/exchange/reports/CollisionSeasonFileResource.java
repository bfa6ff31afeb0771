package org.culvert.exchange.reports;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.time.LocalDate;
import org.culvert.hotspot.when.CollisionSeasonService;
import org.culvert.hotspot.when.SeasonQuestion;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.jspecify.annotations.Nullable;

/** When collisions happened, as a table. */
@Ledgered
@Path("/api/collision-seasons.csv")
public class CollisionSeasonFileResource {
    private final ReportFileService files;
    private final CollisionSeasonService seasons;

    CollisionSeasonFileResource(ReportFileService files, CollisionSeasonService seasons) {
        this.files = files;
        this.seasons = seasons;
    }

    /** When collisions happened, by month, hour and light. */
    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    @APIResponse(
            responseCode = "200",
            description = "The counts",
            content = @Content(mediaType = ReportForm.CSV, schema = @Schema(type = SchemaType.STRING)))
    public Response seasons(
            @QueryParam("periodFrom") @Nullable String periodFrom,
            @QueryParam("periodTo") @Nullable String periodTo,
            @QueryParam("taxonGroup") @Nullable String taxonGroup,
            @QueryParam("comparedWith") @Nullable String comparedWith,
            @QueryParam("owner") @Nullable String owner) {
        ReportTable table = files.seasons(seasons.tell(new SeasonQuestion(
                day("periodFrom", periodFrom), day("periodTo", periodTo), taxonGroup, comparedWith, owner)));
        return Response.ok(files.write(table, ReportForm.csv), ReportForm.csv.mediaType())
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "attachment; filename=\"" + ReportForm.csv.fileName(table) + '"')
                .build();
    }

    private static @Nullable LocalDate day(String field, @Nullable String text) {
        return text == null ? null : Paging.day(field, text);
    }
}
