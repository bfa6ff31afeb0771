package org.culvert.platform;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validator;
import java.util.Comparator;
import java.util.Set;
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
     * Reads a body.
     *
     * @throws InvalidException naming each field that is wrong
     */
    public <T> T read(JsonNode told, Class<T> type) {
        T body;
        try {
            body = mapper.treeToValue(told, type);
        } catch (JsonProcessingException e) {
            throw new InvalidException(ProblemShape.errors(e));
        }
        return checked(body);
    }

    /**
     * Looks whether all of a body is as its request would have to be, where a form made it otherwise than of JSON.
     *
     * @throws InvalidException naming each field that is wrong
     */
    public <T> T checked(T body) {
        Set<ConstraintViolation<T>> violations = validator.validate(body);
        if (!violations.isEmpty()) {
            throw new InvalidException(violations.stream()
                    .map(violation -> new FieldError(
                            // An element of a list is a node of its own beside its number
                            violation.getPropertyPath().toString().replace(".<list element>", ""),
                            "This value " + violation.getMessage() + ".",
                            violation.getMessage(),
                            null))
                    .sorted(Comparator.comparing(FieldError::field).thenComparing(FieldError::detail))
                    .toList());
        }
        return body;
    }
}
