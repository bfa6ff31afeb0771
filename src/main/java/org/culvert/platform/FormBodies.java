package org.culvert.platform;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.validation.Validator;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.culvert.platform.InvalidException.FieldError;

/** Reads what somebody entered in a form as the body of a request is read, and refuses it in the same words. */
@ApplicationScoped
public class FormBodies {
    private final ObjectMapper mapper;
    private final Validator validator;

    FormBodies(ObjectMapper mapper, Validator validator) {
        this.mapper = mapper;
        this.validator = validator;
    }

    /**
     * Reads a body. The parser stops at the first field that it cannot read; here the rest is read without that field, so that
     * whoever typed is told of all at once.
     *
     * @throws InvalidException naming each field that is wrong
     */
    public <T> T read(JsonNode told, Class<T> type) {
        List<FieldError> wrong = new ArrayList<>();
        JsonNode rest = told;
        while (true) {
            T body;
            try {
                body = mapper.treeToValue(rest, type);
            } catch (JsonProcessingException e) {
                FieldError error = ProblemShape.errors(e).get(0);
                rest = rest.deepCopy();
                boolean isLeftOver = wrong.stream().anyMatch(before -> isIn(before.field(), error.field()));
                if (!isLeftOver) {
                    wrong.add(error);
                }
                if (isLeftOver || !leaveOut(rest, error.field())) {
                    throw new InvalidException(wrong);
                }
                continue;
            }
            violations(body).stream()
                    .filter(error -> wrong.stream().noneMatch(before -> isIn(before.field(), error.field())))
                    .forEach(wrong::add);
            if (!wrong.isEmpty()) {
                throw new InvalidException(wrong);
            }
            return body;
        }
    }

    /**
     * Looks whether all of a body is as its request would have to be, where a form made it otherwise than of JSON.
     *
     * @throws InvalidException naming each field that is wrong
     */
    public <T> T checked(T body) {
        List<FieldError> wrong = violations(body);
        if (!wrong.isEmpty()) {
            throw new InvalidException(wrong);
        }
        return body;
    }

    private <T> List<FieldError> violations(T body) {
        return validator.validate(body).stream()
                .map(violation -> new FieldError(
                        // An element of a list is a node of its own beside its number
                        violation.getPropertyPath().toString().replace(".<list element>", ""),
                        "This value " + violation.getMessage() + ".",
                        violation.getMessage(),
                        null))
                .sorted(Comparator.comparing(FieldError::field).thenComparing(FieldError::detail))
                .toList();
    }

    /** Whether a field is one that was left out, or has it in it. */
    private static boolean isIn(String leftOut, String field) {
        String pointed = FieldError.named(field);
        String without = FieldError.named(leftOut);
        return without.equals(pointed) || without.startsWith(pointed + ".") || without.startsWith(pointed + "[");
    }

    /** Takes out a field, or the list that it is in; false where there is none. */
    private static boolean leaveOut(JsonNode body, String field) {
        JsonNode part = body;
        String[] steps = field.split("\\.", -1);
        for (int i = 0; i < steps.length; i++) {
            if (!(part instanceof ObjectNode within) || !within.has(steps[i])) {
                return false;
            }
            JsonNode next = within.get(steps[i]);
            if (i == steps.length - 1 || !next.isObject()) {
                within.remove(steps[i]);
                return true;
            }
            part = next;
        }
        return false;
    }
}
