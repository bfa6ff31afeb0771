package org.culvert.platform;

import io.quarkiverse.resteasy.problem.HttpProblem;
import io.quarkus.arc.ArcUndeclaredThrowableException;
import io.quarkus.narayana.jta.QuarkusTransactionException;
import jakarta.annotation.Priority;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.persistence.OptimisticLockException;
import jakarta.persistence.PersistenceException;
import jakarta.transaction.RollbackException;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import jakarta.ws.rs.ext.ExceptionMapper;
import jakarta.ws.rs.ext.Provider;
import java.net.URI;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;
import org.postgresql.util.PSQLException;
import org.postgresql.util.ServerErrorMessage;

/** Turns what the database refuses into problems: a constraint of ours says its sentence, anything else is our fault. */
class PersistenceProblems {
    private static final Logger LOG = Logger.getLogger(PersistenceProblems.class);

    private PersistenceProblems() {}

    /** For what Hibernate throws at a flush. */
    @Provider
    @Priority(1)
    static class OfHibernate extends Base implements ExceptionMapper<PersistenceException> {
        OfHibernate(UriInfo uriInfo, @Any Instance<ConstraintSentences> rooms) {
            super(uriInfo, rooms);
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
        OfCommit(UriInfo uriInfo, @Any Instance<ConstraintSentences> rooms) {
            super(uriInfo, rooms);
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
        OfRollback(UriInfo uriInfo, @Any Instance<ConstraintSentences> rooms) {
            super(uriInfo, rooms);
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
        OfTransaction(UriInfo uriInfo, @Any Instance<ConstraintSentences> rooms) {
            super(uriInfo, rooms);
        }

        @Override
        public Response toResponse(QuarkusTransactionException exception) {
            return respond(exception);
        }
    }

    abstract static class Base {
        private final UriInfo uriInfo;
        private final Map<String, String> sentences = new HashMap<>();

        Base(UriInfo uriInfo, Instance<ConstraintSentences> rooms) {
            this.uriInfo = uriInfo;
            rooms.forEach(room -> sentences.putAll(room.sentences()));
        }

        Response respond(Throwable thrown) {
            if (DatabaseAway.isAway(thrown)) {
                return DatabaseAway.response(uriInfo);
            }
            PSQLException refused = find(thrown, PSQLException.class);
            if (refused != null) {
                String state = refused.getSQLState() == null ? "" : refused.getSQLState();
                ServerErrorMessage message = refused.getServerErrorMessage();
                InvalidException.FieldError wrong = message == null ? null : BadValues.find(state, message);
                if (wrong != null && !sentences.containsKey(String.valueOf(message.getConstraint()))) {
                    return invalid(wrong);
                }
                String sentence = message == null ? null : sentence(state, message.getConstraint());
                if (sentence != null) {
                    return problem("conflict", "That contradicts what is recorded", 409, sentence);
                }
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

        private @Nullable String sentence(String state, @Nullable String constraint) {
            if (constraint == null) {
                return null;
            }
            String known = sentences.get(constraint);
            if (known != null) {
                return known;
            }
            boolean overlapOrDuplicate = state.equals("23505") || state.equals("23P01");
            return overlapOrDuplicate ? "The record breaks a rule: " + constraint.replace('_', ' ') + "." : null;
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
