package org.culvert.platform.account;

import io.quarkus.security.identity.SecurityIdentity;
import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.time.Instant;
import java.util.List;
import org.culvert.platform.Actor;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.ShownOnce;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Tokens by which programs sign in: as Bearer (RFC 6750), or as the password of HTTP Basic (RFC 7617). */
@Ledgered
@Path("/api/tokens")
public class TokenResource {
    /**
     * A new token of one's own.
     *
     * @param name what it is for
     * @param scopes such as {@code hotspot-runs:read}; {@code *:read} for all that the account may read
     * @param expiresAt when it ends, or null for one that stands until it is taken back
     */
    public record TokenEntry(
            @NotBlank @Size(max = 100) String name,
            @NotEmpty @Size(max = 50) List<@NotBlank @Size(max = 50) String> scopes,
            @Nullable Instant expiresAt) {}

    private final TokenService tokens;
    private final Actor actor;
    private final SecurityIdentity identity;

    TokenResource(TokenService tokens, Actor actor, SecurityIdentity identity) {
        this.tokens = tokens;
        this.actor = actor;
        this.identity = identity;
    }

    @GET
    @RolesAllowed("**")
    public List<TokenService.TokenView> listTokens() {
        return tokens.listTokens(actor.accountId());
    }

    @POST
    @ShownOnce
    @ResponseStatus(201)
    @RolesAllowed("**")
    public TokenService.TokenMade make(@NotNull @Valid TokenEntry entry) {
        return tokens.make(
                actor.accountId(),
                entry.name(),
                entry.scopes(),
                entry.expiresAt(),
                identity.getAttribute(SignedIn.TOKEN_ID));
    }

    @POST
    @Path("/{id}/revocation")
    @RolesAllowed("**")
    public TokenService.TokenView revoke(@PathParam("id") String id) {
        return tokens.revoke(Paging.uuid("id", id), actor.accountId(), actor.hasRole(Role.ADMIN));
    }
}
