package org.culvert.platform.account;

import io.quarkiverse.resteasy.problem.HttpProblem;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.UnauthorizedException;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.Priority;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import jakarta.ws.rs.ext.ExceptionMapper;
import jakarta.ws.rs.ext.Provider;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import org.culvert.platform.DatabaseAway;
import org.culvert.platform.PageRequest;
import org.culvert.platform.ProblemMapping;
import org.culvert.platform.SignInException;

/**
 * Says 401, with the challenge of HTTP Basic (RFC 7617), to a program that has not signed in or not rightly, and leads a
 * person who asked for a page to the form.
 *
 * <p>The problem library's own mappings read a field that this version of the framework has no more, and end in a 500.
 */
final class SignInProblems {
    private SignInProblems() {}

    /** For a token that does not fit; it does not say why. */
    @Provider
    @Priority(1)
    static class OfWrongToken implements ExceptionMapper<AuthenticationFailedException> {
        private final UriInfo uriInfo;

        OfWrongToken(UriInfo uriInfo) {
            this.uriInfo = uriInfo;
        }

        private Response tooMany(SignInException tooMany) {
            return HttpProblem.builder()
                    .withType(URI.create(ProblemMapping.TYPES + tooMany.type()))
                    .withTitle(tooMany.title())
                    .withStatus(tooMany.status())
                    .withDetail(tooMany.getMessage())
                    .withInstance(URI.create(uriInfo.getRequestUri().getRawPath()))
                    .withHeader(
                            HttpHeaders.RETRY_AFTER,
                            tooMany.retryAfter() == null
                                    ? 60
                                    : Math.max(1, tooMany.retryAfter().toSeconds()))
                    .build()
                    .toResponse();
        }

        @Override
        public Response toResponse(AuthenticationFailedException exception) {
            if (DatabaseAway.isAway(exception)) {
                return DatabaseAway.response(uriInfo);
            }
            if (exception.getCause() instanceof SignInException tooMany) {
                return tooMany(tooMany);
            }
            // The framework has set the challenge already.
            return problem(
                            uriInfo,
                            "No account has this name and token. A password is for the form of the sign-in page alone.")
                    .build()
                    .toResponse();
        }
    }

    /** For a request without any. */
    @Provider
    @Priority(1)
    static class OfNobody implements ExceptionMapper<UnauthorizedException> {
        private final UriInfo uriInfo;
        private final HttpHeaders headers;
        private final RoutingContext routing;

        OfNobody(UriInfo uriInfo, HttpHeaders headers, RoutingContext routing) {
            this.uriInfo = uriInfo;
            this.headers = headers;
            this.routing = routing;
        }

        @Override
        public Response toResponse(UnauthorizedException exception) {
            URI asked = uriInfo.getRequestUri();
            if (PageRequest.wantsPage(asked.getPath(), headers.getHeaderString(HttpHeaders.ACCEPT))) {
                String next = asked.getRawPath() + (asked.getRawQuery() == null ? "" : "?" + asked.getRawQuery());
                return Response.seeOther(URI.create("/sign-in?next=" + URLEncoder.encode(next, StandardCharsets.UTF_8)))
                        .build();
            }
            return problem(
                            uriInfo,
                            "This wants a token: as Bearer, or as the password of HTTP Basic with the account's name.")
                    .withHeader(HttpHeaders.WWW_AUTHENTICATE, SignInMechanism.challenge(routing))
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
