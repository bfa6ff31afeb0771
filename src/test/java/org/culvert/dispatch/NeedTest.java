package org.culvert.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** People before animals, the living before the dead, whoever waits before whoever is seen to: common practice, no source. */
class NeedTest {
    private static final Instant NOW = Instant.parse("2026-11-29T19:00:00Z");

    private static Need of(String progress, boolean hurt, boolean alive, boolean perhaps, boolean pouch, Duration ago) {
        return Need.of(new Need.Facts(progress, hurt, alive, perhaps, pouch, NOW.minus(ago)), NOW);
    }

    @Test
    void eachHasItsPlace() {
        Duration just = Duration.ofMinutes(3);
        assertThat(of("logged", true, true, false, false, just)).isEqualTo(Need.peopleMayBeHurt);
        assertThat(of("offered", true, true, false, false, just)).isEqualTo(Need.peopleMayBeHurt);
        assertThat(of("logged", false, true, false, false, just)).isEqualTo(Need.aliveNobodySent);
        assertThat(of("logged", false, true, true, true, just)).isEqualTo(Need.aliveNobodySent);
        assertThat(of("logged", false, false, true, true, just)).isEqualTo(Need.perhapsAliveNobodySent);
        assertThat(of("offered", false, true, false, false, just)).isEqualTo(Need.offerNotAnswered);
        assertThat(of("logged", false, false, false, true, just)).isEqualTo(Need.deadPouchNotChecked);
        assertThat(of("logged", false, false, false, false, just)).isEqualTo(Need.deadNobodySent);
        assertThat(of("underway", true, true, false, false, just)).isEqualTo(Need.underway);
    }

    @Test
    void whatWasNotHeardOfForDaysWantsAnEnd() {
        assertThat(of("logged", false, true, false, false, Duration.ofDays(3))).isEqualTo(Need.aliveNobodySent);
        assertThat(of("logged", false, true, false, false, Duration.ofDays(3).plusSeconds(1)))
                .isEqualTo(Need.forgotten);
    }

    @Test
    void theOrderIsThatOfTheList() {
        assertThat(Need.values())
                .containsExactly(
                        Need.peopleMayBeHurt,
                        Need.aliveNobodySent,
                        Need.perhapsAliveNobodySent,
                        Need.offerNotAnswered,
                        Need.deadPouchNotChecked,
                        Need.deadNobodySent,
                        Need.underway,
                        Need.forgotten);
    }
}
