package org.culvert.exchange.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import org.culvert.exchange.reading.Finding;
import org.culvert.exchange.reading.ReadRow;
import org.culvert.taxon.TaxonService.GroupView;
import org.culvert.taxon.TaxonService.TaxonView;
import org.junit.jupiter.api.Test;

class AnimalWordsTest {
    private static final UUID KOALAS = new UUID(1, 1);
    private static final UUID POSSUMS = new UUID(1, 2);
    private static final UUID KOALA = new UUID(2, 1);
    private static final UUID BRUSHTAIL = new UUID(2, 2);
    private static final UUID RINGTAIL = new UUID(2, 3);

    private final AnimalWords words = new AnimalWords(
            List.of(
                    taxon(KOALA, "Phascolarctos cinereus", "koala", KOALAS),
                    taxon(BRUSHTAIL, "Trichosurus vulpecula", "common possum", POSSUMS),
                    taxon(RINGTAIL, "Pseudocheirus peregrinus", "Possum, common", POSSUMS)),
            List.of(group(KOALAS, "koalas", "koalas"), group(POSSUMS, "possums", "possums and gliders")));

    private static TaxonView taxon(UUID id, String scientificName, String vernacularName, UUID group) {
        return new TaxonView(id, scientificName, vernacularName, "species", "g", group, null, null, null);
    }

    private static GroupView group(UUID id, String key, String name) {
        return new GroupView(id, key, name, null, false, false, false, null);
    }

    private AnimalWords.Animal find(String told, String decided) {
        return words.find(new ReadRow(
                2, told, null, null, null, null, null, null, null, null, null, null, null, null, told, decided, 1, null,
                null, null, null, null, List.of()));
    }

    @Test
    void aTaxonIsMeantRatherThanItsGroupOfTheSameName() {
        assertThat(find("Koala", null)).isEqualTo(new AnimalWords.Animal(KOALA, KOALAS, null));
        assertThat(find("koalas", null).taxonId()).isEqualTo(KOALA);
        assertThat(find("Phascolarctos cinereus (Goldfuss, 1817)", null).taxonId())
                .isEqualTo(KOALA);
    }

    @Test
    void twoTaxaOfOneNameAreLeftToSomebodyToDecide() {
        AnimalWords.Animal animal = find("common possum", null);
        assertThat(animal.taxonId()).isNull();
        assertThat(animal.finding().kind()).isEqualTo(Finding.Kind.unknownAnimal);
        assertThat(find("possum", null)).isEqualTo(new AnimalWords.Animal(null, POSSUMS, null));
    }

    @Test
    void aNearSpellingIsProposedAndNotTaken() {
        AnimalWords.Animal animal = find("kaola", null);
        assertThat(animal.taxonId()).isNull();
        assertThat(find("opossum", null).groupId()).as("no part of a word").isNull();
        assertThat(words.listUnknown(10)).extracting(AnimalWords.Unknown::words).contains("opossum");
    }

    @Test
    void whatSomebodyDecidedGoesBefore() {
        assertThat(find("thing", "taxon:" + RINGTAIL).taxonId()).isEqualTo(RINGTAIL);
        assertThat(find("koala", "undecided").finding().kind()).isEqualTo(Finding.Kind.undecidedAnimal);
        assertThat(find("koala", "taxon:" + new UUID(9, 9)).finding().kind()).isEqualTo(Finding.Kind.undecidedAnimal);
    }
}
