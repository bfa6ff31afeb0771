package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** A place to be assessed. */
public class AssessForm {
    @FormParam("siteId")
    @Nullable
    String siteId;

    @FormParam("light")
    @Nullable
    String light;

    @FormParam("weather")
    @Nullable
    String weather;

    @FormParam("matesGoToo")
    @Nullable
    String matesGoToo;

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
