package org.culvert.platform.account;

import io.vertx.core.http.Cookie;
import io.vertx.core.http.CookieSameSite;
import io.vertx.ext.web.RoutingContext;
import org.jspecify.annotations.Nullable;

/**
 * The cookie of a session: no script reads it, no other site sends it with a form, and where the connection is secret it
 * goes over secret connections to this host alone (RFC 6265bis, sections 4.1.2.5 to 4.1.3.2, from memory).
 */
final class SessionCookie {
    private static final String NAME = "culvert";
    private static final String HOST_NAME = "__Host-culvert";

    private SessionCookie() {}

    static @Nullable String read(RoutingContext context) {
        Cookie cookie = context.request().getCookie(name(context));
        return cookie == null || cookie.getValue().isEmpty() ? null : cookie.getValue();
    }

    static void write(RoutingContext context, String secret) {
        context.response().addCookie(cookie(context, secret));
    }

    static void drop(RoutingContext context) {
        context.response().addCookie(cookie(context, "").setMaxAge(0));
    }

    private static Cookie cookie(RoutingContext context, String value) {
        return Cookie.cookie(name(context), value)
                .setHttpOnly(true)
                .setSecure(context.request().isSSL())
                .setSameSite(CookieSameSite.LAX)
                .setPath("/");
    }

    /** Over plain HTTP a browser keeps no {@code __Host-} cookie; that is this machine alone, or a proxy said so. */
    private static String name(RoutingContext context) {
        return context.request().isSSL() ? HOST_NAME : NAME;
    }
}
