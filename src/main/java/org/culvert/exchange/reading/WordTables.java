package org.culvert.exchange.reading;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Words of cells that mean the same wherever they stand: directions, whether an animal lives, its sex, small numbers. Common
 * practice, no source. What somebody decided for a file goes before them.
 */
final class WordTables {
    private static final Map<String, String> DIRECTIONS = table(Map.ofEntries(
            Map.entry("north", "n nb n/b n.b. north northbound north-bound northwards nord norte noord nbd"),
            Map.entry("south", "s sb s/b s.b. south southbound south-bound southwards süd sud sur sul zuid sbd"),
            Map.entry("east", "e eb e/b e.b. east eastbound east-bound eastwards ost est este oost ebd"),
            Map.entry("west", "w wb w/b w.b. west westbound west-bound westwards ouest oeste wbd"),
            Map.entry("northEast", "ne northeast north-east northeastbound nordost"),
            Map.entry("northWest", "nw northwest north-west northwestbound nordwest"),
            Map.entry("southEast", "se southeast south-east southeastbound südost"),
            Map.entry("southWest", "sw southwest south-west southwestbound südwest"),
            Map.entry(
                    "both",
                    "both b ns sn ew we n/s e/w s/n w/e n&s e&w both-ways beide all either median centre center middle"),
            Map.entry(
                    "ramp",
                    "ramp onramp on-ramp offramp off-ramp exit slip slip-road sliproad entry interchange roundabout ausfahrt"
                            + " auffahrt nbramp sbramp ebramp wbramp"),
            Map.entry("increasing", "increasing inc up prescribed gazettal forward ascending + p"),
            Map.entry("decreasing", "decreasing dec down counter against reverse descending -")));

    private static final Map<String, String> VITALITIES = table(Map.of(
            "alive",
            "alive live living lebend lebendig vivant vivante vivo viva levend y-alive injured hurt verletzt blessé herido",
            "dead",
            "dead deceased doa d.o.a. killed carcass carcase kadaver tot mort morte muerto muerta morto morta dood roadkill"
                    + " road-kill road_kill dead_on_arrival dead-on-arrival fatal"));

    private static final Map<String, String> SEXES = table(Map.of(
            "female", "female f fem females weiblich w femelle hembra femmina fêmea vrouwelijk ♀",
            "male", "male m males männlich mâle macho maschio mannelijk ♂"));

    private static final Map<String, String> PRESENCES = table(Map.of(
            "present", "present presence yes y true 1 detected confirmed found",
            "absent", "absent absence no n false 0 undetected not-detected not-present not-found"));

    private static final Map<String, String> COUNTS = table(Map.ofEntries(
            Map.entry("1", "one single ein eine un une uno una"), Map.entry("2", "two pair couple zwei deux dos due"),
            Map.entry("3", "three drei trois tres tre"), Map.entry("4", "four vier quatre cuatro quattro"),
            Map.entry("5", "five fünf cinq cinco cinque"), Map.entry("6", "six sechs seis sei"),
            Map.entry("7", "seven sieben sept siete sette"), Map.entry("8", "eight acht huit ocho otto"),
            Map.entry("9", "nine neun neuf nueve nove"), Map.entry("10", "ten zehn dix diez dieci")));

    private WordTables() {}

    static @Nullable String direction(String cell) {
        return DIRECTIONS.get(key(cell));
    }

    static @Nullable String vitality(String cell) {
        return VITALITIES.get(key(cell).replace(' ', '-'));
    }

    static @Nullable String sex(String cell) {
        return SEXES.get(key(cell));
    }

    /** {@code present} or {@code absent}, or null. */
    static @Nullable String presence(String cell) {
        return PRESENCES.get(key(cell).replace(' ', '-'));
    }

    static @Nullable String count(String cell) {
        return COUNTS.get(key(cell));
    }

    private static String key(String cell) {
        String small = cell.toLowerCase(Locale.ROOT);
        return small.endsWith(" bound") ? small.substring(0, small.length() - 6) : small;
    }

    private static Map<String, String> table(Map<String, String> wordsByMeaning) {
        Map<String, String> meanings = new HashMap<>();
        wordsByMeaning.forEach((meaning, words) -> {
            for (String word : words.split(" ")) {
                meanings.put(word, meaning);
            }
        });
        return Map.copyOf(meanings);
    }
}
