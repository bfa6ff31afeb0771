package org.culvert.web.records;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** Which rows are to be taken, as it is chosen. */
public class TakingForm {
    @FormParam("which")
    @Nullable
    String which;

    /** {@code true} where it is ticked. */
    @FormParam("doubtful")
    @Nullable
    String doubtful;

    /** {@code true} or {@code false}. */
    @FormParam("oneIncident")
    @Nullable
    String oneIncident;

    @FormParam("reason")
    @Nullable
    String reason;

    @FormParam("key")
    @Nullable
    String key;

    /** The body of a request that asks for the same. */
    ObjectNode body() {
        ObjectNode body = JsonNodeFactory.instance.objectNode();
        body.put("which", which);
        putTruth(body, "doubtful", doubtful);
        putTruth(body, "oneIncident", oneIncident);
        body.put("reason", reason == null ? "" : reason.strip());
        return body;
    }

    /** A text that is neither stays one, and is refused as such. */
    private static void putTruth(ObjectNode body, String field, @Nullable String sent) {
        if (sent == null || sent.equals("true") || sent.equals("false")) {
            body.put(field, "true".equals(sent));
        } else {
            body.put(field, sent);
        }
    }

    /** As a page shows it again. */
    RecordTrialPage.Taking shown(boolean all) {
        return new RecordTrialPage.Taking(
                which == null ? all : which.equals("all"),
                "true".equals(doubtful),
                "true".equals(oneIncident),
                reason == null ? "" : reason);
    }
}
