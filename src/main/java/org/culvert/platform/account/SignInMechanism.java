package org.culvert.platform.account;

import io.netty.handler.codec.http.HttpResponseStatus;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.AuthenticationRequest;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.quarkus.vertx.http.runtime.security.HttpSecurityUtils;
import io.smallrye.mutiny.Uni;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Finds out who asks: a token as Bearer (RFC 6750) or as the password of HTTP Basic (RFC 7617), or else the cookie of a
 * session. A person's password is taken by the form alone, never with every request.
 */
@ApplicationScoped
class SignInMechanism implements HttpAuthenticationMechanism {
    static final String CHALLENGE = "Basic realm=\"Culvert\", charset=\"UTF-8\"";

    @Override
    public Uni<SecurityIdentity> authenticate(RoutingContext context, IdentityProviderManager providers) {
        AuthenticationRequest request;
        try {
            request = request(context);
        } catch (AuthenticationFailedException e) {
            return Uni.createFrom().failure(e);
        }
        if (request == null) {
            return Uni.createFrom().nullItem();
        }
        HttpSecurityUtils.setRoutingContextAttribute(request, context);
        return providers.authenticate(request);
    }

    private static @Nullable AuthenticationRequest request(RoutingContext context) {
        String header = context.request().getHeader(HttpHeaders.AUTHORIZATION);
        if (header != null) {
            return ofHeader(header.strip());
        }
        String secret = SessionCookie.read(context);
        return secret == null ? null : new Credentials.OfSession(secret);
    }

    private static AuthenticationRequest ofHeader(String header) {
        String low = header.toLowerCase(Locale.ROOT);
        if (low.startsWith("bearer ")) {
            return new Credentials.OfToken(
                    null, header.substring("bearer ".length()).strip());
        }
        if (low.startsWith("basic ")) {
            try {
                byte[] decoded = Base64.getDecoder()
                        .decode(header.substring("basic ".length()).strip());
                String both = new String(decoded, StandardCharsets.UTF_8);
                int colon = both.indexOf(':');
                if (colon >= 0) {
                    return new Credentials.OfToken(both.substring(0, colon), both.substring(colon + 1));
                }
            } catch (IllegalArgumentException notBase64) {
                throw new AuthenticationFailedException("The Authorization header is not in Base64.", notBase64);
            }
        }
        throw new AuthenticationFailedException("The Authorization header is neither Bearer nor Basic.");
    }

    @Override
    public Uni<ChallengeData> getChallenge(RoutingContext context) {
        return Uni.createFrom()
                .item(new ChallengeData(HttpResponseStatus.UNAUTHORIZED.code(), "WWW-Authenticate", CHALLENGE));
    }

    @Override
    public Set<Class<? extends AuthenticationRequest>> getCredentialTypes() {
        return Set.of(Credentials.OfSession.class, Credentials.OfToken.class);
    }
}
