package org.culvert.clinic.profile;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.culvert.geo.Position;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Clinics to ask. */
@Ledgered
@Path("/api")
public class ProfileResource {
    private final ProfileService profiles;

    ProfileResource(ProfileService profiles) {
        this.profiles = profiles;
    }

    /** Clinics for an animal of a group, those against which nothing speaks first, then the nearest. */
    @GET
    @Path("/clinics")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR})
    public List<ProfileService.ClinicOption> findClinics(
            @QueryParam("taxonGroup") @NotBlank String taxonGroup,
            @QueryParam("decimalLatitude") @Nullable @DecimalMin("-90") @DecimalMax("90") Double latitude,
            @QueryParam("decimalLongitude") @Nullable @DecimalMin("-180") @DecimalMax("180") Double longitude,
            @QueryParam("needs") @Nullable List<ProfileService.Need> needs,
            @QueryParam("at") @Nullable Instant at) {
        if ((latitude == null) != (longitude == null)) {
            throw InvalidException.of(
                    latitude == null ? "decimalLatitude" : "decimalLongitude",
                    "A position has both.",
                    "decimalLatitude and decimalLongitude, or neither");
        }
        Position from = latitude == null || longitude == null ? null : new Position(latitude, longitude);
        Set<ProfileService.Need> wanted = needs == null || needs.isEmpty() ? Set.of() : EnumSet.copyOf(needs);
        return profiles.findClinics(taxonGroup, from, wanted, at);
    }

    @POST
    @Path("/clinic-profiles")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public RestResponse<ProfileService.ClinicProfileView> enter(@NotNull @Valid ProfileService.ProfileEntry entry) {
        ProfileService.ClinicProfileView view = profiles.enter(entry);
        return RestResponse.ResponseBuilder.<ProfileService.ClinicProfileView>created(
                        URI.create("/api/clinic-profiles/" + view.id()))
                .entity(view)
                .build();
    }

    @GET
    @Tagged
    @Path("/clinic-profiles/{id}")
    @RolesAllowed({Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.ADMIN})
    public ProfileService.ClinicProfileView getProfile(@PathParam("id") String id) {
        return profiles.getProfile(Paging.uuid("id", id));
    }

    /** A correction: what is left out stays, null clears, and the reason is kept with the revision. */
    @PATCH
    @NeedsTag("clinic-profile")
    @Path("/clinic-profiles/{id}")
    @Consumes({Corrections.MERGE_PATCH, MediaType.APPLICATION_JSON})
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public ProfileService.ClinicProfileView correctProfile(
            @PathParam("id") String id, @NotNull @Valid ProfileService.ProfileCorrection correction) {
        return profiles.correct(Paging.uuid("id", id), correction);
    }
}
