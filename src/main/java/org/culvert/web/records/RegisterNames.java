package org.culvert.web.records;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.culvert.taxon.TaxonService;
import org.culvert.taxon.TaxonService.GroupView;
import org.culvert.taxon.TaxonService.TaxonView;
import org.jspecify.annotations.Nullable;

/** What kinds and groups of the register are called, by the keys that readings of files have for them. */
@ApplicationScoped
class RegisterNames {
    private final TaxonService taxa;

    RegisterNames(TaxonService taxa) {
        this.taxa = taxa;
    }

    /** All names at one time. */
    Names now() {
        return new Names(taxa.findTaxa(null), taxa.listGroups());
    }

    /** The names of the register. */
    static final class Names {
        private final Map<String, String> byKey = new HashMap<>();
        private final Map<String, String> keys = new HashMap<>();
        private final List<String> all;

        Names(List<TaxonView> kinds, List<GroupView> groups) {
            // A name of a kind goes before the same of a group, the name in the language of the network before the
            // scientific one
            for (GroupView group : groups) {
                byKey.put("group:" + group.id(), group.name());
                if (!group.key().equals(TaxonService.NOT_KNOWN_YET)) {
                    keys.put(key(group.name()), "group:" + group.id());
                }
            }
            for (TaxonView kind : kinds) {
                byKey.put("taxon:" + kind.id(), kind.vernacularName() + " (" + kind.scientificName() + ")");
            }
            kinds.forEach(kind -> keys.put(key(kind.scientificName()), "taxon:" + kind.id()));
            kinds.forEach(kind -> keys.put(key(kind.vernacularName()), "taxon:" + kind.id()));
            all = Stream.concat(
                            groups.stream()
                                    .filter(group -> !group.key().equals(TaxonService.NOT_KNOWN_YET))
                                    .map(GroupView::name),
                            kinds.stream().flatMap(kind -> Stream.of(kind.vernacularName(), kind.scientificName())))
                    .distinct()
                    .sorted(String.CASE_INSENSITIVE_ORDER)
                    .toList();
        }

        private static String key(String name) {
            return name.strip().toLowerCase(Locale.ROOT);
        }

        /** The key of what is called exactly so, or null. */
        @Nullable
        String find(String name) {
            return keys.get(key(name));
        }

        /** What a key stands for, in words; the key itself where it stands for nothing here. */
        String words(String key) {
            return byKey.getOrDefault(key, key);
        }

        List<String> all() {
            return all;
        }
    }
}
