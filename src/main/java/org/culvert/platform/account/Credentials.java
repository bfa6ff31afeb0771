package org.culvert.platform.account;

import io.quarkus.security.identity.request.BaseAuthenticationRequest;
import org.jspecify.annotations.Nullable;

/** What a request brings to say who asks. */
final class Credentials {
    private Credentials() {}

    /** The cookie of a session. */
    static final class OfSession extends BaseAuthenticationRequest {
        final String secret;

        OfSession(String secret) {
            this.secret = secret;
        }
    }

    /** A token, and with HTTP Basic the name that came with it. */
    static final class OfToken extends BaseAuthenticationRequest {
        final @Nullable String username;
        final String secret;
        final String source;

        OfToken(@Nullable String username, String secret, String source) {
            this.username = username;
            this.secret = secret;
            this.source = source;
        }
    }
}
