package org.culvert.exchange.records;

import static org.assertj.core.api.Assertions.assertThat;

import org.culvert.road.network.ChainageReading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RowJudgeTest {
    @ParameterizedTest
    @CsvSource({"12400,100,12.4", "12000,1000,12", "12400,1,12.400", "12350,10,12.35", "0,100,0.0"})
    void aChainageIsGivenWithTheStepInWhichItWasTold(double metres, double step, String kilometres) {
        assertThat(RowJudge.kilometres(metres, step)).isEqualTo(kilometres);
        ChainageReading read = ChainageReading.read(kilometres);
        assertThat(read.metres()).isEqualTo(metres);
        assertThat(read.precisionMetres()).isEqualTo(step);
    }

    @Test
    void aStepOfAMileIsNoPowerOfTenAndLosesNothing() {
        // International mile of 1,609.344 m (from memory)
        assertThat(RowJudge.kilometres(3 * 1609.344, 1609.344)).isEqualTo("4.828");
    }

    @Test
    void aSeparatorWithinQuotesMakesNoCell() {
        assertThat(TrialRows.cells("a;b;c", ';')).isEqualTo(3);
        assertThat(TrialRows.cells("\"a;\"\"b\";c", ';')).isEqualTo(2);
        assertThat(TrialRows.cells("", ';')).isEqualTo(1);
    }
}
