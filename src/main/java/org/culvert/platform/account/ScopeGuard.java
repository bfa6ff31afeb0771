package org.culvert.platform.account;

import io.quarkus.security.identity.SecurityIdentity;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.ext.Provider;
import java.util.Set;
import org.culvert.platform.SignInException;

/** Holds a token to the scopes that it was made for, and a session's requests to the pages that they come from. */
@Provider
class ScopeGuard implements ContainerRequestFilter {
    static final String FORM_SECRET_HEADER = "X-CSRF-Token";
    private static final Set<String> SAFE = Set.of("GET", "HEAD", "OPTIONS");
    private static final String API = "api/";
    private static final String LAYERS = "ogc";

    private final SecurityIdentity identity;

    ScopeGuard(SecurityIdentity identity) {
        this.identity = identity;
    }

    @Override
    public void filter(ContainerRequestContext request) {
        if (identity.isAnonymous()) {
            return;
        }
        String path = request.getUriInfo().getPath().replaceFirst("^/+", "");
        boolean safe = SAFE.contains(request.getMethod());
        Set<String> scopes = identity.getAttribute(SignedIn.SCOPES);
        if (scopes != null) {
            String first = path.split("/", 2)[0];
            String area = path.startsWith(API)
                    ? path.substring(API.length()).split("/", 2)[0]
                    : first.equals(LAYERS) ? LAYERS : "pages";
            String reach = safe ? "read" : "write";
            if (!scopes.contains(area + ":" + reach) && !scopes.contains("*:" + reach)) {
                throw SignInException.outsideScope(area + ":" + reach);
            }
        }
        // Forms of pages carry their secret in a field, which OwnForms reads.
        if (!safe && path.startsWith(API) && identity.getAttribute(SignedIn.SESSION_ID) != null) {
            String secret = identity.getAttribute(SignedIn.FORM_SECRET);
            String sent = request.getHeaderString(FORM_SECRET_HEADER);
            if (sent == null || secret == null || !Secrets.same(secret, sent)) {
                throw SignInException.forged();
            }
        }
    }
}
