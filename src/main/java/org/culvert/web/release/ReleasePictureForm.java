package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** What is said beside a photograph. */
public class ReleasePictureForm {
    @FormParam("caption")
    @Nullable
    String caption;

    @FormParam("takenAt")
    @Nullable
    String takenAt;

    @FormParam("key")
    @Nullable
    String key;
}
