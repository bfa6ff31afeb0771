package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.AccountService;
import org.culvert.platform.account.OwnForm;
import org.culvert.web.words.AccountWords;
import org.jspecify.annotations.Nullable;

/** The accounts of the server, for administrators. */
@OwnForm(peopleOnly = true)
@Path("/accounts")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed(Role.ADMIN)
public class AccountsPageResource {
    private static final int ACCOUNTS_A_PAGE = 50;
    private static final Pattern USERNAME = Pattern.compile("[\\p{L}\\p{N}._@-]{1,100}");

    private final Template page;
    private final AccountService accounts;
    private final Languages languages;

    AccountsPageResource(@Location("accounts.html") Template page, AccountService accounts, Languages languages) {
        this.page = page;
        this.accounts = accounts;
        this.languages = languages;
    }

    private AccountWords words() {
        return languages.words(AccountWords.class);
    }

    @GET
    @RolesAllowed(Role.ADMIN)
    public Response show(@QueryParam("cursor") @Nullable String cursor) {
        return page(200, Paging.cursor(cursor), null, null, null);
    }

    @POST
    @RolesAllowed(Role.ADMIN)
    public Response invite(
            @FormParam("username") @Nullable String username,
            @FormParam("roles") @Nullable List<String> roles,
            @FormParam("csrf") @Nullable String csrf,
            @Context UriInfo uri) {
        String name = username == null ? "" : username.strip();
        if (!USERNAME.matcher(name).matches()) {
            return wrong(400, words().nameWanted(), name, roles);
        }
        if (roles == null || roles.isEmpty()) {
            return wrong(400, words().rolesWanted(), name, roles);
        }
        if (accounts.findId(name).isPresent()) {
            return wrong(409, words().nameTaken(), name, roles);
        }
        try {
            UUID id = accounts.createAccount(name, null, Set.copyOf(roles), null, null);
            return page(200, null, null, whole(uri, accounts.invite(id)), name);
        } catch (InvalidException e) {
            return wrong(400, e.errors().get(0).detail(), name, roles);
        }
    }

    @POST
    @Path("/{id}/reset-link")
    @RolesAllowed(Role.ADMIN)
    public Response makeResetLink(
            @PathParam("id") String id, @FormParam("csrf") @Nullable String csrf, @Context UriInfo uri) {
        UUID account = Paging.uuid("id", id);
        try {
            return page(
                    200,
                    null,
                    null,
                    whole(uri, accounts.makeResetLink(account)),
                    accounts.getAccount(account).username());
        } catch (ConflictException e) {
            return page(409, null, e.getMessage(), null, null);
        }
    }

    @POST
    @Path("/{id}/disabling")
    @RolesAllowed(Role.ADMIN)
    public Response disable(@PathParam("id") String id, @FormParam("csrf") @Nullable String csrf) {
        try {
            accounts.disable(Paging.uuid("id", id));
        } catch (ConflictException e) {
            return page(409, null, e.getMessage(), null, null);
        }
        return Response.seeOther(URI.create("/accounts")).build();
    }

    private static String whole(UriInfo uri, String path) {
        return uri.getBaseUri().resolve(path).toString();
    }

    private Response page(
            int status, @Nullable UUID after, @Nullable String wrong, @Nullable String link, @Nullable String linkFor) {
        return page(status, after, wrong, link, linkFor, "", List.of());
    }

    /** What was typed stands there again beside what is wrong with it. */
    private Response wrong(int status, String wrong, String typed, @Nullable List<String> chosen) {
        return page(status, null, wrong, null, null, typed, chosen == null ? List.of() : chosen);
    }

    private Response page(
            int status,
            @Nullable UUID after,
            @Nullable String wrong,
            @Nullable String link,
            @Nullable String linkFor,
            String typed,
            List<String> chosen) {
        Page<AccountService.AccountView> shown = accounts.listAccounts(ACCOUNTS_A_PAGE, after);
        return Response.status(status)
                .entity(page.data("accounts", shown.items())
                        .data("next", shown.next())
                        .data("roles", Role.ALL)
                        .data("wrong", wrong)
                        .data("link", link)
                        .data("linkFor", linkFor)
                        .data("typed", typed)
                        .data("chosen", chosen))
                .build();
    }
}
