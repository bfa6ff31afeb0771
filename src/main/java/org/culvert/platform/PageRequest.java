package org.culvert.platform;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Tells a person with a browser, who is answered with a page even where something is wrong, from a program. */
public final class PageRequest {
    private PageRequest() {}

    /** Browsers name text/html when they open a page; what lies under /api and /q is for programs whoever asks. */
    public static boolean wantsPage(String path, @Nullable String accept) {
        return accept != null
                && accept.toLowerCase(Locale.ROOT).contains("text/html")
                && !isUnder("/api", path)
                && !isUnder("/q", path);
    }

    private static boolean isUnder(String root, String path) {
        return path.equals(root) || path.startsWith(root + "/");
    }
}
