package org.culvert.platform.ledger;

import java.util.List;
import org.culvert.platform.InvalidException;
import org.culvert.platform.LedgerException;
import org.jspecify.annotations.Nullable;

/**
 * The key of an unsafe request: a String of Structured Fields (draft-ietf-httpapi-idempotency-key-header, RFC 8941
 * section 3.3.3), or the same characters bare, since many clients send them so.
 */
record IdempotencyKey(String text) {
    static final String HEADER = "Idempotency-Key";
    static final int LONGEST = 200;
    private static final String WANTED =
            "one key of 1 to " + LONGEST + " visible ASCII characters, such as a random UUID, with or without quotes";

    /**
     * Reads the header.
     *
     * @throws LedgerException when there is none
     * @throws InvalidException when it is no key
     */
    static IdempotencyKey of(List<String> headers) {
        if (headers.isEmpty()) {
            throw LedgerException.keyMissing();
        }
        String text = headers.size() > 1 ? null : headers.get(0).strip();
        String key = text == null ? null : text.startsWith("\"") ? unquoted(text) : bare(text);
        if (key == null || key.isEmpty() || key.length() > LONGEST) {
            throw InvalidException.of(HEADER, "This is no idempotency key.", WANTED);
        }
        return new IdempotencyKey(key);
    }

    /**
     * Reads the key that a page gave its form.
     *
     * @throws InvalidException when it is none
     */
    static IdempotencyKey ofForm(@Nullable String field) {
        String key = field == null ? null : bare(field);
        if (key == null || key.isEmpty() || key.length() > LONGEST) {
            throw InvalidException.of("key", "This is no key of a form.", "the form as the page gave it");
        }
        return new IdempotencyKey(key);
    }

    private static @Nullable String bare(String text) {
        return text.chars().allMatch(c -> c > 0x20 && c < 0x7f && c != '"' && c != ',' && c != ';') ? text : null;
    }

    private static @Nullable String unquoted(String text) {
        var key = new StringBuilder();
        int i = 1;
        while (i < text.length() && text.charAt(i) != '"') {
            char c = text.charAt(i);
            if (c == '\\') {
                i++;
                if (i == text.length() || (text.charAt(i) != '"' && text.charAt(i) != '\\')) {
                    return null;
                }
                c = text.charAt(i);
            } else if (c <= 0x20 || c >= 0x7f) {
                return null;
            }
            key.append(c);
            i++;
        }
        return i == text.length() - 1 ? key.toString() : null;
    }
}
