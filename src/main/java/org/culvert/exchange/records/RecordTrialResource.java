package org.culvert.exchange.records;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Trials of files of old records, their reports by row, and the taking of rows; where an incident came from. */
@Ledgered
@Path("/api")
public class RecordTrialResource {
    private static final String CSV = "text/csv;charset=UTF-8";

    private final TrialService trials;
    private final TrialRows rows;
    private final TakingService takings;
    private final OriginService origins;

    RecordTrialResource(TrialService trials, TrialRows rows, TakingService takings, OriginService origins) {
        this.trials = trials;
        this.rows = rows;
        this.takings = takings;
        this.origins = origins;
    }

    @GET
    @Path("/record-trials/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RecordTrialView getTrial(@PathParam("id") String id) {
        return trials.getTrial(id(id));
    }

    /**
     * The report by row, in the order of the file.
     *
     * @param verdict {@code right}, {@code doubtful}, {@code apart} or {@code refused}
     * @param finding a kind of finding
     * @param after rows behind that one
     */
    @GET
    @Path("/record-trials/{id}/rows")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Page<RecordTrialRowView> listTrialRows(
            @PathParam("id") String id,
            @QueryParam("verdict") @Nullable String verdict,
            @QueryParam("finding") @Nullable String finding,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("after") @Nullable Long after) {
        return rows.list(id(id), verdict, finding, Paging.limit(limit), after);
    }

    /** The report as a table: a line for each row of the file. */
    @GET
    @Path("/record-trials/{id}/report.csv")
    @Produces(CSV)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response getTrialReport(@PathParam("id") String id) {
        UUID trial = id(id);
        rows.requireRows(trial);
        return table("report.csv", out -> rows.writeReport(trial, out));
    }

    /**
     * Rows that were not taken, as they stand in the file, with a column behind them that says what is wrong. Mended, it can be
     * sent as a file of its own.
     *
     * @param apart {@code true}: also rows of domestic animals and repeated ones
     */
    @GET
    @Path("/record-trials/{id}/rest.csv")
    @Produces(CSV)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response getTrialRest(@PathParam("id") String id, @QueryParam("apart") @Nullable String apart) {
        UUID trial = id(id);
        boolean withApart = yes("apart", apart);
        rows.requireRows(trial);
        return table("rest.csv", out -> rows.writeRest(trial, withApart, out));
    }

    /**
     * Takes rows of a trial in, all or none of those that are asked for. It runs in the background: look at {@code Location} for how
     * far it has come.
     */
    @POST
    @Path("/record-trials/{id}/taking")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RestResponse<RecordTakingView> takeRows(
            @PathParam("id") String id, @NotNull @Valid RecordTakingEntry entry) {
        RecordTakingView taking = takings.take(id(id), entry);
        return RestResponse.ResponseBuilder.create(RestResponse.Status.ACCEPTED, taking)
                .location(URI.create("/api/record-takings/" + taking.id()))
                .build();
    }

    @GET
    @Path("/record-takings/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RecordTakingView getTaking(@PathParam("id") String id) {
        return takings.getTaking(id(id));
    }

    /** The rows of old files that an incident came from. */
    @GET
    @Path("/incidents/{id}/origin")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public OriginService.IncidentOriginView getOrigin(@PathParam("id") String id) {
        return origins.getOrigin(id(id));
    }

    /** What writes a table. */
    private interface TableWriter {
        void write(Writer out) throws IOException;
    }

    private static Response table(String fileName, TableWriter writer) {
        StreamingOutput octets = out -> {
            Writer text = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8), 1 << 16);
            writer.write(text);
            text.flush();
        };
        return Response.ok(octets, CSV)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + fileName + "\"")
                .header(HttpHeaders.CACHE_CONTROL, "private, no-store")
                .build();
    }

    private static boolean yes(String field, @Nullable String told) {
        if (told == null || told.equals("false")) {
            return false;
        }
        if (!told.equals("true")) {
            throw InvalidException.of(field, "This is neither true nor false.", "true or false");
        }
        return true;
    }

    private static UUID id(String text) {
        return Paging.uuid("id", text);
    }
}
