package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class RoseTest {
    /** From the middle to where the arc begins. */
    private static double[] begin(Rose.Petal petal) {
        String[] xy = petal.path().split("L")[1].split("A")[0].split(" ");
        return new double[] {Double.parseDouble(xy[0]) - 130, Double.parseDouble(xy[1]) - 130};
    }

    private static double area(Rose.Petal petal) {
        double[] at = begin(petal);
        return at[0] * at[0] + at[1] * at[1];
    }

    @Test
    void theAreaOfAPetalGoesWithItsCount() {
        Rose rose = Rose.ofMonths(Arrays.asList(8, 4, 2, 1, 0, 0, 0, 0, 0, null, 0, 0));
        double most = area(rose.petals().get(0));
        assertThat(area(rose.petals().get(1)) / most).isCloseTo(0.5, within(0.01));
        assertThat(area(rose.petals().get(2)) / most).isCloseTo(0.25, within(0.01));
        assertThat(area(rose.petals().get(3)) / most).isCloseTo(0.125, within(0.01));
        assertThat(rose.petals().get(4).path()).isEmpty();
        assertThat(rose.petals().get(9).path()).isEmpty();
        assertThat(rose.isWithheld()).isTrue();
        assertThat(rose.petals().get(9).isWithheld()).isTrue();
        assertThat(rose.petals().get(4).isWithheld()).as("none is told").isFalse();
        assertThat(rose.words()).isEqualTo("January: 8; February: 4; March: 2; April: 1; October: –");
    }

    /** As on a clock of 24 hours: midnight up, six to the right, noon down. */
    @Test
    void hoursRunFromMidnightAtTheTop() {
        Rose rose = Rose.ofHours(Collections.nCopies(24, 1));
        assertThat(begin(rose.petals().get(0))).containsExactly(new double[] {0, -105}, within(0.05));
        assertThat(begin(rose.petals().get(6))).containsExactly(new double[] {105, 0}, within(0.05));
        assertThat(begin(rose.petals().get(12))).containsExactly(new double[] {0, 105}, within(0.05));
        assertThat(rose.petals().stream().map(Rose.Petal::shortName).filter(name -> !name.isEmpty()))
                .containsExactly("0", "3", "6", "9", "12", "15", "18", "21");
        assertThat(rose.petals().get(23).name()).isEqualTo("23–24");
    }

    @Test
    void nothingIsDrawnOfNothing() {
        assertThat(Rose.ofMonths(Collections.nCopies(12, null)).isDrawn()).isFalse();
        assertThat(Rose.ofHours(Collections.nCopies(24, 0)).isDrawn()).isFalse();
        assertThat(Rose.ofHours(List.of(0, 1)).isDrawn()).isTrue();
    }
}
