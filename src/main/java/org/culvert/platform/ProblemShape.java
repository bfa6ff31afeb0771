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
import java.net.URI;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException.FieldError;

/**
 * Gives every problem that the frameworks raise the same shape as our own: a type with a page, {@code errors} with
 * {@code field}, {@code detail} and {@code wanted}, in a stable order, and no Java names.
 */
@ApplicationScoped
class ProblemShape implements ProblemPostProcessor {
    private static final Map<Integer, String> TYPE_BY_STATUS = Map.ofEntries(
            Map.entry(400, "invalid"),
            Map.entry(401, "not-signed-in"),
            Map.entry(403, "not-allowed"),
            Map.entry(404, "not-found"),
            Map.entry(405, "no-such-operation"),
            Map.entry(406, "no-such-format"),
            Map.entry(415, "no-such-format"),
            Map.entry(409, "conflict"),
            Map.entry(413, "too-large"),
            Map.entry(500, "our-fault"),
            Map.entry(503, "away"));

    @Override
    public HttpProblem apply(HttpProblem problem, ProblemContext context) {
        if (problem.getType() != null && problem.getType().toString().startsWith(ProblemMapping.TYPES)) {
            return problem;
        }
        List<FieldError> errors = errors(context.cause);
        HttpProblem.Builder shaped = HttpProblem.builder()
                .withStatus(errors.isEmpty() ? problem.getStatusCode() : 400)
                .withInstance(problem.getInstance());
        if (!errors.isEmpty()) {
            return shaped.withType(URI.create(ProblemMapping.TYPES + "invalid"))
                    .withTitle("Something in the request is not right")
                    .withDetail(errors.get(0).detail())
                    .with("errors", errors)
                    .build();
        }
        problem.getHeaders().forEach(shaped::withHeader);
        int status = problem.getStatusCode();
        return shaped.withType(URI.create(ProblemMapping.TYPES + TYPE_BY_STATUS.getOrDefault(status, "other")))
                .withTitle(problem.getTitle())
                .withDetail(status >= 500 ? "The server made a mistake; it has been logged." : problem.getDetail())
                .build();
    }

    private static List<FieldError> errors(Throwable cause) {
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
