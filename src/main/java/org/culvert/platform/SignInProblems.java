package org.culvert.platform;

import io.quarkiverse.resteasy.problem.HttpProblem;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.UnauthorizedException;
import jakarta.annotation.Priority;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import jakarta.ws.rs.ext.ExceptionMapper;
import jakarta.ws.rs.ext.Provider;
import java.net.URI;

/**
 * Says 401, with the challenge of HTTP Basic (RFC 7617), to who has not signed in or not rightly.
 *
 * <p>The problem library's own mappers read a field that this version of the framework has no more, and end in a 500.
 */
final class SignInProblems {
    private SignInProblems() {}

    /** For a name and password that do not fit; it does not say which. */
    @Provider
    @Priority(1)
    static class OfWrongPassword implements ExceptionMapper<AuthenticationFailedException> {
        private final UriInfo uriInfo;

        OfWrongPassword(UriInfo uriInfo) {
            this.uriInfo = uriInfo;
        }

        @Override
        public Response toResponse(AuthenticationFailedException exception) {
            if (DatabaseAway.isAway(exception)) {
                return DatabaseAway.response(uriInfo);
            }
            // The framework has set the challenge already.
            return problem(uriInfo, "No account has this name and password.")
                    .build()
                    .toResponse();
        }
    }

    /** For a request without any. */
    @Provider
    @Priority(1)
    static class OfNobody implements ExceptionMapper<UnauthorizedException> {
        private final UriInfo uriInfo;

        OfNobody(UriInfo uriInfo) {
            this.uriInfo = uriInfo;
        }

        @Override
        public Response toResponse(UnauthorizedException exception) {
            return problem(uriInfo, "This wants a name and a password (HTTP Basic).")
                    .withHeader(HttpHeaders.WWW_AUTHENTICATE, "basic realm=\"Culvert\"")
                    .build()
                    .toResponse();
        }
    }

    private static HttpProblem.Builder problem(UriInfo uriInfo, String detail) {
        return HttpProblem.builder()
                .withType(URI.create(ProblemMapping.TYPES + "not-signed-in"))
                .withTitle("Sign in first")
                .withStatus(401)
                .withDetail(detail)
                .withInstance(URI.create(uriInfo.getRequestUri().getRawPath()));
    }
}
