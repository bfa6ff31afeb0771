package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** That an authority was told, or something taken back; which, {@code what} says. */
public class NoticeForm {
    @FormParam("what")
    @Nullable
    String what;

    @FormParam("authority")
    @Nullable
    String authority;

    @FormParam("reference")
    @Nullable
    String reference;

    @FormParam("at")
    @Nullable
    String at;

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
