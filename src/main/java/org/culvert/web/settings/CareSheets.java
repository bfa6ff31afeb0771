package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.culvert.animal.CaseCorrections;
import org.culvert.care.clutch.IncubationFactService;
import org.culvert.care.growth.GrowthEntries;
import org.culvert.care.growth.GrowthTableService;
import org.culvert.care.placement.CarerService;
import org.culvert.care.template.TemplateEntries;
import org.culvert.care.template.TemplateService;
import org.culvert.web.settings.Sheet.Purpose;

/** What is known of care. */
@ApplicationScoped
class CareSheets implements SheetSource {
    private final CarerService carers;
    private final TemplateService templates;
    private final GrowthTableService growth;
    private final IncubationFactService incubation;

    CareSheets(
            CarerService carers,
            TemplateService templates,
            GrowthTableService growth,
            IncubationFactService incubation) {
        this.carers = carers;
        this.templates = templates;
        this.growth = growth;
        this.incubation = incubation;
    }

    @Override
    public List<Sheet> sheets() {
        return List.of(
                Sheet.of("keeping-rules", Purpose.care, carers::listRules)
                        .titled("taxonGroup", "keep", "otherGroup")
                        .one(carers::getRule)
                        .entered(
                                CarerService.KeepingRuleEntry.class,
                                entry -> carers.enterRule(entry).id())
                        .changed(
                                "withdrawal",
                                "keeping-rule",
                                CaseCorrections.Withdrawal.class,
                                (id, why) -> carers.withdrawRule(id, why.reason())),
                Sheet.of("plan-templates", Purpose.care, templates::listTemplates)
                        .titled("name", "taxonGroup")
                        .one(templates::getTemplate)
                        .entered(
                                TemplateEntries.TemplateEntry.class,
                                entry -> templates.enter(entry).id())
                        .corrected("plan-template", TemplateEntries.TemplateCorrection.class, templates::correct),
                Sheet.of("growth-tables", Purpose.care, growth::listTables)
                        .titled("name", "taxon")
                        .one(growth::getTable)
                        .entered(
                                GrowthEntries.GrowthTableEntry.class,
                                entry -> growth.load(entry).id(),
                                "rows")
                        .corrected("growth-table", GrowthEntries.GrowthTableCorrection.class, growth::correct),
                Sheet.of("age-cautions", Purpose.care, growth::listCautions)
                        .titled("taxon", "measure")
                        .entered(
                                GrowthEntries.AgeCautionEntry.class,
                                entry -> growth.enterCaution(entry).id()),
                Sheet.of("incubation-facts", Purpose.care, incubation::listFacts)
                        .titled("scientificName", "kind")
                        .one(incubation::getFact)
                        .entered(
                                IncubationFactService.IncubationFactEntry.class,
                                entry -> incubation.createFact(entry).id())
                        .changed(
                                "reviews",
                                "incubation-fact",
                                IncubationFactService.IncubationFactReview.class,
                                incubation::review));
    }
}
