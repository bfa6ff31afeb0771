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
    private static final String CHALLENGE = "Basic realm=\"Culvert\", charset=\"UTF-8\"";

    /** Scripts of a page: a browser that is challenged to Basic would ask its person for a password, in no page of ours. */
    private static final String CHALLENGE_TO_BROWSERS = "Bearer realm=\"Culvert\"";

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
            return ofHeader(header.strip(), Source.of(context));
        }
        String secret = SessionCookie.read(context);
        return secret == null ? null : new Credentials.OfSession(secret);
    }

    private static AuthenticationRequest ofHeader(String header, String source) {
        String low = header.toLowerCase(Locale.ROOT);
        if (low.startsWith("bearer ")) {
            return new Credentials.OfToken(
                    null, header.substring("bearer ".length()).strip(), source);
        }
        if (low.startsWith("basic ")) {
            try {
                byte[] decoded = Base64.getDecoder()
                        .decode(header.substring("basic ".length()).strip());
                String both = new String(decoded, StandardCharsets.UTF_8);
                int colon = both.indexOf(':');
                if (colon >= 0) {
                    return new Credentials.OfToken(both.substring(0, colon), both.substring(colon + 1), source);
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
                .item(new ChallengeData(
                        HttpResponseStatus.UNAUTHORIZED.code(), "WWW-Authenticate", challenge(context)));
    }

    /** What is said to whoever has not signed in (RFC 9110 wants a challenge with every 401). */
    static String challenge(RoutingContext context) {
        boolean browser = SessionCookie.read(context) != null
                || context.request().getHeader("Sec-Fetch-Mode") != null
                || context.request().getHeader("X-Requested-With") != null;
        return browser ? CHALLENGE_TO_BROWSERS : CHALLENGE;
    }

    @Override
    public Set<Class<? extends AuthenticationRequest>> getCredentialTypes() {
        return Set.of(Credentials.OfSession.class, Credentials.OfToken.class);
    }
}
