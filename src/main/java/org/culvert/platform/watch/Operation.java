package org.culvert.platform.watch;

import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.Path;
import java.lang.reflect.Method;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * What a request asked for, as the log and the figures name it: the template of the operation's address, never the address,
 * since that may hold the secret of a link or what somebody typed.
 */
final class Operation {
    private static final String KEY = "operation";
    private static final String UNKNOWN = "-";

    /** Those that were asked for since the start: no more than there are operations. */
    private static final Set<String> KNOWN = ConcurrentHashMap.newKeySet();

    private Operation() {}

    static void found(RoutingContext context, @Nullable Class<?> resource, @Nullable Method method) {
        if (resource != null && method != null) {
            String template = template(resource, method);
            KNOWN.add(template);
            context.put(KEY, template);
        }
    }

    static boolean isKnown(String template) {
        return KNOWN.contains(template);
    }

    static String template(Class<?> resource, Method method) {
        return "/"
                + (part(resource.getAnnotation(Path.class)) + "/" + part(method.getAnnotation(Path.class)))
                        .replaceAll("/+", "/")
                        .replaceAll("^/|/$", "");
    }

    private static String part(@Nullable Path path) {
        return path == null ? "" : path.value();
    }

    /** A file or a page of the framework that was served is named by its address: that is one of ours. */
    static String name(RoutingContext context) {
        String template = context.get(KEY);
        if (template != null) {
            return template;
        }
        int status = context.response().getStatusCode();
        return status < 300 || status == 304 ? String.valueOf(context.normalizedPath()) : UNKNOWN;
    }
}
