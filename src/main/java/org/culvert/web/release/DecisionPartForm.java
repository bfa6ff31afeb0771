package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** One of the forms of a decision that an animal does not go back; which one, {@code what} says. */
public class DecisionPartForm {
    @FormParam("what")
    @Nullable
    String what;

    @FormParam("vetName")
    @Nullable
    String vetName;

    @FormParam("vetRegistration")
    @Nullable
    String vetRegistration;

    @FormParam("agrees")
    @Nullable
    String agrees;

    @FormParam("words")
    @Nullable
    String words;

    @FormParam("at")
    @Nullable
    String at;

    @FormParam("reviewedBy")
    @Nullable
    String reviewedBy;

    @FormParam("nextDueOn")
    @Nullable
    String nextDueOn;

    @FormParam("outcome")
    @Nullable
    String outcome;

    @FormParam("placedWith")
    @Nullable
    String placedWith;

    @FormParam("permitToKeepId")
    @Nullable
    String permitToKeepId;

    @FormParam("approvedBy")
    @Nullable
    String approvedBy;

    @FormParam("reason")
    @Nullable
    String reason;

    @FormParam("key")
    @Nullable
    String key;
}
