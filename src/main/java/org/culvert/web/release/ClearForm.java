package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** The end of a hold. */
public class ClearForm {
    @FormParam("holdId")
    @Nullable
    String holdId;

    @FormParam("by")
    @Nullable
    String by;

    @FormParam("name")
    @Nullable
    String name;

    @FormParam("reference")
    @Nullable
    String reference;

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
