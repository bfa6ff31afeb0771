package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Set;
import org.culvert.hotspot.SeasonWindowService;
import org.culvert.taxon.CautionService;
import org.culvert.taxon.SynonymService;
import org.culvert.taxon.TaxonService;
import org.culvert.web.acts.Act;
import org.culvert.web.settings.Sheet.Purpose;

/** Which animals there are, and what is said of them. */
@ApplicationScoped
class AnimalSheets implements SheetSource {
    private final TaxonService taxa;
    private final SynonymService synonyms;
    private final CautionService cautions;
    private final SeasonWindowService seasons;

    AnimalSheets(TaxonService taxa, SynonymService synonyms, CautionService cautions, SeasonWindowService seasons) {
        this.taxa = taxa;
        this.synonyms = synonyms;
        this.cautions = cautions;
        this.seasons = seasons;
    }

    @Override
    public List<Sheet> sheets() {
        return List.of(
                Sheet.of("taxon-groups", Purpose.animals, taxa::listGroups)
                        .titled("name", "key")
                        .entered(TaxonService.GroupEntry.class, entry -> {
                            taxa.enterGroups(List.of(entry));
                            return null;
                        }),
                Sheet.of("taxa", Purpose.animals, () -> taxa.findTaxa(null))
                        .titled("vernacularName", "scientificName")
                        .one(taxa::getTaxon)
                        .entered(
                                TaxonService.TaxonEntry.class,
                                entry -> taxa.enterTaxa(List.of(entry)).get(0).id())
                        .act(
                                new Act<>(
                                        "sensitivity",
                                        "PUT /api/taxa/{id}/sensitivity",
                                        "taxon",
                                        true,
                                        TaxonService.SensitivityEntry.class,
                                        Set.of()),
                                taxa::settleSensitivity),
                Sheet.of("taxon-synonyms", Purpose.animals, synonyms::listSynonyms)
                        .titled("name", "taxonId")
                        .one(synonyms::getSynonym)
                        .entered(
                                SynonymService.SynonymEntry.class,
                                entry -> synonyms.createSynonym(entry).id())
                        .changed(
                                "ending",
                                "taxon-synonym",
                                SynonymService.SynonymEnding.class,
                                (id, why) -> synonyms.end(id, why.reason())),
                Sheet.of("cautions", Purpose.animals, cautions::listCautions)
                        .titled("taxonGroup", "audience")
                        .entered(CautionService.CautionView.class, entry -> {
                            cautions.enterCautions(List.of(entry));
                            return null;
                        }),
                Sheet.of("season-windows", Purpose.animals, seasons::listWindows)
                        .titled("taxonGroup", "name", "hemisphere")
                        .entered(
                                SeasonWindowService.WindowEntry.class,
                                entry -> seasons.enter(entry).id()));
    }
}
