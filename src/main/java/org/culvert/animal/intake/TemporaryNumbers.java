package org.culvert.animal.intake;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Gives temporary numbers: the code of the sector and a count in it, such as {@code A-007}, passing over whatever was
 * written by hand before.
 */
final class TemporaryNumbers {
    /** @param running the count in the sector; null where the number was written by hand */
    record Given(String number, @Nullable Integer running) {}

    private final Map<String, String> takenBy;
    private final Map<String, Integer> lastBySector;

    /**
     * @param takenBy words for who has a number, by the number as {@link #key} writes it
     * @param lastBySector the highest count by code of a sector
     */
    TemporaryNumbers(Map<String, String> takenBy, Map<String, Integer> lastBySector) {
        this.takenBy = new HashMap<>(takenBy);
        this.lastBySector = new HashMap<>(lastBySector);
    }

    /** Two numbers are one however they are written. */
    static String key(String number) {
        return number.strip().toUpperCase(Locale.ROOT);
    }

    /** Takes a number that stands on the animal's band or box; says who has it, or null. */
    @Nullable
    String take(String number, String by) {
        return takenBy.putIfAbsent(key(number), by);
    }

    /** The next number of a sector that nobody has. */
    Given next(String sector, String by) {
        int running = lastBySector.getOrDefault(sector, 0);
        String number;
        do {
            running++;
            number = String.format(Locale.ROOT, "%s-%03d", sector, running);
        } while (take(number, by) != null);
        lastBySector.put(sector, running);
        return new Given(number, running);
    }
}
