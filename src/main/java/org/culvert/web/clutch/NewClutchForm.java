package org.culvert.web.clutch;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** The form that opens a clutch. */
public class NewClutchForm {
    @FormParam("motherCase")
    @Nullable
    String motherCase;

    @FormParam("callSign")
    @Nullable
    String callSign;

    @FormParam("organisationId")
    @Nullable
    String organisationId;

    @FormParam("eggs.recovered")
    @Nullable
    String recovered;

    @FormParam("eggs.setToIncubate")
    @Nullable
    String setToIncubate;

    @FormParam("eggs.broken")
    @Nullable
    String broken;

    @FormParam("eggs.discarded")
    @Nullable
    String discarded;

    @FormParam("eggs.how")
    @Nullable
    String how;

    @FormParam("eggs.at")
    @Nullable
    String at;

    @FormParam("key")
    @Nullable
    String key;
}
