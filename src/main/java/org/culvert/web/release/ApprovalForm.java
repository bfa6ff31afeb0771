package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** An answer about an animal or a site. */
public class ApprovalForm {
    @FormParam("siteId")
    @Nullable
    String siteId;

    @FormParam("of")
    @Nullable
    String of;

    @FormParam("given")
    @Nullable
    String given;

    @FormParam("until")
    @Nullable
    String until;

    @FormParam("reference")
    @Nullable
    String reference;

    @FormParam("askedOf")
    @Nullable
    String askedOf;

    @FormParam("at")
    @Nullable
    String at;

    @FormParam("jurisdiction")
    @Nullable
    String jurisdiction;

    @FormParam("withinMetres")
    @Nullable
    String withinMetres;

    @FormParam("key")
    @Nullable
    String key;
}
