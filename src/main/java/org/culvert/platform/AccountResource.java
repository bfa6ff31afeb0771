package org.culvert.platform;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import java.util.Set;
import java.util.UUID;
import org.culvert.platform.ledger.Ledgered;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Accounts, made by an administrator. */
@Ledgered
@Path("/api/accounts")
public class AccountResource {
    /**
     * A new account.
     *
     * @param memberId the member of the roster who signs in with it, if one does
     * @param organisationId the organisation it works for, if one
     */
    public record AccountEntry(
            @NotBlank @Size(max = 100) String username,

            @NotNull @Size(min = 12, max = 72, message = "must have 12 to 72 characters")
            String password,

            @NotEmpty Set<@NotBlank String> roles,
            @Nullable UUID memberId,
            @Nullable UUID organisationId) {}

    public record AccountMade(UUID id, String username) {}

    private final AccountService accounts;

    AccountResource(AccountService accounts) {
        this.accounts = accounts;
    }

    @POST
    @ResponseStatus(201)
    @RolesAllowed(Role.ADMIN)
    public AccountMade create(@NotNull @Valid AccountEntry entry) {
        UUID id = accounts.createAccount(
                entry.username(), entry.password(), entry.roles(), entry.memberId(), entry.organisationId());
        return new AccountMade(id, entry.username());
    }
}
