package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** Why a found place is unsuitable. */
public class UnsuitableForm {
    @FormParam("ground")
    @Nullable
    String ground;

    @FormParam("words")
    @Nullable
    String words;

    @FormParam("seenAt")
    @Nullable
    String seenAt;

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
