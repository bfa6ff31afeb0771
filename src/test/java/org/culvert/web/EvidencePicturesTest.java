package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.culvert.hotspot.when.CollisionSeasonsView.HourTable;
import org.culvert.hotspot.when.CollisionSeasonsView.LightTable;
import org.culvert.hotspot.when.StretchTimes;
import org.culvert.hotspot.when.StretchTimes.SunOfMonth;
import org.culvert.hotspot.works.StretchAnswer.Count;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class EvidencePicturesTest {
    /** By hand: 1/p to two figures. */
    @Test
    void aPIsOneInHowMany() {
        assertThat(ReportPage.odds(0.001)).isEqualTo("1\u00a0000");
        assertThat(ReportPage.odds(0.0123)).isEqualTo("81");
        assertThat(ReportPage.odds(0.5)).isEqualTo("2");
        assertThat(ReportPage.odds(1)).isEqualTo("1");
        assertThat(ReportPage.odds(1.0 / 12_345)).isEqualTo("12\u00a0000");
    }

    /** Half past eighteen is 18.5 of 24 hours of 14 units each from 12. */
    @Test
    void hoursAndLightShareOneAxis() {
        List<@Nullable Integer> counts = new ArrayList<>(Collections.nCopies(24, 0));
        counts.set(18, 4);
        counts.set(19, null);
        HoursPicture picture = HoursPicture.of(times(counts, new SunOfMonth(1, 5.0, 5.5, 18.5, 19.0)));
        assertThat(picture.bars().get(18).height()).isEqualTo(70);
        assertThat(picture.bars().get(18).x()).isEqualTo(12 + 18 * 14 + 1);
        assertThat(picture.words()).isEqualTo("18–19: 4; 19–20: –");
        HoursPicture.Band day = picture.day().get(0);
        assertThat(Double.parseDouble(day.x()) + Double.parseDouble(day.width()))
                .isEqualTo(12 + 18.5 * 14);
        assertThat(picture.twilight()).hasSize(1);
    }

    @Test
    void dusksAfterMidnightAreDrawnInTwoPartsAndNoneAtAllInNone() {
        List<@Nullable Integer> counts = Collections.nCopies(24, null);
        HoursPicture late = HoursPicture.of(times(counts, new SunOfMonth(6, 2.0, 4.0, 22.5, 0.5)));
        assertThat(late.twilight()).hasSize(2);
        assertThat(late.isDrawn()).isFalse();
        HoursPicture polar = HoursPicture.of(times(counts, new SunOfMonth(6, null, null, null, null)));
        assertThat(polar.twilight()).isEmpty();
        assertThat(polar.night()).hasSize(1);
    }

    @Test
    void yearsThatAreNotToldAreNoBars() {
        YearsPicture picture = YearsPicture.of(List.of(new Count("2019", 6), new Count("2020", null)), List.of());
        assertThat(picture.words()).isEqualTo("2019 6, 2020 –");
        assertThat(picture.bars().get(1).height()).isZero();
        assertThat(picture.marks()).isEmpty();
    }

    @Test
    void monthsThatAreNotAskedAboutAreOutlined() {
        Rose rose = Rose.ofMonths(Collections.nCopies(12, 1), month -> month == 6, java.util.Locale.GERMAN);
        assertThat(rose.petals().get(5).outlined()).isFalse();
        assertThat(rose.petals().get(5).name()).isEqualTo("Juni");
        assertThat(rose.petals().get(6).outlined()).isTrue();
        assertThat(rose.hasOutlined()).isTrue();
    }

    private static StretchTimes times(List<@Nullable Integer> hours, SunOfMonth sun) {
        return new StretchTimes(
                2019, 2019, new LightTable(List.of(), 0, ""), new HourTable(hours, 0, null, null), List.of(sun));
    }
}
