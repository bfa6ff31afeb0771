package org.culvert.platform.account;

import io.quarkus.arc.Unremovable;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import org.culvert.platform.Actor;
import org.culvert.platform.SignInException;

/** Turns a cookie or a token into who asks, with the account, its member and organisation, and what the token reaches. */
final class SignedIn {
    static final String MEMBER_ID = "member-id";
    static final String ORGANISATION_ID = "organisation-id";
    static final String SESSION_ID = "session-id";
    static final String FORM_SECRET = "form-secret";
    static final String TOKEN_ID = "token-id";
    static final String SCOPES = "scopes";

    private SignedIn() {}

    /** A session that has ended makes nobody: open pages stay open, others ask to sign in. */
    @Unremovable
    @ApplicationScoped
    static class BySession implements IdentityProvider<Credentials.OfSession> {
        private final Sessions sessions;

        BySession(Sessions sessions) {
            this.sessions = sessions;
        }

        @Override
        public Class<Credentials.OfSession> getRequestType() {
            return Credentials.OfSession.class;
        }

        @Override
        public Uni<SecurityIdentity> authenticate(Credentials.OfSession request, AuthenticationRequestContext context) {
            return context.runBlocking(() -> asking(() -> sessions.find(request.secret)
                    .map(session -> identity(session.holder())
                            .addAttribute(SESSION_ID, session.id())
                            .addAttribute(FORM_SECRET, session.formSecret())
                            .build())
                    .orElseGet(() ->
                            QuarkusSecurityIdentity.builder().setAnonymous(true).build())));
        }
    }

    /** A token that does not fit is refused, whatever page or operation it came to. */
    @Unremovable
    @ApplicationScoped
    static class ByToken implements IdentityProvider<Credentials.OfToken> {
        private final TokenService tokens;
        private final SignInTries tries;

        ByToken(TokenService tokens, SignInTries tries) {
            this.tokens = tokens;
            this.tries = tries;
        }

        @Override
        public Class<Credentials.OfToken> getRequestType() {
            return Credentials.OfToken.class;
        }

        @Override
        public Uni<SecurityIdentity> authenticate(Credentials.OfToken request, AuthenticationRequestContext context) {
            return context.runBlocking(() -> asking(() -> {
                Optional<TokenService.Standing> token = tokens.find(request.secret)
                        .filter(found -> request.username == null
                                || Secrets.same(request.username, found.holder().username()));
                return token.map(found -> identity(found.holder())
                                .addAttribute(TOKEN_ID, found.id())
                                .addAttribute(SCOPES, found.scopes())
                                .build())
                        .orElseThrow(() -> refusal(request.source));
            }));
        }

        private AuthenticationFailedException refusal(String source) {
            try {
                tries.countWrongToken(source);
                return new AuthenticationFailedException("no such token");
            } catch (SignInException e) {
                return new AuthenticationFailedException(e);
            }
        }
    }

    private static QuarkusSecurityIdentity.Builder identity(AccountHolder holder) {
        QuarkusSecurityIdentity.Builder identity = QuarkusSecurityIdentity.builder()
                .setPrincipal(new QuarkusPrincipal(holder.username()))
                .addRoles(holder.roles())
                .addAttribute(Actor.ACCOUNT_ID, holder.accountId());
        if (holder.memberId() != null) {
            identity.addAttribute(MEMBER_ID, holder.memberId());
        }
        if (holder.organisationId() != null) {
            identity.addAttribute(ORGANISATION_ID, holder.organisationId());
        }
        return identity;
    }

    private interface Asking {
        SecurityIdentity find();
    }

    /** A database that is away is told from credentials that do not fit by its cause. */
    private static SecurityIdentity asking(Asking asking) {
        try {
            return asking.find();
        } catch (Sql.SqlFailure e) {
            throw new AuthenticationFailedException(e);
        }
    }
}
