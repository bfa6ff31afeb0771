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

/** By which other names taxa go. */
@Ledgered
@Path("/api/taxon-synonyms")
public class SynonymResource {
    private final SynonymService synonyms;

    SynonymResource(SynonymService synonyms) {
        this.synonyms = synonyms;
    }

    @GET
    @RolesAllowed("**")
    public List<SynonymService.TaxonSynonymView> listSynonyms() {
        return synonyms.listSynonyms();
    }

    @GET
    @Tagged
    @Path("/{id}")
    @RolesAllowed("**")
    public SynonymService.TaxonSynonymView getSynonym(@PathParam("id") String id) {
        return synonyms.getSynonym(Paging.uuid("id", id));
    }

    @POST
    @ResponseStatus(201)
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public SynonymService.TaxonSynonymView createSynonym(@NotNull @Valid SynonymService.SynonymEntry entry) {
        return synonyms.createSynonym(entry);
    }

    @POST
    @NeedsTag("taxon-synonym")
    @Path("/{id}/ending")
    @RolesAllowed({Role.ADMIN, Role.COORDINATOR})
    public SynonymService.TaxonSynonymView endSynonym(
            @PathParam("id") String id, @NotNull @Valid SynonymService.SynonymEnding ending) {
        return synonyms.end(Paging.uuid("id", id), ending.reason());
    }
}
