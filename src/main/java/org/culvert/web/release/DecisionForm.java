package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A vet's decision that an animal does not go back. */
public class DecisionForm {
    @FormParam("grounds")
    @Nullable
    List<String> grounds;

    @FormParam("words")
    @Nullable
    String words;

    @FormParam("vetName")
    @Nullable
    String vetName;

    @FormParam("vetRegistration")
    @Nullable
    String vetRegistration;

    @FormParam("decidedAt")
    @Nullable
    String decidedAt;

    @FormParam("reviewDueOn")
    @Nullable
    String reviewDueOn;

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
