package org.culvert.exchange.records;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.io.InputStream;
import java.net.URI;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.culvert.exchange.reading.Separator;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Files of old records: brought, looked through, decided how to be read, called off. */
@Ledgered
@Path("/api/record-files")
public class RecordFileResource {
    private static final int MOST_HEADING_ROW = 40;

    private final RecordFileService files;
    private final RecordReadingService readings;

    RecordFileResource(RecordFileService files, RecordReadingService readings) {
        this.files = files;
        this.readings = readings;
    }

    /**
     * Keeps a table of old records, saved as text, and looks through it. Nothing is entered yet.
     *
     * @param fileName what the file is called; years in it are those that it says it is of
     */
    @POST
    @Consumes({"text/csv", MediaType.TEXT_PLAIN, "text/tab-separated-values", MediaType.APPLICATION_OCTET_STREAM})
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RestResponse<RecordFileView> bringFile(
            @QueryParam("fileName") @Nullable String fileName, InputStream octets) {
        RecordFileView file = files.bring(fileName, octets);
        return RestResponse.ResponseBuilder.<RecordFileView>created(URI.create("/api/record-files/" + file.id()))
                .entity(file)
                .build();
    }

    /** Files, the newest first, without what was found in them. */
    @GET
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Page<RecordFileView> listFiles(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return files.listFiles(Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RecordFileView getFile(@PathParam("id") String id) {
        return files.getFile(Paging.uuid("id", id));
    }

    /**
     * What the file shows if its text is taken apart in another way. What is left out is as the file tells it.
     *
     * @param encoding such as {@code windows-1252}
     * @param separator {@code comma}, {@code semicolon}, {@code tab} or {@code bar}
     * @param headingRow number of the row of headings, from 1; 0 where there is none
     */
    @GET
    @Path("/{id}/inspection")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RecordInspectionView inspectFile(
            @PathParam("id") String id,
            @QueryParam("encoding") @Nullable String encoding,
            @QueryParam("separator") @Nullable String separator,
            @QueryParam("headingRow") @Nullable Integer headingRow) {
        if (headingRow != null && (headingRow < 0 || headingRow > MOST_HEADING_ROW)) {
            throw InvalidException.of("headingRow", "No headings stand there.", "0 to " + MOST_HEADING_ROW);
        }
        return files.inspect(
                Paging.uuid("id", id),
                encoding,
                separator == null ? null : separator(separator),
                headingRow == null ? null : headingRow.longValue());
    }

    /** Decides how the file is to be read. A decision never changes; another one takes its place. */
    @POST
    @Path("/{id}/reading")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RecordReadingView decideReading(@PathParam("id") String id, @NotNull @Valid RecordReadingEntry entry) {
        return readings.decide(Paging.uuid("id", id), entry);
    }

    /** How the file is to be read, as was decided last. */
    @GET
    @Path("/{id}/reading")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RecordReadingView getReading(@PathParam("id") String id) {
        return readings.getReading(Paging.uuid("id", id));
    }

    /** Forgets what the file holds. That it was there, and why it is not wanted, stays. */
    @POST
    @Path("/{id}/calling-off")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RecordFileView callOffFile(
            @PathParam("id") String id, @NotNull @Valid RecordFileService.CallingOffEntry entry) {
        return files.callOff(Paging.uuid("id", id), entry);
    }

    private static Separator separator(String name) {
        for (Separator one : Separator.values()) {
            if (one.name().equals(name)) {
                return one;
            }
        }
        throw InvalidException.of(
                "separator",
                "No such sign separates cells.",
                Arrays.stream(Separator.values()).map(Enum::name).collect(Collectors.joining(", ", "one of ", "")));
    }
}
