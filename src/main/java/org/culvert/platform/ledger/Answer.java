package org.culvert.platform.ledger;

import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.jspecify.annotations.Nullable;

/** What a request was answered with, as it is kept beside its key; an empty body is none, or one that was erased. */
record Answer(
        int status,
        @Nullable String location,
        @Nullable String tag,
        @Nullable String mediaType,
        byte[] body) {
    static final String REPLAYED = "Idempotency-Replayed";

    /** The answer without what was shown this once. */
    Answer withoutBody() {
        return new Answer(status, location, tag, null, new byte[0]);
    }

    Response replay() {
        Response.ResponseBuilder response = Response.status(status).header(REPLAYED, "true");
        if (location != null) {
            response.location(URI.create(location));
        }
        if (tag != null) {
            response.header(HttpHeaders.ETAG, tag);
        }
        if (body.length > 0) {
            response.entity(body).type(mediaType);
        }
        return response.build();
    }
}
