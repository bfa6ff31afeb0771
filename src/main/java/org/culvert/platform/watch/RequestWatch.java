package org.culvert.platform.watch;

import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.quarkus.vertx.http.runtime.security.QuarkusHttpUser;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.culvert.platform.Actor;
import org.jboss.logging.Logger;
import org.jboss.logging.MDC;
import org.jspecify.annotations.Nullable;

/**
 * Stands before every request, of whatever it asks: names it, sees to the headers that depend on it, and writes one line to
 * the log when it is answered.
 */
@ApplicationScoped
class RequestWatch {
    /** The line has no query, no words and no name; what was asked for is told by the operation, not by the address. */
    private static final Logger ACCESS = Logger.getLogger("culvert.access");

    private static final int BEFORE_ALL_OTHERS = 1_000_000;
    /** RFC 6797, section 6.1; a year, for this host alone: what else lies under its name is not ours to bind. */
    private static final String HSTS = "max-age=31536000";

    void register(@Observes Filters filters) {
        filters.register(RequestWatch::watch, BEFORE_ALL_OTHERS);
    }

    private static void watch(RoutingContext context) {
        if (RequestId.find(context) != null) {
            // The same request, led on to another route.
            context.next();
            return;
        }
        long begun = System.nanoTime();
        String id = RequestId.of(context.request().getHeader(RequestId.HEADER));
        context.put(RequestId.KEY, id);
        MDC.put(RequestId.KEY, id);
        HttpServerResponse response = context.response();
        response.putHeader(RequestId.HEADER, id);
        context.addHeadersEndHandler(ready -> tellHeaders(context));
        context.addEndHandler(ended -> log(context, id, System.nanoTime() - begun));
        context.next();
    }

    private static void tellHeaders(RoutingContext context) {
        HttpServerResponse response = context.response();
        if (!response.headers().contains("Cache-Control")) {
            // What says nothing about being kept is kept by nobody: it may be about people.
            response.putHeader("Cache-Control", "no-store");
        }
        if (context.request().isSSL()) {
            response.putHeader("Strict-Transport-Security", HSTS);
        }
    }

    private static void log(RoutingContext context, String id, long nanoseconds) {
        MDC.put(RequestId.KEY, id);
        ACCESS.infof(
                "%s %s %d %d ms %s",
                context.request().method().name(),
                Operation.name(context),
                context.response().getStatusCode(),
                TimeUnit.NANOSECONDS.toMillis(nanoseconds),
                account(context));
    }

    private static Object account(RoutingContext context) {
        @Nullable
        SecurityIdentity identity = context.user() instanceof QuarkusHttpUser user ? user.getSecurityIdentity() : null;
        UUID account = identity == null ? null : identity.getAttribute(Actor.ACCOUNT_ID);
        return account == null ? "nobody" : account;
    }
}
