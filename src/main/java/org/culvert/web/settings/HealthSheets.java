package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Set;
import org.culvert.care.health.AlertService;
import org.culvert.care.health.ExposureEntries;
import org.culvert.care.health.ExposureService;
import org.culvert.care.health.SuspicionEntries;
import org.culvert.care.health.SuspicionService;
import org.culvert.care.health.SyndromeEntries;
import org.culvert.care.health.SyndromeService;
import org.culvert.roster.VaccinationService;
import org.culvert.web.acts.Act;
import org.culvert.web.settings.Sheet.Purpose;

/** Diseases of animals, and vaccinations of people. */
@ApplicationScoped
class HealthSheets implements SheetSource {
    private final SuspicionService suspicions;
    private final SyndromeService syndromes;
    private final VaccinationService vaccinations;
    private final ExposureService exposures;
    private final AlertService alerts;

    HealthSheets(
            SuspicionService suspicions,
            SyndromeService syndromes,
            VaccinationService vaccinations,
            ExposureService exposures,
            AlertService alerts) {
        this.suspicions = suspicions;
        this.syndromes = syndromes;
        this.vaccinations = vaccinations;
        this.exposures = exposures;
        this.alerts = alerts;
    }

    @Override
    public List<Sheet> sheets() {
        return List.of(
                alerts(),
                exposures(),
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

    /** Entered where the animal is: of a case, or of an incident. */
    private Sheet exposures() {
        return Sheet.paged("exposures", Purpose.health, most -> exposures.listExposures(false, null, most, null))
                .titled("kind", "bodyPart")
                .one(exposures::getExposure)
                .changed("telling", "exposure", ExposureEntries.UnitTelling.class, exposures::tell)
                .changed("closing", "exposure", ExposureEntries.ExposureClosing.class, exposures::close)
                .corrected("exposure", ExposureEntries.ExposureCorrection.class, exposures::correct, "caseId")
                .changed("withdrawal", "exposure", ExposureEntries.ExposureWithdrawal.class, exposures::withdraw);
    }

    private Sheet alerts() {
        return Sheet.paged("health-alerts", Purpose.health, most -> alerts.listAlerts(false, most, null))
                .titled("syndrome", "sentence")
                .one(alerts::getAlert)
                .act(
                        new Act<>(
                                "acknowledgements",
                                "POST /api/health-alerts/{id}/acknowledgements",
                                null,
                                true,
                                SyndromeEntries.AcknowledgementEntry.class,
                                Set.of()),
                        alerts::acknowledge);
    }
}
