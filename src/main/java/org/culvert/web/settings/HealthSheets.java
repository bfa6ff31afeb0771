package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.culvert.care.health.SuspicionEntries;
import org.culvert.care.health.SuspicionService;
import org.culvert.care.health.SyndromeEntries;
import org.culvert.care.health.SyndromeService;
import org.culvert.roster.VaccinationService;
import org.culvert.web.settings.Sheet.Purpose;

/** Diseases of animals, and vaccinations of people. */
@ApplicationScoped
class HealthSheets implements SheetSource {
    private final SuspicionService suspicions;
    private final SyndromeService syndromes;
    private final VaccinationService vaccinations;

    HealthSheets(SuspicionService suspicions, SyndromeService syndromes, VaccinationService vaccinations) {
        this.suspicions = suspicions;
        this.syndromes = syndromes;
        this.vaccinations = vaccinations;
    }

    @Override
    public List<Sheet> sheets() {
        return List.of(
                Sheet.of("notifiable-conditions", Purpose.health, suspicions::listConditions)
                        .titled("name", "jurisdiction")
                        .one(suspicions::getCondition)
                        .entered(
                                SuspicionEntries.ConditionEntry.class,
                                entry -> suspicions.enterCondition(entry).id())
                        .changed(
                                "hotline",
                                "notifiable-condition",
                                SuspicionEntries.HotlineEntry.class,
                                suspicions::enterHotline)
                        .corrected(
                                "notifiable-condition",
                                SuspicionEntries.ConditionCorrection.class,
                                suspicions::correctCondition),
                Sheet.of("syndromes", Purpose.health, syndromes::listSyndromes)
                        .titled("name", "taxonGroup")
                        .entered(
                                SyndromeEntries.SyndromeEntry.class,
                                entry -> syndromes.enterSyndrome(entry).id()),
                Sheet.of("alert-thresholds", Purpose.health, syndromes::listThresholds)
                        .titled("syndromeId", "smallestCount")
                        .one(syndromes::getThreshold)
                        .entered(
                                SyndromeEntries.ThresholdEntry.class,
                                entry -> syndromes.enterThreshold(entry).id())
                        .changed(
                                "ending",
                                "alert-threshold",
                                SyndromeEntries.ThresholdEnding.class,
                                syndromes::endThreshold),
                Sheet.of("vaccination-rules", Purpose.health, vaccinations::listRules)
                        .titled("against")
                        .entered(
                                VaccinationService.VaccinationRuleEntry.class,
                                entry -> vaccinations.enterRule(entry).id()));
    }
}
