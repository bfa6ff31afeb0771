package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.care.plan.AftercarePlanView.TaskView;
import org.culvert.care.plan.CareEntryService;
import org.culvert.care.plan.PlanEntries;
import org.culvert.care.plan.PlanService;
import org.culvert.care.schedule.Measure;
import org.culvert.care.template.PlanTemplateView;
import org.culvert.care.template.TemplateEntries;
import org.culvert.care.template.TemplateService;
import org.jspecify.annotations.Nullable;

/** Weeks of care by a template that an invented vet adopted: most of it done, one swim skipped, the last two looks missed. */
@ApplicationScoped
class AftercareStory {
    private static final String TEMPLATE = "turtle-soft-tissue";
    private static final double GRAMS = 731;
    private static final double GRAMS_A_DAY = 0.6;

    private final TemplateService templates;
    private final PlanService plans;
    private final CareEntryService entries;
    private final Helpers helpers;

    AftercareStory(TemplateService templates, PlanService plans, CareEntryService entries, Helpers helpers) {
        this.templates = templates;
        this.plans = plans;
        this.entries = entries;
        this.helpers = helpers;
    }

    void tell(DemoRegion region, UUID caseId, UUID visit, Helpers.Clinic hospital, Instant leaves, Incident incident) {
        PlanTemplateView template = templates
                .findByKey(TEMPLATE)
                .orElseThrow(() -> new IllegalStateException("there is no template " + TEMPLATE));
        if (!template.adopted()) {
            templates.adopt(
                    template.id(),
                    new TemplateEntries.AdoptionEntry(
                            hospital.vetName(), hospital.vetRegistration(), leaves.minus(Duration.ofDays(30))));
        }
        List<TaskView> past = plans
                .make(
                        caseId,
                        new PlanEntries.PlanEntry(
                                template.id(),
                                null,
                                visit,
                                hospital.vetName(),
                                hospital.vetRegistration(),
                                leaves.atZone(region.settings().zone()).toLocalDate(),
                                "Ring before you bring her: the yard gate is locked.",
                                leaves))
                .tasks()
                .stream()
                .filter(task -> task.dueUntil().isBefore(helpers.now()))
                .toList();
        var dice = new Dice(incident.number(), "aftercare");
        int lastLook = past.stream()
                .filter(task -> task.stepKey().equals("wound"))
                .mapToInt(TaskView::day)
                .max()
                .orElse(-1);
        for (TaskView task : past) {
            if (!task.stepKey().equals("wound") || task.day() < lastLook - 1) {
                entries.add(caseId, entry(task, leaves, dice));
            }
        }
    }

    private static PlanEntries.CareEntryEntry entry(TaskView task, Instant leaves, Dice dice) {
        Instant day = task.dueFrom().isBefore(leaves) ? leaves : task.dueFrom();
        Instant at = day.plus(Duration.ofHours(2)).plus(Duration.ofMinutes(dice.from(0, 240)));
        boolean skipped = task.stepKey().equals("swim") && task.day() == 9;
        double days = Duration.between(leaves, at).toHours() / 24.0;
        Double value = skipped
                ? null
                : task.measure() == Measure.minutes
                        ? (Double) (double) dice.from(15, 20)
                        : task.measure() == Measure.grams
                                ? (Double) (Math.rint(GRAMS + GRAMS_A_DAY * days) + dice.from(-2, 2))
                                : null;
        return new PlanEntries.CareEntryEntry(
                PlanEntries.CareKind.task,
                task.stepKey(),
                task.day(),
                value,
                task.measure() == Measure.yesNo ? Boolean.TRUE : null,
                words(task),
                skipped ? "The storm had the power out, and the tub was cold." : null,
                null,
                at);
    }

    private static @Nullable String words(TaskView task) {
        if (task.stepKey().equals("swim") && task.day() == 2) {
            return "Swims evenly, keeps the right hind leg close.";
        }
        return task.stepKey().equals("stitches") ? "All six out, the skin closed." : null;
    }
}
