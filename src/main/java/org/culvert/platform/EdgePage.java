package org.culvert.platform;

import org.jspecify.annotations.Nullable;

/** How a person is told of a problem that arose before any resource was reached; the pages' room knows. */
public interface EdgePage {
    /** A whole page, which may know nothing of who asks. */
    String render(String type, String title, int status, @Nullable String detail, @Nullable String requestId);
}
