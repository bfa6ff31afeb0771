package org.culvert.exchange.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.culvert.exchange.reading.Names.Likeness;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NamesTest {
    private final Names names = new Names();

    @BeforeEach
    void addAnimals() {
        names.add("turtle", "Chelodina longicollis");
        names.add("turtle", "Eastern long-necked turtle");
        names.add("turtle", "snake-necked turtle");
        names.add("brushtail", "Trichosurus vulpecula");
        names.add("brushtail", "Common brushtail possum");
        names.add("opossum", "Virginia opossum");
        names.add("opossum", "opossum");
        names.add("cat", "cat");
        names.add("grey", "Eastern grey kangaroo");
        names.add("grey", "Macropus giganteus");
        names.add("fox", "fox");
        names.add("flying-fox", "Grey-headed flying-fox");
        names.add("bat", "Gould's wattled bat");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "CHELODINA LONGICOLLIS | turtle | same",
                "Chelodina longicollis (Shaw, 1794) | turtle | same",
                "Macropus giganteus Shaw, 1790 | grey | same",
                "Turtle, Eastern Long Necked | turtle | same",
                "Eastern long-necked turtles | turtle | same",
                "juvenile eastern grey kangaroo | grey | same",
                "Goulds wattled bat | bat | same",
                "Gould’s Wattled Bats | bat | same",
                "Trichosurus vulpecula fuliginosus | brushtail | withMore",
                "red fox | fox | withMore",
                "Cheoldina longicollis | turtle | nearSpelling",
                "Macropus giganteous | grey | nearSpelling",
                "Trichosaurus vulpecula | brushtail | nearSpelling",
                "Сat | cat | looksAlike",
                "Chelоdina lоngicollis | turtle | looksAlike"
            })
    void namesAreFoundByWholeWords(String text, String key, Likeness likeness) {
        assertThat(names.find(text)).singleElement().satisfies(match -> {
            assertThat(match.key()).isEqualTo(key);
            assertThat(match.likeness()).isEqualTo(likeness);
        });
    }

    /** No name is found in a part of a word, and a short word with another letter is another word. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "caterpillar",
                "cattle",
                "possum",
                "scatter",
                "box",
                "bad",
                "unknown",
                "sp.",
                "",
                "dead animal",
                "foxglove"
            })
    void aPartOfAWordIsNoName(String text) {
        assertThat(names.find(text)).isEmpty();
    }

    @Test
    void whereTwoAnimalsHaveOneNameBothAreTold() {
        names.add("other", "snake necked turtle");
        assertThat(names.find("Snake-necked Turtle"))
                .extracting(Names.Match::key)
                .containsExactly("other", "turtle");
    }

    /** The optimal string alignment distance; its own textbook pairs, from memory. */
    @ParameterizedTest
    @CsvSource({"kitten,sitting,3", "ca,abc,3", "ab,ba,1", "saturday,sunday,3", "same,same,0", "abcd,acbd,1"})
    void editsAreCounted(String one, String other, int edits) {
        assertThat(Names.edits(one, other, 9)).isEqualTo(edits);
        assertThat(Names.edits(other, one, 9)).isEqualTo(edits);
    }

    /** Two animals in one cell are never taken for one of them. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "koala / possum | oneOfSeveral | 2",
                "koala / brushtail possum | oneOfSeveral | 2",
                "koala and quoll | oneOfSeveral | 1",
                "Koala; Phascolarctos cinereus (Goldfuss, 1817) | withMore | 1",
                "adult / juvenile koala | same | 1",
                "possums and gliders | same | 1",
                "quoll / bandicoot | | 0"
            })
    void severalAnimalsInOneText(String text, Names.Likeness likeness, int many) {
        var names = new Names();
        names.add("1", "Phascolarctos cinereus");
        names.add("1", "koala");
        names.add("2", "possums");
        names.add("3", "brushtail possum");
        names.add("4", "possums and gliders");
        List<Names.Match> found = names.find(text);
        assertThat(found).hasSize(many).allMatch(match -> match.likeness() == likeness);
    }
}
