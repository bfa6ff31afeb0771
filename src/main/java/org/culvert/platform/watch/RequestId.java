package org.culvert.platform.watch;

import io.vertx.ext.web.RoutingContext;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What one request is called in the log, in its answer and in a problem: the sender's own name for it, or one made here. */
public final class RequestId {
    public static final String HEADER = "X-Request-Id";
    /** Where the log and the rest of a request find it. */
    public static final String KEY = "requestId";

    static final int LONGEST = 64;

    private RequestId() {}

    /** The sender's name where it is sane: up to 64 visible ASCII characters, so that it forges no line of the log. */
    static String of(@Nullable String sent) {
        return sent != null && isSane(sent) ? sent : UUID.randomUUID().toString();
    }

    private static boolean isSane(String sent) {
        return !sent.isEmpty()
                && sent.length() <= LONGEST
                && sent.chars().allMatch(character -> character > ' ' && character < 0x7f);
    }

    /** The name of the request that is being answered, or null before it was given one. */
    public static @Nullable String find(RoutingContext context) {
        return context.get(KEY);
    }
}
