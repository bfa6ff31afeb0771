package org.culvert.care.incubation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.care.incubation.RateModelTest.PIG_NOSED;
import static org.culvert.care.incubation.RateModelTest.SET;
import static org.culvert.care.incubation.RateModelTest.hourly;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.culvert.care.incubation.PublishedPeriod.Basis;
import org.culvert.care.incubation.PublishedPeriod.Setting;
import org.junit.jupiter.api.Test;

class HatchWindowTest {
    private static final ZoneId ZONE = ZoneId.of("Australia/Sydney");
    private static final LocalDate SET_ON = LocalDate.parse("2026-01-10");
    private static final TemperatureSeries NONE = TemperatureSeries.of(List.of());

    /** Finkler 2017, abstract: 74.3 days at 25 °C; 78.1 and 66.3 with the first 21 days at 23 and 27 °C. */
    private static final PublishedPeriod SNAPPING = new PublishedPeriod(
            Setting.incubator, Basis.published, 23.0, 27.0, 66.3, 78.1, "66.3 to 78.1 days.", "Finkler 2017");

    private static HatchWindow of(List<PublishedPeriod> periods, TemperatureSeries record) {
        return HatchWindow.of("Testudo", periods, null, record, SET, SET, SET.plus(Duration.ofDays(30)), ZONE);
    }

    @Test
    void snappingTurtlesAtTwentyFiveDegreesHatchInsideTheirWindow() {
        HatchWindow window = of(List.of(SNAPPING), hourly(SET, 30, day -> 25));
        LocalDate hatched = SET.plus(Duration.ofMinutes(Math.round(74.3 * 24 * 60)))
                .atZone(ZONE)
                .toLocalDate();
        assertThat(hatched).isBetween(window.earliest(), window.latest());
        assertThat(window.earliest()).isEqualTo(SET_ON.plusDays(66));
        assertThat(window.latest()).isEqualTo(SET_ON.plusDays(79));
        assertThat(window.narrowed()).isFalse();
        assertThat(window.sources()).containsExactly("Finkler 2017");
    }

    /** Common practice, no source: eggs of Chelodina longicollis near 30 °C hatch after about 65 to 70 days. */
    @Test
    void longNeckedTurtlesAtThirtyDegreesHatchInsideTheirWindow() {
        var practice = new PublishedPeriod(
                Setting.incubator,
                Basis.commonPractice,
                30.0,
                30.0,
                65,
                70,
                "65 to 70 days.",
                "Common practice, no source.");
        HatchWindow window = of(List.of(practice), hourly(SET, 30, day -> 30));
        assertThat(SET_ON.plusDays(67)).isBetween(window.earliest(), window.latest());
        assertThat(window.words()).contains("65 to 70 days. (Common practice, no source.)");
    }

    @Test
    void temperaturesNeverNarrowAPeriodButOpenItWhereItWasColderOrWarmer() {
        assertThat(of(List.of(SNAPPING), hourly(SET, 30, day -> 26)))
                .extracting(HatchWindow::earliest, HatchWindow::latest)
                .containsExactly(SET_ON.plusDays(66), SET_ON.plusDays(79));
        HatchWindow cold = of(List.of(SNAPPING), hourly(SET, 30, day -> 21));
        assertThat(cold.earliest()).isEqualTo(SET_ON.plusDays(66));
        assertThat(cold.latest()).isNull();
        HatchWindow warm = of(List.of(SNAPPING), hourly(SET, 30, day -> 29));
        assertThat(warm.earliest()).isNull();
        assertThat(warm.latest()).isEqualTo(SET_ON.plusDays(79));
    }

    /** Elusor macrurus at 28 °C: with six degrees up and down ten days later (Micheli, J Zool 2012, abstract). */
    @Test
    void swingsAddTenDays() {
        HatchWindow window = of(List.of(SNAPPING), hourly(SET, 30, day -> 25 + 6 * Math.sin(2 * Math.PI * day)));
        assertThat(window.latest()).isEqualTo(SET_ON.plusDays(89));
    }

    /** Chelodina expansa: 324 to 360 days in natural nests, from a secondary page. */
    @Test
    void nestsSayNothingOfTheEarliestDayInAnIncubator() {
        var nest = new PublishedPeriod(
                Setting.nest, Basis.secondaryPage, null, null, 324, 360, "324 to 360 days.", "a page");
        HatchWindow window = of(List.of(nest), NONE);
        assertThat(window.earliest()).isNull();
        assertThat(window.latest()).isEqualTo(SET_ON.plusDays(360));
        assertThat(of(List.of(nest, SNAPPING), NONE).latest()).isEqualTo(SET_ON.plusDays(79));
    }

    @Test
    void aModelNarrowsItByTheTemperaturesAndTellsNoLatestDayOfYoungThatWait() {
        var published = new PublishedPeriod(
                Setting.incubator, Basis.published, 28.0, 32.0, 53, 101, "53 to 101 days.", "abstracts");
        Instant now = SET.plus(Duration.ofDays(30));
        HatchWindow window = HatchWindow.of(
                "Carettochelys insculpta",
                List.of(published),
                PIG_NOSED,
                hourly(SET, 30, day -> 30),
                SET,
                SET,
                now,
                ZONE);
        assertThat(window.narrowed()).isTrue();
        // 69 days at 30 °C were published: the earliest day lies before it, by twice the stated error at most
        assertThat(window.earliest()).isBetween(SET_ON.plusDays(66), SET_ON.plusDays(69));
        assertThat(window.latest()).isNull();
        assertThat(String.join(" ", window.words())).contains("wait in the egg", "30.0 °C");
        var hurries = new RateModel(23.5, 446, 28, 32, 0.02, false, "A model.", "a source");
        HatchWindow both = HatchWindow.of(
                "Carettochelys insculpta",
                List.of(published),
                hurries,
                hourly(SET, 30, day -> 30),
                SET,
                SET.plus(Duration.ofDays(3)),
                now,
                ZONE);
        assertThat(SET_ON.plusDays(69)).isBetween(both.earliest(), both.latest());
        assertThat(both.latest()).isBetween(SET_ON.plusDays(72), SET_ON.plusDays(75));
        HatchWindow holed = HatchWindow.of(
                "Carettochelys insculpta",
                List.of(published),
                PIG_NOSED,
                hourly(SET, 20, day -> 30),
                SET,
                SET,
                now,
                ZONE);
        assertThat(holed.narrowed()).isFalse();
        assertThat(holed.earliest()).isEqualTo(SET_ON.plusDays(53));
        assertThat(holed.latest()).isEqualTo(SET_ON.plusDays(101));
        assertThat(holed.words().get(0)).contains("do not narrow it", "36 hours");
    }

    @Test
    void withoutEggsOrDaysThereIsNoWindow() {
        assertThat(HatchWindow.of("Testudo", List.of(SNAPPING), null, NONE, null, null, SET, ZONE)
                        .words())
                .containsExactly("No eggs are set.");
        HatchWindow unknown = of(List.of(), NONE);
        assertThat(unknown.earliest()).isNull();
        assertThat(unknown.latest()).isNull();
        assertThat(unknown.words().get(0)).contains("not entered here");
    }

    @Test
    void longAfterItsDaysItStillSaysThatNoEggHasFailed() {
        HatchWindow window = HatchWindow.of(
                "Testudo", List.of(SNAPPING), null, NONE, SET, SET, SET.plus(Duration.ofDays(4000)), ZONE);
        assertThat(window.words()).contains(HatchWindow.NEVER_FAILED);
        assertThat(String.join(" ", window.words()).replace(HatchWindow.NEVER_FAILED, ""))
                .doesNotContain("fail", "dead", "discard");
    }
}
