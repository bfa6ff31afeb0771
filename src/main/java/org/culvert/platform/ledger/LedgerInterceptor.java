package org.culvert.platform.ledger;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.narayana.jta.TransactionExceptionResult;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.Priority;
import jakarta.enterprise.inject.Instance;
import jakarta.interceptor.AroundInvoke;
import jakarta.interceptor.Interceptor;
import jakarta.interceptor.InvocationContext;
import jakarta.persistence.EntityManager;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.Method;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.culvert.platform.Actor;
import org.culvert.platform.InvalidException;
import org.culvert.platform.ReadTransaction;
import org.culvert.platform.SealBrokenException;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** Stands around every operation of the API: see {@link Ledgered}. */
@Ledgered
@Interceptor
@Priority(Interceptor.Priority.LIBRARY_BEFORE)
class LedgerInterceptor {
    /** An import may take long; what it writes and its answer are one transaction all the same. */
    private static final int PATIENCE_SECONDS = 3600;

    private final Map<Method, Operation> operations = new ConcurrentHashMap<>();
    private final RoutingContext routing;
    private final KeptAnswers answers;
    private final AsOf asOf;
    private final Tags tags;
    private final Instance<TagSource> sources;
    private final Actor actor;
    private final ObjectMapper mapper;
    private final EntityManager entities;
    private final ReadTransaction transaction;

    LedgerInterceptor(
            RoutingContext routing,
            KeptAnswers answers,
            AsOf asOf,
            Tags tags,
            Instance<TagSource> sources,
            Actor actor,
            ObjectMapper mapper,
            EntityManager entities,
            ReadTransaction transaction) {
        this.routing = routing;
        this.answers = answers;
        this.asOf = asOf;
        this.tags = tags;
        this.sources = sources;
        this.actor = actor;
        this.mapper = mapper;
        this.entities = entities;
        this.transaction = transaction;
    }

    @AroundInvoke
    @Nullable
    Object around(InvocationContext context) throws Exception {
        Operation operation = operations.computeIfAbsent(context.getMethod(), Operation::of);
        if (!operation.http()) {
            return context.proceed();
        }
        List<String> asked = routing.queryParam(AsOf.PARAMETER);
        if (operation.safe()) {
            return asked.isEmpty() ? read(operation, context) : readAsOf(asOf.parse(asked), operation, context);
        }
        if (!asked.isEmpty()) {
            throw InvalidException.of(AsOf.PARAMETER, "Nobody writes into the past.", "no asOf; say when it happened");
        }
        return operation.keepsNothing() ? context.proceed() : write(operation, context);
    }

    private @Nullable Object readAsOf(Instant instant, Operation operation, InvocationContext context)
            throws Exception {
        Object result = QuarkusTransaction.requiringNew().call(() -> {
            asOf.enter(instant);
            return context.proceed();
        });
        header(AsOf.HEADER, AsOf.httpDate(instant));
        return tagged(operation, result);
    }

    private @Nullable Object read(Operation operation, InvocationContext context) throws Exception {
        return tagged(operation, operation.atOnce() ? transaction.read(context::proceed) : context.proceed());
    }

    private @Nullable Object tagged(Operation operation, @Nullable Object result) {
        Object record = entity(result);
        if (!operation.tagged() || record == null) {
            return result;
        }
        String tag = tags.of(record);
        String vary = "Authorization, Cookie, Accept";
        if (Tags.isKnown(request().headers().getAll(HttpHeaders.IF_NONE_MATCH), tag)) {
            throw new AnsweredAlready(Response.notModified()
                    .header(HttpHeaders.ETAG, tag)
                    .header(HttpHeaders.VARY, vary)
                    .build());
        }
        header(HttpHeaders.ETAG, tag);
        header(HttpHeaders.VARY, vary);
        return result;
    }

    private @Nullable Object write(Operation operation, InvocationContext context) throws Exception {
        var key = IdempotencyKey.of(request().headers().getAll(IdempotencyKey.HEADER));
        var digest = new RequestDigest(
                request().method().name(), request().path(), request().query());
        Object body = operation.bodyAt() < 0 ? null : context.getParameters()[operation.bodyAt()];
        if (body instanceof InputStream streamed) {
            try (InputStream spooled = digest.spool(streamed)) {
                Object[] parameters = context.getParameters();
                parameters[operation.bodyAt()] = spooled;
                context.setParameters(parameters);
                return once(key, digest.hex(), operation, context);
            }
        }
        digest.body(body);
        return once(key, digest.hex(), operation, context);
    }

    private @Nullable Object once(IdempotencyKey key, String hash, Operation operation, InvocationContext context) {
        UUID account = actor.accountId();
        Outcome outcome = QuarkusTransaction.requiringNew()
                .timeout(PATIENCE_SECONDS)
                .exceptionHandler(LedgerInterceptor::whatBecomes)
                .call(() -> {
                    Answer before = answers.claim(account, key, hash);
                    if (before != null) {
                        return new Outcome(null, before, true);
                    }
                    Object result = change(operation, context);
                    Answer answer = answer(operation, context, result);
                    answers.keep(account, key, hash, operation.shownOnce() ? answer.withoutBody() : answer);
                    return new Outcome(result, answer, false);
                });
        if (outcome.replayed()) {
            throw new AnsweredAlready(outcome.answer().replay());
        }
        if (outcome.answer().tag() != null) {
            header(HttpHeaders.ETAG, outcome.answer().tag());
        }
        return outcome.result();
    }

    /** What was refused is as if it had not been asked for, but for a seal that was found broken: that is kept. */
    private static TransactionExceptionResult whatBecomes(Throwable thrown) {
        return thrown instanceof SealBrokenException
                ? TransactionExceptionResult.COMMIT
                : TransactionExceptionResult.ROLLBACK;
    }

    /** The change itself, after its condition was held against the record, which is locked for the purpose. */
    private @Nullable Object change(Operation operation, InvocationContext context) throws Exception {
        if (operation.changes() == null) {
            return context.proceed();
        }
        TagSource source = source(operation.changes());
        String id = id(operation, context);
        source.lock(id);
        source.show(id)
                .ifPresent(
                        record -> Tags.requireMatch(request().headers().getAll(HttpHeaders.IF_MATCH), tags.of(record)));
        return context.proceed();
    }

    private Answer answer(Operation operation, InvocationContext context, @Nullable Object result) throws IOException {
        // What is shown next is read from the database, so that its tag is that of any later read.
        entities.flush();
        entities.clear();
        String tag = operation.changes() == null
                ? null
                : source(operation.changes())
                        .show(id(operation, context))
                        .map(tags::of)
                        .orElse(null);
        int status = operation.status();
        String location = null;
        MediaType type = MediaType.APPLICATION_JSON_TYPE;
        if (result instanceof Response response) {
            status = response.getStatus();
            location = response.getLocation() == null
                    ? null
                    : response.getLocation().toString();
            type = response.getMediaType() == null ? type : response.getMediaType();
        } else if (result instanceof RestResponse<?> response) {
            status = response.getStatus();
            location = response.getLocation() == null
                    ? null
                    : response.getLocation().toString();
            type = response.getMediaType() == null ? type : response.getMediaType();
        }
        Object entity = entity(result);
        return new Answer(status, location, tag, entity == null ? null : type.toString(), bytes(entity));
    }

    /** The body as this asker sees it. */
    private byte[] bytes(@Nullable Object entity) throws JsonProcessingException {
        if (entity == null) {
            return new byte[0];
        }
        if (entity instanceof String text) {
            return text.getBytes(StandardCharsets.UTF_8);
        }
        return entity instanceof byte[] raw ? raw : mapper.writeValueAsBytes(entity);
    }

    private static @Nullable Object entity(@Nullable Object result) {
        if (result instanceof Response response) {
            return response.getEntity();
        }
        return result instanceof RestResponse<?> response ? response.getEntity() : result;
    }

    private TagSource source(String kind) {
        return sources.stream()
                .filter(source -> source.kind().equals(kind))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no room tells the tag of a " + kind));
    }

    private static String id(Operation operation, InvocationContext context) {
        return operation.idAt() < 0 ? "" : String.valueOf(context.getParameters()[operation.idAt()]);
    }

    private HttpServerRequest request() {
        return routing.request();
    }

    private void header(String name, @Nullable String value) {
        if (value != null) {
            routing.response().putHeader(name, value);
        }
    }

    /** What came of a keyed request. */
    private record Outcome(@Nullable Object result, Answer answer, boolean replayed) {}
}
