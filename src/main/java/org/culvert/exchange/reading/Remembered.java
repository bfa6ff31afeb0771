package org.culvert.exchange.reading;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;

/** What was made of words that come again and again; of more than {@value #MOST} it is made anew. */
final class Remembered<T> {
    private static final int MOST = 20_000;
    private static final int LONGEST = 200;

    private final Map<String, T> known = new HashMap<>();
    private final Function<String, T> reading;

    Remembered(Function<String, T> reading) {
        this.reading = reading;
    }

    T of(String words) {
        T before = known.get(words);
        if (before != null) {
            return before;
        }
        T made = reading.apply(words);
        if (known.size() < MOST && words.length() <= LONGEST) {
            known.put(words, made);
        }
        return made;
    }
}
