package org.culvert.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.culvert.geo.Position;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * What stops a going-out. Facts of the trade: on fast roads volunteers do not go alone and police attend first (a Victorian
 * emergency-response charity's public page, September 2025); unvaccinated people do not touch bats (Australian Immunisation
 * Handbook, node 649); after dark two go (common practice, no source).
 */
class GateRulesTest {
    private static final Position PLACE = new Position(-30.5, 150.0);
    private static final Instant NOON = Instant.parse("2026-01-10T02:00:00Z");
    private static final Instant MIDNIGHT = Instant.parse("2026-01-10T14:00:00Z");
    private static final Gate.Rules RULES =
            new Gate.Rules(Optional.of(80.0), Optional.of("never alone"), Optional.of("two go"));

    private static List<GateTest> gate(
            Instant at, @Nullable Double limit, int people, @Nullable String police, List<String> notVaccinated) {
        return Gate.test(
                new Gate.Facts(at, PLACE, limit, people, police, true, List.of("lyssavirus"), notVaccinated, false),
                RULES);
    }

    private static boolean stops(List<GateTest> tests, String which) {
        return tests.stream().anyMatch(test -> test.test().equals(which) && test.stops());
    }

    @Test
    void anUnknownLimitCountsAsHigh() {
        assertThat(stops(gate(NOON, null, 2, null, List.of()), "speed")).isTrue();
        assertThat(stops(gate(NOON, 60.0, 1, null, List.of()), "speed")).isFalse();
        assertThat(stops(gate(NOON, 80.0, 2, null, List.of()), "speed")).isTrue();
    }

    @Test
    void aFastRoadWantsPoliceAndTwoPeople() {
        assertThat(stops(gate(NOON, 110.0, 2, "E-1", List.of()), "speed")).isFalse();
        assertThat(stops(gate(NOON, 110.0, 1, "E-1", List.of()), "speed")).isTrue();
        assertThat(stops(gate(NOON, 110.0, 2, " ", List.of()), "speed")).isTrue();
    }

    @Test
    void afterDarkTwoGo() {
        assertThat(stops(gate(MIDNIGHT, 50.0, 1, null, List.of()), "light")).isTrue();
        assertThat(stops(gate(MIDNIGHT, 50.0, 2, null, List.of()), "light")).isFalse();
        assertThat(stops(gate(NOON, 50.0, 1, null, List.of()), "light")).isFalse();
    }

    @Test
    void nobodyOverridesVaccination() {
        List<GateTest> tests = gate(NOON, 50.0, 1, null, List.of("R1"));
        assertThat(tests)
                .filteredOn(test -> test.test().equals("vaccination"))
                .singleElement()
                .satisfies(test -> {
                    assertThat(test.stops()).isTrue();
                    assertThat(test.canBeOverridden()).isFalse();
                });
    }

    @Test
    void anUnknownKindIsShownAsADanger() {
        List<GateTest> tests =
                Gate.test(new Gate.Facts(NOON, PLACE, 50.0, 1, null, false, List.of(), List.of(), false), RULES);
        assertThat(tests)
                .filteredOn(test -> test.test().equals("vaccination"))
                .singleElement()
                .extracting(GateTest::verdict)
                .isEqualTo("cantTell");
    }
}
