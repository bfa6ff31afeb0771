package org.culvert.platform.personal;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.time.Instant;
import java.util.List;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.KeepsNothing;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jspecify.annotations.Nullable;

/** People of whom the network has personal data, and what they may ask of it. */
@Ledgered
@Path("/api/people")
public class PeopleResource {
    /** Why it is done. */
    public record ReasonEntry(@NotBlank @Size(max = 2000) String reason) {}

    /**
     * A request to be erased.
     *
     * @param askedAt when they asked
     * @param reason what they said, if anything; it is erased with them
     */
    public record ErasureRequestEntry(
            @NotNull Instant askedAt,
            @Nullable @Size(max = 2000) String reason) {}

    private final PeopleService people;
    private final PersonDossier dossier;

    PeopleResource(PeopleService people, PersonDossier dossier) {
        this.people = people;
        this.dossier = dossier;
    }

    @POST
    @Path("/search")
    @KeepsNothing
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public List<PersonView> findPeople(@NotNull @Valid PeopleService.PersonSought sought) {
        return people.find(sought);
    }

    @GET
    @Path("/{id}")
    @Tagged
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public PersonView getPerson(@PathParam("id") String id) {
        return people.getPerson(Paging.uuid("id", id));
    }

    /** Everything held about a person, to be given to that person. */
    @GET
    @Path("/{id}/data")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public PersonData getData(@PathParam("id") String id) {
        return dossier.gather(Paging.uuid("id", id));
    }

    @POST
    @Path("/{id}/hiding")
    @NeedsTag("person")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public PersonView hide(@PathParam("id") String id, @NotNull @Valid ReasonEntry entry) {
        return people.hide(Paging.uuid("id", id), entry.reason());
    }

    @POST
    @Path("/{id}/showing")
    @NeedsTag("person")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public PersonView show(@PathParam("id") String id, @NotNull @Valid ReasonEntry entry) {
        return people.show(Paging.uuid("id", id), entry.reason());
    }

    @POST
    @Path("/{id}/erasure-request")
    @NeedsTag("person")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public PersonView requestErasure(@PathParam("id") String id, @NotNull @Valid ErasureRequestEntry entry) {
        return people.requestErasure(Paging.uuid("id", id), entry.askedAt(), entry.reason());
    }
}
