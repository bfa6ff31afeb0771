package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Optional;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.SignInException;
import org.culvert.platform.account.AccountService;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.account.PageFrame;
import org.culvert.platform.account.SignInService;
import org.culvert.web.words.AccountWords;
import org.jspecify.annotations.Nullable;

/** Signing in and out by form, and the pages of one-time links. */
@OwnForm
@PermitAll
@Path("/")
@Produces(MediaType.TEXT_HTML)
public class SignInPageResource {
    private static final URI HOME = URI.create("/");

    /** Leads on to where the work of whoever has signed in waits. */
    private static final URI FIRST = URI.create("/first");

    private final Template signIn;
    private final Template link;
    private final SignInService service;
    private final AccountService accounts;
    private final PageFrame frame;
    private final Languages languages;

    SignInPageResource(
            @Location("sign-in.html") Template signIn,
            @Location("one-time-link.html") Template link,
            SignInService service,
            AccountService accounts,
            PageFrame frame,
            Languages languages) {
        this.signIn = signIn;
        this.link = link;
        this.service = service;
        this.accounts = accounts;
        this.frame = frame;
        this.languages = languages;
    }

    private AccountWords words() {
        return languages.words(AccountWords.class);
    }

    @GET
    @Path("sign-in")
    public Response show(@QueryParam("next") @Nullable String next) {
        return page(200, next, "", null);
    }

    @POST
    @Path("sign-in")
    public Response signIn(
            @FormParam("username") @Nullable String username,
            @FormParam("password") @Nullable String password,
            @FormParam("next") @Nullable String next,
            @FormParam("csrf") @Nullable String csrf) {
        String name = username == null ? "" : username.strip();
        Optional<String> session;
        try {
            session = service.signIn(name, password == null ? "" : password, frame.source());
        } catch (SignInException e) {
            return Response.fromResponse(page(e.status(), next, name, e.getMessage()))
                    .header(
                            HttpHeaders.RETRY_AFTER,
                            e.retryAfter() == null
                                    ? 60
                                    : Math.max(1, e.retryAfter().toSeconds()))
                    .build();
        }
        if (session.isEmpty()) {
            return page(401, next, name, words().noSuchAccount());
        }
        UUID before = frame.sessionId();
        UUID account = frame.accountId();
        if (before != null && account != null) {
            service.end(account, before);
        }
        frame.begin(session.get());
        URI to = local(next);
        return Response.seeOther(to.equals(HOME) ? FIRST : to).build();
    }

    @POST
    @Path("sign-out")
    public Response signOut(@FormParam("csrf") @Nullable String csrf) {
        UUID session = frame.sessionId();
        UUID account = frame.accountId();
        if (session != null && account != null) {
            service.end(account, session);
        }
        frame.end();
        return Response.seeOther(HOME).build();
    }

    @GET
    @Path("{purpose: invitation|reset}/{secret}")
    public Response showLink(@PathParam("purpose") String purpose, @PathParam("secret") String secret) {
        return linkPage(200, purpose, secret, null);
    }

    @POST
    @Path("{purpose: invitation|reset}/{secret}")
    public Response setPassword(
            @PathParam("purpose") String purpose,
            @PathParam("secret") String secret,
            @FormParam("password") @Nullable String password,
            @FormParam("again") @Nullable String again,
            @FormParam("csrf") @Nullable String csrf) {
        String wanted = password == null ? "" : password;
        if (!wanted.equals(again)) {
            return linkPage(400, purpose, secret, words().notTheSame());
        }
        try {
            accounts.setPasswordByLink(purpose, secret, wanted);
        } catch (InvalidException e) {
            return linkPage(400, purpose, secret, e.errors().get(0).detail());
        } catch (ConflictException e) {
            return linkPage(409, purpose, secret, e.getMessage());
        }
        frame.end();
        return Response.seeOther(URI.create("/sign-in")).build();
    }

    private Response page(int status, @Nullable String next, String username, @Nullable String wrong) {
        return Response.status(status)
                .entity(signIn.data("next", local(next).toString())
                        .data("username", username)
                        .data("wrong", wrong))
                .build();
    }

    private Response linkPage(int status, String purpose, String secret, @Nullable String wrong) {
        Optional<String> username = accounts.findUsernameOfLink(purpose, secret);
        return Response.status(username.isEmpty() && status == 200 ? 404 : status)
                .entity(link.data("action", "/" + purpose + "/" + secret)
                        .data("first", purpose.equals("invitation"))
                        .data("username", username.orElse(null))
                        .data("wrong", wrong))
                .build();
    }

    /** Where to go on: a place on this server, and nowhere else. */
    static URI local(@Nullable String next) {
        if (next == null || !next.startsWith("/") || next.startsWith("//") || next.contains("\\")) {
            return HOME;
        }
        try {
            URI uri = URI.create(next);
            return uri.isAbsolute() || uri.getRawAuthority() != null ? HOME : uri;
        } catch (IllegalArgumentException e) {
            return HOME;
        }
    }
}
