package org.culvert.exchange.annualreturn;

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
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.file.KeptFiles;
import org.culvert.platform.ledger.Ledgered;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Annual returns of holders: drafts, what was signed, and supplements. */
@Ledgered
@Path("/api/annual-returns")
public class AnnualReturnResource {
    private static final String CSV = "text/csv";

    private final AnnualReturnService returns;
    private final SupplementService supplements;

    AnnualReturnResource(AnnualReturnService returns, SupplementService supplements) {
        this.returns = returns;
        this.supplements = supplements;
    }

    /**
     * A return as it would be signed now; with {@code asOf}, as it would have been then.
     *
     * @param formId whose form
     * @param memberId whose return, or an organisation's
     * @param from first day of the period
     */
    @GET
    @Path("/draft")
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public ReturnDraft getDraft(
            @QueryParam("formId") @Nullable String formId,
            @QueryParam("memberId") @Nullable String memberId,
            @QueryParam("organisationId") @Nullable String organisationId,
            @QueryParam("from") @Nullable String from) {
        return returns.draft(
                Paging.uuid("formId", told("formId", formId, "the identifier of a form")),
                identifier("memberId", memberId),
                identifier("organisationId", organisationId),
                Paging.day("from", told("from", from, "the first day of a period")));
    }

    /** Freezes a return as it stands now, to the octet. */
    @POST
    @Path("/signing")
    @RolesAllowed({Role.CARER, Role.COORDINATOR})
    public RestResponse<AnnualReturnService.AnnualReturnView> sign(
            @NotNull @Valid AnnualReturnService.SigningEntry entry) {
        AnnualReturnService.AnnualReturnView signed = returns.sign(entry);
        return RestResponse.ResponseBuilder.<AnnualReturnService.AnnualReturnView>created(
                        URI.create("/api/annual-returns/" + signed.id()))
                .entity(signed)
                .build();
    }

    /** Signed returns, newest first. */
    @GET
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public Page<AnnualReturnService.AnnualReturnView> listReturns(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return returns.listReturns(Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Path("/{id}")
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public AnnualReturnService.AnnualReturnView getReturn(@PathParam("id") String id) {
        return returns.getReturn(Paging.uuid("id", id));
    }

    /** The octets that were signed: JSON with keys in order and no spaces between. */
    @GET
    @Path("/{id}/document")
    @Produces(KeptFiles.JSON)
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public Response getDocument(@PathParam("id") String id) {
        return frozen(returns.getDocument(Paging.uuid("id", id)));
    }

    /** The table that was signed, to the octet, with the columns of the form. */
    @GET
    @Path("/{id}/table")
    @Produces(CSV)
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public Response getTable(@PathParam("id") String id) {
        return frozen(returns.getTable(Paging.uuid("id", id)));
    }

    /** What changed since the return, or its last supplement, was signed, and nothing else. */
    @GET
    @Path("/{id}/changes")
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public ReturnChanges getChanges(@PathParam("id") String id) {
        return supplements.changes(Paging.uuid("id", id));
    }

    /** Freezes what changed since, line by line with what it was before. */
    @POST
    @Path("/{id}/supplements")
    @RolesAllowed({Role.CARER, Role.COORDINATOR})
    public RestResponse<SupplementService.ReturnSupplementView> signSupplement(
            @PathParam("id") String id, @NotNull @Valid SupplementService.SupplementEntry entry) {
        UUID returnId = Paging.uuid("id", id);
        SupplementService.ReturnSupplementView signed = supplements.sign(returnId, entry);
        return RestResponse.ResponseBuilder.<SupplementService.ReturnSupplementView>created(
                        URI.create("/api/annual-returns/" + returnId + "/supplements/" + signed.number()))
                .entity(signed)
                .build();
    }

    @GET
    @Path("/{id}/supplements")
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public List<SupplementService.ReturnSupplementView> listSupplements(@PathParam("id") String id) {
        return supplements.listSupplements(Paging.uuid("id", id));
    }

    @GET
    @Path("/{id}/supplements/{number}")
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public SupplementService.ReturnSupplementView getSupplement(
            @PathParam("id") String id, @PathParam("number") String number) {
        return supplements.getSupplement(Paging.uuid("id", id), count(number));
    }

    @GET
    @Path("/{id}/supplements/{number}/document")
    @Produces(KeptFiles.JSON)
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public Response getSupplementDocument(@PathParam("id") String id, @PathParam("number") String number) {
        return frozen(supplements.getDocument(Paging.uuid("id", id), count(number)));
    }

    @GET
    @Path("/{id}/supplements/{number}/table")
    @Produces(CSV)
    @RolesAllowed({Role.CARER, Role.COORDINATOR, Role.OFFICER})
    public Response getSupplementTable(@PathParam("id") String id, @PathParam("number") String number) {
        return frozen(supplements.getTable(Paging.uuid("id", id), count(number)));
    }

    private static String told(String field, @Nullable String value, String wanted) {
        if (value == null) {
            throw InvalidException.of(field, "It is not told.", wanted);
        }
        return value;
    }

    private static @Nullable UUID identifier(String field, @Nullable String value) {
        return value == null ? null : Paging.uuid(field, value);
    }

    private static int count(String number) {
        if (!number.matches("[1-9][0-9]{0,8}")) {
            throw InvalidException.of("number", "This is no number of a supplement.", "1 or more");
        }
        return Integer.parseInt(number);
    }

    private static Response frozen(KeptFiles.Content file) {
        return Response.ok(file.octets())
                .type(file.mediaType())
                .header(HttpHeaders.CACHE_CONTROL, "private, no-cache")
                .header(HttpHeaders.VARY, "Authorization, Cookie")
                .header("X-Content-Type-Options", "nosniff")
                .build();
    }
}
