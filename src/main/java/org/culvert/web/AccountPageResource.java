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
import java.util.UUID;
import org.culvert.platform.Actor;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Paging;
import org.culvert.platform.SignInException;
import org.culvert.platform.account.AccountService;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.account.PageFrame;
import org.culvert.platform.account.SignInService;
import org.culvert.platform.account.TokenService;
import org.culvert.web.words.AccountWords;
import org.culvert.web.words.FrameWords;
import org.jspecify.annotations.Nullable;

/** One's own account: the password, the programs that sign in with it, and where one is signed in. */
@OwnForm(peopleOnly = true)
@Path("/account")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed("**")
public class AccountPageResource {
    private final Template page;
    private final AccountService accounts;
    private final TokenService tokens;
    private final SignInService signIn;
    private final PageFrame frame;
    private final Actor actor;
    private final Languages languages;

    AccountPageResource(
            @Location("account.html") Template page,
            AccountService accounts,
            TokenService tokens,
            SignInService signIn,
            PageFrame frame,
            Actor actor,
            Languages languages) {
        this.page = page;
        this.accounts = accounts;
        this.tokens = tokens;
        this.signIn = signIn;
        this.frame = frame;
        this.actor = actor;
        this.languages = languages;
    }

    private AccountWords words() {
        return languages.words(AccountWords.class);
    }

    @GET
    @RolesAllowed("**")
    public Response show() {
        return page(200, null, null);
    }

    @POST
    @Path("/password")
    @RolesAllowed("**")
    public Response changePassword(
            @FormParam("before") @Nullable String before,
            @FormParam("password") @Nullable String password,
            @FormParam("again") @Nullable String again,
            @FormParam("csrf") @Nullable String csrf) {
        String wanted = password == null ? "" : password;
        if (!wanted.equals(again)) {
            return page(400, words().notTheSame(), null);
        }
        try {
            if (!signIn.fits(frame.getUsername(), before == null ? "" : before, frame.source())) {
                return page(400, words().notThePassword(), null);
            }
            accounts.changePassword(actor.accountId(), wanted);
        } catch (SignInException e) {
            return page(e.status(), e.getMessage(), null);
        } catch (InvalidException e) {
            return page(400, e.errors().get(0).detail(), null);
        }
        frame.end();
        return Response.seeOther(URI.create("/sign-in?next=/account")).build();
    }

    @POST
    @Path("/tokens")
    @RolesAllowed("**")
    public Response makeToken(
            @FormParam("name") @Nullable String name,
            @FormParam("scopes") @Nullable String scopes,
            @FormParam("csrf") @Nullable String csrf) {
        if (name == null || name.isBlank() || name.length() > 100) {
            return page(400, words().purposeWanted(), null);
        }
        List<String> asked = scopes == null
                ? List.of()
                : Arrays.stream(scopes.strip().split("[\\s,]+"))
                        .filter(scope -> !scope.isEmpty())
                        .toList();
        if (asked.isEmpty() || asked.size() > 50) {
            return page(400, words().scopesWanted(), null);
        }
        try {
            return page(
                    200,
                    null,
                    tokens.make(actor.accountId(), name.strip(), asked, null, null)
                            .token());
        } catch (InvalidException e) {
            InvalidException.FieldError error = e.errors().get(0);
            return page(
                    400,
                    error.detail() + " " + Languages.wordsNow(FrameWords.class).rightWouldBe() + " " + error.wanted()
                            + ".",
                    null);
        }
    }

    @POST
    @Path("/tokens/{id}/revocation")
    @RolesAllowed("**")
    public Response revokeToken(@PathParam("id") String id, @FormParam("csrf") @Nullable String csrf) {
        tokens.revoke(Paging.uuid("id", id), actor.accountId(), false);
        return Response.seeOther(URI.create("/account")).build();
    }

    @POST
    @Path("/sessions/{id}/ending")
    @RolesAllowed("**")
    public Response endSession(@PathParam("id") String id, @FormParam("csrf") @Nullable String csrf) {
        signIn.end(actor.accountId(), Paging.uuid("id", id));
        return Response.seeOther(URI.create("/account")).build();
    }

    private Response page(int status, @Nullable String wrong, @Nullable String token) {
        UUID account = actor.accountId();
        return Response.status(status)
                .entity(page.data("who", accounts.getAccount(account))
                        .data("tokens", tokens.listTokens(account))
                        .data("sessions", signIn.listSessions(account))
                        .data("current", frame.sessionId())
                        .data("wrong", wrong)
                        .data("token", token))
                .build();
    }
}
