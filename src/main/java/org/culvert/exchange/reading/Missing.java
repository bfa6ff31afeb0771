package org.culvert.exchange.reading;

import java.util.Locale;
import java.util.Set;

/** What people write where they know nothing. */
public final class Missing {
    /** In small letters; common practice, no source. */
    private static final Set<String> WORDS = Set.of(
            "-",
            "--",
            "---",
            "–",
            "—",
            ".",
            "..",
            "?",
            "??",
            "???",
            "n/a",
            "n.a.",
            "n/d",
            "na",
            "#n/a",
            "#value!",
            "#ref!",
            "nan",
            "nil",
            "none",
            "null",
            "(null)",
            "<null>",
            "not known",
            "not recorded",
            "not stated",
            "not available",
            "unknown",
            "unk",
            "unk.",
            "missing",
            "no data",
            "nodata",
            "tbc",
            "tba",
            "keine angabe",
            "k.a.",
            "k. a.",
            "unbekannt",
            "inconnu",
            "inconnue",
            "non renseigné",
            "nc",
            "desconocido",
            "desconocida",
            "sin dato",
            "sin datos",
            "s/d",
            "sconosciuto",
            "onbekend",
            "okänd",
            "ukjent",
            "tuntematon",
            "nieznany",
            "неизвестно",
            "нет данных",
            "不明",
            "未知",
            "不詳",
            "無",
            "无");

    /** What stands for the cell above; common practice, no source. */
    private static final Set<String> DITTO = Set.of(
            "\"",
            "\"\"",
            "''",
            "”",
            "“",
            "〃",
            ",,",
            "„",
            "-\"-",
            "ditto",
            "do.",
            "dto.",
            "dito",
            "idem",
            "as above",
            "same as above",
            "wie oben",
            "s.o.",
            "idem.");

    private static final int LONGEST =
            WORDS.stream().mapToInt(String::length).max().orElse(0);

    private Missing() {}

    /** Whether a cell says nothing: empty, blank in any script, or one of the words for it. */
    public static boolean isMissing(String cell) {
        return isWordFor(strip(cell));
    }

    /** Whether a text without blanks at its ends says nothing. */
    static boolean isWordFor(String text) {
        int n = text.length();
        if (n == 0) {
            return true;
        }
        char first = text.charAt(0);
        if (n > LONGEST || first >= '0' && first <= '9' || first == '-' && n > 3) {
            return false;
        }
        return WORDS.contains(text.toLowerCase(Locale.ROOT));
    }

    /** Whether a text without blanks at its ends stands for that of the row above. */
    static boolean isDitto(String text) {
        return text.length() <= 13 && DITTO.contains(text.toLowerCase(Locale.ROOT));
    }

    /** Without blanks at its ends, the no-break ones and the marks of no width too. */
    public static String strip(String cell) {
        int from = 0;
        int to = cell.length();
        while (from < to && isBlank(cell.charAt(from))) {
            from++;
        }
        while (to > from && isBlank(cell.charAt(to - 1))) {
            to--;
        }
        return from == 0 && to == cell.length() ? cell : cell.substring(from, to);
    }

    private static boolean isBlank(char c) {
        if (c < 0x80) {
            return c <= ' ' || c == 0x7f;
        }
        return Character.isWhitespace(c) || Character.isSpaceChar(c) || Character.getType(c) == Character.FORMAT;
    }
}
