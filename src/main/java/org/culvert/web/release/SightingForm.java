package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** What was seen of an animal after its release. */
public class SightingForm {
    @FormParam("caseId")
    @Nullable
    String caseId;

    @FormParam("knownBy")
    @Nullable
    String knownBy;

    @FormParam("alive")
    @Nullable
    String alive;

    @FormParam("at")
    @Nullable
    String at;

    @FormParam("decimalLatitude")
    @Nullable
    String decimalLatitude;

    @FormParam("decimalLongitude")
    @Nullable
    String decimalLongitude;

    @FormParam("coordinateUncertaintyInMeters")
    @Nullable
    String coordinateUncertaintyInMeters;

    @FormParam("words")
    @Nullable
    String words;

    @FormParam("key")
    @Nullable
    String key;
}
