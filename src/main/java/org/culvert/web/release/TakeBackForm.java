package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** What is taken back, and why. */
public class TakeBackForm {
    @FormParam("part")
    @Nullable
    String part;

    @FormParam("reason")
    @Nullable
    String reason;

    @FormParam("key")
    @Nullable
    String key;
}
