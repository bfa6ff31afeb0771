package org.culvert.exchange.features;

import java.util.UUID;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads identifiers of features and cursors that are identifiers. */
final class Identifiers {
    private static final Pattern FORM = Pattern.compile("[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}");

    private Identifiers() {}

    /** Null where a text is none: nothing is at such an address. */
    static @Nullable UUID find(String text) {
        return FORM.matcher(text).matches() ? UUID.fromString(text) : null;
    }
}
