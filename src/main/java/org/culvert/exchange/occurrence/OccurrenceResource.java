package org.culvert.exchange.occurrence;

import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.nio.file.Files;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Occurrences for others, agreements with those who get them exactly, and what went out under them. */
@Ledgered
@Path("/api")
public class OccurrenceResource {
    /** Why an agreement is ended before its time. */
    public record EndingEntry(@NotBlank @Size(max = 2000) String reason) {}

    private final OccurrenceService occurrences;
    private final ArchiveService archives;
    private final AgreementService agreements;

    OccurrenceResource(OccurrenceService occurrences, ArchiveService archives, AgreementService agreements) {
        this.occurrences = occurrences;
        this.archives = archives;
        this.agreements = agreements;
    }

    /**
     * What was found where and when, with the field names of Darwin Core.
     *
     * @param taxonGroup key of a group
     * @param from first day; of what is told to the year alone, the year counts
     * @param to last day
     * @param bbox west, south, east, north; of what is told to a cell alone, its centre counts
     */
    @GET
    @Path("/occurrences")
    @PermitAll
    public Page<OccurrenceView> listOccurrences(
            @QueryParam("taxonGroup") @Nullable String taxonGroup,
            @QueryParam("from") @Nullable String from,
            @QueryParam("to") @Nullable String to,
            @QueryParam("bbox") @Nullable String bbox,
            @QueryParam("limit") @Nullable Integer limit,
            @QueryParam("cursor") @Nullable String cursor,
            @QueryParam("asOf") @Nullable String asOf) {
        requireNow(asOf);
        return occurrences.listOccurrences(
                OccurrenceFilter.read(taxonGroup, from, to, bbox), Paging.limit(limit), cursor);
    }

    /**
     * The same as a Darwin Core Archive: {@code occurrence.csv}, {@code meta.xml} and {@code eml.xml} in a zip. What a caller
     * said of the place is in none, whoever asks.
     *
     * @param taxonGroup key of a group
     * @param from first day; of what is told to the year alone, the year counts
     * @param to last day
     * @param bbox west, south, east, north; of what is told to a cell alone, its centre counts
     */
    @GET
    @Path("/occurrences/archive.zip")
    @Produces("application/zip")
    @PermitAll
    public Response getArchive(
            @QueryParam("taxonGroup") @Nullable String taxonGroup,
            @QueryParam("from") @Nullable String from,
            @QueryParam("to") @Nullable String to,
            @QueryParam("bbox") @Nullable String bbox,
            @QueryParam("asOf") @Nullable String asOf) {
        requireNow(asOf);
        java.nio.file.Path file = archives.make(OccurrenceFilter.read(taxonGroup, from, to, bbox));
        StreamingOutput octets = out -> {
            try {
                Files.copy(file, out);
            } finally {
                Files.deleteIfExists(file);
            }
        };
        return Response.ok(octets)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"occurrences.zip\"")
                .header(HttpHeaders.VARY, "Authorization, Cookie")
                .build();
    }

    private void requireNow(@Nullable String asOf) {
        if (asOf != null && !occurrences.tellsExactly()) {
            throw InvalidException.of(
                    "asOf",
                    "Occurrences are told to you as they are now.",
                    "no asOf: what is sensitive now counts, and what went out is kept");
        }
    }

    @POST
    @Path("/agreements")
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public AgreementService.AgreementView makeAgreement(@NotNull @Valid AgreementService.AgreementEntry entry) {
        return agreements.make(entry);
    }

    @GET
    @Path("/agreements")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public Page<AgreementService.AgreementView> listAgreements(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return agreements.listAgreements(Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Path("/agreements/{id}")
    @Tagged
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER, Role.ADMIN})
    public AgreementService.AgreementView getAgreement(@PathParam("id") String id) {
        return agreements.getAgreement(Paging.uuid("id", id));
    }

    @POST
    @Path("/agreements/{id}/ending")
    @NeedsTag("agreement")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public AgreementService.AgreementView endAgreement(@PathParam("id") String id, @NotNull @Valid EndingEntry ending) {
        return agreements.end(Paging.uuid("id", id), ending.reason());
    }

    @GET
    @Path("/disclosures")
    @RolesAllowed({Role.COORDINATOR, Role.OFFICER})
    public Page<AgreementService.DisclosureView> listDisclosures(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return agreements.listDisclosures(Paging.limit(limit), Paging.cursor(cursor));
    }
}
