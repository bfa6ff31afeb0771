package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** The end of a support feeding. */
public class FeedingForm {
    @FormParam("at")
    @Nullable
    String at;

    @FormParam("endedBy")
    @Nullable
    String endedBy;

    @FormParam("key")
    @Nullable
    String key;
}
