package org.culvert.taxon;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;

/** How laws list taxa. */
@Ledgered
@Path("/api/species-listings")
public class ListingResource {
    private final ListingService listings;

    ListingResource(ListingService listings) {
        this.listings = listings;
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER, Role.ADMIN})
    public List<ListingService.SpeciesListingView> listListings() {
        return listings.listListings();
    }

    @GET
    @Tagged
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER, Role.ADMIN})
    public ListingService.SpeciesListingView getListing(@PathParam("id") String id) {
        return listings.getListing(Paging.uuid("id", id));
    }

    @POST
    @ResponseStatus(201)
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public ListingService.SpeciesListingView createListing(@NotNull @Valid ListingService.ListingEntry entry) {
        return listings.createListing(entry);
    }

    @POST
    @NeedsTag("species-listing")
    @Path("/{id}/reviews")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public ListingService.SpeciesListingView review(
            @PathParam("id") String id, @NotNull @Valid ListingService.ListingReview review) {
        return listings.review(Paging.uuid("id", id), review);
    }
}
