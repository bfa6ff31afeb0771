package org.culvert.exchange.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.culvert.exchange.reading.Finding.Kind;
import org.culvert.exchange.reading.Finding.Weight;
import org.culvert.exchange.reading.Headings.Field;
import org.culvert.exchange.reading.TableInspection.Question;
import org.junit.jupiter.api.Test;

/**
 * Whole files in the forms in which others keep such records, read as they are proposed. Forms alone are of others (Darwin Core's
 * terms; what spreadsheets and databases write, from memory): every place, road and record is invented.
 */
class FilesOfOthersTest {
    private static final LocalDate LATEST = LocalDate.of(2026, 11, 29);
    private static final ZoneId ZONE = ZoneId.of("Australia/Brisbane");
    private static final Axes.Box REGION = new Axes.Box(-31, 150, -29, 153);

    /** A file that was looked through, with what is proposed for it. */
    private record File(String text, TableStart start, TableInspection table) {
        static File of(String text) {
            TableStart start = TableStart.of(text, true, LATEST);
            var table = new TableInspection(start.headings(), LATEST, REGION);
            var file = new File(text, start, table);
            file.each(rows -> table.take(rows.cells(), rows.isQuoteBroken()));
            return file;
        }

        private void each(java.util.function.Consumer<TextRows> taker) {
            var rows = new TextRows(
                    new TableStart.Text(text),
                    start.separator().sign(),
                    start.headings().size());
            while (rows.next()) {
                if (rows.number() > start.headingRow() && !rows.isEmpty()) {
                    taker.accept(rows);
                }
            }
        }

        Map<Field, String> columns() {
            Map<Field, String> columns = new java.util.EnumMap<>(Field.class);
            table.proposedColumns()
                    .forEach((field, column) ->
                            columns.put(field, table.headings().get(column)));
            return columns;
        }

        List<String> asked() {
            return table.questions(table.proposedColumns()).stream()
                    .filter(Question::needed)
                    .map(Question::key)
                    .toList();
        }

        List<ReadRow> read(UnaryOperator<ReadingSettings.Parts> decided) {
            Map<Field, Integer> columns = table.proposedColumns();
            ReadingSettings.Parts parts = ReadingSettings.of(columns).cause("collisionWithVehicle");
            Integer day = columns.get(Field.day);
            if (day != null) {
                parts.dayOrder(table.toldOrder(day));
            }
            Numbers.Mark mark = table.toldMark(columns);
            parts.decimalMark(mark == null ? Numbers.Mark.point : mark);
            for (Question question : table.questions(columns)) {
                boolean yes = "true".equals(question.proposed());
                switch (question.key()) {
                    case "serialDays" -> parts.serialDays(yes);
                    case "midnightIsNoHour" -> parts.midnightIsNoHour(yes);
                    default -> {}
                }
            }
            Integer chainage = columns.get(Field.chainage);
            ReadingSettings.ChainageUnit unit =
                    chainage == null ? null : Headings.unitOf(table.headings().get(chainage));
            if (unit != null) {
                parts.chainageUnit(unit);
            }
            var reader = new RowReader(decided.apply(parts).settings(), table.headings(), LATEST, ZONE);
            List<ReadRow> read = new ArrayList<>();
            each(rows -> read.add(
                    reader.read(rows.number(), rows.original(), List.copyOf(rows.cells()), rows.isQuoteBroken())));
            return read;
        }
    }

    private static List<Kind> kinds(ReadRow row) {
        return row.findings().stream().map(Finding::kind).toList();
    }

    /** Columns and their order as in a file of occurrences of Darwin Core, tab-separated and without quotes. */
    @Test
    void occurrencesOfDarwinCore() {
        String[] terms =
                ("gbifID datasetKey occurrenceID kingdom phylum class order family genus species taxonRank scientificName"
                                + " verbatimScientificName countryCode locality stateProvince occurrenceStatus individualCount"
                                + " decimalLatitude decimalLongitude geodeticDatum coordinateUncertaintyInMeters"
                                + " coordinatePrecision elevation eventDate eventTime day month year taxonKey basisOfRecord"
                                + " institutionCode catalogNumber recordNumber identifiedBy dateIdentified license rightsHolder"
                                + " recordedBy typeStatus establishmentMeans lastInterpreted mediaType issue vernacularName sex"
                                + " lifeStage occurrenceRemarks modified")
                        .split(" ");
        List<Map<String, String>> records = List.of(
                Map.of("eventDate", "2016-01-02", "occurrenceStatus", "PRESENT", "geodeticDatum", "WGS84"),
                Map.of("eventDate", "2016-01-02/2016-01-05", "occurrenceStatus", "PRESENT", "individualCount", "2"),
                Map.of("eventDate", "2016-05", "year", "2016", "month", "5"),
                Map.of("eventDate", "2016", "year", "2016"),
                Map.of("year", "2016", "month", "5", "day", "7"),
                Map.of("eventDate", "2016-01-02T20:15:00Z", "occurrenceStatus", "ABSENT", "individualCount", "0"),
                Map.of(
                        "eventDate",
                        "2016-01-02T20:15:00Z",
                        "geodeticDatum",
                        "NAD27",
                        "occurrenceRemarks",
                        "a 2\" nail"),
                Map.of(
                        "eventDate",
                        "2016-01-02T20:15:00Z",
                        "geodeticDatum",
                        "EPSG:4326",
                        "coordinatePrecision",
                        "0.001"));
        var text = new StringBuilder(String.join("\t", terms)).append('\n');
        int i = 0;
        for (Map<String, String> record : records) {
            i++;
            List<String> cells = new ArrayList<>();
            for (String term : terms) {
                String usual = switch (term) {
                    case "gbifID" -> "90" + i;
                    case "occurrenceID" -> "urn:catalog:none:" + i;
                    case "scientificName" -> "Wallabia bicolor (Desmarest, 1804)";
                    case "species" -> "Wallabia bicolor";
                    case "genus" -> "Wallabia";
                    case "kingdom" -> "Animalia";
                    case "vernacularName" -> "swamp wallaby";
                    case "decimalLatitude" -> "-30.1" + i;
                    case "decimalLongitude" -> "151.2" + i;
                    case "countryCode" -> "ZZ";
                    case "lastInterpreted", "modified" -> "2025-05-05T01:02:03.456Z";
                    default -> "";
                };
                cells.add(record.getOrDefault(term, usual));
            }
            text.append(String.join("\t", cells)).append('\n');
        }
        File file = File.of(text.toString());
        assertThat(file.start().separator()).isEqualTo(Separator.tab);
        assertThat(file.columns())
                .containsEntry(Field.day, "eventDate")
                .containsEntry(Field.year, "year")
                .containsEntry(Field.month, "month")
                .containsEntry(Field.dayOfMonth, "day")
                .containsEntry(Field.scientificName, "scientificName")
                .containsEntry(Field.vernacularName, "vernacularName")
                .containsEntry(Field.decimalLatitude, "decimalLatitude")
                .containsEntry(Field.occurrenceStatus, "occurrenceStatus")
                .containsEntry(Field.geodeticDatum, "geodeticDatum")
                .containsEntry(Field.identifier, "occurrenceID")
                .doesNotContainKey(Field.coordinateUncertaintyInMeters)
                .doesNotContainKey(Field.vitality);
        assertThat(file.asked()).isEmpty();
        List<ReadRow> rows = file.read(parts -> parts);
        assertThat(rows).hasSize(8);
        assertThat(rows.get(0).findings()).isEmpty();
        assertThat(rows.get(0).day()).isEqualTo(LocalDate.of(2016, 1, 2));
        assertThat(rows.get(1).lastDay()).isEqualTo(LocalDate.of(2016, 1, 5));
        assertThat(rows.get(1).individualCount()).isEqualTo(2);
        assertThat(rows.get(2).lastDay()).isEqualTo(LocalDate.of(2016, 5, 31));
        assertThat(rows.get(3).year()).isEqualTo(2016);
        assertThat(rows.get(4).day()).isEqualTo(LocalDate.of(2016, 5, 7));
        assertThat(kinds(rows.get(5))).as("none was there").contains(Kind.noRecord);
        assertThat(rows.get(5).heaviest()).isEqualTo(Weight.refusal);
        assertThat(kinds(rows.get(6))).containsExactly(Kind.otherDatum);
        assertThat(rows.get(6).remarks()).isEqualTo("a 2\" nail");
        assertThat(rows.get(7).findings()).isEmpty();
        assertThat(rows.get(7).uncertaintyMetres())
                .as("a precision in degrees is no uncertainty in metres")
                .isNull();
        assertThat(rows.get(7).time()).isEqualTo(LocalTime.of(6, 15));
    }

    /** As a database of a roads authority writes it: days at midnight of UTC, an hour of figures, places on a grid. */
    @Test
    void aTableOfCrashes() {
        var text = new StringBuilder("OBJECTID,CRASH_DATE,CRASH_TIME,ROUTE,MILEPOST,DIRECTION,ANIMAL_TYPE,X,Y\n");
        String[] hours = {"1430", "930", "2.30pm", "0005", "24:70"};
        for (int i = 0; i < 10; i++) {
            text.append(100 + i)
                    .append(",2016/01/0" + (1 + i % 9) + " 00:00:00+00,")
                    .append(hours[i % 5])
                    .append(",A17,12.")
                    .append(i)
                    .append(",NB,Deer,")
                    .append(334_300 + i)
                    .append(".12,")
                    .append(6_650_900 + i)
                    .append(".55\n");
        }
        File file = File.of(text.toString());
        assertThat(file.columns())
                .containsEntry(Field.day, "CRASH_DATE")
                .containsEntry(Field.time, "CRASH_TIME")
                .containsEntry(Field.road, "ROUTE")
                .containsEntry(Field.chainage, "MILEPOST")
                .containsEntry(Field.easting, "X")
                .containsEntry(Field.northing, "Y");
        assertThat(file.asked()).as("of which grid is never guessed").containsExactly("epsg");
        assertThat(file.read(parts -> parts))
                .allSatisfy(row -> assertThat(row.spot()).isNull());
        List<ReadRow> rows = file.read(parts -> parts.epsg(28356));
        assertThat(rows.get(0).spot()).isEqualTo(Spot.grid(28356, "334300.12", "6650900.55"));
        assertThat(rows.get(0).day()).isEqualTo(LocalDate.of(2016, 1, 1));
        assertThat(rows.get(0).chainageMetres()).as("12 miles").isEqualTo(12.0 * 1609.344);
        assertThat(rows.stream().limit(4).map(ReadRow::time))
                .containsExactly(LocalTime.of(14, 30), LocalTime.of(9, 30), LocalTime.of(14, 30), LocalTime.of(0, 5));
        assertThat(kinds(rows.get(4))).as("told, and not dropped").containsExactly(Kind.unreadableTime);
    }

    /** As a sheet of a council, saved as text: a title, two lines of headings, merged cells, marks, sums, numbers of rows. */
    @Test
    void aSheetOfACouncil() {
        File file = File.of("""
                Animals on the roads of the shire 2015-2016,,,,,,,
                ,,,,,,,
                No.,Date,Road,,Animal,,,
                ,,,km,,Number,Age,
                1,2/01/2016,Mill Road,3.2,koala,1,adult,
                2,,,3.4,wallaby,2 adults + 1 joey,,
                3,,Creek Way,0.5,koala / possum,1,,
                4,15/01/2016,\"\"\"\",0.7,ditto,"1 adult, 3 eggs",,
                5,,Mill Road,3.3,n/a,1,,
                6,42371,Mill Road,3.3,koala,1,,
                ,,,,Total,7,,
                """);
        assertThat(file.start().headingRow()).as("the lower of two lines").isEqualTo(4);
        assertThat(file.start().headings()).startsWith("No.", "Date", "Road", "km", "Animal", "Number", "Age");
        assertThat(file.start().titles()).anyMatch(title -> title.contains("2015-2016"));
        assertThat(file.columns()).containsEntry(Field.scientificName, "Animal");
        File better = File.of("""
                No.,Date,Road,,Animal,,
                ,,,km,Species,Number,Age
                1,2/01/2016,Mill Road,3.2,koala,1,adult
                2,,,3.4,wallaby,2 adults + 1 joey,
                3,,Creek Way,0.5,koala / possum,1,
                4,15/01/2016,\"\"\"\",0.7,ditto,"1 adult, 3 eggs",
                5,,Mill Road,3.3,n/a,1,
                6,42371,Mill Road,3.3,koala,1,
                ,,,,Total,7,
                """);
        assertThat(better.start().headings()).containsExactly("No.", "Date", "Road", "km", "Species", "Number", "Age");
        assertThat(better.columns())
                .containsEntry(Field.individualCount, "Number")
                .containsEntry(Field.day, "Date")
                .containsEntry(Field.chainage, "km");
        assertThat(better.table().questions(better.table().proposedColumns()))
                .extracting(Question::key)
                .contains("asAbove", "serialDays");
        List<ReadRow> asTheyStand = better.read(parts -> parts);
        assertThat(kinds(asTheyStand.get(1))).as("not filled by itself").contains(Kind.missingDay);
        List<ReadRow> filled = better.read(parts -> parts.asAbove(java.util.Set.of(Field.day, Field.road)));
        ReadRow second = filled.get(1);
        assertThat(second.day()).isEqualTo(LocalDate.of(2016, 1, 2));
        assertThat(second.road()).isEqualTo("Mill Road");
        assertThat(second.individualCount()).isEqualTo(3);
        assertThat(kinds(second)).contains(Kind.asAbove, Kind.unreadableCount);
        ReadRow fourth = filled.get(3);
        assertThat(fourth.road()).as("a mark stands for the cell above").isEqualTo("Creek Way");
        assertThat(fourth.animalWords()).isEqualTo("koala / possum");
        assertThat(fourth.individualCount()).as("eggs are no animals").isEqualTo(1);
        assertThat(kinds(filled.get(4))).as("n/a is no empty cell").contains(Kind.missingAnimal);
        assertThat(filled.get(5).day())
                .as("LibreOffice shows 42371 as 2016-01-02")
                .isEqualTo(LocalDate.of(2016, 1, 2));
        assertThat(kinds(filled.get(6))).containsExactly(Kind.noRecord);
    }

    /** The numbers of rows under "No." are those of no animals. */
    @Test
    void aColumnThatNumbersTheRowsIsNoNumberOfAnimals() {
        assertThat(File.of(
                                "No,Date,Road\n1,2016-01-02,x\n2,2016-01-02,x\n3,2016-01-02,x\n4,2016-01-02,x\n5,2016-01-03,x\n")
                        .columns())
                .doesNotContainKey(Field.individualCount);
        assertThat(File.of(
                                "No,Date,Road\n1,2016-01-02,x\n1,2016-01-02,x\n3,2016-01-02,x\n1,2016-01-02,x\n2,2016-01-03,x\n")
                        .columns())
                .containsEntry(Field.individualCount, "No");
    }

    /** Decimal commas, semicolons, and signs of degrees of Windows-1252. */
    @Test
    void aSheetWithCommasAndSignsOfDegrees() throws java.io.UnsupportedEncodingException {
        byte[] octets = ("Funddatum;Uhrzeit;Breite;Länge;Straße;km;Tierart\n"
                        + "02.01.2016;14.30;30°06'30\" S;151°12'00\" E;Mühlstr.;3,2;Fuchs\n"
                        + "23.01.2016;7:05;30°07'30\" S;151°13'00\" E;Mühlstr.;4,75;Fuchs\n")
                .getBytes("windows-1252");
        File file = File.of(new String(octets, "windows-1252"));
        assertThat(file.start().separator()).isEqualTo(Separator.semicolon);
        assertThat(file.asked()).isEmpty();
        List<ReadRow> rows = file.read(parts -> parts);
        assertThat(rows.get(0).findings()).isEmpty();
        assertThat(rows.get(0).spot()).isEqualTo(Spot.text("30°06'30\" S, 151°12'00\" E"));
        assertThat(rows.get(0).chainageMetres()).isEqualTo(3200);
        assertThat(rows.get(1).chainageMetres()).isEqualTo(4750);
        assertThat(rows.get(1).time()).isEqualTo(LocalTime.of(7, 5));
    }

    /** As portals of open data write places: both coordinates in one cell, under a heading of words. */
    @Test
    void placesInOneCell() {
        File file = File.of("""
                Incident Date,Incident Time,Location,Species
                01/02/2016 12:00:00 AM,6:45:00 PM,"(-30.1234, 151.2345)",wallaby
                01/15/2016 12:00:00 AM,,"(-30.1234, 151.3345)",3 wallabies
                """);
        assertThat(file.columns()).containsEntry(Field.coordinates, "Location").doesNotContainKey(Field.locality);
        List<ReadRow> rows = file.read(parts -> parts);
        assertThat(rows.get(0).spot()).isEqualTo(Spot.decimalDegrees("-30.1234", "151.2345"));
        assertThat(rows.get(0).time()).isEqualTo(LocalTime.of(18, 45));
        assertThat(rows.get(1).time()).as("a day alone has the hour nought").isNull();
        assertThat(rows.get(1).individualCount()).isEqualTo(3);
        assertThat(File.of("WKT,Date\n\"POINT (151.2 -30.1)\",2016-01-02\n").columns())
                .containsEntry(Field.coordinates, "WKT");
        assertThat(File.of("Location,Date\nMill Road,2016-01-02\n").columns())
                .containsEntry(Field.locality, "Location");
    }
}
