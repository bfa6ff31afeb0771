package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** What is said beside a permit to keep an animal. */
public class PermitForm {
    @FormParam("number")
    @Nullable
    String number;

    @FormParam("issuedBy")
    @Nullable
    String issuedBy;

    @FormParam("validFrom")
    @Nullable
    String validFrom;

    @FormParam("validTo")
    @Nullable
    String validTo;

    @FormParam("key")
    @Nullable
    String key;
}
