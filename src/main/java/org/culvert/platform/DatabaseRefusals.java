package org.culvert.platform;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.postgresql.util.PSQLException;
import org.postgresql.util.ServerErrorMessage;

/** What a refusal of the database means to whoever asked for the change: the rooms have sentences for their constraints. */
@ApplicationScoped
public class DatabaseRefusals {
    private final Map<String, String> sentences = new HashMap<>();

    DatabaseRefusals(@Any Instance<ConstraintSentences> rooms) {
        rooms.forEach(room -> sentences.putAll(room.sentences()));
    }

    /** As a room would have refused it; null where the database refused what the server should not have asked. */
    public @Nullable CulvertException find(Throwable thrown) {
        PSQLException refused = PersistenceProblems.find(thrown, PSQLException.class);
        ServerErrorMessage message = refused == null ? null : refused.getServerErrorMessage();
        if (refused == null || message == null) {
            return null;
        }
        String state = Objects.requireNonNullElse(refused.getSQLState(), "");
        InvalidException.FieldError wrong = BadValues.find(state, message);
        if (wrong != null && !sentences.containsKey(String.valueOf(message.getConstraint()))) {
            return new InvalidException(List.of(wrong));
        }
        String sentence = sentence(state, message.getConstraint());
        return sentence == null ? null : new ConflictException(sentence);
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
}
