package org.culvert.platform;

import io.quarkiverse.resteasy.problem.HttpProblem;
import jakarta.annotation.Priority;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilderException;
import jakarta.ws.rs.core.UriInfo;
import jakarta.ws.rs.ext.ExceptionMapper;
import jakarta.ws.rs.ext.Provider;
import java.net.URI;
import org.jspecify.annotations.Nullable;

/** Turns what services throw into problem details (RFC 9457). */
@Provider
@Priority(1)
public class ProblemMapping implements ExceptionMapper<CulvertException> {
    public static final String TYPES = "/problems/";

    private final UriInfo uriInfo;

    ProblemMapping(UriInfo uriInfo) {
        this.uriInfo = uriInfo;
    }

    @Override
    public Response toResponse(CulvertException exception) {
        HttpProblem.Builder problem = HttpProblem.builder()
                .withType(URI.create(TYPES + exception.type()))
                .withTitle(exception.title())
                .withStatus(exception.status())
                .withDetail(exception.getMessage())
                .withInstance(instance(uriInfo));
        if (exception instanceof InvalidException invalid) {
            problem.with("errors", invalid.errors());
        }
        if (exception instanceof RefusedException refused) {
            problem.with("reasons", refused.reasons());
        }
        if (exception instanceof SignInException signIn && signIn.retryAfter() != null) {
            problem.withHeader(
                    HttpHeaders.RETRY_AFTER, Math.max(1, signIn.retryAfter().toSeconds()));
        }
        return problem.build().toResponse();
    }

    /** The path that was asked for, as it was sent; null where that is no path. */
    static @Nullable URI instance(UriInfo uriInfo) {
        try {
            return URI.create(uriInfo.getRequestUri().getRawPath());
        } catch (IllegalArgumentException | UriBuilderException e) {
            return null;
        }
    }
}
