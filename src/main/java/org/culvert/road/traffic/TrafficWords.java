package org.culvert.road.traffic;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/** Words that files of counts have, as records have them. */
final class TrafficWords {
    private static final Set<String> BOTH = Set.of(
            "both",
            "both directions",
            "bothdirections",
            "two-way",
            "two way",
            "2-way",
            "2 way",
            "combined",
            "total",
            "bidirectional",
            "bi-directional",
            "all");

    private static final Map<String, TrafficCountKind> KINDS = Map.ofEntries(
            Map.entry("continuous", TrafficCountKind.continuous),
            Map.entry("permanent", TrafficCountKind.continuous),
            Map.entry("atr", TrafficCountKind.continuous),
            Map.entry("shortterm", TrafficCountKind.shortTerm),
            Map.entry("short-term", TrafficCountKind.shortTerm),
            Map.entry("short term", TrafficCountKind.shortTerm),
            Map.entry("short", TrafficCountKind.shortTerm),
            Map.entry("temporary", TrafficCountKind.shortTerm),
            Map.entry("coverage", TrafficCountKind.shortTerm),
            Map.entry("sample", TrafficCountKind.shortTerm),
            Map.entry("tube", TrafficCountKind.shortTerm),
            Map.entry("manual", TrafficCountKind.shortTerm),
            Map.entry("estimated", TrafficCountKind.estimated),
            Map.entry("estimate", TrafficCountKind.estimated),
            Map.entry("modelled", TrafficCountKind.estimated),
            Map.entry("modeled", TrafficCountKind.estimated),
            Map.entry("model", TrafficCountKind.estimated));

    private TrafficWords() {}

    /** A value by its own name, as parameters have it. */
    static <E extends Enum<E>> E named(String field, Class<E> type, @Nullable String text) {
        return Arrays.stream(type.getEnumConstants())
                .filter(value -> value.name().equals(text))
                .findFirst()
                .orElseThrow(() -> InvalidException.of(
                        field,
                        text == null ? "This is missing." : "This is none of the values.",
                        Arrays.stream(type.getEnumConstants()).map(Enum::name).collect(Collectors.joining(", "))));
    }

    /** Whether a direction in words means both together. */
    static boolean isBoth(String direction) {
        return BOTH.contains(direction.toLowerCase(Locale.ROOT).strip());
    }

    /** @throws InvalidException naming the field, with the words that are understood */
    static TrafficCountKind kind(String field, String text) {
        TrafficCountKind kind = KINDS.get(text.toLowerCase(Locale.ROOT).strip());
        if (kind == null) {
            throw InvalidException.of(
                    field,
                    "It is not understood how this was counted.",
                    KINDS.keySet().stream().sorted().collect(Collectors.joining(", ")));
        }
        return kind;
    }

    /** A number with a point, with or without commas or spaces between thousands. */
    static double number(String field, String text) {
        String plain = text.strip();
        if (plain.matches("-?[0-9]{1,3}([, ][0-9]{3})+(\\.[0-9]+)?")) {
            plain = plain.replaceAll("[, ]", "");
        }
        if (!plain.matches("-?[0-9]{1,15}(\\.[0-9]{1,15})?([eE][+-]?[0-9]{1,2})?")) {
            throw InvalidException.of(field, "This is no number.", "a number such as 4210 or 4,210.5");
        }
        return Double.parseDouble(plain);
    }
}
