package org.culvert.exchange.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.culvert.exchange.reading.Headings.Field;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeadingsTest {
    private static Map<Field, Integer> propose(String headings, String... rows) {
        List<String> names = List.of(headings.split(";"));
        List<ColumnWays> ways = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            var way = new ColumnWays(LocalDate.of(2026, 11, 29));
            for (String row : rows) {
                way.take(row.split(";", -1)[i]);
            }
            ways.add(way);
        }
        return Headings.propose(names, ways).stream()
                .collect(Collectors.toMap(Headings.Proposal::field, Headings.Proposal::column));
    }

    /** Terms of Darwin Core, as the quick reference guide of its maintenance group names them (from memory). */
    @ParameterizedTest
    @CsvSource({
        "eventDate,day",
        "decimalLatitude,decimalLatitude",
        "decimalLongitude,decimalLongitude",
        "coordinateUncertaintyInMeters,coordinateUncertaintyInMeters",
        "verbatimCoordinates,coordinates",
        "scientificName,scientificName",
        "vernacularName,vernacularName",
        "individualCount,individualCount",
        "lifeStage,lifeStage",
        "sex,sex",
        "vitality,vitality",
        "occurrenceID,identifier",
        "occurrenceRemarks,remarks",
        "locality,locality"
    })
    void termsOfDarwinCoreMeanWhatTheyMean(String term, Field field) {
        assertThat(Headings.meanings(term)).contains(field);
    }

    @ParameterizedTest
    @CsvSource({
        "Date of incident,day",
        "DATE_FOUND,day",
        "Lat.,decimalLatitude",
        "Länge,decimalLongitude",
        "Straße,road",
        "Road name,road",
        "Chainage (km),chainage",
        "No. of animals,individualCount",
        "Species / Tier,scientificName",
        "Dead/Alive,vitality"
    })
    void headingsAreReadByTheirWords(String heading, Field field) {
        assertThat(Headings.meanings(heading)).contains(field);
    }

    @Test
    void aHeadingOnItsOwnIsNotBelieved() {
        assertThat(propose("Date;Lat;Long;Species", "3/4/2024;-30.1;150.2;fox", "5/4/2024;-30.2;150.3;cat"))
                .containsExactlyInAnyOrderEntriesOf(Map.of(
                        Field.day, 0, Field.decimalLatitude, 1, Field.decimalLongitude, 2, Field.scientificName, 3));
        assertThat(propose("Date;Lat", "fox;near the mill", "cat;by the bridge"))
                .isEmpty();
        assertThat(propose("Lat;Lat 2", "-30.1;-30.1", "-30.2;-30.2")).containsEntry(Field.decimalLatitude, 0);
        assertThat(propose("Notes", " ", "n/a")).as("nothing in it").isEmpty();
    }

    @Test
    void aColumnIsProposedOnceAndAFieldOnce() {
        var proposed = propose("Road;Route;Km;Location;Comments", "A;B;1;c;d", "A;B;2;c;d");
        assertThat(proposed).containsEntry(Field.road, 0).containsEntry(Field.chainage, 2);
        assertThat(proposed.values()).doesNotHaveDuplicates();
    }
}
