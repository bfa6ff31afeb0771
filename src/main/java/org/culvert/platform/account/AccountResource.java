package org.culvert.platform.account;

import jakarta.annotation.security.RolesAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import java.util.Set;
import java.util.UUID;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.ledger.Ledgered;
import org.culvert.platform.ledger.NeedsTag;
import org.culvert.platform.ledger.ShownOnce;
import org.culvert.platform.ledger.Tagged;
import org.jboss.resteasy.reactive.ResponseStatus;
import org.jspecify.annotations.Nullable;

/** Accounts, kept by administrators. */
@Ledgered
@Path("/api/accounts")
public class AccountResource {
    /**
     * A new account.
     *
     * @param password its password; left out, the answer holds a link by which its person sets one
     * @param memberId the member of the roster who signs in with it, if one does
     * @param organisationId the organisation it works for, if one
     */
    public record AccountEntry(
            @NotBlank
            @Size(max = 100)
            @Pattern(regexp = "[\\p{L}\\p{N}._@-]*", message = "must be letters, digits, dots, dashes, _ or @")
            String username,

            @Nullable @Size(min = 12, max = 72, message = "must have 12 to 72 characters")
            String password,

            @NotEmpty Set<@NotBlank String> roles,
            @Nullable UUID memberId,
            @Nullable UUID organisationId) {}

    /** Other roles for an account. */
    public record RolesEntry(@NotEmpty Set<@NotBlank String> roles) {}

    /**
     * An account that was just made.
     *
     * @param invitation path of the link by which its person sets a password, once; null where a password was given
     */
    public record AccountMade(
            UUID id, String username, @Nullable String invitation) {}

    /**
     * A link that was just made.
     *
     * @param link its path; the server sends no mail, so whoever asked for it hands it over
     */
    public record LinkMade(String link) {}

    private final AccountService accounts;

    AccountResource(AccountService accounts) {
        this.accounts = accounts;
    }

    @GET
    @RolesAllowed(Role.ADMIN)
    public Page<AccountService.AccountView> listAccounts(
            @QueryParam("limit") @Nullable Integer limit, @QueryParam("cursor") @Nullable String cursor) {
        return accounts.listAccounts(Paging.limit(limit), Paging.cursor(cursor));
    }

    @GET
    @Path("/{id}")
    @Tagged
    @RolesAllowed(Role.ADMIN)
    public AccountService.AccountView getAccount(@PathParam("id") String id) {
        return accounts.getAccount(Paging.uuid("id", id));
    }

    @POST
    @ShownOnce
    @ResponseStatus(201)
    @RolesAllowed(Role.ADMIN)
    public AccountMade create(@NotNull @Valid AccountEntry entry) {
        UUID id = accounts.createAccount(
                entry.username(), entry.password(), entry.roles(), entry.memberId(), entry.organisationId());
        return new AccountMade(id, entry.username(), entry.password() == null ? accounts.invite(id) : null);
    }

    @POST
    @Path("/{id}/reset-links")
    @ShownOnce
    @ResponseStatus(201)
    @RolesAllowed(Role.ADMIN)
    public LinkMade makeResetLink(@PathParam("id") String id) {
        return new LinkMade(accounts.makeResetLink(Paging.uuid("id", id)));
    }

    @POST
    @Path("/{id}/disabling")
    @NeedsTag("account")
    @RolesAllowed(Role.ADMIN)
    public AccountService.AccountView disable(@PathParam("id") String id) {
        return accounts.disable(Paging.uuid("id", id));
    }

    @POST
    @Path("/{id}/enabling")
    @NeedsTag("account")
    @RolesAllowed(Role.ADMIN)
    public AccountService.AccountView enable(@PathParam("id") String id) {
        return accounts.enable(Paging.uuid("id", id));
    }

    @PUT
    @Path("/{id}/roles")
    @NeedsTag("account")
    @RolesAllowed(Role.ADMIN)
    public AccountService.AccountView setRoles(@PathParam("id") String id, @NotNull @Valid RolesEntry entry) {
        return accounts.setRoles(Paging.uuid("id", id), entry.roles());
    }
}
