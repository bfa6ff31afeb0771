package org.culvert.web.settings;

import java.util.Set;
import java.util.UUID;
import org.culvert.platform.FormBodies;
import org.culvert.web.forms.EntryBody;
import org.jspecify.annotations.Nullable;

/**
 * Something that may be done with things of a kind: one is entered, read again, corrected, ended.
 *
 * @param name last part of its address, and the name of its words
 * @param operation of the API, whose rights are the rights of this
 * @param tag kind of the record that it changes, as {@code NeedsTag} has it; null where nothing is changed
 * @param ofOne whether it is done to one thing that is there
 * @param body what it takes, as the API does
 * @param leftOut fields of the body that the form does without, with all under them
 * @param shownOnce whether its answer has a secret that nobody is shown again
 */
record Act<E>(
        String name,
        String operation,
        @Nullable String tag,
        boolean ofOne,
        Class<E> body,
        Set<String> leftOut,
        boolean shownOnce,
        Taking<E> taking) {
    /** Carries it out, and says what was made or changed, as far as that has an identifier. */
    interface Taking<E> {
        @Nullable
        Object take(UUID id, E entry);
    }

    /** In the place of an identifier where there is one thing alone, or none yet. */
    static final UUID NONE = new UUID(0, 0);

    @Nullable
    Object carryOut(UUID id, EntryBody told, FormBodies bodies) {
        return taking.take(id, told.read(bodies, body));
    }
}
