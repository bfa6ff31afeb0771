package org.culvert.hotspot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.EnumMap;
import java.util.List;
import java.util.TreeMap;
import org.culvert.hotspot.beside.Beside;
import org.culvert.hotspot.stats.Chance;
import org.culvert.hotspot.stats.Hotspot;
import org.culvert.hotspot.stats.RecordDoubts;
import org.culvert.road.network.NetworkBuilder;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.RoadLine;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.network.Structure;
import org.junit.jupiter.api.Test;

class ReportMakerTest {
    private static final RecordDoubts NO_DOUBTS = new RecordDoubts(0, 0, List.of());

    private static final RunSettings.Season ALL =
            RunSettings.Season.ofMonths(List.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12));

    private static RoadLine line(String name, String owner, double... vertices) {
        return new RoadLine(
                name, new RoadAttributes(name, null, null, null, null, owner, null, 0, Structure.NONE), null, vertices);
    }

    private static RunSettings settings(String chance) {
        return new RunSettings(
                LocalDate.of(2020, 1, 1),
                LocalDate.of(2023, 12, 31),
                ALL,
                "macropods",
                null,
                500,
                null,
                50,
                999,
                1,
                chance,
                0.05,
                3,
                1000,
                null,
                List.of());
    }

    private static HotspotReport report(Hotspot hotspot, Chance chance, String label) {
        return report(hotspot, chance, NO_DOUBTS, label);
    }

    /** A kind of chance that leaves nothing uncontrolled claims its rate, until the records themselves speak against it. */
    @Test
    void doubtfulRecordsTakeTheClaimAway() {
        var chance = new Chance.PerAllReports(List.of());
        assertThat(report(hotspot(3, 1), chance, "Road").errorRate().claimed()).isTrue();
        HotspotReport.ErrorRate doubted = report(
                        hotspot(3, 1), chance, new RecordDoubts(3, 0.1, List.of("pairs in the records")), "Road")
                .errorRate();
        assertThat(doubted.claimed()).isFalse();
        assertThat(doubted.notControlled()).containsExactly("pairs in the records");
        assertThat(doubted.sentence()).contains("does not control: pairs in the records.");
    }

    private static HotspotReport report(Hotspot hotspot, Chance chance, RecordDoubts doubts, String label) {
        // Two councils on one road, which bends where they meet and where a lane starts
        RoadNetwork network = NetworkBuilder.planar()
                .add(line(label, "North Shire", 0, 0, 1000, 0))
                .add(line(label, "South Shire", 1000, 0, 1000, -1000))
                .add(line("Lane", "South Shire", 1000, 0, 2000, 0))
                .build()
                .network();
        var leftOut = new EnumMap<Evidence.LeftOut, Integer>(Evidence.LeftOut.class);
        leftOut.put(Evidence.LeftOut.NO_PLACE, 2);
        var evidence = new Evidence(
                List.of(),
                List.of(),
                List.of(),
                SurveyedGround.Surveys.NONE,
                new TreeMap<>(),
                12,
                0,
                0,
                leftOut,
                new int[12],
                "abc");
        return new ReportMaker(network, settings(chance.name()))
                .report(4, "def", evidence, null, chance, doubts, List.of(hotspot), Beside.NONE);
    }

    private static Hotspot hotspot(int onTheNorth, int onTheSouth) {
        return new Hotspot(
                1,
                0,
                List.of(new Hotspot.Span(0, 800, 1000, onTheNorth), new Hotspot.Span(1, 0, 300, onTheSouth)),
                800,
                1300,
                500,
                onTheNorth + onTheSouth,
                0.5,
                1.234567,
                9.876,
                0.001);
    }

    @Test
    void spansThatGoOnAreOneLineRoundTheBend() {
        HotspotReport.Stretch stretch = report(hotspot(3, 1), new Chance.PerKilometre(), "Road")
                .hotspots()
                .get(0);
        assertThat(stretch.lines()).hasSize(1);
        assertThat(stretch.lines().get(0)).isDeepEqualTo(new double[][] {{800, 0}, {1000, 0}, {1000, -300}});
        assertThat(stretch.from()).isEqualTo(new HotspotReport.Point(0, 800));
        assertThat(stretch.to()).isEqualTo(new HotspotReport.Point(-300, 1000));
    }

    @Test
    void anOwnerOnWhoseRoadNothingHappenedIsNotNamed() {
        assertThat(report(hotspot(4, 0), new Chance.PerKilometre(), "Road")
                        .hotspots()
                        .get(0)
                        .owner())
                .isEqualTo("North Shire");
        assertThat(report(hotspot(3, 1), new Chance.PerKilometre(), "Road")
                        .hotspots()
                        .get(0)
                        .owner())
                .isEqualTo("North Shire, South Shire");
    }

    /** Four incidents on half a kilometre in 1,461 days, which are four years. */
    @Test
    void ratesArePerKilometreAndYear() {
        assertThat(report(hotspot(3, 1), new Chance.PerKilometre(), "Road")
                        .hotspots()
                        .get(0)
                        .incidentsPerKilometreAndYear())
                .isEqualTo(2.0);
    }

    @Test
    void theSentenceNamesTheChanceAndWhatItDoesNotControl() {
        var uncontrolled =
                report(hotspot(3, 1), new Chance.PerKilometre(), "Road").errorRate();
        assertThat(uncontrolled.claimed()).isFalse();
        assertThat(uncontrolled.sentence())
                .startsWith("If every kilometre of road were as likely")
                .contains("at most 5 % of cases", "not claimed of the real roads");
        var controlled = report(hotspot(3, 1), new Chance.PerAllReports(List.of()), "Road")
                .errorRate();
        assertThat(controlled.claimed()).isTrue();
        assertThat(controlled.sentence()).doesNotContain("not claimed");
        assertThat(controlled.assumed()).isNotEmpty();
    }

    /** A spreadsheet takes a text that begins with = as a formula. */
    @Test
    void aRoadNamedLikeAFormulaStaysAText() {
        String csv = HotspotFiles.csv(report(hotspot(3, 1), new Chance.PerKilometre(), "=HYPERLINK(\"x\")"));
        assertThat(csv.lines().skip(1).findFirst().orElseThrow()).startsWith("1,\"'=HYPERLINK(\"\"x\"\")\"");
    }

    @Test
    void aSeasonWindowHasBothItsEndsAndMayCrossTheNewYear() {
        var summer = new RunSettings.Season(List.of(), "summer", MonthDay.of(11, 15), MonthDay.of(2, 10), "a source");
        assertThat(summer.has(LocalDate.of(2020, 11, 15))).isTrue();
        assertThat(summer.has(LocalDate.of(2020, 11, 14))).isFalse();
        assertThat(summer.has(LocalDate.of(2021, 1, 1))).isTrue();
        assertThat(summer.has(LocalDate.of(2021, 2, 10))).isTrue();
        assertThat(summer.has(LocalDate.of(2021, 2, 11))).isFalse();
        var spring = new RunSettings.Season(List.of(), "spring", MonthDay.of(9, 1), MonthDay.of(11, 30), "a source");
        assertThat(spring.has(LocalDate.of(2020, 9, 1))).isTrue();
        assertThat(spring.has(LocalDate.of(2020, 12, 1))).isFalse();
        assertThat(spring.words()).isEqualTo("the season spring (1 September to 30 November)");
    }

    @Test
    void numbersHaveNoExponentAndNoTail() {
        assertThat(Words.number(5.0, 4)).isEqualTo("5");
        assertThat(Words.number(0.5, 4)).isEqualTo("0.5");
        assertThat(Words.number(1000, 2)).isEqualTo("1000");
        assertThat(Words.rounded(2.345678, 2)).isEqualTo(2.35);
    }
}
