package org.culvert.roster;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How long a vaccination counts: a booster some months after the course; then a booster or a test for antibodies at every
 * interval, and a booster where the test finds too little. The day on which the next is due still counts.
 *
 * @param firstBoosterMonths after the course
 * @param intervalMonths after a booster, or a test that found enough
 * @param leastIuPerMl antibodies in IU/mL below which a booster is wanted
 */
public record BoosterRule(int firstBoosterMonths, int intervalMonths, double leastIuPerMl) {
    /** What was done. */
    public enum Event {
        course,
        booster,
        antibodyTest
    }

    /**
     * @param event null where only the last day was told
     * @param antibodyIuPerMl of a test
     * @param currentUntil last day on which it counts; null: it shows no protection
     */
    public record Dose(
            @Nullable Event event,
            LocalDate givenOn,
            @Nullable Double antibodyIuPerMl,
            @Nullable LocalDate currentUntil) {}

    /** The last day on which an event counts, after what came earlier; empty: it shows no protection. */
    public Optional<LocalDate> currentUntil(
            Event event, LocalDate givenOn, @Nullable Double antibodyIuPerMl, Collection<Dose> earlier) {
        return switch (event) {
            case course -> Optional.of(givenOn.plusMonths(firstBoosterMonths));
            case booster -> Optional.of(givenOn.plusMonths(intervalMonths));
            case antibodyTest -> {
                if (antibodyIuPerMl == null || antibodyIuPerMl < leastIuPerMl) {
                    yield Optional.empty();
                }
                if (last(Event.booster, givenOn, earlier).isPresent()) {
                    yield Optional.of(givenOn.plusMonths(intervalMonths));
                }
                // A test does not stand for the booster after the course
                yield last(Event.course, givenOn, earlier)
                        .map(course -> course.plusMonths(firstBoosterMonths))
                        .filter(until -> !until.isBefore(givenOn));
            }
        };
    }

    /** Whether someone counts as vaccinated on a day; a test that found too little ends what went before it. */
    public boolean isCurrent(Collection<Dose> doses, LocalDate day) {
        LocalDate low = doses.stream()
                .filter(dose -> dose.event() == Event.antibodyTest
                        && Objects.requireNonNull(dose.antibodyIuPerMl()) < leastIuPerMl
                        && !dose.givenOn().isAfter(day))
                .map(Dose::givenOn)
                .max(Comparator.naturalOrder())
                .orElse(null);
        return doses.stream()
                .anyMatch(dose -> covers(dose, day)
                        && (low == null
                                || dose.givenOn().isAfter(low)
                                || dose.givenOn().equals(low) && dose.event() == Event.booster));
    }

    /** Whether a day lies in what a dose was said to cover. */
    static boolean covers(Dose dose, LocalDate day) {
        LocalDate until = dose.currentUntil();
        return until != null && !dose.givenOn().isAfter(day) && !until.isBefore(day);
    }

    private static Optional<LocalDate> last(Event event, LocalDate until, Collection<Dose> earlier) {
        return earlier.stream()
                .filter(dose -> dose.event() == event && !dose.givenOn().isAfter(until))
                .map(Dose::givenOn)
                .max(Comparator.naturalOrder());
    }
}
