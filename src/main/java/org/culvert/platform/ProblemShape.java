package org.culvert.platform;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.exc.ValueInstantiationException;
import io.quarkiverse.resteasy.problem.HttpProblem;
import io.quarkiverse.resteasy.problem.postprocessing.ProblemContext;
import io.quarkiverse.resteasy.problem.postprocessing.ProblemPostProcessor;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.ConstraintViolationException;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.UnsupportedCharsetException;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/**
 * Gives every problem that the frameworks raise the same shape as our own: a type with a page, {@code errors} with
 * {@code field}, {@code detail} and {@code wanted}, in a stable order, and no Java names.
 */
@ApplicationScoped
class ProblemShape implements ProblemPostProcessor {
    private record Kind(String type, String title, String detail) {}

    private static final Kind ANOTHER_FORMAT = new Kind(
            "no-such-format",
            "That format is not spoken here",
            "The content type that was sent or wanted is not one of those of this operation.");

    private static final Kind FAULT =
            new Kind("our-fault", "The server made a mistake", "The server made a mistake; it has been logged.");
    private static final Kind OTHER = new Kind(
            "other", "Something else is not right", "The request was refused before it reached a room of this server.");

    private static final Map<Integer, Kind> KINDS = Map.ofEntries(
            Map.entry(
                    400,
                    new Kind("invalid", "Something in the request is not right", "The request cannot be understood.")),
            Map.entry(401, new Kind("not-signed-in", "You are not signed in", "Nobody is signed in.")),
            Map.entry(403, new Kind("not-allowed", "Your role does not reach that", "The role does not reach that.")),
            Map.entry(404, new Kind("not-found", "Nothing is there", "There is nothing at this address.")),
            Map.entry(
                    405,
                    new Kind(
                            "no-such-operation",
                            "That cannot be done there",
                            "The address is known, but not with this method.")),
            Map.entry(406, ANOTHER_FORMAT),
            Map.entry(415, ANOTHER_FORMAT),
            Map.entry(
                    409, new Kind("conflict", "That contradicts what is recorded", "It contradicts what is recorded.")),
            Map.entry(
                    413,
                    new Kind("too-large", "That is too large", "The body, or a field of it, is larger than is read.")),
            Map.entry(500, FAULT),
            Map.entry(503, new Kind("away", "The database is away for a moment", "Try again in a few seconds.")));

    private static Kind kind(int status) {
        Kind known = KINDS.get(status);
        return known != null ? known : status >= 500 ? FAULT : OTHER;
    }

    static String type(int status) {
        return kind(status).type();
    }

    static String title(int status) {
        return kind(status).title();
    }

    static String detail(int status) {
        return kind(status).detail();
    }

    private final UriInfo uriInfo;

    ProblemShape(UriInfo uriInfo) {
        this.uriInfo = uriInfo;
    }

    @Override
    public HttpProblem apply(HttpProblem problem, ProblemContext context) {
        if (problem.getType() != null && problem.getType().toString().startsWith(ProblemMapping.TYPES)) {
            return problem;
        }
        URI instance = ProblemMapping.instance(uriInfo);
        List<FieldError> errors = errors(context.cause);
        int status = problem.getStatusCode();
        if (!errors.isEmpty()) {
            return invalid(errors, instance);
        }
        if (status == 400) {
            return invalid(List.of(unreadable(context.cause)), instance);
        }
        HttpProblem.Builder shaped = HttpProblem.builder().withStatus(status).withInstance(instance);
        problem.getHeaders().forEach(shaped::withHeader);
        // What frameworks say of themselves, such as a bare "HTTP 404 Not Found", says nothing
        return shaped.withType(URI.create(ProblemMapping.TYPES + type(status)))
                .withTitle(title(status))
                .withDetail(detail(status))
                .build();
    }

    static HttpProblem invalid(List<FieldError> errors, @Nullable URI instance) {
        return HttpProblem.builder()
                .withStatus(400)
                .withType(URI.create(ProblemMapping.TYPES + type(400)))
                .withTitle(title(400))
                .withDetail(errors.get(0).detail())
                .withInstance(instance)
                .with("errors", errors)
                .build();
    }

    /** What the framework could not read, before anything of ours saw it. */
    private static FieldError unreadable(Throwable cause) {
        for (Throwable t = cause; t != null; t = t.getCause()) {
            if (t instanceof IllegalCharsetNameException || t instanceof UnsupportedCharsetException) {
                return new FieldError(
                        HttpHeaders.CONTENT_TYPE,
                        "There is no such character encoding.",
                        "charset=utf-8, or none",
                        null);
            }
        }
        return new FieldError("request", detail(400), "a request as the contract has it", null);
    }

    static List<FieldError> errors(Throwable cause) {
        for (Throwable t = cause; t != null; t = t.getCause()) {
            if (t instanceof ConstraintViolationException violations) {
                return violations.getConstraintViolations().stream()
                        .map(ProblemShape::error)
                        .sorted(Comparator.comparing(FieldError::field).thenComparing(FieldError::detail))
                        .toList();
            }
            if (t instanceof InvalidException invalid) {
                return invalid.errors();
            }
            if (t instanceof JsonProcessingException json) {
                return List.of(error(json));
            }
        }
        return List.of();
    }

    private static FieldError error(ConstraintViolation<?> violation) {
        String path = violation.getPropertyPath().toString();
        // The first two nodes are the method and its parameter: they mean nothing to the sender.
        String[] nodes = path.split("\\.", 3);
        String field = nodes.length == 3 ? nodes[2] : nodes[nodes.length - 1];
        // An element of a list is a node of its own beside its number.
        field = field.replace(".<list element>", "");
        return new FieldError(field, "This value " + violation.getMessage() + ".", violation.getMessage(), null);
    }

    private static FieldError error(JsonProcessingException json) {
        if (json instanceof UnrecognizedPropertyException unknown) {
            String known = unknown.getKnownPropertyIds() == null
                    ? "a known field"
                    : unknown.getKnownPropertyIds().stream()
                            .map(Object::toString)
                            .sorted()
                            .collect(Collectors.joining(", "));
            return new FieldError(path(unknown), "There is no such field.", known, null);
        }
        if (json instanceof ValueInstantiationException refused) {
            Throwable cause = refused.getCause();
            if (cause instanceof InvalidException invalid && !invalid.errors().isEmpty()) {
                FieldError inner = invalid.errors().get(0);
                String field = inner.field().isEmpty() ? path(refused) : path(refused) + "." + inner.field();
                return new FieldError(field, inner.detail(), inner.wanted(), inner.otherReading());
            }
            return new FieldError(path(refused), "This value cannot be read.", "a value as documented", null);
        }
        if (json instanceof MismatchedInputException mismatch) {
            return new FieldError(path(mismatch), "This value cannot be read.", wanted(mismatch.getTargetType()), null);
        }
        if (json instanceof JsonMappingException mapping) {
            return new FieldError(path(mapping), "This value cannot be read.", "a value as documented", null);
        }
        if (json instanceof StreamConstraintsException) {
            return new FieldError(
                    "body", "This is deeper, or holds something longer, than is read.", "smaller JSON", null);
        }
        return new FieldError("body", "This is not well-formed JSON.", "a JSON document (RFC 8259)", null);
    }

    private static String path(JsonMappingException exception) {
        String path = exception.getPath().stream()
                .map(node -> node.getFieldName() != null ? node.getFieldName() : Integer.toString(node.getIndex()))
                .collect(Collectors.joining("."));
        return path.isEmpty() ? "body" : path;
    }

    private static String wanted(Class<?> type) {
        if (type == null) {
            return "a value as documented";
        }
        if (type.isEnum()) {
            return java.util.Arrays.stream(type.getEnumConstants())
                    .map(Object::toString)
                    .collect(Collectors.joining(", "));
        }
        return switch (type.getSimpleName()) {
            case "int", "Integer", "long", "Long" -> "a whole number";
            case "double", "Double", "BigDecimal" -> "a number";
            case "boolean", "Boolean" -> "true or false";
            case "Instant" -> "a time such as 2026-11-25T18:40:00Z";
            case "LocalDate" -> "a date such as 2026-11-25";
            case "UUID" -> "an identifier as this server gave it";
            case "List", "ArrayList" -> "a list";
            case "String" -> "a text";
            default -> "an object as documented";
        };
    }
}
