package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * One road whose middle link runs against its chainage, with a gap, and a second carriageway beside its end.
 *
 * <pre>
 *   0 ---link 0--- 1000 ---link 1 (drawn backwards)--- 1800   gap   2000 ---link 2--- 3000
 *                                                                    2000 ---link 3--- 3000
 * </pre>
 */
class ChainageTest {
    private final Chainage chainage = new Chainage(
            new int[] {0, 0, 0, 0, 1},
            new int[] {0, 0, 0, 1, 0},
            new double[] {0, 1800, 2000, 2000, 0},
            new double[] {1000, 1000, 3000, 3000, 300},
            new double[] {1000, 790, 1000, 1010, 300});

    @Test
    void chainageRunsBackwardsOnALinkDrawnBackwards() {
        assertThat(chainage.at(1, 0)).isEqualTo(1800);
        assertThat(chainage.at(1, 395)).isCloseTo(1400, within(1e-9));
    }

    @Test
    void roundingGoesAcrossLinksOfTheRoad() {
        Chainage.Position position = chainage.round(1, 100, 1000);
        assertThat(position.link()).isEqualTo(2);
        assertThat(position.metres()).isZero();
    }

    @Test
    void roundingStaysOnItsOwnCarriageway() {
        assertThat(chainage.round(3, 900, 1000).link()).isEqualTo(3);
        assertThat(chainage.round(2, 900, 1000).link()).isEqualTo(2);
    }

    @Test
    void roundingBeyondTheEndOfTheRoadStopsAtItsEnd() {
        Chainage.Position position = chainage.round(4, 280, 1000);
        assertThat(position.link()).isEqualTo(4);
        assertThat(position.metres()).isZero();
        assertThat(chainage.locate(4, 1000).metres()).isEqualTo(300);
    }

    @Test
    void aChainageInAGapIsTheNearestEnd() {
        assertThat(chainage.locate(0, 1850).link()).isEqualTo(1);
        assertThat(chainage.locate(0, 1850).metres()).isZero();
        assertThat(chainage.locate(0, 1950).link()).isEqualTo(2);
    }

    @Test
    void roundingTwiceIsRoundingOnce() {
        var random = Networks.random(3);
        for (int i = 0; i < 500; i++) {
            int link = random.nextInt(4);
            double metres = random.nextDouble() * 790;
            Chainage.Position once = chainage.round(link, metres, 500);
            Chainage.Position twice = chainage.round(once.link(), once.metres(), 500);
            assertThat(chainage.at(twice.link(), twice.metres()))
                    .isCloseTo(chainage.at(once.link(), once.metres()), within(1e-9));
        }
    }
}
