package org.culvert.exchange.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.culvert.exchange.reading.Headings.Field;
import org.culvert.exchange.reading.TableInspection.Question;
import org.junit.jupiter.api.Test;

/** What is told of a table before anybody has decided anything. All tables here are invented. */
class TableInspectionTest {
    private static final LocalDate LATEST = LocalDate.of(2026, 11, 29);
    private static final Axes.Box REGION = new Axes.Box(-31, 150, -29, 153);

    private static TableStart start(String text) {
        return TableStart.of(text, true, LATEST);
    }

    private static TableInspection inspect(String text) {
        TableStart start = start(text);
        var inspection = new TableInspection(start.headings(), LATEST, REGION);
        var rows = new TextRows(
                new TableStart.Text(text),
                start.separator().sign(),
                start.headings().size());
        while (rows.next()) {
            if (rows.number() > start.headingRow()) {
                inspection.take(rows.cells(), rows.isQuoteBroken());
            }
        }
        return inspection;
    }

    private static List<Question> questions(String text) {
        TableInspection inspection = inspect(text);
        return inspection.questions(inspection.proposedColumns());
    }

    private static List<String> keys(String text) {
        return questions(text).stream().map(Question::key).toList();
    }

    @Test
    void headingsStandBelowTitlesAndEmptyLines() {
        TableStart start = start(
                "Roads of the shire,,\n,,\nmade by hand,,\nDate,Road,Species\n2020-01-01,Mill Road,fox\n2020-01-02,Mill Road,fox\n");
        assertThat(start.headingRow()).isEqualTo(4);
        assertThat(start.headings()).containsExactly("Date", "Road", "Species");
        assertThat(start.titles()).hasSize(2);
    }

    @Test
    void columnsWithoutHeadingAndHeadingsTwiceHaveNamesOfTheirOwn() {
        assertThat(start("Date,,Road,Road,,\n2020-01-01,x,Mill,Creek,y\n2020-01-02,x,Mill,Creek,y\n")
                        .headings())
                .containsExactly("Date", "column 2", "Road", "Road (2)", "column 5");
        TableStart none = start("2020-01-01,Mill Road,12.4\n2020-01-02,Mill Road,13.1\n");
        assertThat(none.headingRow()).isZero();
        assertThat(none.headings()).containsExactly("column 1", "column 2", "column 3");
    }

    @Test
    void headingsInWordsOfNoListAreToldFromTheNumbersBelow() {
        TableStart start = start("quando,kva,ke\n2020-01-01,12,a\n2020-01-02,13,b\n");
        assertThat(start.headingRow()).isEqualTo(1);
        assertThat(start.headings()).containsExactly("quando", "kva", "ke");
    }

    @Test
    void aLineThatNamesTheSeparatorIsBelieved() {
        assertThat(start("sep=;\nDate;km\n2020-01-01;12,5\n2020-01-02;13,5\n").separator())
                .isEqualTo(Separator.semicolon);
    }

    @Test
    void separatorsThatFitAsWellAreRivals() {
        TableStart start = start("Date;Road,km\n2020-01-01;Mill,1\n2020-01-02;Mill,2\n");
        assertThat(start.rivals()).hasSize(1);
    }

    @Test
    void aColumnOfDaysThatTellsItsOrderAsksNothing() {
        assertThat(keys("Date,Road\n25/4/2020,x\n3/4/2020,x\n")).doesNotContain("dayOrder");
        List<Question> open = questions("Date,Road\n5/4/2020,x\n3/4/2020,x\n");
        assertThat(open).singleElement().satisfies(question -> {
            assertThat(question.key()).isEqualTo("dayOrder");
            assertThat(question.needed()).isTrue();
            assertThat(question.choices()).hasSize(2);
            assertThat(question.evidence()).contains("5/4/2020");
        });
    }

    @Test
    void aFewDaysInAnotherOrderAreToldAndNeedNoAnswer() {
        List<Question> asked = questions("Date,Road\n25/4/2020,x\n26/4/2020,x\n27/4/2020,x\n4/28/2020,x\n");
        assertThat(asked).singleElement().satisfies(question -> {
            assertThat(question.needed()).isFalse();
            assertThat(question.proposed()).isEqualTo("dayMonthYear");
            assertThat(question.evidence()).contains("1 are none in that order", "4/28/2020");
        });
    }

    @Test
    void daysOfSpreadsheetsAndMidnightsAreAsked() {
        assertThat(questions("Date,Road\n45123,x\n45124.5,x\n")).anySatisfy(question -> {
            assertThat(question.key()).isEqualTo("serialDays");
            assertThat(question.proposed()).isEqualTo("true");
        });
        assertThat(keys("Date,Road\n" + "2020-01-01 00:00,x\n".repeat(9) + "2020-01-01 18:30,x\n"))
                .contains("midnightIsNoHour");
        assertThat(keys("Date,Road\n" + "2020-01-01 18:00,x\n".repeat(9))).doesNotContain("midnightIsNoHour");
    }

    @Test
    void theDecimalMarkIsAskedOnlyWhereNoCellTells() {
        assertThat(keys("Date;km;Road\n2020-01-01;1,234;x\n2020-01-02;5,678;x\n"))
                .contains("decimalMark");
        assertThat(keys("Date;km;Road\n2020-01-01;1,234;x\n2020-01-02;5,6;x\n")).doesNotContain("decimalMark");
        assertThat(keys("Date;Lat;Long\n2020-01-01;-30,123;150,123\n"))
                .as("degrees have no thousands")
                .doesNotContain("decimalMark");
        TableInspection commas = inspect("Date;Lat;Long\n2020-01-01;-30,123;150,123\n2020-01-01;-30,124;150,125\n");
        assertThat(commas.toldMark(commas.proposedColumns())).isEqualTo(Numbers.Mark.comma);
        TableInspection none = inspect("Date;km;Road\n2020-01-01;12;x\n");
        assertThat(none.toldMark(none.proposedColumns())).isEqualTo(Numbers.Mark.point);
    }

    @Test
    void swappedAxesAreAskedWithTheEvidenceOfTheWholeFile() {
        String rows = "2020-01-01,150.5,-30.5\n".repeat(50);
        assertThat(questions("Date,Lat,Long\n" + rows)).singleElement().satisfies(question -> {
            assertThat(question.key()).isEqualTo("axesSwapped");
            assertThat(question.proposed()).isEqualTo("true");
            assertThat(question.needed()).isTrue();
            assertThat(question.evidence()).contains("0 %", "100 %");
        });
        assertThat(questions("Date,Long,Lat\n" + rows)).isEmpty();
    }

    @Test
    void signsThatAWholeFileLacksAreAsked() {
        assertThat(questions("Date,Lat,Long\n" + "2020-01-01,30.5,150.5\n".repeat(50)))
                .singleElement()
                .satisfies(question -> {
                    assertThat(question.key()).isEqualTo("latitudesWithoutSign");
                    assertThat(question.proposed()).isEqualTo("true");
                    assertThat(question.needed()).isTrue();
                    assertThat(question.evidence()).contains("100 %", "30.5");
                });
        assertThat(keys("Date,Lat,Long\n" + "2020-01-01,150.5,30.5\n".repeat(50)))
                .as("swapped besides")
                .containsExactly("axesSwapped", "latitudesWithoutSign");
        assertThat(keys("Date,Lat,Long\n" + "2020-01-01,30.5,150.5\n".repeat(5)
                        + "2020-01-01,-30.5,150.5\n".repeat(45)))
                .as("a few rows are told by themselves")
                .isEmpty();
        assertThat(keys("Date,Lat,Long\n" + "2020-01-01,45.5,150.5\n".repeat(50)))
                .as("of another region")
                .containsExactly("axesSwapped");
        var west = new TableInspection(List.of("Lat", "Long"), LATEST, new Axes.Box(29, -99, 31, -97));
        for (int i = 0; i < 20; i++) {
            west.take(List.of("30.5", "98.5"), false);
        }
        assertThat(west.questions(Map.of(Field.decimalLatitude, 0, Field.decimalLongitude, 1)))
                .extracting(Question::key)
                .containsExactly("longitudesWithoutSign");
        var either = new TableInspection(List.of("Lat", "Long"), LATEST, new Axes.Box(-31, 29, -29, 31));
        for (int i = 0; i < 20; i++) {
            either.take(List.of("30.5", "30.2"), false);
        }
        assertThat(either.questions(Map.of(Field.decimalLatitude, 0, Field.decimalLongitude, 1)))
                .as("which is which cannot be told either")
                .extracting(Question::key)
                .containsExactly("axesSwapped", "latitudesWithoutSign");
    }

    @Test
    void bothKindsOfNamesHaveAColumn() {
        assertThat(inspect(
                                "eventDate,species,scientificName,vernacularName\n2020-01-01,Wallabia bicolor,Wallabia bicolor (Desmarest),swamp wallaby\n")
                        .proposedColumns())
                .containsEntry(Field.vernacularName, 3)
                .containsKey(Field.scientificName);
        assertThat(inspect("Date,Common name\n2020-01-01,wombat\n").proposedColumns())
                .containsEntry(Field.vernacularName, 1)
                .doesNotContainKey(Field.scientificName);
    }

    @Test
    void gridsAndUnitsAreAsked() {
        assertThat(keys("Date,Easting,Northing\n2020-01-01,334368,6250948\n")).containsExactly("epsg");
        assertThat(keys("Date,Road,Chainage\n2020-01-01,x,12\n")).containsExactly("chainageUnit");
        assertThat(keys("Date,Road,Chainage (m)\n2020-01-01,x,12\n")).isEmpty();
        assertThat(keys("Date,Road,Chainage\n2020-01-01,x,12.4 km\n"))
                .as("each cell names its own")
                .isEmpty();
    }

    @Test
    void rowsAreCountedByWhatTheyAre() {
        TableInspection inspection =
                inspect("Date,Road,km\n2020-01-01,x,1\n,,\n2020-01-02,x\n\n2020-01-03,x,1,more\n2020-01-04,\"x,2\n");
        assertThat(inspection.rows()).isEqualTo(4);
        assertThat(inspection.emptyRows()).isEqualTo(2);
        assertThat(inspection.shorterRows()).isEqualTo(1);
        assertThat(inspection.longerRows()).isEqualTo(1);
        assertThat(inspection.brokenQuotes()).isEqualTo(1);
    }

    @Test
    void aColumnOfAnyLengthNeedsTheMemoryOfItsWordsAlone() {
        var way = new ColumnWays(LATEST);
        for (int i = 0; i < 50_000; i++) {
            way.take("remark " + i);
        }
        assertThat(way.told()).isEqualTo(50_000);
        assertThat(way.words()).as("no list of words to decide").isEmpty();
        var few = new ColumnWays(LATEST);
        List.of("fox", "fox ", "cat").forEach(few::take);
        assertThat(few.words()).containsExactlyInAnyOrderEntriesOf(Map.of("fox", 2, "cat", 1));
    }

    @Test
    void coordinatesAreProposedByWhatTheyCanBe() {
        assertThat(inspect("Date,X,Y\n2020-01-01,334368,6250948\n2020-01-02,334369,6250949\n")
                        .proposedColumns())
                .containsEntry(Field.easting, 1)
                .containsEntry(Field.northing, 2);
        assertThat(inspect("Date,X,Y\n2020-01-01,150.5,-30.5\n2020-01-02,150.6,-30.6\n")
                        .proposedColumns())
                .containsEntry(Field.decimalLongitude, 1)
                .containsEntry(Field.decimalLatitude, 2);
        assertThat(inspect("Date;Lat;Long\n2020-01-01;27°06'S;152°54'E\n2020-01-01;S27 06;E152 54\n")
                        .proposedColumns())
                .containsEntry(Field.decimalLatitude, 1)
                .containsEntry(Field.decimalLongitude, 2);
    }

    @Test
    void proposalsNameColumnsOfDayMonthAndYear() {
        TableInspection inspection = inspect("Year,Month,Day,Road\n2020,Jan,4,x\n2020,Feb,5,x\n");
        assertThat(inspection.proposedColumns())
                .containsEntry(Field.year, 0)
                .containsEntry(Field.month, 1)
                .containsEntry(Field.dayOfMonth, 2);
    }
}
