package org.culvert.hotspot.stats.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.culvert.hotspot.stats.rate.CumulativeResiduals.Residual;
import org.junit.jupiter.api.Test;

class CumulativeResidualsTest {
    /** By hand, from the formula: squares 1, 4, 9 of residuals 1, -2, 3. */
    @Test
    void boundsAreTheFormulas() {
        var residuals =
                CumulativeResiduals.of(List.of(new Residual(30, 5, 2), new Residual(10, 3, 2), new Residual(20, 1, 3)));
        assertThat(residuals.steps())
                .extracting(CumulativeResiduals.Step::covariate)
                .containsExactly(10.0, 20.0, 30.0);
        assertThat(residuals.steps()).extracting(CumulativeResiduals.Step::sum).containsExactly(1.0, -1.0, 2.0);
        assertThat(residuals.steps().get(0).bound()).isCloseTo(2 * Math.sqrt(1 - 1 / 14.0), within(1e-12));
        assertThat(residuals.steps().get(1).bound()).isCloseTo(2 * Math.sqrt(5 * (1 - 5 / 14.0)), within(1e-12));
        assertThat(residuals.steps().get(2).bound()).isZero();
        assertThat(residuals.steps().get(2).isOutside()).isTrue();
        assertThat(residuals.shareOutside())
                .as("the end always is where the model leaves it")
                .isZero();
    }

    @Test
    void sitesOfEqualCovariateAreOneStepInWhateverOrder() {
        List<Residual> residuals = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            residuals.add(new Residual(i / 4, i % 5, 1.1 + 0.1 * i));
        }
        var one = CumulativeResiduals.of(residuals);
        Collections.reverse(residuals);
        assertThat(CumulativeResiduals.of(residuals)).isEqualTo(one);
        assertThat(one.steps()).hasSize(3);
    }

    @Test
    void aCovariateThatIsNotKnownIsRefused() {
        assertThatThrownBy(() -> CumulativeResiduals.of(List.of(new Residual(Double.NaN, 1, 1))))
                .hasMessageContaining("leave out");
        assertThat(CumulativeResiduals.of(List.of()).shareOutside()).isZero();
    }
}
