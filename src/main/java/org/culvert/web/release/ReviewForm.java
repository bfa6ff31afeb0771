package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** The form that says that the source of a rule was read again. */
public class ReviewForm {
    @FormParam("version")
    @Nullable
    String version;

    @FormParam("source")
    @Nullable
    String source;

    @FormParam("readOn")
    @Nullable
    String readOn;

    @FormParam("reviewBy")
    @Nullable
    String reviewBy;

    @FormParam("validTo")
    @Nullable
    String validTo;

    @FormParam("reason")
    @Nullable
    String reason;

    @FormParam("key")
    @Nullable
    String key;
}
