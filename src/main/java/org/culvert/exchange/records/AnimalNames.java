package org.culvert.exchange.records;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.exchange.reading.Names;
import org.culvert.taxon.SynonymService.TaxonSynonymView;
import org.culvert.taxon.TaxonService.GroupView;
import org.culvert.taxon.TaxonService.TaxonView;
import org.jspecify.annotations.Nullable;

/** All names by which animals of the register are found: of groups, and of taxa with their other names. */
final class AnimalNames {
    private final Names names = new Names();
    private final Map<String, String> acceptedBySynonym = new HashMap<>();

    AnimalNames(List<TaxonView> taxa, List<GroupView> groups, List<TaxonSynonymView> synonyms) {
        for (GroupView group : groups) {
            add("group:" + group.id(), group.name());
            add("group:" + group.id(), group.key().replace('-', ' '));
        }
        Map<UUID, TaxonView> byId = new HashMap<>();
        for (TaxonView taxon : taxa) {
            byId.put(taxon.id(), taxon);
            add("taxon:" + taxon.id(), taxon.scientificName());
            add("taxon:" + taxon.id(), taxon.vernacularName());
        }
        for (TaxonSynonymView synonym : synonyms) {
            TaxonView taxon = byId.get(synonym.taxonId());
            if (taxon != null) {
                String key = "taxon:" + taxon.id();
                add(key, synonym.name());
                acceptedBySynonym.put(key + ' ' + synonym.name(), taxon.scientificName());
            }
        }
    }

    /** A name of idle words alone, such as "young", is none that a text could be found by. */
    private void add(String key, String name) {
        if (Names.hasWords(name)) {
            names.add(key, name);
        }
    }

    List<Names.Match> find(String words) {
        return names.find(words);
    }

    /** The accepted name of the taxon that was found by another one; null where it was found by a name that it goes by here. */
    @Nullable
    String accepted(Names.Match match) {
        return acceptedBySynonym.get(match.key() + ' ' + match.name());
    }

    /** The name that was found, and for another name the accepted one before it. */
    String told(Names.Match match) {
        String accepted = accepted(match);
        return accepted == null ? match.name() : accepted + " (by its synonym " + match.name() + ")";
    }
}
