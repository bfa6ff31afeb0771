package org.culvert.exchange.reports;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.time.LocalDate;
import org.culvert.hotspot.CollisionCountService;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.jspecify.annotations.Nullable;

/** Collisions by road and year as a table. */
@Ledgered
@Path("/api/collision-counts.csv")
public class CollisionCountFileResource {
    private final ReportFileService files;
    private final CollisionCountService counts;

    CollisionCountFileResource(ReportFileService files, CollisionCountService counts) {
        this.files = files;
        this.counts = counts;
    }

    /** Collisions by road and year. */
    @GET
    @RolesAllowed({Role.ROADS_AUTHORITY, Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    @APIResponse(
            responseCode = "200",
            description = "The counts",
            content = @Content(mediaType = ReportForm.CSV, schema = @Schema(type = SchemaType.STRING)))
    public Response counts(
            @QueryParam("taxonGroup") @Nullable String taxonGroup,
            @QueryParam("seasonWindow") @Nullable String seasonWindow,
            @QueryParam("from") @Nullable String from,
            @QueryParam("to") @Nullable String to) {
        ReportTable table = files.counts(counts.count(taxonGroup, seasonWindow, day("from", from), day("to", to)));
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
