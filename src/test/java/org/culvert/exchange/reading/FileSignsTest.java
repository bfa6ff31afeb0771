package org.culvert.exchange.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.BiFunction;
import org.culvert.exchange.reading.Finding.Kind;
import org.culvert.exchange.reading.Headings.Field;
import org.junit.jupiter.api.Test;

/** Messes that only a whole file shows. All rows here are invented, from seeded generators. */
class FileSignsTest {
    private static final List<String> HEADINGS = List.of("Date", "Time", "Lat", "Long", "Road", "km", "Accuracy");
    private static final Map<Field, Integer> COLUMNS = Map.of(
            Field.day,
            0,
            Field.time,
            1,
            Field.decimalLatitude,
            2,
            Field.decimalLongitude,
            3,
            Field.road,
            4,
            Field.chainage,
            5,
            Field.coordinateUncertaintyInMeters,
            6);

    private static FileSigns signs(String title, int rows, BiFunction<Integer, Random, String[]> row) {
        ReadingSettings settings = ReadingSettings.of(COLUMNS).settings();
        var reader = new RowReader(settings, HEADINGS, LocalDate.of(2026, 11, 29), ZoneId.of("UTC"));
        var signs = new FileSigns(new Axes.Box(-31, 150, -29, 153), List.of(title));
        var random = new Random(11);
        for (int i = 0; i < rows; i++) {
            List<String> cells = List.of(row.apply(i, random));
            signs.take(reader.read(i + 2L, String.join(",", cells), cells));
        }
        return signs;
    }

    private static String[] usual(int i, Random random) {
        return new String[] {
            LocalDate.of(2019, 1, 1).plusDays(random.nextInt(1090)).toString(),
            random.nextInt(10, 24) + ":" + random.nextInt(10, 60),
            "-30." + (10_000 + i),
            "151." + (10_000 + random.nextInt(80_000)),
            "Road " + random.nextInt(5),
            "" + random.nextInt(90) + '.' + (1000 + random.nextInt(8999)),
            "20"
        };
    }

    private static String[] with(String[] row, int column, String cell) {
        String[] other = row.clone();
        other[column] = cell;
        return other;
    }

    private static List<Kind> kinds(FileSigns signs) {
        return signs.findings().stream().map(Finding::kind).toList();
    }

    private static String detail(FileSigns signs, Kind kind) {
        return signs.findings().stream()
                .filter(finding -> finding.kind() == kind)
                .map(Finding::detail)
                .findFirst()
                .orElse("");
    }

    /** Effort is in no file of this kind: that is always told, and nothing else is of a usual one. */
    @Test
    void aUsualFileShowsNothingButThatNobodyTellsOfEffort() {
        assertThat(kinds(signs("struck 2019-2021.csv", 400, FileSignsTest::usual)))
                .containsExactly(Kind.noEffort);
    }

    @Test
    void mess1AxesOfTheWholeFile() {
        FileSigns swapped = signs("x", 100, (i, random) -> {
            String[] row = usual(i, random);
            return with(with(row, 2, "30." + (1000 + i)), 3, "-30." + (1000 + i));
        });
        assertThat(kinds(swapped)).doesNotContain(Kind.swappedAxes);
        var box = new FileSigns(new Axes.Box(40, -60, 60, -30), List.of());
        for (int i = 0; i < 50; i++) {
            box.take(row(Spot.decimalDegrees("-45." + i, "50." + i), null));
        }
        assertThat(detail(box, Kind.swappedAxes)).contains("Of 50 positions 0 lie in the region", "50 with latitude");
    }

    @Test
    void mess1MinusSignsThatTheWholeFileLacks() {
        var north = new FileSigns(new Axes.Box(-31, 150, -29, 153), List.of());
        var both = new FileSigns(new Axes.Box(-31, -65, -29, -62), List.of());
        var few = new FileSigns(new Axes.Box(-31, 150, -29, 153), List.of());
        for (int i = 0; i < 50; i++) {
            north.take(row(Spot.decimalDegrees("30." + (100 + i), "151." + (100 + i)), null));
            both.take(row(Spot.decimalDegrees("30." + (100 + i), "63." + (100 + i)), null));
            few.take(row(Spot.decimalDegrees((i < 20 ? "30." : "-30.") + (100 + i), "151." + (100 + i)), null));
        }
        assertThat(detail(north, Kind.missingSign)).contains("Of 50 positions 0 lie in the region", "50 with a minus");
        assertThat(detail(both, Kind.missingSign)).contains("50 with a minus");
        assertThat(kinds(few)).as("a few rows are wrong, and not the file").doesNotContain(Kind.missingSign);
    }

    private static ReadRow row(Spot spot, String road) {
        return ReadRow.parts(1, "")
                .when(new DayCells.When(LocalDate.of(2020, 1, 1), null, null, null))
                .spot(spot, 20.0)
                .where(new RoadCells.Where(road, null, null, null, null, null))
                .row(List.of());
    }

    @Test
    void mess3CopiedPinsStandOnSeveralRoads() {
        FileSigns copied = signs("x", 300, (i, random) -> {
            String[] row = usual(i, random);
            return i % 30 == 0 ? with(with(with(row, 2, "-30.5"), 3, "150.5"), 4, "Road " + i) : row;
        });
        assertThat(detail(copied, Kind.copiedPin)).contains("10 rows have coordinates", "-30.5, 150.5", "alone has 10");
    }

    @Test
    void mess3SpellingsOfOneRoadAreOneRoad() {
        String[] spellings = {"Hwy 7", "Highway 7", "HIGHWAY  7", "The Highway 7"};
        FileSigns one = signs("x", 300, (i, random) -> {
            String[] row = usual(i, random);
            return i % 30 == 0 ? with(with(with(row, 2, "-30.5"), 3, "150.5"), 4, spellings[i / 30 % 4]) : row;
        });
        assertThat(kinds(one)).doesNotContain(Kind.copiedPin);
        FileSigns two = signs("x", 300, (i, random) -> {
            String[] row = usual(i, random);
            return i % 30 == 0 ? with(with(with(row, 2, "-30.5"), 3, "150.5"), 4, "Highway " + (7 + i / 30 % 2)) : row;
        });
        assertThat(kinds(two)).contains(Kind.copiedPin);
    }

    @Test
    void mess3ManyExactTies() {
        FileSigns tied = signs(
                "x",
                300,
                (i, random) -> with(with(with(usual(i, random), 2, "-30." + i % 40), 3, "150.1"), 4, "Mill Road"));
        assertThat(detail(tied, Kind.tiedPins)).startsWith("300 of 300 rows share");
        assertThat(kinds(tied)).doesNotContain(Kind.copiedPin);
    }

    /** 40 positions of 8 rows each and 100 of one: counted by hand. */
    @Test
    void tiesAreCountedWhole() {
        var pins = new Pins();
        for (int i = 0; i < 420; i++) {
            pins.take(i < 320 ? "at " + i % 40 : "alone at " + i, i < 320 ? "Road " + i % 2 : null);
        }
        assertThat(pins.rows()).isEqualTo(420);
        assertThat(pins.tied()).isEqualTo(320);
        assertThat(pins.onOtherRoads())
                .as("40 is even: each position has one road")
                .isZero();
        for (int i = 0; i < 5000; i++) {
            pins.take("more " + i, null);
        }
        assertThat(pins.count("at 7")).as("the table has grown").isEqualTo(8);
        pins.take("at 7", "another");
        assertThat(pins.onOtherRoads()).isEqualTo(9);
    }

    @Test
    void mess4RoundedChainages() {
        FileSigns rounded = signs("x", 200, (i, random) -> with(usual(i, random), 5, i % 2 == 0 ? "12" : "12.4"));
        assertThat(detail(rounded, Kind.roundedChainage))
                .contains("Of 200 chainages 200 are whole hundreds of metres, and 100 of these whole kilometres");
        assertThat(kinds(signs("x", 400, FileSignsTest::usual))).doesNotContain(Kind.roundedChainage);
    }

    @Test
    void mess6YearsOutsideTheTitle() {
        FileSigns outside = signs("struck 2020-2021.csv", 300, FileSignsTest::usual);
        assertThat(detail(outside, Kind.yearOutside)).contains("of 2020 to 2021", "2019 (");
        assertThat(kinds(signs("20191103-export.csv", 300, FileSignsTest::usual)))
                .as("figures that are no year")
                .doesNotContain(Kind.yearOutside);
    }

    @Test
    void mess6GapsOfEffort() {
        FileSigns gap = signs("x", 400, (i, random) -> {
            String[] row = usual(i, random);
            return row[0].startsWith("2020-0") ? with(row, 0, "2021-02-03") : row;
        });
        assertThat(detail(gap, Kind.monthsWithoutRows)).contains("2020-01 to 2020-09");
        assertThat(kinds(signs("x", 6, (i, random) -> with(usual(i, random), 0, "20" + (10 + i) + "-01-01"))))
                .as("six rows in six years miss nothing")
                .doesNotContain(Kind.monthsWithoutRows);
    }

    @Test
    void mess10OfficeHours() {
        FileSigns office = signs(
                "x",
                100,
                (i, random) -> with(with(usual(i, random), 0, "2020-03-1" + (6 + i % 4)), 1, (9 + i % 8) + ":15"));
        assertThat(detail(office, Kind.officeHours)).startsWith("Of 100 hours 100 are");
        FileSigns dusk = signs("x", 100, (i, random) -> with(usual(i, random), 1, "19:15"));
        assertThat(kinds(dusk)).doesNotContain(Kind.officeHours);
    }

    @Test
    void mess11NoUncertaintyAnywhere() {
        assertThat(kinds(signs("x", 50, (i, random) -> with(usual(i, random), 6, ""))))
                .contains(Kind.noUncertainty, Kind.noEffort);
        assertThat(kinds(signs("x", 50, (i, random) -> with(usual(i, random), 6, i == 7 ? "5" : ""))))
                .doesNotContain(Kind.noUncertainty);
    }

    @Test
    void noRowsShowNothing() {
        assertThat(new FileSigns(null, new ArrayList<>()).findings()).isEmpty();
    }
}
