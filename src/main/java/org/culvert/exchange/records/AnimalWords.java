package org.culvert.exchange.records;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import org.culvert.exchange.reading.CellWords;
import org.culvert.exchange.reading.Finding;
import org.culvert.exchange.reading.Headings;
import org.culvert.exchange.reading.Names;
import org.culvert.exchange.reading.ReadRow;
import org.culvert.exchange.reading.ReadingSettings;
import org.culvert.taxon.SynonymService.TaxonSynonymView;
import org.culvert.taxon.TaxonService.GroupView;
import org.culvert.taxon.TaxonService.TaxonView;
import org.jspecify.annotations.Nullable;

/**
 * Which animal of the register a row tells of: as somebody decided for its words, or by whole words alone. Each word is looked
 * up once. Safe for several threads.
 */
final class AnimalWords {
    /**
     * What a row tells of.
     *
     * @param taxonId null where no taxon is told
     * @param groupId null where no group is told either
     * @param finding what somebody must know of it, or null
     */
    record Animal(
            @Nullable UUID taxonId,
            @Nullable UUID groupId,
            @Nullable Finding finding) {
        static final Animal UNTOLD = new Animal(null, null, null);
    }

    /**
     * Words that name no animal of the register.
     *
     * @param perhaps names that are spelled nearly so, or that the words may mean
     */
    record Unknown(String words, long rows, List<String> perhaps) {}

    private static final int MOST_REMEMBERED = 50_000;
    private static final int MOST_PROPOSED = 5;
    private static final String DECIDE = "decide in the reading which taxon or group of the register it is";

    /** @param rows how many rows it leaves without an animal */
    private record Looked(Animal animal, List<String> perhaps, Set<UUID> perhapsTaxa, AtomicLong rows) {}

    private final AnimalNames names;
    private final TwoNames twoNames;
    private final Map<String, Animal> byKey = new ConcurrentHashMap<>();
    private final Map<String, Looked> byWords = new ConcurrentHashMap<>();

    AnimalWords(List<TaxonView> taxa, List<GroupView> groups, List<TaxonSynonymView> synonyms) {
        names = new AnimalNames(taxa, groups, synonyms);
        twoNames = new TwoNames(taxa, groups);
        groups.forEach(group -> byKey.put("group:" + group.id(), new Animal(null, group.id(), null)));
        taxa.forEach(taxon -> byKey.put("taxon:" + taxon.id(), new Animal(taxon.id(), taxon.taxonGroupId(), null)));
    }

    Animal find(ReadRow row) {
        String words = row.animalWords();
        String common = row.commonWords();
        if (words == null) {
            return alone(common, row.commonAnimal());
        }
        if (common == null || row.animal() != null) {
            return alone(words, row.animal());
        }
        TwoNames.Name scientific = name(words, null);
        Animal animal = twoNames.weigh(scientific, name(common, row.commonAnimal()));
        if (!scientific.isUnderstood()) {
            looked(words).rows.incrementAndGet();
            if (animal.taxonId() == null && animal.groupId() == null && row.commonAnimal() == null) {
                looked(common).rows.incrementAndGet();
            }
        }
        return animal;
    }

    /** A scientific name of an animal that people keep, beside the common name of one of the register; null where there is none. */
    @Nullable
    Finding besideDomestic(ReadRow row) {
        String words = row.animalWords();
        String common = row.commonWords();
        if (words == null || common == null || row.animal() != null || row.commonAnimal() != null) {
            return null;
        }
        Animal other = looked(common).animal;
        boolean isWild = (other.taxonId() != null || other.groupId() != null)
                && CellWords.meaning(Headings.Field.vernacularName, common) == null;
        return isWild
                ? Finding.doubt(
                        Finding.Kind.namesDisagree,
                        null,
                        TwoNames.quoted(words) + " is an animal that people keep, and " + TwoNames.quoted(common)
                                + " is one of the register.",
                        DECIDE)
                : null;
    }

    /** One name, where there is no other or somebody decided what it means. */
    private Animal alone(@Nullable String words, @Nullable String decided) {
        if (words == null || words.isBlank()) {
            return Animal.UNTOLD;
        }
        if (decided != null) {
            return decided(words, decided);
        }
        Looked known = looked(words);
        known.rows.incrementAndGet();
        return known.animal;
    }

    private Animal decided(String words, String decided) {
        if (decided.equals(ReadingSettings.UNDECIDED)) {
            return undecided(words, "It was left undecided what this is.");
        }
        Animal known = byKey.get(decided);
        return known != null ? known : undecided(words, "What was decided for it is no longer in the register.");
    }

    private TwoNames.Name name(String words, @Nullable String decided) {
        if (decided != null) {
            return new TwoNames.Name(words, decided(words, decided), Set.of());
        }
        Looked known = looked(words);
        return new TwoNames.Name(words, known.animal, known.perhapsTaxa);
    }

    private Looked looked(String words) {
        String key = ReadingSettings.wordKey(words);
        Looked known = byWords.get(key);
        if (known == null) {
            known = look(words);
            if (byWords.size() < MOST_REMEMBERED) {
                byWords.put(key, known);
            }
        }
        return known;
    }

    private static Animal undecided(@Nullable String words, String detail) {
        return new Animal(
                null,
                null,
                Finding.doubt(Finding.Kind.undecidedAnimal, null, TwoNames.quoted(words) + ": " + detail, DECIDE));
    }

    private Looked look(String words) {
        List<Names.Match> matches = names.find(words);
        List<String> perhaps = matches.stream()
                .map(names::told)
                .distinct()
                .limit(MOST_PROPOSED)
                .toList();
        Animal one = one(matches);
        if (one == null || !matches.get(0).likeness().isSure()) {
            String detail = TwoNames.quoted(words)
                    + (matches.isEmpty()
                            ? " is no animal of the register."
                            : matches.get(0).likeness() == Names.Likeness.oneOfSeveral
                                    ? " names more than one, among them " + String.join(", and ", perhaps)
                                            + "; nobody has decided."
                                    : " may be " + String.join(", or ", perhaps) + "; nobody has decided.");
            return new Looked(
                    new Animal(null, null, Finding.doubt(Finding.Kind.unknownAnimal, null, detail, DECIDE)),
                    perhaps,
                    taxa(matches),
                    new AtomicLong());
        }
        Names.Match first = one.taxonId() == null
                ? matches.get(0)
                : matches.stream()
                        .filter(match -> match.key().startsWith("taxon:"))
                        .findFirst()
                        .orElse(matches.get(0));
        Finding told = null;
        if (names.accepted(first) != null) {
            told = Finding.note(
                    Finding.Kind.synonym, null, TwoNames.quoted(words) + " is taken for " + names.told(first) + ".");
        } else if (first.likeness() != Names.Likeness.same) {
            told = Finding.note(
                    Finding.Kind.unknownWord, null, TwoNames.quoted(words) + " is taken for " + first.name() + ".");
        }
        return new Looked(new Animal(one.taxonId(), one.groupId(), told), List.of(), Set.of(), new AtomicLong());
    }

    private Set<UUID> taxa(List<Names.Match> matches) {
        return matches.stream()
                .map(match -> byKey.get(match.key()))
                .map(Animal::taxonId)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
    }

    /** The one that is meant; a taxon rather than the group that it is of, where both are called so. */
    private @Nullable Animal one(List<Names.Match> matches) {
        List<Animal> meant =
                matches.stream().map(match -> byKey.get(match.key())).toList();
        List<Animal> taxa =
                meant.stream().filter(animal -> animal.taxonId() != null).toList();
        if (taxa.size() == 1) {
            Animal taxon = taxa.get(0);
            return meant.stream().allMatch(animal -> Objects.equals(animal.groupId(), taxon.groupId())) ? taxon : null;
        }
        return meant.size() == 1 ? meant.get(0) : null;
    }

    /** Words of the file that name no animal, the most frequent first. */
    List<Unknown> listUnknown(int most) {
        return byWords.entrySet().stream()
                .filter(entry -> entry.getValue().animal.taxonId() == null
                        && entry.getValue().animal.groupId() == null
                        && entry.getValue().rows.get() > 0)
                .map(entry -> new Unknown(entry.getKey(), entry.getValue().rows.get(), entry.getValue().perhaps))
                .sorted(Comparator.comparingLong(Unknown::rows).reversed().thenComparing(Unknown::words))
                .limit(most)
                .toList();
    }
}
