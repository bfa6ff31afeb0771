package org.culvert.platform;

import io.quarkiverse.resteasy.problem.HttpProblem;
import io.quarkus.arc.ArcUndeclaredThrowableException;
import io.quarkus.narayana.jta.QuarkusTransactionException;
import jakarta.annotation.Priority;
import jakarta.persistence.OptimisticLockException;
import jakarta.persistence.PersistenceException;
import jakarta.transaction.RollbackException;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import jakarta.ws.rs.ext.ExceptionMapper;
import jakarta.ws.rs.ext.Provider;
import java.net.URI;
import java.util.List;
import java.util.Objects;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Turns what the database refuses into problems: a constraint of ours says its sentence, anything else is our fault. */
class PersistenceProblems {
    private static final Logger LOG = Logger.getLogger(PersistenceProblems.class);

    private PersistenceProblems() {}

    /** For what Hibernate throws at a flush. */
    @Provider
    @Priority(1)
    static class OfHibernate extends Base implements ExceptionMapper<PersistenceException> {
        OfHibernate(UriInfo uriInfo, DatabaseRefusals refusals) {
            super(uriInfo, refusals);
        }

        @Override
        public Response toResponse(PersistenceException exception) {
            return respond(exception);
        }
    }

    /** For what comes wrapped at a commit. */
    @Provider
    @Priority(1)
    static class OfCommit extends Base implements ExceptionMapper<ArcUndeclaredThrowableException> {
        OfCommit(UriInfo uriInfo, DatabaseRefusals refusals) {
            super(uriInfo, refusals);
        }

        @Override
        public Response toResponse(ArcUndeclaredThrowableException exception) {
            return respond(exception);
        }
    }

    /** For a rolled-back commit. */
    @Provider
    @Priority(1)
    static class OfRollback extends Base implements ExceptionMapper<RollbackException> {
        OfRollback(UriInfo uriInfo, DatabaseRefusals refusals) {
            super(uriInfo, refusals);
        }

        @Override
        public Response toResponse(RollbackException exception) {
            return respond(exception);
        }
    }

    /** For a commit of the ledger that did not come through. */
    @Provider
    @Priority(1)
    static class OfTransaction extends Base implements ExceptionMapper<QuarkusTransactionException> {
        OfTransaction(UriInfo uriInfo, DatabaseRefusals refusals) {
            super(uriInfo, refusals);
        }

        @Override
        public Response toResponse(QuarkusTransactionException exception) {
            return respond(exception);
        }
    }

    abstract static class Base {
        private final UriInfo uriInfo;
        private final DatabaseRefusals refusals;

        Base(UriInfo uriInfo, DatabaseRefusals refusals) {
            this.uriInfo = uriInfo;
            this.refusals = refusals;
        }

        Response respond(Throwable thrown) {
            if (DatabaseAway.isAway(thrown)) {
                return DatabaseAway.response(uriInfo);
            }
            CulvertException refused = refusals.find(thrown);
            if (refused instanceof InvalidException invalid) {
                return invalid(invalid.errors().get(0));
            }
            if (refused != null) {
                return problem(
                        refused.type(),
                        refused.title(),
                        refused.status(),
                        Objects.requireNonNullElse(refused.getMessage(), refused.title()));
            }
            if (find(thrown, OptimisticLockException.class) != null) {
                return problem(
                        "stale",
                        "Someone changed it in between",
                        412,
                        "Read it again and repeat the change if it is still right.");
            }
            LOG.error("The database refused what the server should not have asked", thrown);
            return problem(ProblemShape.type(500), ProblemShape.title(500), 500, ProblemShape.detail(500));
        }

        private Response invalid(InvalidException.FieldError wrong) {
            return HttpProblem.builder()
                    .withType(URI.create(ProblemMapping.TYPES + "invalid"))
                    .withTitle("Something in the request is not right")
                    .withStatus(400)
                    .withDetail(wrong.detail())
                    .with("errors", List.of(wrong))
                    .withInstance(URI.create(uriInfo.getRequestUri().getRawPath()))
                    .build()
                    .toResponse();
        }

        private Response problem(String type, String title, int status, String detail) {
            return HttpProblem.builder()
                    .withType(URI.create(ProblemMapping.TYPES + type))
                    .withTitle(title)
                    .withStatus(status)
                    .withDetail(detail)
                    .withInstance(URI.create(uriInfo.getRequestUri().getRawPath()))
                    .build()
                    .toResponse();
        }
    }

    static <T extends Throwable> @Nullable T find(Throwable thrown, Class<T> type) {
        Throwable found = Causes.find(thrown, type::isInstance);
        return found == null ? null : type.cast(found);
    }
}
