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
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.Actor;
import org.culvert.platform.CulvertException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Paging;
import org.culvert.platform.account.AccountService;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.account.PageFrame;
import org.culvert.platform.account.SignInService;
import org.culvert.platform.account.TokenService;
import org.culvert.web.words.AccountWords;
import org.jspecify.annotations.Nullable;

/** One's own account: the password, the programs that sign in with it, and where one is signed in. */
@OwnForm(peopleOnly = true)
@Path("/account")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed("**")
public class AccountPageResource {
    private static final URI HERE = URI.create("/account");
    private static final String USUAL_SCOPE = "hotspot-runs:read";
    private static final int LONGEST_NAME = 100;
    private static final int MOST_SCOPES = 50;

    private final Template page;
    private final AccountService accounts;
    private final TokenService tokens;
    private final SignInService signIn;
    private final PageFrame frame;
    private final Actor actor;
    private final Languages languages;
    private final PageForms forms;

    AccountPageResource(
            @Location("account.html") Template page,
            AccountService accounts,
            TokenService tokens,
            SignInService signIn,
            PageFrame frame,
            Actor actor,
            Languages languages,
            PageForms forms) {
        this.page = page;
        this.accounts = accounts;
        this.tokens = tokens;
        this.signIn = signIn;
        this.frame = frame;
        this.actor = actor;
        this.languages = languages;
        this.forms = forms;
    }

    private AccountWords words() {
        return languages.words(AccountWords.class);
    }

    @GET
    @RolesAllowed("**")
    public Response show() {
        return page(200, List.of(), null, "", "");
    }

    @POST
    @Path("/password")
    @RolesAllowed("**")
    public Response changePassword(
            @FormParam("before") @Nullable String before,
            @FormParam("password") @Nullable String password,
            @FormParam("again") @Nullable String again,
            @FormParam("csrf") @Nullable String csrf) {
        String wanted = Objects.requireNonNullElse(password, "");
        return forms.tried(
                () -> {
                    if (!wanted.equals(again)) {
                        throw InvalidException.of("again", words().notTheSame(), words().sameTwice());
                    }
                    if (!signIn.fits(frame.getUsername(), Objects.requireNonNullElse(before, ""), frame.source())) {
                        throw InvalidException.of("before", words().notThePassword(), words().oneSoFar());
                    }
                    accounts.changePassword(actor.accountId(), wanted);
                    frame.end();
                    return URI.create("/sign-in?next=/account");
                },
                this::again);
    }

    @POST
    @Path("/tokens")
    @RolesAllowed("**")
    public Response makeToken(
            @FormParam("name") @Nullable String name,
            @FormParam("scopes") @Nullable String scopes,
            @FormParam("csrf") @Nullable String csrf) {
        return forms.shown(
                () -> {
                    String given = Objects.requireNonNullElse(name, "").strip();
                    if (given.isEmpty() || given.length() > LONGEST_NAME) {
                        throw InvalidException.of("name", words().purposeWanted(), words().purposeAFew());
                    }
                    List<String> asked = Arrays.stream(Objects.requireNonNullElse(scopes, "")
                                    .strip()
                                    .split("[\\s,]+"))
                            .filter(scope -> !scope.isEmpty())
                            .toList();
                    if (asked.isEmpty() || asked.size() > MOST_SCOPES) {
                        throw InvalidException.of("scopes", words().scopesWanted(), USUAL_SCOPE);
                    }
                    return page(
                            200,
                            List.of(),
                            tokens.make(actor.accountId(), given, asked, null, null)
                                    .token(),
                            "",
                            "");
                },
                (why, errors) -> page(
                        why.status(),
                        errors,
                        null,
                        Objects.requireNonNullElse(name, ""),
                        Objects.requireNonNullElse(scopes, "")));
    }

    @POST
    @Path("/tokens/{id}/revocation")
    @RolesAllowed("**")
    public Response revokeToken(@PathParam("id") String id, @FormParam("csrf") @Nullable String csrf) {
        UUID token = Paging.uuid("id", id);
        return forms.tried(
                () -> {
                    tokens.revoke(token, actor.accountId(), false);
                    return HERE;
                },
                this::again);
    }

    @POST
    @Path("/sessions/{id}/ending")
    @RolesAllowed("**")
    public Response endSession(@PathParam("id") String id, @FormParam("csrf") @Nullable String csrf) {
        UUID session = Paging.uuid("id", id);
        return forms.tried(
                () -> {
                    signIn.end(actor.accountId(), session);
                    return HERE;
                },
                this::again);
    }

    private Response again(CulvertException why, List<FieldError> errors) {
        return page(why.status(), errors, null, "", "");
    }

    private Response page(int status, List<FieldError> errors, @Nullable String token, String name, String scopes) {
        UUID account = actor.accountId();
        return Response.status(status)
                .entity(page.data("who", accounts.getAccount(account))
                        .data("tokens", tokens.listTokens(account))
                        .data("sessions", signIn.listSessions(account))
                        .data("current", frame.sessionId())
                        .data("errors", errors)
                        .data("token", token)
                        .data("name", name)
                        .data("scopes", scopes.isEmpty() ? USUAL_SCOPE : scopes))
                .build();
    }
}
