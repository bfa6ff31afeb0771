package org.culvert.exchange.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.exchange.reading.Finding;
import org.culvert.exchange.reading.Headings;
import org.culvert.exchange.reading.ReadRow;
import org.culvert.exchange.reading.ReadingSettings;
import org.culvert.exchange.reading.RowReader;
import org.culvert.taxon.SynonymService.SynonymKind;
import org.culvert.taxon.SynonymService.TaxonSynonymView;
import org.culvert.taxon.TaxonService.GroupView;
import org.culvert.taxon.TaxonService.TaxonView;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AnimalWordsTest {
    private static final UUID KOALAS = new UUID(1, 1);
    private static final UUID POSSUMS = new UUID(1, 2);
    private static final UUID UNKNOWNS = new UUID(1, 3);
    private static final UUID KOALA = new UUID(2, 1);
    private static final UUID BRUSHTAIL = new UUID(2, 2);
    private static final UUID RINGTAIL = new UUID(2, 3);

    private final AnimalWords words = new AnimalWords(
            List.of(
                    taxon(KOALA, "Phascolarctos cinereus", "koala", KOALAS),
                    taxon(BRUSHTAIL, "Trichosurus vulpecula", "common possum", POSSUMS),
                    taxon(RINGTAIL, "Pseudocheirus peregrinus", "Possum, common", POSSUMS),
                    taxon(RINGTAIL, "Pseudocheirus peregrinus", "ringtail", POSSUMS),
                    new TaxonView(
                            new UUID(2, 4),
                            "Animalia",
                            "animal",
                            "kingdom",
                            "not-known-yet",
                            UNKNOWNS,
                            null,
                            null,
                            null)),
            List.of(group(KOALAS, "koalas", "koalas"), group(POSSUMS, "possums", "possums and gliders")),
            List.of(
                    synonym(RINGTAIL, SynonymKind.scientificName, "Didelphis peregrina"),
                    synonym(RINGTAIL, SynonymKind.vernacularName, "Beutelratte")));

    private static TaxonView taxon(UUID id, String scientificName, String vernacularName, UUID group) {
        return new TaxonView(id, scientificName, vernacularName, "species", "g", group, null, null, null);
    }

    private static TaxonSynonymView synonym(UUID taxon, SynonymKind kind, String name) {
        return new TaxonSynonymView(new UUID(3, 1), taxon, kind, name, null, "made for a test", null, null, null);
    }

    private static GroupView group(UUID id, String key, String name) {
        return new GroupView(id, key, name, null, false, false, false, null);
    }

    private static ReadRow row(String scientific, String common, Map<String, String> decided) {
        ReadingSettings settings = ReadingSettings.of(Map.of(
                        Headings.Field.scientificName, 0, Headings.Field.vernacularName, 1, Headings.Field.day, 2))
                .animals(decided)
                .settings();
        return new RowReader(settings, List.of("name", "common", "day"), LocalDate.of(2026, 11, 29), ZoneOffset.UTC)
                .read(2, "", List.of(scientific, common, "2020-01-01"));
    }

    private AnimalWords.Animal find(String told, @Nullable String decided) {
        return words.find(row(told, "", decided == null ? Map.of() : Map.of(told, decided)));
    }

    private AnimalWords.Animal find2(String scientific, String common) {
        return words.find(row(scientific, common, Map.of()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            nullValues = "none",
            value = {
                // scientific | common | taxon | weight of what is told
                "Phascolarctos cinereus | koala | Phascolarctos cinereus | none",
                "unknown | koala | Phascolarctos cinereus | none",
                "Pseudocheirus sp. | ringtail | Pseudocheirus peregrinus | note",
                "Pseudocheirus | ringtail | Pseudocheirus peregrinus | note",
                "Trichosurus sp. | ringtail | Pseudocheirus peregrinus | doubt",
                "Pseudocheirus peregrinus | thingummy | Pseudocheirus peregrinus | none",
                "Pseudocheirus peregrinus | koala | Pseudocheirus peregrinus | doubt",
                "Pseudocheirus peregrinus | possums and gliders | Pseudocheirus peregrinus | none",
                "possums | ringtail | Pseudocheirus peregrinus | note",
                "possums | koala | none | doubt",
                "Animalia | ringtail | Pseudocheirus peregrinus | note",
                "Lipurus cinereus | koala | Phascolarctos cinereus | note",
                "Phascolarctus cinerea | koala | Phascolarctos cinereus | note",
                "Notalipurus grandis | koala | Phascolarctos cinereus | doubt",
                "Notalipurus grandis | thingummy | none | doubt"
            })
    void theScientificNameLeadsAndTheCommonOneHelps(
            String scientific, String common, @Nullable String taxon, Finding.@Nullable Weight weight) {
        AnimalWords.Animal animal = find2(scientific, common);
        assertThat(animal.taxonId())
                .isEqualTo(taxon == null ? null : find(taxon, null).taxonId());
        assertThat(animal.finding() == null ? null : animal.finding().weight()).isEqualTo(weight);
        if (weight == Finding.Weight.doubt) {
            assertThat(animal.finding().detail()).contains(scientific, common);
        }
    }

    @Test
    void aKeptAnimalBesideOneOfTheRegisterIsLookedAt() {
        assertThat(words.besideDomestic(row("Bos taurus", "koala", Map.of())).kind())
                .isEqualTo(Finding.Kind.namesDisagree);
        assertThat(words.besideDomestic(row("Bos taurus", "cow", Map.of()))).isNull();
        assertThat(words.besideDomestic(row("Bos taurus", "something", Map.of())))
                .isNull();
    }

    @Test
    void wordsAreUnknownOnlyWhereTheyLeaveARowWithoutAnimal() {
        find2("Pseudocheirus peregrinus", "thingummy");
        find2("Notalipurus grandis", "thingammy");
        assertThat(words.listUnknown(10))
                .extracting(AnimalWords.Unknown::words)
                .containsExactlyInAnyOrder("notalipurus grandis", "thingammy");
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

    @Test
    void anotherNameOfATaxonIsFoundByWholeWordsAndTold() {
        AnimalWords.Animal old = find("Didelphis peregrina (Boddaert, 1785)", null);
        assertThat(old.taxonId()).isEqualTo(RINGTAIL);
        assertThat(old.finding().kind()).isEqualTo(Finding.Kind.synonym);
        assertThat(old.finding().weight()).isEqualTo(Finding.Weight.note);
        assertThat(old.finding().detail()).contains("Pseudocheirus peregrinus", "synonym Didelphis peregrina");
        assertThat(find("Beutelratten", null).taxonId()).as("no word of it").isNull();
        AnimalWords.Animal near = find("Beutelrate", null);
        assertThat(near.taxonId()).as("a near spelling is proposed").isNull();
        assertThat(near.finding().detail()).contains("Beutelratte");
        assertThat(find2("Didelphis peregrina", "ringtail").taxonId()).isEqualTo(RINGTAIL);
        assertThat(find2("Didelphis peregrina", "ringtail").finding().kind()).isEqualTo(Finding.Kind.synonym);
    }
}
