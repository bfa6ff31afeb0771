package org.culvert.web.kept;

import java.util.Map;

/**
 * Records that a field may name.
 *
 * @param words of each, by its identifier
 * @param most how many there are at most where there are more, else 0
 */
record Offered(Map<String, String> words, int most) {
    static Offered all(Map<String, String> words) {
        return new Offered(words, 0);
    }
}
