package org.culvert.animal.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

class TemporaryNumbersTest {
    @Test
    void countsOnInEachSector() {
        var numbers = new TemporaryNumbers(Map.of(), Map.of("A", 6));
        assertThat(numbers.next("A", "").number()).isEqualTo("A-007");
        assertThat(numbers.next("B", "").number()).isEqualTo("B-001");
        assertThat(numbers.next("A", "")).isEqualTo(new TemporaryNumbers.Given("A-008", 8));
    }

    @Test
    void passesOverWhatWasWrittenByHand() {
        var numbers = new TemporaryNumbers(Map.of("A-002", "case 9"), Map.of("A", 1));
        assertThat(numbers.take(" a-003 ", "animal 0")).isNull();
        assertThat(numbers.next("A", "").number()).isEqualTo("A-004");
        assertThat(numbers.take("A-002", "animal 1")).isEqualTo("case 9");
    }

    @Test
    void goesOnBeyondThreeDigits() {
        assertThat(new TemporaryNumbers(Map.of(), Map.of("A", 999))
                        .next("A", "")
                        .number())
                .isEqualTo("A-1000");
    }
}
