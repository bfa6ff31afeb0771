package org.culvert.exchange.reading;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Finds which animal of a list a text names: by whole words, in any order, in the singular or the plural, with authorities and
 * years left out, and by near spellings, which are only proposed. Never by a part of a word: a cat is in no caterpillar, and a
 * possum in no opossum.
 */
public final class Names {
    /** How sure it is. */
    public enum Likeness {
        /** Word for word, but for case, accents, authorities and the plural. */
        same,
        /** The same words with letters of another script that look alike. */
        looksAlike,
        /** The name and words beside it, such as a size or a colour. */
        withMore,
        /** A letter or two are other: to be confirmed. */
        nearSpelling,
        /** The text names more than one animal, or one and something unknown: to be confirmed. */
        oneOfSeveral;

        /** Whether nobody needs to confirm it. */
        public boolean isSure() {
            return this != nearSpelling && this != oneOfSeveral;
        }
    }

    /**
     * One animal that a text may name.
     *
     * @param key of the animal in the list
     * @param name by which it was found
     */
    public record Match(String key, String name, Likeness likeness) {}

    private record Entry(String key, String name, List<String> words) {}

    /** Letters of Greek and Cyrillic that look like Latin ones; Unicode Technical Standard 39 has many more (from memory). */
    private static final String LOOK = "аеорсухіјѕԁһӏАВЕКМНОРСТУХІЈЅαορνικτΑΒΕΖΗΙΚΜΝΟΡΤΥΧ";

    private static final String LIKE = "aeopcyxijsdhlabekmhopctyxijsaopviktabezhikmnoptyx";

    private static final Pattern AUTHORITY = Pattern.compile(
            "\\([^)]*\\d{4}[^)]*\\)|,?\\s*\\p{Lu}[\\p{L}.]+(?:\\s*(?:&|and|et)\\s*\\p{Lu}[\\p{L}.]+)?,\\s*\\d{4}");
    private static final Pattern BETWEEN =
            Pattern.compile("[/+&;]|(?iu)\\s(?:and|or|with|und|oder|mit|et|ou|avec|con|y|e|o)\\s");
    private static final Pattern NO_WORD = Pattern.compile("[^\\p{L}\\p{Nd}]+");

    /** Said beside a name, and no part of one; common practice, no source. */
    private static final Set<String> IDLE = Set.of(
            "sp",
            "spp",
            "cf",
            "aff",
            "ssp",
            "subsp",
            "var",
            "the",
            "a",
            "an",
            "adult",
            "juvenile",
            "juv",
            "male",
            "female",
            "dead",
            "live",
            "alive",
            "injured",
            "unidentified",
            "unknown",
            "large",
            "small",
            "young");

    private final Map<String, List<Entry>> byWords = new HashMap<>();
    private final Map<String, Set<Entry>> byWord = new HashMap<>();
    private final List<Entry> all = new ArrayList<>();

    /** Whether a name has words of its own, by which a text could be found to mean it. */
    public static boolean hasWords(String name) {
        return !sorted(words(name)).isEmpty();
    }

    /** Words of a name in small letters and in the singular, without authorities and what is only said beside a name. */
    public static List<String> ownWords(String name) {
        return words(name).stream().filter(word -> !IDLE.contains(word)).toList();
    }

    /** Adds a name of an animal: its scientific name, one that people use, or a synonym. */
    public void add(String key, String name) {
        List<String> words = words(name);
        if (sorted(words).isEmpty()) {
            throw new IllegalArgumentException("a name has words of its own: " + name);
        }
        var entry = new Entry(key, name, words);
        all.add(entry);
        byWords.computeIfAbsent(sorted(words), k -> new ArrayList<>()).add(entry);
        words.forEach(
                word -> byWord.computeIfAbsent(word, k -> new LinkedHashSet<>()).add(entry));
    }

    /** The animals that a text may name, the surest kind of likeness alone; empty where it names none. */
    public List<Match> find(String text) {
        List<String> words = words(text);
        List<Match> found = matches(byWords.getOrDefault(sorted(words), List.of()), Likeness.same);
        if (found.isEmpty()) {
            List<String> folded = words(fold(text));
            if (!folded.equals(words)) {
                found = matches(byWords.getOrDefault(sorted(folded), List.of()), Likeness.looksAlike);
                words = folded;
            }
        }
        if (found.isEmpty()) {
            found = several(text);
        }
        if (found.isEmpty()) {
            found = withMore(words);
        }
        return found.isEmpty() ? nearSpellings(words) : found;
    }

    /** Animals of a text with a sign or a word between its parts; empty where it has one part, or none of them names an animal. */
    private List<Match> several(String text) {
        List<String> parts = Arrays.stream(BETWEEN.split(AUTHORITY.matcher(text).replaceAll(" ")))
                .filter(Names::hasWords)
                .toList();
        if (parts.size() < 2) {
            return List.of();
        }
        Map<String, Match> byKey = new HashMap<>();
        boolean allAreKnown = true;
        for (String part : parts) {
            List<Match> known = find(part).stream()
                    .filter(match -> match.likeness().isSure())
                    .toList();
            allAreKnown &= !known.isEmpty();
            known.forEach(match -> byKey.putIfAbsent(match.key(), match));
        }
        Likeness likeness = allAreKnown && byKey.size() == 1 ? Likeness.withMore : Likeness.oneOfSeveral;
        return byKey.values().stream()
                .map(match -> new Match(match.key(), match.name(), likeness))
                .sorted(Comparator.comparing(Match::key))
                .toList();
    }

    /** Names of which all words stand in the text, the longest alone. */
    private List<Match> withMore(List<String> words) {
        Set<String> there = Set.copyOf(words);
        Set<Entry> met = new LinkedHashSet<>();
        words.forEach(word -> met.addAll(byWord.getOrDefault(word, Set.of())));
        List<Entry> whole =
                met.stream().filter(entry -> there.containsAll(entry.words)).toList();
        int longest = whole.stream().mapToInt(entry -> entry.words.size()).max().orElse(0);
        return matches(
                whole.stream().filter(entry -> entry.words.size() == longest).toList(), Likeness.withMore);
    }

    private List<Match> nearSpellings(List<String> words) {
        List<String> own = words.stream().filter(word -> !IDLE.contains(word)).toList();
        if (own.isEmpty()) {
            return List.of();
        }
        int best = Integer.MAX_VALUE;
        List<Entry> nearest = new ArrayList<>();
        for (Entry entry : all) {
            int far = distance(own, entry.words);
            if (far < best) {
                best = far;
                nearest.clear();
            }
            if (far == best && far < Integer.MAX_VALUE) {
                nearest.add(entry);
            }
        }
        return matches(nearest, Likeness.nearSpelling);
    }

    /** Letters that are other in all, or the largest number where a word is no near spelling of its own. */
    private static int distance(List<String> one, List<String> other) {
        if (one.size() != other.size()) {
            return Integer.MAX_VALUE;
        }
        int sum = 0;
        for (int i = 0; i < one.size(); i++) {
            // The first letter is seldom wrong, and another one makes another word: a possum is no opossum
            if (one.get(i).charAt(0) != other.get(i).charAt(0)) {
                return Integer.MAX_VALUE;
            }
            int most = allowed(Math.min(one.get(i).length(), other.get(i).length()));
            int far = edits(one.get(i), other.get(i), most);
            if (far > most) {
                return Integer.MAX_VALUE;
            }
            sum += far;
        }
        return sum;
    }

    /** A short word that differs by a letter is another word. */
    private static int allowed(int letters) {
        return letters < 5 ? 0 : letters < 9 ? 1 : 2;
    }

    /**
     * Letters put in, left out, changed, or swapped with their neighbour (the optimal string alignment distance), or more
     * than {@code most}.
     */
    static int edits(String one, String other, int most) {
        if (Math.abs(one.length() - other.length()) > most) {
            return most + 1;
        }
        int[] beforeLast = new int[other.length() + 1];
        int[] last = new int[other.length() + 1];
        for (int j = 0; j < last.length; j++) {
            last[j] = j;
        }
        for (int i = 1; i <= one.length(); i++) {
            int[] row = new int[other.length() + 1];
            row[0] = i;
            for (int j = 1; j <= other.length(); j++) {
                int change = one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1;
                row[j] = Math.min(Math.min(row[j - 1], last[j]) + 1, last[j - 1] + change);
                if (i > 1
                        && j > 1
                        && one.charAt(i - 1) == other.charAt(j - 2)
                        && one.charAt(i - 2) == other.charAt(j - 1)) {
                    row[j] = Math.min(row[j], beforeLast[j - 2] + 1);
                }
            }
            beforeLast = last;
            last = row;
        }
        return last[other.length()];
    }

    /** One match an animal. */
    private static List<Match> matches(Collection<Entry> entries, Likeness likeness) {
        Map<String, Match> byKey = new HashMap<>();
        entries.forEach(entry -> byKey.putIfAbsent(entry.key, new Match(entry.key, entry.name, likeness)));
        return byKey.values().stream().sorted(Comparator.comparing(Match::key)).toList();
    }

    private static List<String> words(String text) {
        String plain = Normalizer.normalize(AUTHORITY.matcher(text).replaceAll(" "), Normalizer.Form.NFKD)
                .replaceAll("\\p{M}+", "")
                .replaceAll("['’‘`´]s\\b", "s")
                .replaceAll("['’‘`´]", "")
                .toLowerCase(Locale.ROOT);
        return Arrays.stream(NO_WORD.split(plain))
                .filter(word -> !word.isEmpty())
                .map(Names::singular)
                .filter(word -> !word.isEmpty())
                .toList();
    }

    /** Roughly: the same is done to both sides, so that a wrong singular does no harm. */
    private static String singular(String word) {
        if (word.length() > 4 && word.endsWith("ies")) {
            return word.substring(0, word.length() - 3) + 'y';
        }
        if (word.length() > 4 && (word.endsWith("xes") || word.endsWith("ches") || word.endsWith("shes"))) {
            return word.substring(0, word.length() - 2);
        }
        return word.length() > 3
                        && word.endsWith("s")
                        && !word.endsWith("ss")
                        && !word.endsWith("us")
                        && !word.endsWith("is")
                ? word.substring(0, word.length() - 1)
                : word;
    }

    private static String sorted(List<String> words) {
        return words.stream()
                .filter(word -> !IDLE.contains(word))
                .sorted()
                .reduce("", (one, other) -> one + ' ' + other);
    }

    private static String fold(String text) {
        var folded = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            int at = LOOK.indexOf(text.charAt(i));
            folded.append(at < 0 ? text.charAt(i) : LIKE.charAt(at));
        }
        return folded.toString();
    }
}
