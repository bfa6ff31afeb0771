package org.culvert.exchange.records;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.culvert.exchange.reading.Finding;
import org.culvert.exchange.reading.Names;
import org.culvert.exchange.records.AnimalWords.Animal;
import org.culvert.taxon.TaxonService;
import org.culvert.taxon.TaxonService.TaxonView;
import org.jspecify.annotations.Nullable;

/**
 * Weighs the scientific and the common name of one animal. The scientific one leads. Where it is not understood, or wider than a
 * species, the common one is tried; where both are understood and mean different animals, somebody has to look.
 */
final class TwoNames {
    /** Ranks at which a name is as narrow as a record needs; others are wider. */
    private static final Set<String> NARROW = Set.of("species", "subspecies", "variety", "form", "subvariety");

    private static final String WANTED =
            "one animal in both columns, or what one of the names means, decided for the file";

    /**
     * A name as it was looked up.
     *
     * @param perhaps taxa that it is a near spelling of, or may mean
     */
    record Name(String words, Animal animal, Set<UUID> perhaps) {
        boolean isUnderstood() {
            return animal.taxonId() != null || animal.groupId() != null;
        }
    }

    private final Map<UUID, TaxonView> taxa = new HashMap<>();
    private final Map<UUID, String> groups = new HashMap<>();
    private final Map<String, Set<UUID>> groupsByGenus = new HashMap<>();

    TwoNames(List<TaxonView> taxa, List<TaxonService.GroupView> groups) {
        groups.forEach(group -> this.groups.put(group.id(), group.name()));
        taxa.forEach(taxon -> {
            this.taxa.put(taxon.id(), taxon);
            groupsByGenus.computeIfAbsent(genus(taxon), none -> new HashSet<>()).add(taxon.taxonGroupId());
        });
    }

    private static String genus(TaxonView taxon) {
        return firstWord(taxon.scientificName());
    }

    private static String firstWord(String name) {
        List<String> words = Names.ownWords(name);
        return words.isEmpty() ? "" : words.get(0);
    }

    private static String lastWord(String name) {
        List<String> words = Names.ownWords(name);
        return words.isEmpty() ? "" : words.get(words.size() - 1);
    }

    private static String stem(String epithet) {
        return epithet.length() > 4 ? epithet.replaceAll("(us|um|a|is|e)$", "") : epithet;
    }

    /** What the two together tell. */
    Animal weigh(Name scientific, Name common) {
        if (!scientific.isUnderstood()) {
            return common.isUnderstood() ? byCommonName(scientific, common) : neither(scientific, common);
        }
        if (!common.isUnderstood()) {
            return scientific.animal();
        }
        Animal leading = scientific.animal();
        Animal other = common.animal();
        if (leading.taxonId() != null && leading.taxonId().equals(other.taxonId())) {
            return leading;
        }
        if (isWithin(other, leading)) {
            return new Animal(
                    other.taxonId(),
                    other.groupId(),
                    note(quoted(scientific.words()) + " is told more narrowly by " + quoted(common.words())
                            + ", and is taken for " + name(other) + "."));
        }
        return isWithin(leading, other) ? leading : disagree(scientific, common);
    }

    /** Whether the one animal is among those that the other names, which is wider. */
    private boolean isWithin(Animal narrow, Animal wide) {
        TaxonView taxon = narrow.taxonId() == null ? null : taxa.get(narrow.taxonId());
        TaxonView widely = wide.taxonId() == null ? null : taxa.get(wide.taxonId());
        if (widely == null) {
            return narrow.groupId() != null && narrow.groupId().equals(wide.groupId());
        }
        if (taxon == null || isNarrow(widely)) {
            return false;
        }
        if (widely.taxonGroup().equals(TaxonService.NOT_KNOWN_YET)) {
            return true;
        }
        boolean sameGroup = taxon.taxonGroupId().equals(widely.taxonGroupId());
        return isGenus(widely) ? genus(taxon).equals(genus(widely)) : sameGroup;
    }

    private static boolean isNarrow(TaxonView taxon) {
        return NARROW.contains(taxon.taxonRank().toLowerCase(Locale.ROOT));
    }

    private static boolean isGenus(TaxonView taxon) {
        return taxon.taxonRank().toLowerCase(Locale.ROOT).equals("genus");
    }

    /** A genus of the register must be that of the common name; a whole name that nobody knows must at least be like it. */
    private Animal byCommonName(Name scientific, Name common) {
        Animal animal = common.animal();
        List<String> own = Names.ownWords(scientific.words());
        String genus = own.isEmpty() ? "" : own.get(0);
        Set<UUID> ofGenus = groupsByGenus.get(genus);
        TaxonView taxon = animal.taxonId() == null ? null : taxa.get(animal.taxonId());
        boolean speaksAgainst;
        if (taxon == null) {
            speaksAgainst = ofGenus != null && animal.groupId() != null && !ofGenus.contains(animal.groupId());
        } else if (own.size() < 2) {
            speaksAgainst = ofGenus != null && !genus.equals(genus(taxon));
        } else {
            // A species moved to another genus keeps its second name but for the ending (ICZN, 34.2 and 51.3; from
            // memory)
            speaksAgainst = !scientific.perhaps().contains(taxon.id())
                    && !stem(lastWord(scientific.words())).equals(stem(lastWord(taxon.scientificName())));
        }
        String detail = quoted(scientific.words()) + " is no animal of the register; by its common name "
                + quoted(common.words()) + " it is taken for " + name(animal) + ".";
        return new Animal(
                animal.taxonId(),
                animal.groupId(),
                speaksAgainst ? Finding.doubt(Finding.Kind.namesDisagree, null, detail, WANTED) : note(detail));
    }

    private Animal disagree(Name scientific, Name common) {
        Animal leading = scientific.animal();
        return new Animal(
                leading.taxonId(),
                leading.groupId(),
                Finding.doubt(
                        Finding.Kind.namesDisagree,
                        null,
                        "The scientific name " + quoted(scientific.words()) + " means " + name(leading)
                                + ", and the common name " + quoted(common.words()) + " means " + name(common.animal())
                                + "; the scientific one leads.",
                        WANTED));
    }

    private static Animal neither(Name scientific, Name common) {
        Finding told = scientific.animal().finding();
        Finding other = common.animal().finding();
        if (told == null || other == null) {
            return Animal.UNTOLD;
        }
        return new Animal(null, null, Finding.doubt(told.kind(), null, told.detail() + " " + other.detail(), WANTED));
    }

    private static Finding note(String detail) {
        return Finding.note(Finding.Kind.unknownWord, null, detail);
    }

    private String name(Animal animal) {
        TaxonView taxon = animal.taxonId() == null ? null : taxa.get(animal.taxonId());
        return taxon != null
                ? taxon.scientificName() + " (" + taxon.vernacularName() + ")"
                : String.valueOf(groups.get(animal.groupId()));
    }

    static String quoted(@Nullable String words) {
        return words == null
                ? "The animal"
                : "\"" + (words.length() > 80 ? words.substring(0, 80) + "…" : words) + "\"";
    }
}
