package org.culvert.platform.account;

import io.quarkus.security.identity.SecurityIdentity;
import io.vertx.core.http.Cookie;
import io.vertx.core.http.CookieSameSite;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.util.UUID;
import org.culvert.platform.Actor;
import org.culvert.platform.DemoMark;
import org.jspecify.annotations.Nullable;

/**
 * What every page shows around its own matter: who is signed in, whether the region is invented, and the secret that its
 * forms send back. Templates know it as {@code inject:frame}.
 */
@Named("frame")
@RequestScoped
public class PageFrame {
    private static final String COOKIE = "culvert-form";

    private final SecurityIdentity identity;
    private final RoutingContext routing;
    private final DemoMark demoMark;

    @Nullable
    String fresh;

    PageFrame(SecurityIdentity identity, RoutingContext routing, DemoMark demoMark) {
        this.identity = identity;
        this.routing = routing;
        this.demoMark = demoMark;
    }

    public boolean isDemo() {
        return demoMark.isSet();
    }

    public boolean isSignedIn() {
        return !identity.isAnonymous();
    }

    /** Whether somebody is signed in who may sign out: a program is never. */
    public boolean isSession() {
        return identity.getAttribute(SignedIn.SESSION_ID) != null;
    }

    public String getUsername() {
        return identity.isAnonymous() ? "" : identity.getPrincipal().getName();
    }

    public boolean has(String role) {
        return identity.hasRole(role);
    }

    /** Whether the page that is asked for is this one, or below it. */
    public boolean isAt(String path) {
        String here = routing.normalizedPath();
        return here.equals(path) || here.startsWith(path + "/");
    }

    /** Whether the page that is asked for is the first one. */
    public boolean isStart() {
        return routing.normalizedPath().equals("/");
    }

    /** The secret for the forms of this page; before anyone has signed in it stands in a cookie of its own. */
    public String getCsrf() {
        String known = findSecret();
        if (known != null) {
            return known;
        }
        if (fresh == null) {
            fresh = Secrets.random();
            routing.response()
                    .addCookie(Cookie.cookie(COOKIE, fresh)
                            .setHttpOnly(true)
                            .setSecure(routing.request().isSSL())
                            .setSameSite(CookieSameSite.STRICT)
                            .setPath("/"));
        }
        return fresh;
    }

    /** The secret that a form of this browser must bring, or null where it was given none. */
    @Nullable
    String findSecret() {
        String ofSession = identity.getAttribute(SignedIn.FORM_SECRET);
        if (ofSession != null) {
            return ofSession;
        }
        Cookie cookie = routing.request().getCookie(COOKIE);
        return cookie == null || cookie.getValue().isEmpty() ? null : cookie.getValue();
    }

    /** Begins to be whoever has just signed in: the cookie is a new one, so that nobody can have laid it before. */
    public void begin(String sessionSecret) {
        SessionCookie.write(routing, sessionSecret);
    }

    /** Forgets the cookie. */
    public void end() {
        SessionCookie.drop(routing);
    }

    /** Address or network from which the request came, as the server or its configured proxy saw it. */
    public String source() {
        return Source.of(routing);
    }

    public @Nullable UUID accountId() {
        return identity.getAttribute(Actor.ACCOUNT_ID);
    }

    public @Nullable UUID sessionId() {
        return identity.getAttribute(SignedIn.SESSION_ID);
    }
}
