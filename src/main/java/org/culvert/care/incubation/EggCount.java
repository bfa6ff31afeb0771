package org.culvert.care.incubation;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Whether the eggs that were read on a film of the mother are the eggs that came out of her since, and those that are said to be
 * inside still. Each egg counts once: what came out before a film is not on it, and what came out after somebody said how many
 * are left is one of those.
 *
 * @param verdict of the reading that was taken: the surest, of several as sure the latest
 * @param differsBy eggs read beyond those accounted for; below 0 where more are accounted for than were read
 * @param leftInside said to be inside still, less what came out since that was said; null where nobody said it
 * @param films every reading, each held against what came since
 */
public record EggCount(
        EggVerdict verdict,
        @Nullable Integer differsBy,
        @Nullable Integer leftInside,
        @Nullable Film taken,
        List<Compared> films,
        String words) {
    public static final String NOTE =
            " A film can be misread: eggs overlap, and eggs without a shell do not show. It is compared, and nothing is refused by it.";

    public enum EggVerdict {
        agrees,
        differs,
        cannotTell
    }

    /** Eggs that came out at one time, whole or not. */
    public record Out(Instant at, int eggs, boolean laid) {}

    /** Somebody said how many are left inside. */
    public record Inside(Instant at, int eggs) {}

    /**
     * What was read on a film.
     *
     * @param key by which it is known again
     * @param sureness the higher the surer
     */
    public record Film(String key, Instant at, int counted, int sureness) {}

    /** @param accountedFor eggs that came out since the film, and those that are inside still */
    public record Compared(Film film, int accountedFor, int differsBy) {}

    public static EggCount of(List<Film> films, List<Out> outs, List<Inside> insides) {
        Integer left = insides.stream()
                .max(Comparator.comparing(Inside::at))
                .map(said -> Math.max(0, said.eggs() - since(outs, said.at().plusNanos(1))))
                .orElse(null);
        List<Compared> compared = new ArrayList<>();
        for (Film film : films.stream().sorted(Comparator.comparing(Film::at)).toList()) {
            int accountedFor = since(outs, film.at()) + (left == null ? 0 : left);
            compared.add(new Compared(film, accountedFor, film.counted() - accountedFor));
        }
        Compared taken = compared.stream()
                .max(Comparator.comparingInt((Compared one) -> one.film().sureness())
                        .thenComparing(one -> one.film().at()))
                .orElse(null);
        if (taken == null) {
            return new EggCount(
                    EggVerdict.cannotTell,
                    null,
                    left,
                    null,
                    compared,
                    "Nobody has counted eggs on a film of her: whether all of them came cannot be told." + NOTE);
        }
        int all = since(outs, taken.film().at());
        int laid = outs.stream()
                .filter(out -> out.laid() && !out.at().isBefore(taken.film().at()))
                .mapToInt(Out::eggs)
                .sum();
        String sum = taken.film().counted() + " read on the film; since then " + all + " came out, " + laid
                + " of them laid, and "
                + (left == null ? "nobody said how many are inside" : left + " are said to be inside");
        int differs = taken.differsBy();
        return new EggCount(
                differs == 0 ? EggVerdict.agrees : EggVerdict.differs,
                differs,
                left,
                taken.film(),
                compared,
                (differs == 0
                                ? "They agree: " + sum + "."
                                : "They differ by " + Math.abs(differs) + ": " + sum + ". "
                                        + (differs > 0
                                                ? "Eggs may be inside still: ask the vet."
                                                : "More came than were read."))
                        + NOTE);
    }

    private static int since(List<Out> outs, Instant from) {
        return outs.stream()
                .filter(out -> !out.at().isBefore(from))
                .mapToInt(Out::eggs)
                .sum();
    }
}
