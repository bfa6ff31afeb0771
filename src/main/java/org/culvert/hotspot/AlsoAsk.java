package org.culvert.hotspot;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a run may be asked besides, each of which takes about as long as the run itself or longer. */
public enum AlsoAsk {
    PERSISTENCE("persistence", "Is it lasting? The same search in moving windows of three years"),
    SENSITIVITY("sensitivity", "Does it hang on the bandwidth? The same search at half and at twice of it"),
    SECONDARY("secondary", "What would other methods show? For comparison, without a claim");

    private final String key;
    private final String words;

    AlsoAsk(String key, String words) {
        this.key = key;
        this.words = words;
    }

    /** Its name in settings. */
    public String key() {
        return key;
    }

    public String words() {
        return words;
    }

    public static List<AlsoAsk> list() {
        return List.of(values());
    }

    static Optional<AlsoAsk> find(String key) {
        return Arrays.stream(values()).filter(one -> one.key.equals(key)).findFirst();
    }

    static String keys() {
        return list().stream().map(AlsoAsk::key).collect(Collectors.joining(", "));
    }
}
