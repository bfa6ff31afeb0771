package org.culvert.exchange.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.culvert.exchange.reading.Finding.Kind;
import org.culvert.exchange.reading.Finding.Weight;
import org.culvert.exchange.reading.Headings.Field;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The kinds of mess that real files have, one by one, at the level of a row. All tables here are invented. */
class RowReaderTest {
    private static final LocalDate LATEST = LocalDate.of(2026, 11, 29);
    private static final ZoneId ZONE = ZoneId.of("Australia/Brisbane");
    private static final UnaryOperator<ReadingSettings.Parts> PLAIN = parts -> parts.cause("collisionWithVehicle");
    private static final UnaryOperator<ReadingSettings.Parts> SWAPPED = parts -> parts.axesSwapped(true);
    private static final UnaryOperator<ReadingSettings.Parts> COMMAS = parts -> parts.decimalMark(Numbers.Mark.comma);

    /** One row under its fields, each in a column of its own. */
    private static ReadRow read(UnaryOperator<ReadingSettings.Parts> decided, Map<Field, String> cells) {
        Map<Field, Integer> columns = new EnumMap<>(Field.class);
        List<String> row = new ArrayList<>();
        List<String> headings = new ArrayList<>();
        new EnumMap<>(cells).forEach((field, cell) -> {
            columns.put(field, row.size());
            headings.add("of " + field);
            row.add(cell);
        });
        return reader(decided.apply(ReadingSettings.of(columns)).settings(), headings)
                .read(2, String.join(",", row), row);
    }

    private static RowReader reader(ReadingSettings settings, List<String> headings) {
        return new RowReader(settings, headings, LATEST, ZONE);
    }

    private static UnaryOperator<ReadingSettings.Parts> ordered(Dates.Order order) {
        return parts -> parts.dayOrder(order);
    }

    private static UnaryOperator<ReadingSettings.Parts> deciding(Map<String, String> animals) {
        return parts -> parts.animals(animals)
                .vitalities(Map.of("ex", "dead"))
                .directions(Map.of("sunward", "north"))
                .causes(Map.of("hbc", "collisionWithVehicle"));
    }

    private static Map<Field, String> row(String... fieldsAndCells) {
        Map<Field, String> row = new EnumMap<>(Field.class);
        row.put(Field.day, "2024-03-09");
        row.put(Field.scientificName, "Wallabia bicolor");
        row.put(Field.road, "Mill Road");
        row.put(Field.chainage, "12.4");
        for (int i = 0; i < fieldsAndCells.length; i += 2) {
            row.put(Field.valueOf(fieldsAndCells[i]), fieldsAndCells[i + 1]);
        }
        return row;
    }

    private static Map<Field, String> at(String latitude, String longitude) {
        return row("decimalLatitude", latitude, "decimalLongitude", longitude);
    }

    private static List<Kind> kinds(ReadRow row) {
        return row.findings().stream().map(Finding::kind).toList();
    }

    @Test
    void aRowWithoutMessHasNoFinding() {
        ReadRow row = read(
                PLAIN,
                row(
                        "time",
                        "18:40",
                        "decimalLatitude",
                        "-30.12",
                        "decimalLongitude",
                        "150.5",
                        "direction",
                        "NB",
                        "vitality",
                        "DOA",
                        "sex",
                        "F",
                        "individualCount",
                        "2",
                        "lifeStage",
                        "adult",
                        "identifier",
                        "A-7",
                        "remarks",
                        "pouch empty",
                        "coordinateUncertaintyInMeters",
                        "± 15 m"));
        assertThat(row.findings()).isEmpty();
        assertThat(row.day()).isEqualTo(LocalDate.of(2024, 3, 9));
        assertThat(row.time()).isEqualTo(LocalTime.of(18, 40));
        assertThat(row.spot()).isEqualTo(Spot.decimalDegrees("-30.12", "150.5"));
        assertThat(row.chainageMetres()).isEqualTo(12_400);
        assertThat(row.chainagePrecisionMetres()).isEqualTo(100);
        assertThat(row.direction()).isEqualTo("north");
        assertThat(row.vitality()).isEqualTo("dead");
        assertThat(row.sex()).isEqualTo("female");
        assertThat(row.individualCount()).isEqualTo(2);
        assertThat(row.uncertaintyMetres()).isEqualTo(15);
        assertThat(row.cause()).isEqualTo("collisionWithVehicle");
        assertThat(row.heaviest()).isNull();
    }

    @Test
    void mess1LatitudeAndLongitudeUnderEachOthersHeadings() {
        Map<Field, String> alone = at("150.5", "-30.12");
        alone.remove(Field.road);
        alone.remove(Field.chainage);
        ReadRow impossible = read(PLAIN, alone);
        assertThat(impossible.spot()).isNull();
        assertThat(kinds(impossible)).contains(Kind.swappedAxes);
        assertThat(impossible.heaviest()).isEqualTo(Weight.refusal);
        assertThat(read(PLAIN, at("150.5", "-30.12")).heaviest())
                .as("a road and a chainage tell the place too")
                .isEqualTo(Weight.doubt);
        assertThat(read(SWAPPED, at("150.5", "-30.12")).spot()).isEqualTo(Spot.decimalDegrees("-30.12", "150.5"));
    }

    @Test
    void mess1MinusSignsThatAWholeFileLacks() {
        UnaryOperator<ReadingSettings.Parts> south = parts -> parts.withoutSign(true, false);
        assertThat(read(south, at("30.12", "150.5")).spot()).isEqualTo(Spot.decimalDegrees("-30.12", "150.5"));
        assertThat(read(south, at("-30.12", "150.5")).spot()).isEqualTo(Spot.decimalDegrees("-30.12", "150.5"));
        assertThat(read(south, at("+30.12", "150.5")).spot())
                .as("a sign that is told stays")
                .isEqualTo(Spot.decimalDegrees("30.12", "150.5"));
        assertThat(read(south, at("30°06'", "150°30'")).spot()).isEqualTo(Spot.text("-30°06', 150°30'"));
        assertThat(read(south, at("30°06'N", "150°30'E")).spot()).isEqualTo(Spot.text("30°06'N, 150°30'E"));
        assertThat(read(south, row("coordinates", "30.12, 150.5")).spot())
                .isEqualTo(Spot.decimalDegrees("-30.12", "150.5"));
        UnaryOperator<ReadingSettings.Parts> swappedToo =
                parts -> parts.withoutSign(false, true).axesSwapped(true);
        assertThat(read(swappedToo, at("98.5", "30.12")).spot()).isEqualTo(Spot.decimalDegrees("30.12", "-98.5"));
        assertThat(read(PLAIN, at("30.12", "150.5")).spot())
                .as("never by itself")
                .isEqualTo(Spot.decimalDegrees("30.12", "150.5"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "   ", "\u00a0", "N/A ", "unknown", "-", "keine Angabe", "#N/A", "?"})
    void mess2WordsForMissingAreNoValues(String missing) {
        ReadRow row = read(
                PLAIN,
                row(
                        "decimalLatitude",
                        missing,
                        "decimalLongitude",
                        missing,
                        "vitality",
                        missing,
                        "sex",
                        missing,
                        "individualCount",
                        missing,
                        "direction",
                        missing,
                        "time",
                        missing,
                        "remarks",
                        missing));
        assertThat(row.findings()).isEmpty();
        assertThat(row.spot()).isNull();
        assertThat(row.individualCount()).isEqualTo(1);
        assertThat(row.remarks()).isNull();
    }

    @Test
    void mess2NoughtsAreNoPlaceAndNoAnimal() {
        ReadRow nowhere = read(PLAIN, at("0", "0.000"));
        assertThat(nowhere.spot()).isNull();
        assertThat(kinds(nowhere)).containsExactly(Kind.zeroCoordinates);
        ReadRow none = read(PLAIN, row("individualCount", "0"));
        assertThat(none.heaviest()).isEqualTo(Weight.refusal);
        assertThat(kinds(read(PLAIN, row("decimalLatitude", "-30.1", "decimalLongitude", ""))))
                .containsExactly(Kind.halfACoordinate);
    }

    @Test
    void mess4ARoadAloneCountsAndIsNoPlace() {
        ReadRow row = read(PLAIN, row("chainage", ""));
        assertThat(kinds(row)).containsExactly(Kind.routeOnly);
        assertThat(row.road()).isEqualTo("Mill Road");
        assertThat(row.heaviest()).isEqualTo(Weight.note);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "12 | 12000 | 1000",
                "12.4 | 12400 | 100",
                "12.437 | 12437 | 1",
                "12.4 km | 12400 | 100",
                "10K | 10000 | 1000",
                "12+400 | 12400 | 100",
                "Ch 12400 | 12400 | 1",
                "MP 10 | 16093.44 | 1609.344",
                "3.5 mi | 5632.704 | 160.9344"
            })
    void mess4ChainagesAreAsFineAsTheyAreTold(String cell, double metres, double step) {
        ReadRow row = read(PLAIN, row("chainage", cell));
        assertThat(row.findings()).isEmpty();
        assertThat(row.chainageMetres()).isCloseTo(metres, org.assertj.core.data.Offset.offset(1e-6));
        assertThat(row.chainagePrecisionMetres()).isCloseTo(step, org.assertj.core.data.Offset.offset(1e-6));
    }

    @ParameterizedTest
    @ValueSource(strings = {"12-14", "km 3 to km 5", "near the mill", "12,34,5"})
    void mess4AStretchIsNoChainage(String cell) {
        ReadRow row = read(PLAIN, row("chainage", cell));
        assertThat(row.chainageMetres()).isNull();
        assertThat(kinds(row)).contains(Kind.unreadableChainage);
    }

    @ParameterizedTest
    @CsvSource({
        "northbound,north",
        "S,south",
        "N/B,north",
        "NE,northEast",
        "both,both",
        "NS,both",
        "off-ramp,ramp",
        "Ramp,ramp",
        "increasing,increasing",
        "west bound,west",
        "Süd,south"
    })
    void mess5DirectionsAreMoreThanFour(String cell, String direction) {
        assertThat(read(PLAIN, row("direction", cell)).direction()).isEqualTo(direction);
    }

    @Test
    void mess5AnOddDirectionIsToldAndDecided() {
        ReadRow odd = read(PLAIN, row("direction", "sunward"));
        assertThat(odd.direction()).isNull();
        assertThat(kinds(odd)).containsExactly(Kind.oddDirection);
        assertThat(read(deciding(Map.of()), row("direction", "Sunward")).direction())
                .isEqualTo("north");
    }

    @Test
    void mess6DaysInTwoOrdersAreNotGuessed() {
        ReadRow open = read(PLAIN, row("day", "3/4/2024"));
        assertThat(open.day()).isNull();
        assertThat(kinds(open)).containsExactly(Kind.twoWaysOfDay);
        assertThat(open.heaviest()).isEqualTo(Weight.refusal);
        assertThat(read(ordered(Dates.Order.dayMonthYear), row("day", "3/4/2024"))
                        .day())
                .isEqualTo(LocalDate.of(2024, 4, 3));
        assertThat(read(ordered(Dates.Order.monthDayYear), row("day", "2024/3/4"))
                        .day())
                .as("Y/M/D among M/D/Y")
                .isEqualTo(LocalDate.of(2024, 3, 4));
        ReadRow other = read(ordered(Dates.Order.monthDayYear), row("day", "25/4/2024"));
        assertThat(other.day()).isEqualTo(LocalDate.of(2024, 4, 25));
        assertThat(other.heaviest()).as("readable in one other order alone").isEqualTo(Weight.doubt);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "unpadded 9/3/2024 |",
                "31/4/2024 |",
                "soon |",
                "2027-01-01 | dayInFuture",
                "1/1/2027 | dayInFuture"
            })
    void mess6WhatIsNoDayIsRefused(String cell, String kind) {
        ReadRow row = read(ordered(Dates.Order.dayMonthYear), row("day", cell));
        assertThat(row.day()).isNull();
        assertThat(kinds(row)).containsExactly(kind == null ? Kind.unreadableDay : Kind.valueOf(kind));
    }

    @ParameterizedTest
    @CsvSource({"2019,2019", "2019.0,2019"})
    void mess6AYearAloneIsNoDay(String cell, int year) {
        ReadRow row = read(PLAIN, row("day", cell));
        assertThat(row.day()).isNull();
        assertThat(row.year()).isEqualTo(year);
        assertThat(kinds(row)).containsExactly(Kind.yearAlone);
    }

    /** Forms of ISO 8601 that the examples of Darwin Core's term eventDate have (Darwin Core, 2023-09-18; from memory). */
    @ParameterizedTest
    @CsvSource({
        "2019-07,2019-07-01,2019-07-31,doubt",
        "07/2019,2019-07-01,2019-07-31,doubt",
        "July 2019,2019-07-01,2019-07-31,doubt",
        "2007-11-13/15,2007-11-13,2007-11-15,note",
        "2016-01-02/2016-01-05,2016-01-02,2016-01-05,note",
        "2016-02-27/03-02,2016-02-27,2016-03-02,note",
        "2015-12/2016-01,2015-12-01,2016-01-31,doubt",
        "2016/2017,2016-01-01,2017-12-31,doubt",
        "2 Jan 2016 - 5 Jan 2016,2016-01-02,2016-01-05,note",
        "2/1/2016 to 5/1/2016,2016-01-02,2016-01-05,note"
    })
    void mess6SeveralDaysAreNoneOfThem(String cell, LocalDate first, LocalDate last, Weight weight) {
        ReadRow row = read(ordered(Dates.Order.dayMonthYear), row("day", cell));
        assertThat(row.day()).isEqualTo(first);
        assertThat(row.lastDay()).isEqualTo(last);
        assertThat(row.year()).isNull();
        assertThat(kinds(row)).containsExactly(Kind.severalDays);
        assertThat(row.heaviest()).isEqualTo(weight);
    }

    @Test
    void mess6EndsOfTimesThatAreNone() {
        for (String cell : List.of("2016-01-05/2016-01-02", "2016-01-02/32", "2016-13", "2016-01-02/03/04")) {
            assertThat(kinds(read(PLAIN, row("day", cell)))).as(cell).containsExactly(Kind.unreadableDay);
        }
        assertThat(kinds(read(PLAIN, row("day", "2027-01/2027-02")))).containsExactly(Kind.dayInFuture);
        ReadRow oneDay = read(PLAIN, row("day", "2016-01-02T18:00/2016-01-02T20:00"));
        assertThat(oneDay.day()).isEqualTo(LocalDate.of(2016, 1, 2));
        assertThat(oneDay.lastDay()).isNull();
        assertThat(kinds(oneDay)).as("hours are not dropped without a word").containsExactly(Kind.unreadableTime);
        ReadRow hour = read(PLAIN, row("day", "2016-01-02/03", "time", "22:00"));
        assertThat(hour.time()).isNull();
        assertThat(kinds(hour)).containsExactly(Kind.severalDays, Kind.unreadableTime);
        ReadRow utc = read(PLAIN, row("day", "2016-01-02T15:00Z/2016-01-02T16:00Z"));
        assertThat(utc.day())
                .as("after 14:00 of UTC it is tomorrow in Brisbane")
                .isEqualTo(LocalDate.of(2016, 1, 3));
    }

    /** 45123.5 is noon of 2023-07-16 in LibreOffice Calc and Excel with their usual day nought (from memory). */
    @Test
    void mess6DaysAsSpreadsheetsKeepThem() {
        ReadRow row = read(PLAIN, row("day", "45123.5"));
        assertThat(row.day()).isEqualTo(LocalDate.of(2023, 7, 16));
        assertThat(row.time()).isEqualTo(LocalTime.NOON);
        assertThat(row.heaviest()).as("nobody decided that").isEqualTo(Weight.doubt);
        assertThat(read(PLAIN, row("day", "36526")).day())
                .as("2000-01-01 is 36526")
                .isEqualTo(LocalDate.of(2000, 1, 1));
    }

    @Test
    void mess6YearMonthAndDayInColumnsOfTheirOwn() {
        Map<Field, String> parts = row("year", "2019", "month", "Jul", "dayOfMonth", "4");
        parts.remove(Field.day);
        assertThat(read(PLAIN, parts).day()).isEqualTo(LocalDate.of(2019, 7, 4));
        parts.put(Field.dayOfMonth, "32");
        assertThat(kinds(read(PLAIN, parts))).containsExactly(Kind.unreadableDay);
        parts.put(Field.dayOfMonth, "");
        assertThat(read(PLAIN, parts).lastDay()).as("a month of a year").isEqualTo(LocalDate.of(2019, 7, 31));
        parts.put(Field.month, "");
        assertThat(read(PLAIN, parts).year()).isEqualTo(2019);
    }

    @Test
    void mess7ChainageWithinWordsCornersAndAddresses() {
        ReadRow inRoad = read(PLAIN, row("road", "Mill Road 10K", "chainage", ""));
        assertThat(inRoad.road()).isEqualTo("Mill Road");
        assertThat(inRoad.chainageMetres()).isEqualTo(10_000);
        assertThat(kinds(inRoad)).containsExactly(Kind.chainageInText);
        Map<Field, String> words = row("locality", "Creek Way, 3.2 km past the bridge");
        words.remove(Field.road);
        words.remove(Field.chainage);
        assertThat(read(PLAIN, words).chainageMetres()).isEqualTo(3200);
        ReadRow corner = read(PLAIN, row("road", "Mill Road / Creek Way", "chainage", ""));
        assertThat(corner.road()).isEqualTo("Mill Road");
        assertThat(corner.crossingRoad()).isEqualTo("Creek Way");
        words.put(Field.locality, "Cnr Mill Rd and Creek Way");
        assertThat(read(PLAIN, words).crossingRoad()).isEqualTo("Creek Way");
        ReadRow block = read(PLAIN, row("road", "1200 block of Mill Road", "chainage", ""));
        assertThat(block.road()).isEqualTo("Mill Road");
        assertThat(block.locality()).isEqualTo("1200 block of Mill Road");
        assertThat(kinds(block)).containsExactly(Kind.blockAddress, Kind.routeOnly);
        words.put(Field.locality, "behind the school");
        assertThat(kinds(read(PLAIN, words))).containsExactly(Kind.localityOnly);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "dog",
                "Cats",
                "domestic cat",
                "cattle",
                "Cow",
                "sheep",
                "Canis familiaris",
                "Hund",
                "chien",
                "gatos",
                "stray dog"
            })
    void mess9DomesticAnimalsAreKeptApart(String words) {
        ReadRow row = read(PLAIN, row("scientificName", words));
        assertThat(row.isDomestic()).isTrue();
        assertThat(row.heaviest()).isEqualTo(Weight.note);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Opossum",
                "caterpillar",
                "catbird",
                "dogfish",
                "cane toad",
                "wild dog",
                "bush pig",
                "feral cat",
                "sea horse",
                "cowbird",
                "sheep tick",
                "Sus scrofa",
                "goose",
                "chat",
                "Dasyurus (native cat)",
                "cattle egret"
            })
    void mess9APartOfAWordIsNoAnimal(String words) {
        assertThat(read(PLAIN, row("scientificName", words)).isDomestic()).isFalse();
    }

    @Test
    void mess9WhatWasDecidedForWordsGoesBeforeAll() {
        Map<String, String> decided =
                Map.of("dog", "taxon:1", "swampy", "group:2", "goose", "domestic", "thing", "undecided");
        assertThat(read(deciding(decided), row("scientificName", " Dog ")).animal())
                .isEqualTo("taxon:1");
        assertThat(read(deciding(decided), row("scientificName", "dog")).isDomestic())
                .isFalse();
        assertThat(read(deciding(decided), row("scientificName", "SWAMPY")).animal())
                .isEqualTo("group:2");
        assertThat(read(deciding(decided), row("scientificName", "Goose")).isDomestic())
                .isTrue();
        assertThat(kinds(read(deciding(decided), row("scientificName", "thing"))))
                .containsExactly(Kind.undecidedAnimal);
    }

    @Test
    void mess9ACommonNameBesideTheScientificOne() {
        ReadRow both = read(PLAIN, row("vernacularName", "swamp wallaby"));
        assertThat(both.animalWords()).isEqualTo("Wallabia bicolor");
        assertThat(both.commonWords()).isEqualTo("swamp wallaby");
        assertThat(both.allAnimalWords()).isEqualTo("Wallabia bicolor; swamp wallaby");
        assertThat(both.findings()).isEmpty();
        ReadRow common = read(PLAIN, row("scientificName", "unknown", "vernacularName", "wombat"));
        assertThat(common.animalWords()).isNull();
        assertThat(common.allAnimalWords()).isEqualTo("wombat");
        assertThat(common.findings()).isEmpty();
        assertThat(kinds(read(PLAIN, row("scientificName", "", "vernacularName", "n/a"))))
                .containsExactly(Kind.missingAnimal);
        assertThat(read(PLAIN, row("scientificName", "", "vernacularName", "dog"))
                        .isDomestic())
                .isTrue();
        assertThat(read(PLAIN, row("scientificName", "Canis familiaris", "vernacularName", "dog"))
                        .isDomestic())
                .isTrue();
        ReadRow torn = read(PLAIN, row("scientificName", "Canis dingo", "vernacularName", "dog"));
        assertThat(torn.isDomestic()).isFalse();
        assertThat(kinds(torn)).containsExactly(Kind.namesDisagree);
        assertThat(read(deciding(Map.of("wombat", "taxon:3")), row("vernacularName", "Wombat"))
                        .commonAnimal())
                .isEqualTo("taxon:3");
    }

    @Test
    void mess10HoursAreReadAndOddOnesTold() {
        assertThat(read(PLAIN, row("time", "2.30pm")).time()).isEqualTo(LocalTime.of(14, 30));
        assertThat(read(PLAIN, row("time", "1430 hrs")).time()).isEqualTo(LocalTime.of(14, 30));
        assertThat(read(PLAIN, row("time", "930")).time()).isEqualTo(LocalTime.of(9, 30));
        assertThat(read(PLAIN, row("time", "970")).time()).isNull();
        assertThat(read(PLAIN, row("time", "14h30")).time()).isEqualTo(LocalTime.of(14, 30));
        assertThat(read(PLAIN, row("time", "12 am")).time()).isEqualTo(LocalTime.MIDNIGHT);
        assertThat(read(PLAIN, row("time", "0.604166667")).time()).isEqualTo(LocalTime.of(14, 30));
        assertThat(read(PLAIN, row("day", "2024-03-09 14:30")).time()).isEqualTo(LocalTime.of(14, 30));
        ReadRow dusk = read(PLAIN, row("time", "dusk"));
        assertThat(dusk.time()).isNull();
        assertThat(kinds(dusk)).containsExactly(Kind.unreadableTime);
        assertThat(kinds(read(PLAIN, row("day", "2024-03-09 14:30", "time", "15:00"))))
                .containsExactly(Kind.unreadableTime);
    }

    /** ISO 8601: Z is UTC; Brisbane is ten hours ahead of it all the year (tz database). */
    @Test
    void mess10AnHourWithAnOffsetIsThatOfTheRegion() {
        ReadRow row = read(PLAIN, row("day", "2024-03-09T20:15:00Z"));
        assertThat(row.day()).isEqualTo(LocalDate.of(2024, 3, 10));
        assertThat(row.time()).isEqualTo(LocalTime.of(6, 15));
        assertThat(read(PLAIN, row("day", "2024-03-09T20:15:00+10:00")).time()).isEqualTo(LocalTime.of(20, 15));
        assertThat(read(PLAIN, row("day", "2024/03/09 10:15:00+00")).time()).isEqualTo(LocalTime.of(20, 15));
    }

    @Test
    void mess11AnUncertaintyOfTheFileIsForRowsThatTellNone() {
        UnaryOperator<ReadingSettings.Parts> settings = parts -> parts.uncertaintyMetres(250.0);
        assertThat(read(settings, row()).uncertaintyMetres()).isEqualTo(250);
        assertThat(read(settings, row("coordinateUncertaintyInMeters", "2 km")).uncertaintyMetres())
                .isEqualTo(2000);
        ReadRow nought = read(settings, row("coordinateUncertaintyInMeters", "0"));
        assertThat(nought.uncertaintyMetres()).isEqualTo(250);
        assertThat(kinds(nought)).containsExactly(Kind.unreadableUncertainty);
        assertThat(read(PLAIN, row()).uncertaintyMetres()).isNull();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "-27.1, 152.9",
                "(-27.1 152.9)",
                "-27.1;152.9",
                "POINT(152.9 -27.1)",
                "POINT Z (152.9 -27.1 12.5)",
                "geo:-27.1,152.9",
                "-27.1° / 152.9°"
            })
    void bothCoordinatesInOneCell(String cell) {
        assertThat(read(PLAIN, row("coordinates", cell)).spot()).isEqualTo(Spot.decimalDegrees("-27.1", "152.9"));
    }

    @Test
    void coordinatesOfOtherForms() {
        assertThat(read(PLAIN, row("coordinates", "27°06'00\"S 152°54'00\"E")).spot())
                .isEqualTo(Spot.text("27°06'00\"S 152°54'00\"E"));
        assertThat(read(PLAIN, at("27°06'S", "152°54'E")).spot()).isEqualTo(Spot.text("27°06'S, 152°54'E"));
        assertThat(read(PLAIN, at("27°06'S", "152.9")).spot()).isEqualTo(Spot.text("27°06'S, 152.9E"));
        assertThat(read(PLAIN, row("coordinates", "5RP8VQ2G+2X")).spot()).isEqualTo(Spot.plusCode("5RP8VQ2G+2X"));
        assertThat(read(PLAIN, row("coordinates", "56J 502345 6950123")).spot())
                .as("WGS 84 / UTM zone 56S is EPSG:32756")
                .isEqualTo(Spot.grid(32756, "502345", "6950123"));
        ReadRow odd = read(PLAIN, row("coordinates", "at the mill"));
        assertThat(odd.spot()).isNull();
        assertThat(kinds(odd)).containsExactly(Kind.unreadableCoordinates);
        assertThat(kinds(read(PLAIN, row("easting", "502345", "northing", "6950123"))))
                .as("nobody said of which grid")
                .containsExactly(Kind.unreadableCoordinates);
    }

    @Test
    void decimalCommas() {
        ReadRow row = read(COMMAS, row("decimalLatitude", "-27,123", "decimalLongitude", "152,9", "chainage", "12,4"));
        assertThat(row.spot()).isEqualTo(Spot.decimalDegrees("-27.123", "152.9"));
        assertThat(row.chainageMetres()).isEqualTo(12_400);
        assertThat(read(COMMAS, row("coordinates", "-27,1; 152,9")).spot())
                .isEqualTo(Spot.decimalDegrees("-27.1", "152.9"));
        ReadRow other = read(PLAIN, at("-27,123", "152.9"));
        assertThat(other.spot()).as("degrees have no thousands").isEqualTo(Spot.decimalDegrees("-27.123", "152.9"));
        assertThat(kinds(other)).containsExactly(Kind.otherDecimalMark);
    }

    @ParameterizedTest
    @CsvSource({
        "2,2,",
        "2.0,2,",
        "two,2,",
        "3+,3,doubt",
        "~4,4,doubt",
        "2-3,2,doubt",
        "2 adults + 1 joey,3,doubt",
        "one adult and two young,3,doubt",
        "'1 adult, 3 eggs',1,doubt",
        "'1,2',1,refusal",
        "3 eggs,1,refusal",
        "1 + 1,2,doubt",
        "2/3,1,refusal",
        "many,1,refusal",
        "2.5,1,refusal",
        "5000,1,refusal",
        "-1,1,refusal"
    })
    void numbersOfAnimals(String cell, int count, Weight weight) {
        ReadRow row = read(PLAIN, row("individualCount", cell));
        assertThat(row.individualCount()).isEqualTo(count);
        assertThat(row.heaviest()).isEqualTo(weight);
    }

    @ParameterizedTest
    @CsvSource({"present,", "PRESENT,", "absent,refusal", "Absent,refusal", "not found,refusal", "perhaps,doubt"})
    void aRecordOfNothingIsNoAnimal(String cell, Weight weight) {
        assertThat(read(PLAIN, row("occurrenceStatus", cell)).heaviest()).isEqualTo(weight);
    }

    @ParameterizedTest
    @CsvSource({
        "WGS84,",
        "WGS 84 (EPSG:4326),",
        "GDA94,",
        "not recorded (forced WGS84),",
        "unknown,",
        "AGD66,otherDatum",
        "NAD27,otherDatum"
    })
    void coordinatesOnAnotherDatumAreADoubt(String datum, Kind kind) {
        Map<Field, String> row = at("-30.1", "150.5");
        row.put(Field.geodeticDatum, datum);
        assertThat(kinds(read(PLAIN, row))).isEqualTo(kind == null ? List.of() : List.of(kind));
    }

    @ParameterizedTest
    @CsvSource({
        "2 x wallaby,2",
        "3 wallabies,3",
        "wallaby (2),2",
        "wallaby x2,2",
        "wallaby,1",
        "Bufo sp. 2 of the list,1"
    })
    void aNumberBesideTheAnimalIsADoubtAndNotDropped(String cell, int count) {
        ReadRow row = read(PLAIN, row("scientificName", cell));
        assertThat(row.individualCount()).isEqualTo(count);
        assertThat(row.heaviest()).isEqualTo(count == 1 ? null : Weight.doubt);
        assertThat(read(PLAIN, row("scientificName", cell, "individualCount", "4"))
                        .individualCount())
                .isEqualTo(4);
    }

    @Test
    void mess10AnHourOfNoughtBesideAColumnOfHoursIsNone() {
        assertThat(read(PLAIN, row("day", "01/15/2016 12:00:00 AM", "time", "")).time())
                .isNull();
        assertThat(read(PLAIN, row("day", "2016-01-15 00:00")).time()).isEqualTo(LocalTime.MIDNIGHT);
    }

    @ParameterizedTest
    @CsvSource({
        // number, young, in all
        "1,2,3,doubt",
        "1,0,1,",
        "1,,1,",
        "0,2,2,doubt",
        ",2,2,doubt",
        "2,some,2,doubt"
    })
    void youngInAColumnOfTheirOwnAreCounted(String others, String young, int all, Weight weight) {
        Map<Field, String> cells = row("individualCount", others == null ? "" : others);
        cells.put(Field.youngCount, young == null ? "" : young);
        ReadRow read = read(PLAIN, cells);
        assertThat(read.individualCount()).isEqualTo(all);
        assertThat(read.heaviest()).isEqualTo(weight);
        cells.remove(Field.individualCount);
        cells.put(Field.youngCount, "2");
        assertThat(read(PLAIN, cells).individualCount())
                .as("an animal and its young")
                .isEqualTo(3);
    }

    @Test
    void aCauseThatNobodyDecidedIsNotThatOfTheFile() {
        ReadRow row = read(PLAIN, row("cause", "tangled in a net"));
        assertThat(row.cause()).isNull();
        assertThat(row.heaviest()).isEqualTo(Weight.doubt);
        assertThat(read(deciding(Map.of()), row("cause", "HBC")).cause()).isEqualTo("collisionWithVehicle");
        assertThat(read(PLAIN, row("cause", "n/a")).cause()).isEqualTo("collisionWithVehicle");
    }

    private static final List<String> HEADINGS = List.of("Date", "Species", "Road", "km", "Notes");

    private static ReadRow readLine(String... cells) {
        ReadingSettings settings = ReadingSettings.of(
                        Map.of(Field.day, 0, Field.scientificName, 1, Field.road, 2, Field.chainage, 3))
                .settings();
        return reader(settings, HEADINGS).read(9, String.join(",", cells), List.of(cells));
    }

    @Test
    void rowsOfOtherLengths() {
        assertThat(readLine("2024-03-09", "fox", "Mill Road", "12.4").heaviest())
                .as("what is missing held nothing that is read")
                .isEqualTo(Weight.note);
        assertThat(readLine("2024-03-09", "fox", "Mill Road").heaviest()).isEqualTo(Weight.doubt);
        assertThat(readLine("2024-03-09", "fox", "Mill Road", "12.4", "x", "", " ")
                        .findings())
                .isEmpty();
        ReadRow longer = readLine("2024-03-09", "fox", "Mill Road", "12.4", "x", "y");
        assertThat(kinds(longer)).containsExactly(Kind.cellsTooMany);
        assertThat(longer.heaviest()).isEqualTo(Weight.refusal);
    }

    @Test
    void whatIsNoRecordIsRefusedAsWhatItIs() {
        for (String[] cells : new String[][] {
            {"Date", "Species", "Road", "km", "Notes"},
            {"Total", "", "", "431", ""},
            {"Summe", "", "", "", ""},
            {"Compiled by the shire", "", "", "", ""}
        }) {
            assertThat(kinds(readLine(cells))).as(cells[0]).containsExactly(Kind.noRecord);
        }
        assertThat(kinds(readLine("2024-03-09", "", "Total Road", "", ""))).doesNotContain(Kind.noRecord);
        assertThat(kinds(readLine("2024-03-09", "", "", "", "")))
                .as("a day alone is a record that lacks much")
                .containsExactly(Kind.missingPlace, Kind.missingAnimal);
    }

    @Test
    void charactersThatMeanNothingAreTold() {
        ReadRow nul = readLine("2024-03-09", "fo\0x", "Mill Road", "12.4", "");
        assertThat(nul.original()).doesNotContain("\0").contains("fo␀x");
        assertThat(kinds(nul)).containsExactly(Kind.unreadableCharacters);
        assertThat(readLine("2024-03-09", "caf\ufffd", "Mill Road", "12.4", "").heaviest())
                .isEqualTo(Weight.doubt);
    }
}
