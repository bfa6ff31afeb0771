package org.culvert.exchange.reading;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Numbers of animals as people write them in one cell: {@code 2 adults + 1 joey}, {@code one adult, 3 eggs}. */
final class Counts {
    /** @param withEggs whether eggs are told besides, which are no animals of the record */
    record Sum(int animals, boolean withEggs) {}

    private static final Pattern BETWEEN = Pattern.compile("(?iu)([+&,;]|\\s(?:and|with|plus|und|mit|et)\\s)");
    private static final Pattern PART =
            Pattern.compile("(?iu)(\\d{1,3}|\\p{L}+)(?:\\s*x?\\s+|\\s*)(\\p{L}[\\p{L} .()-]*)?");
    private static final Pattern EGGS = Pattern.compile("(?iu).*\\b(?:eggs?|ei|eier|oeufs?|œufs?|huevos?|clutch)\\b.*");

    private Counts() {}

    /** The sum of what a cell tells; empty where a part is no number of anything, or nothing but eggs is told. */
    static Optional<Sum> sum(String cell) {
        String[] parts = BETWEEN.split(cell);
        boolean listed = cell.indexOf(',') >= 0 || cell.indexOf(';') >= 0;
        int animals = 0;
        boolean eggs = false;
        for (String one : parts) {
            Matcher part = PART.matcher(Missing.strip(one));
            Integer number = part.matches() ? number(part.group(1)) : null;
            // Figures alone with a comma between may be one number
            if (number == null || part.group(2) == null && (listed || parts.length == 1)) {
                return Optional.empty();
            }
            if (part.group(2) != null && EGGS.matcher(part.group(2)).matches()) {
                eggs = true;
            } else {
                animals += number;
            }
        }
        return animals == 0 ? Optional.empty() : Optional.of(new Sum(animals, eggs));
    }

    private static @Nullable Integer number(String word) {
        if (Character.isDigit(word.charAt(0))) {
            return Integer.valueOf(word);
        }
        String figures = WordTables.count(word.toLowerCase(Locale.ROOT));
        return figures == null ? null : Integer.valueOf(figures);
    }
}
