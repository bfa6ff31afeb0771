package org.culvert.hotspot.stats.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.stats.pattern.Persistence.Interval;
import org.culvert.hotspot.stats.pattern.Persistence.Lasting;
import org.culvert.hotspot.stats.pattern.Persistence.Period;
import org.culvert.hotspot.stats.pattern.Persistence.Piece;
import org.culvert.hotspot.stats.pattern.Persistence.Stretch;
import org.junit.jupiter.api.Test;

/** No outside source: worked by hand. */
class PersistenceTest {
    private static Period years(int first, Stretch... stretches) {
        return new Period(first, first + 2, List.of(stretches));
    }

    private static Stretch on(int line, double from, double to) {
        return new Stretch(List.of(new Interval(line, from, to)));
    }

    /**
     * Line 4:  2018-20  1000 ------ 1400
     *          2019-21      1200 ------- 1700
     *          2020-22
     *          2021-23     1100 ---- 1300
     */
    private static final List<Period> MOVING = List.of(
            years(2018, on(4, 1000, 1400)),
            years(2019, on(4, 1200, 1700)),
            years(2020),
            years(2021, on(4, 1100, 1300)));

    @Test
    void piecesAreInTheSamePeriodsFromEndToEnd() {
        List<Piece> pieces = Persistence.pieces(MOVING);
        assertThat(pieces)
                .extracting(
                        piece -> piece.where().fromMetres(),
                        piece -> piece.where().toMetres(),
                        Piece::periods)
                .containsExactly(
                        tuple(1000.0, 1100.0, List.of(0)),
                        tuple(1100.0, 1200.0, List.of(0, 3)),
                        tuple(1200.0, 1300.0, List.of(0, 1, 3)),
                        tuple(1300.0, 1400.0, List.of(0, 1)),
                        tuple(1400.0, 1700.0, List.of(1)));
        assertThat(pieces.get(2).longestRun()).isEqualTo(2);
        assertThat(pieces.get(2).apart())
                .as("2018-20 and 2021-23 share no year")
                .isEqualTo(2);
        assertThat(pieces.get(3).apart()).as("2018-20 and 2019-21 do").isEqualTo(1);
    }

    @Test
    void stretchHoldsWhereItsShareIsFoundAgain() {
        List<Lasting> half = Persistence.stretches(MOVING, 0.5);
        assertThat(half.get(0).overlapMetres()).containsExactly(400.0, 200.0, 0.0, 200.0);
        assertThat(half.get(0).heldIn()).containsExactly(0, 1, 3);
        assertThat(half.get(0).apart()).isEqualTo(2);
        assertThat(half.get(1).heldIn()).as("200 of 500 m is less than half").containsExactly(1);
        assertThat(Persistence.stretches(MOVING, 0.51).get(0).heldIn()).containsExactly(0);
        assertThat(half.get(2).metres()).isEqualTo(200);
    }

    @Test
    void partsThatOverlapCountOnceAndOtherLinesNotAtAll() {
        Stretch twoParts =
                new Stretch(List.of(new Interval(1, 0, 100), new Interval(1, 50, 150), new Interval(2, 0, 50)));
        List<Period> periods = List.of(years(2018, twoParts), years(2021, on(1, 100, 400), on(3, 0, 1000)));
        Lasting first = Persistence.stretches(periods, 0.25).get(0);
        assertThat(first.metres()).isEqualTo(200);
        assertThat(first.overlapMetres()).containsExactly(200.0, 50.0);
        assertThat(first.heldIn()).containsExactly(0, 1);
        assertThat(Persistence.pieces(periods)).hasSize(5);
    }

    /** Property: pieces cover what was found once, and their lengths by period are those of the period. */
    @Test
    void piecesCoverWhatWasFound() {
        for (int trial = 0; trial < 50; trial++) {
            var random = Placed.random(trial);
            List<Period> periods = new ArrayList<>();
            for (int year = 2010; year < 2016; year++) {
                List<Stretch> stretches = new ArrayList<>();
                for (int i = random.nextInt(4); i > 0; i--) {
                    double from = 10 * random.nextInt(100);
                    stretches.add(on(random.nextInt(3), from, from + 10 * (1 + random.nextInt(30))));
                }
                periods.add(new Period(year, year + 2, stretches));
            }
            List<Piece> pieces = Persistence.pieces(periods);
            for (int period = 0; period < periods.size(); period++) {
                int index = period;
                double inPieces = pieces.stream()
                        .filter(piece -> piece.periods().contains(index))
                        .mapToDouble(piece -> piece.where().metres())
                        .sum();
                double cells = 0;
                for (int line = 0; line < 3; line++) {
                    for (double at = 5; at < 2000; at += 10) {
                        int on = line;
                        double middle = at;
                        boolean in = periods.get(period).stretches().stream()
                                .flatMap(stretch -> stretch.parts().stream())
                                .anyMatch(part ->
                                        part.line() == on && part.fromMetres() < middle && middle < part.toMetres());
                        cells += in ? 10 : 0;
                    }
                }
                assertThat(inPieces).as("trial %s", trial).isCloseTo(cells, within(1e-9));
            }
            for (int i = 1; i < pieces.size(); i++) {
                Piece before = pieces.get(i - 1);
                Piece piece = pieces.get(i);
                boolean apart = before.where().line() < piece.where().line()
                        || before.where().toMetres() < piece.where().fromMetres()
                        || (before.where().toMetres() == piece.where().fromMetres()
                                && !before.periods().equals(piece.periods()));
                assertThat(apart).as("trial %s", trial).isTrue();
            }
        }
    }

    @Test
    void periodsOutOfOrderAreRefused() {
        assertThatThrownBy(() -> Persistence.pieces(List.of(years(2020), years(2019))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("in the order of their first years");
        assertThatThrownBy(() -> new Interval(1, 10, 5)).hasMessageContaining("ends before it begins");
    }
}
