package org.culvert.web;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
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
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.culvert.platform.CulvertException;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.account.AccountResource;
import org.culvert.platform.account.AccountService;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.ledger.SeenRecords;
import org.culvert.web.words.AccountWords;
import org.jspecify.annotations.Nullable;

/** The accounts of the server, for administrators. */
@OwnForm(peopleOnly = true)
@Path("/accounts")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed(Role.ADMIN)
public class AccountsPageResource {
    private static final int ACCOUNTS_A_PAGE = 50;
    private static final String TAG = "account";
    private static final URI LIST = URI.create("/accounts");

    /** A link that is shown once, and whose it is. */
    private record Link(String address, String username) {}

    /** A form that was not taken, as it was typed. */
    private record Sent(String username, List<String> roles) {
        static final Sent NOTHING = new Sent("", List.of());
    }

    private final Template page;
    private final AccountService accounts;
    private final Languages languages;
    private final PageForms forms;
    private final FormBodies bodies;
    private final SeenRecords seen;

    AccountsPageResource(
            @Location("accounts.html") Template page,
            AccountService accounts,
            Languages languages,
            PageForms forms,
            FormBodies bodies,
            SeenRecords seen) {
        this.page = page;
        this.accounts = accounts;
        this.languages = languages;
        this.forms = forms;
        this.bodies = bodies;
        this.seen = seen;
    }

    @GET
    @RolesAllowed(Role.ADMIN)
    public Response show(@QueryParam("cursor") @Nullable String cursor) {
        return page(200, Paging.cursor(cursor), List.of(), null, Sent.NOTHING);
    }

    @POST
    @RolesAllowed(Role.ADMIN)
    public Response invite(
            @FormParam("username") @Nullable String username,
            @FormParam("roles") @Nullable List<String> roles,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf,
            @Context UriInfo uri) {
        var typed = new Sent(Objects.requireNonNullElse(username, "").strip(), given(roles));
        AtomicReference<@Nullable Link> made = new AtomicReference<>();
        Response done = forms.once(
                "/accounts",
                key,
                Map.of("username", typed.username(), "roles", typed.roles()),
                () -> {
                    AccountResource.AccountEntry entry = bodies.read(body(typed), AccountResource.AccountEntry.class);
                    if (accounts.findId(entry.username()).isPresent()) {
                        throw InvalidException.of("username", words().nameTaken(), words().nameAnother());
                    }
                    UUID id = accounts.createAccount(entry.username(), null, entry.roles(), null, null);
                    made.set(new Link(whole(uri, accounts.invite(id)), entry.username()));
                    return LIST;
                },
                (why, errors) -> page(why.status(), null, said(errors), null, typed));
        return shownOnce(done, made.get());
    }

    @POST
    @Path("/{id}/reset-link")
    @RolesAllowed(Role.ADMIN)
    public Response makeResetLink(
            @PathParam("id") String id, @FormParam("csrf") @Nullable String csrf, @Context UriInfo uri) {
        UUID account = Paging.uuid("id", id);
        AtomicReference<@Nullable Link> made = new AtomicReference<>();
        Response done = forms.tried(
                () -> {
                    made.set(new Link(
                            whole(uri, accounts.makeResetLink(account)),
                            accounts.getAccount(account).username()));
                    return LIST;
                },
                this::again);
        return shownOnce(done, made.get());
    }

    @POST
    @Path("/{id}/disabling")
    @RolesAllowed(Role.ADMIN)
    public Response disable(
            @PathParam("id") String id,
            @FormParam("seen") @Nullable String tag,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        UUID account = Paging.uuid("id", id);
        return changed("disabling", account, tag, key, List.of(), () -> accounts.disable(account));
    }

    @POST
    @Path("/{id}/enabling")
    @RolesAllowed(Role.ADMIN)
    public Response enable(
            @PathParam("id") String id,
            @FormParam("seen") @Nullable String tag,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        UUID account = Paging.uuid("id", id);
        return changed("enabling", account, tag, key, List.of(), () -> accounts.enable(account));
    }

    @POST
    @Path("/{id}/roles")
    @RolesAllowed(Role.ADMIN)
    public Response setRoles(
            @PathParam("id") String id,
            @FormParam("roles") @Nullable List<String> roles,
            @FormParam("seen") @Nullable String tag,
            @FormParam("key") @Nullable String key,
            @FormParam("csrf") @Nullable String csrf) {
        UUID account = Paging.uuid("id", id);
        List<String> chosen = given(roles);
        return changed(
                "roles",
                account,
                tag,
                key,
                chosen,
                () -> accounts.setRoles(
                        account,
                        bodies.read(rolesOf(chosen), AccountResource.RolesEntry.class)
                                .roles()));
    }

    private Response changed(
            String act, UUID account, @Nullable String tag, @Nullable String key, List<String> told, Runnable change) {
        accounts.getAccount(account);
        return forms.once(
                "/accounts/" + account + "/" + act,
                key,
                told,
                () -> {
                    seen.requireUnchanged(TAG, account.toString(), tag);
                    change.run();
                    return LIST;
                },
                this::again);
    }

    private Response again(CulvertException why, List<FieldError> errors) {
        return page(why.status(), null, said(errors), null, Sent.NOTHING);
    }

    private AccountWords words() {
        return languages.words(AccountWords.class);
    }

    /** What is wrong with a name or with roles in the words of the page. */
    private List<FieldError> said(List<FieldError> errors) {
        return errors.stream()
                .map(error -> error.field().equals("roles")
                        ? new FieldError("roles", words().rolesWanted(), words().rolesOneOrMore(), null)
                        : error)
                .toList();
    }

    private static ObjectNode body(Sent typed) {
        return rolesOf(typed.roles()).put("username", typed.username());
    }

    private static ObjectNode rolesOf(List<String> chosen) {
        ObjectNode body = JsonNodeFactory.instance.objectNode();
        var roles = body.putArray("roles");
        chosen.forEach(roles::add);
        return body;
    }

    private static List<String> given(@Nullable List<String> roles) {
        return roles == null ? List.of() : roles;
    }

    private static String whole(UriInfo uri, String path) {
        return uri.getBaseUri().resolve(path).toString();
    }

    private Response shownOnce(Response done, @Nullable Link link) {
        return link != null && done.getStatus() == Response.Status.SEE_OTHER.getStatusCode()
                ? page(200, null, List.of(), link, Sent.NOTHING)
                : done;
    }

    private Response page(int status, @Nullable UUID after, List<FieldError> errors, @Nullable Link link, Sent typed) {
        Page<AccountService.AccountView> shown = accounts.listAccounts(ACCOUNTS_A_PAGE, after);
        Map<UUID, String> tags = new HashMap<>();
        shown.items().forEach(one -> tags.put(one.id(), seen.tag(TAG, one.id().toString())));
        return Response.status(status)
                .entity(page.data("accounts", shown.items())
                        .data("tags", tags)
                        .data("next", shown.next())
                        .data("roles", Role.ALL)
                        .data("errors", errors)
                        .data("link", link == null ? null : link.address())
                        .data("linkFor", link == null ? null : link.username())
                        .data("typed", typed.username())
                        .data("chosen", typed.roles())
                        .data("key", UUID.randomUUID().toString()))
                .build();
    }
}
