package org.culvert.road.network;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Compares names of roads as people write them: case, accents, punctuation and the usual abbreviations do not matter, nor
 * does a leading article. The abbreviations stand here, as data, and nowhere else.
 */
public final class RoadNames {
    private static final Map<String, String> WORDS = Map.ofEntries(
            Map.entry("st", "street"),
            Map.entry("str", "strasse"),
            Map.entry("rd", "road"),
            Map.entry("hwy", "highway"),
            Map.entry("fwy", "freeway"),
            Map.entry("mwy", "motorway"),
            Map.entry("pkwy", "parkway"),
            Map.entry("pky", "parkway"),
            Map.entry("expy", "expressway"),
            Map.entry("ave", "avenue"),
            Map.entry("av", "avenue"),
            Map.entry("blvd", "boulevard"),
            Map.entry("boul", "boulevard"),
            Map.entry("bd", "boulevard"),
            Map.entry("dr", "drive"),
            Map.entry("drv", "drive"),
            Map.entry("ln", "lane"),
            Map.entry("ct", "court"),
            Map.entry("cres", "crescent"),
            Map.entry("cr", "crescent"),
            Map.entry("cl", "close"),
            Map.entry("pl", "place"),
            Map.entry("pde", "parade"),
            Map.entry("tce", "terrace"),
            Map.entry("ter", "terrace"),
            Map.entry("trk", "track"),
            Map.entry("gr", "grove"),
            Map.entry("cct", "circuit"),
            Map.entry("esp", "esplanade"),
            Map.entry("mt", "mount"),
            Map.entry("ch", "chemin"),
            Map.entry("rte", "route"),
            Map.entry("n", "north"),
            Map.entry("s", "south"),
            Map.entry("e", "east"),
            Map.entry("w", "west"));

    private RoadNames() {}

    /** A name in the form in which names are compared; empty if nothing is left of it. */
    public static String comparable(String name) {
        String plain = Normalizer.normalize(name, Normalizer.Form.NFKD)
                .replaceAll("\\p{M}+", "")
                .toLowerCase(Locale.ROOT)
                .replace("\u00df", "ss")
                .replaceAll("['\u2019.]", "")
                .replaceAll("[^\\p{L}\\p{N}]+", " ")
                .trim();
        if (plain.isEmpty()) {
            return "";
        }
        String[] words = plain.split(" ");
        List<String> kept = new ArrayList<>();
        for (int i = 0; i < words.length; i++) {
            if (i == 0 && words.length > 1 && words[i].equals("the")) {
                continue;
            }
            kept.add(spelledOut(words[i], kept.isEmpty(), i < words.length - 1));
        }
        return String.join(" ", kept);
    }

    private static String spelledOut(String word, boolean first, boolean moreFollow) {
        if (first && moreFollow && word.equals("st")) {
            return "saint";
        }
        String whole = WORDS.get(word);
        if (whole != null) {
            return whole;
        }
        return word.length() > 5 && word.endsWith("str") ? word + "asse" : word;
    }

    /** A road number in the form in which numbers are compared: {@code "A 1"} and {@code "a1"} are the same. */
    public static String comparableRef(String ref) {
        return Normalizer.normalize(ref, Normalizer.Form.NFKD)
                .toUpperCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}]+", "");
    }

    /** The numbers of a road that has several: {@code "A1;E4"}. */
    static List<String> refsOf(String ref) {
        List<String> refs = new ArrayList<>();
        for (String one : ref.split("[;,/]", -1)) {
            String comparable = comparableRef(one);
            if (!comparable.isEmpty()) {
                refs.add(comparable);
            }
        }
        return refs;
    }

    /** Whether a name that someone gave means a road of this name and number. */
    public static boolean matches(String given, Road road) {
        return new Wanted(given).means(Known.of(road));
    }

    /** A name that someone gave, in the forms in which names and numbers are compared. */
    record Wanted(String name, String ref) {
        Wanted(String given) {
            this(comparable(given), comparableRef(given));
        }

        boolean means(Known road) {
            return !name.isEmpty() && (name.equals(road.name) || road.refs.contains(ref));
        }
    }

    /**
     * What a road is called, in the same forms: worked out once, it is compared quickly with many names.
     *
     * @param name empty for a road that nobody has a name for
     */
    record Known(String name, List<String> refs) {
        static Known of(Road road) {
            List<String> refs = new ArrayList<>();
            if (road.named()) {
                refs.addAll(refsOf(road.label()));
            }
            String ref = road.ref();
            if (ref != null) {
                refs.addAll(refsOf(ref));
            }
            return new Known(road.named() ? comparable(road.label()) : "", List.copyOf(refs));
        }
    }
}
