package org.culvert.roster.papers;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.culvert.roster.papers.Papers.Paper;
import org.junit.jupiter.api.Test;

/** That authorisations name premises, and that some hold under supervision alone, is common practice, no source. */
class PapersTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 29);
    private static final Paper PLAIN = new Paper("A-1", null, false);
    private static final Paper AT_THE_MILL = new Paper("A-2", "Old Mill", false);
    private static final Paper SUPERVISED = new Paper("A-3", null, true);

    @Test
    void theFirstThatHoldsCounts() {
        assertThat(Papers.read(DAY, List.of(AT_THE_MILL, SUPERVISED, PLAIN), "Shed", false)
                        .number())
                .isEqualTo("A-1");
        assertThat(Papers.read(DAY, List.of(AT_THE_MILL, PLAIN), " old mill ", false)
                        .number())
                .isEqualTo("A-2");
    }

    @Test
    void premisesThatNobodyToldAreNoneThatHold() {
        Papers read = Papers.read(DAY, List.of(AT_THE_MILL), null, true);
        assertThat(read.number()).isNull();
        assertThat(read.unknown()).isTrue();
        assertThat(Papers.read(DAY, List.of(AT_THE_MILL), "Shed", true).unknown())
                .isFalse();
    }

    @Test
    void supervisionIsByTheDay() {
        assertThat(Papers.read(DAY, List.of(SUPERVISED), null, true).number()).isEqualTo("A-3");
        Papers without = Papers.read(DAY, List.of(SUPERVISED), null, false);
        assertThat(without.number()).isNull();
        assertThat(without.unknown()).isFalse();
        assertThat(without.against()).singleElement().asString().contains("A-3", "supervis", "2026-11-29");
    }

    @Test
    void nothingListedIsNothingThatHolds() {
        assertThat(Papers.read(DAY, List.of(), "Shed", true)).isEqualTo(new Papers(null, false, List.of()));
    }
}
