package org.culvert.care.incubation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.culvert.care.incubation.EggCount.EggVerdict;
import org.culvert.care.incubation.EggCount.Film;
import org.culvert.care.incubation.EggCount.Inside;
import org.culvert.care.incubation.EggCount.Out;
import org.junit.jupiter.api.Test;

/** The number seen on the X-ray is the number that must be accounted for: common practice, no source. */
class EggCountTest {
    private static final Instant FILM = Instant.parse("2026-01-10T00:00:00Z");

    private static Instant after(long hours) {
        return FILM.plus(Duration.ofHours(hours));
    }

    private static EggCount of(int read, List<Out> outs, List<Inside> insides) {
        return EggCount.of(List.of(new Film("a", FILM, read, 1)), outs, insides);
    }

    @Test
    void recoveredLaidAndInsideAreHeldAgainstTheFilm() {
        List<Out> outs = List.of(new Out(after(5), 6, false), new Out(after(50), 1, true));
        EggCount whole = of(9, outs, List.of(new Inside(after(60), 2)));
        assertThat(whole.verdict()).isEqualTo(EggVerdict.agrees);
        assertThat(whole.words())
                .contains("They agree", "7 came out, 1 of them laid", "2 are said to be inside", "misread");
        EggCount missing = of(9, outs, List.of());
        assertThat(missing.differsBy()).isEqualTo(2);
        assertThat(missing.words()).contains("differ by 2", "Eggs may be inside still");
        assertThat(of(5, outs, List.of()).differsBy()).isEqualTo(-2);
        assertThat(EggCount.of(List.of(), outs, List.of()).verdict()).isEqualTo(EggVerdict.cannotTell);
    }

    @Test
    void theSameEggCountsOnce() {
        // Two were left inside after surgery; one of them is laid later
        EggCount laidLater = of(
                9, List.of(new Out(after(5), 7, false), new Out(after(50), 1, true)), List.of(new Inside(after(6), 2)));
        assertThat(laidLater.leftInside()).isEqualTo(1);
        assertThat(laidLater.verdict()).isEqualTo(EggVerdict.agrees);
        // One was laid in transit, before the film was taken
        EggCount before = of(8, List.of(new Out(after(-3), 1, true), new Out(after(5), 8, false)), List.of());
        assertThat(before.verdict()).isEqualTo(EggVerdict.agrees);
        // What was said before is replaced by what was said later
        EggCount twice =
                of(9, List.of(new Out(after(5), 7, false)), List.of(new Inside(after(6), 3), new Inside(after(9), 2)));
        assertThat(twice.verdict()).isEqualTo(EggVerdict.agrees);
    }

    @Test
    void theSurestReadingIsTakenAndOfSeveralAsSureTheLatest() {
        List<Film> films = List.of(
                new Film("low", after(4), 12, 0),
                new Film("first", after(1), 8, 2),
                new Film("second", after(2), 9, 2));
        EggCount count = EggCount.of(films, List.of(new Out(after(5), 9, false)), List.of());
        assertThat(count.taken()).isEqualTo(films.get(2));
        assertThat(count.verdict()).isEqualTo(EggVerdict.agrees);
        assertThat(count.films()).extracting(EggCount.Compared::differsBy).containsExactly(-1, 0, 3);
    }

    /** However eggs come, and whenever somebody looks: whoever reads rightly what is inside is never told of a difference. */
    @Test
    void trueReadingsAlwaysAgree() {
        Random random = new Random(20261129);
        for (int round = 0; round < 2000; round++) {
            int eggs = random.nextInt(25);
            List<Out> outs = new ArrayList<>();
            List<Film> films = new ArrayList<>();
            List<Inside> insides = new ArrayList<>();
            int inside = eggs;
            for (int hour = 1; hour < 30; hour++) {
                switch (random.nextInt(4)) {
                    case 0 -> films.add(new Film("f" + hour, after(hour), inside, random.nextInt(3)));
                    case 1 -> insides.add(new Inside(after(hour), inside));
                    case 2 -> {
                        int come = random.nextInt(1 + Math.min(4, inside));
                        if (come > 0) {
                            outs.add(new Out(after(hour), come, random.nextBoolean()));
                            inside -= come;
                        }
                    }
                    default -> {}
                }
            }
            insides.add(new Inside(after(30), inside));
            Collections.shuffle(outs, random);
            Collections.shuffle(films, random);
            Collections.shuffle(insides, random);
            EggCount count = EggCount.of(films, outs, insides);
            assertThat(count.films()).as("round %d", round).allMatch(film -> film.differsBy() == 0);
            assertThat(count.leftInside()).isEqualTo(inside);
            assertThat(count.verdict()).isEqualTo(films.isEmpty() ? EggVerdict.cannotTell : EggVerdict.agrees);
        }
    }
}
