package org.culvert.platform;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.security.AuthenticationException;
import io.quarkus.security.ForbiddenException;
import io.quarkus.security.UnauthorizedException;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.LinkedHashMap;
import java.util.Map;
import org.culvert.platform.watch.RequestId;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Gives what is refused before it reaches any resource the shape of all other problems. */
@ApplicationScoped
class EdgeProblems {
    private static final Logger LOG = Logger.getLogger(EdgeProblems.class);

    /** Just before the framework's own limit, which would answer without a word. */
    private static final int BEFORE_THE_LIMIT = -3;

    private final ObjectMapper mapper;
    private final EdgePage page;
    private final long largestBody;

    EdgeProblems(
            ObjectMapper mapper,
            EdgePage page,
            @ConfigProperty(name = "quarkus.http.limits.max-body-size")
                    io.quarkus.runtime.configuration.MemorySize largestBody) {
        this.mapper = mapper;
        this.page = page;
        this.largestBody = largestBody.asLongValue();
    }

    void register(@Observes Router router) {
        router.route().order(BEFORE_THE_LIMIT).handler(this::hold).failureHandler(this::fail);
    }

    private void hold(RoutingContext context) {
        String declared = context.request().getHeader(HttpHeaders.CONTENT_LENGTH);
        if (declared != null && declared.matches("\\d{1,18}") && Long.parseLong(declared) > largestBody) {
            var tooLarge = new TooLargeException(largestBody);
            // What is still being sent is not read
            context.response().putHeader(HttpHeaders.CONNECTION, "close");
            context.addEndHandler(end -> context.request().connection().close());
            answer(context, 413, tooLarge.type(), tooLarge.title(), tooLarge.getMessage());
            return;
        }
        context.next();
    }

    private void fail(RoutingContext context) {
        Throwable failure = context.failure();
        int status = context.statusCode() < 400 ? 500 : context.statusCode();
        boolean signIn = failure instanceof AuthenticationException
                || failure instanceof UnauthorizedException
                || failure instanceof ForbiddenException;
        if (signIn || context.response().headWritten()) {
            context.next();
            return;
        }
        if (status >= 500) {
            // No address: it may be the secret of a link
            LOG.error("A request failed before it reached a resource", failure);
        }
        answer(context, status, ProblemShape.type(status), ProblemShape.title(status), ProblemShape.detail(status));
    }

    private void answer(RoutingContext context, int status, String type, String title, @Nullable String detail) {
        String requestId = RequestId.find(context);
        context.response().setStatusCode(status);
        if (PageRequest.wantsPage(context.request().path(), context.request().getHeader(HttpHeaders.ACCEPT))) {
            context.response()
                    .putHeader(HttpHeaders.CONTENT_TYPE, "text/html;charset=UTF-8")
                    .end(page.render(type, title, status, detail, requestId));
            return;
        }
        Map<String, Object> problem = new LinkedHashMap<>();
        problem.put("type", ProblemMapping.TYPES + type);
        problem.put("title", title);
        problem.put("status", status);
        problem.put("detail", detail);
        problem.put("instance", context.request().path());
        if (requestId != null) {
            problem.put(RequestId.KEY, requestId);
        }
        try {
            context.response()
                    .putHeader(HttpHeaders.CONTENT_TYPE, "application/problem+json")
                    .end(mapper.writeValueAsString(problem));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
