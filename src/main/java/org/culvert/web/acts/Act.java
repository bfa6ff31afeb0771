package org.culvert.web.acts;

import java.util.Set;
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
 */
public record Act<E>(
        String name, String operation, @Nullable String tag, boolean ofOne, Class<E> body, Set<String> leftOut) {
    /** Its name in words of Java, by which message bundles know it. */
    public String key() {
        return WordKeys.of(name);
    }
}
