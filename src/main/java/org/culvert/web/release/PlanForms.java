package org.culvert.web.release;

import com.fasterxml.jackson.databind.node.ArrayNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import org.culvert.animal.CaseService;
import org.culvert.call.PlaceView;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.sight.Sight;
import org.culvert.release.AssessmentService;
import org.culvert.release.AssessmentService.AssessmentEntry;
import org.culvert.release.AssessmentService.UnsuitableEntry;
import org.culvert.release.approvals.ApprovalService;
import org.culvert.release.approvals.ApprovalService.ApprovalEntry;
import org.culvert.release.fitness.FitnessService;
import org.culvert.release.fitness.FitnessService.CheckEntry;
import org.culvert.release.holds.HoldService;
import org.culvert.release.holds.HoldService.HoldClearing;
import org.culvert.release.nonrelease.NonReleaseEntries.NonReleaseEntry;
import org.culvert.release.nonrelease.NonReleaseEntries.NonReleaseGround;
import org.culvert.release.nonrelease.NonReleaseService;
import org.culvert.release.rules.Approval;
import org.culvert.release.rules.Conditions;
import org.culvert.release.rules.FitnessCheck;
import org.culvert.web.Languages;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.SentFields;
import org.culvert.web.words.FormsWords;
import org.culvert.web.words.ReleaseWords;

/** The forms of the planner, and what each does. */
@ApplicationScoped
class PlanForms {
    private static final Pattern ITEM = Pattern.compile("items\\[(\\d{1,3})\\].*");
    private static final String SITE = "siteId";
    private static final String FOUND = "found";
    private static final String HOLD = "holdId";

    private final FitnessService checks;
    private final ApprovalService approvals;
    private final AssessmentService assessments;
    private final HoldService holds;
    private final NonReleaseService decisions;
    private final CaseService cases;
    private final FormBodies bodies;
    private final RegionService region;
    private final Languages languages;
    private final Sight sight;

    PlanForms(
            FitnessService checks,
            ApprovalService approvals,
            AssessmentService assessments,
            HoldService holds,
            NonReleaseService decisions,
            CaseService cases,
            FormBodies bodies,
            RegionService region,
            Languages languages,
            Sight sight) {
        this.checks = checks;
        this.approvals = approvals;
        this.assessments = assessments;
        this.holds = holds;
        this.decisions = decisions;
        this.cases = cases;
        this.bodies = bodies;
        this.region = region;
        this.languages = languages;
        this.sight = sight;
    }

    /** What is typed and what was wrong, of the one form that was sent. */
    record Again(String form, SentFields sent, List<FieldError> wrong) {
        static final Again NONE = new Again("", SentFields.NOTHING, List.of());

        EntryForm of(String name) {
            return of(name, UnaryOperator.identity());
        }

        /** @param beside which field of the form a field of the body is told by */
        EntryForm of(String name, UnaryOperator<String> beside) {
            return name.equals(form)
                    ? new EntryForm(name, sent, wrong, beside)
                    : new EntryForm(name, SentFields.NOTHING, List.of(), beside);
        }

        static Again read(String form, SentFields sent) {
            return new Again(form, sent, List.of());
        }
    }

    /**
     * Those that the asker's role has.
     *
     * @param sites known ones, the most promising first
     * @param held holds that stand
     */
    Map<String, EntryForm> all(List<Option> sites, List<Option> held, boolean hasFoundPlace, Again again) {
        Map<String, EntryForm> forms = new LinkedHashMap<>();
        boolean coordinator = sight.viewer().hasAny(Role.COORDINATOR);
        boolean clinic = sight.viewer().hasAny(Role.COORDINATOR, Role.CLINIC);
        boolean carer = sight.viewer().hasAny(Role.COORDINATOR, Role.CLINIC, Role.CARER);
        if (carer) {
            forms.put("assess", assess(again, sites, hasFoundPlace));
        }
        if (clinic) {
            forms.put("fitness", fitness(again));
        }
        if (coordinator) {
            forms.put("approval", approval(again, sites));
        }
        if (carer && hasFoundPlace) {
            forms.put("unsuitable", unsuitable(again));
        }
        if (clinic && !held.isEmpty()) {
            forms.put("clearing", clearing(again, held));
        }
        if (clinic) {
            forms.put("decision", decision(again));
        }
        return forms;
    }

    private ReleaseWords words() {
        return languages.words(ReleaseWords.class);
    }

    private FormsWords usual() {
        return languages.words(FormsWords.class);
    }

    private List<Option> consent() {
        return List.of(
                new Option("yes", usual().yes()),
                new Option("no", usual().no()),
                new Option("unknown", usual().notKnown()));
    }

    private EntryForm assess(Again again, List<Option> sites, boolean hasFoundPlace) {
        List<Option> places = new ArrayList<>();
        if (hasFoundPlace) {
            places.add(new Option(FOUND, words().foundPlace()));
        }
        places.addAll(sites);
        return again.of("assess", field -> field.startsWith("position") ? SITE : field)
                .choice(SITE, words().site(), "", true, places)
                .choice("light", words().light(), false, Conditions.Light.values(), words()::lightOf)
                .choice("weather", words().weather(), false, Conditions.Weather.values(), words()::weatherOf)
                .choice("matesGoToo", words().mates(), "", false, consent());
    }

    private EntryForm fitness(Again again) {
        EntryForm form = again.of("fitness", field -> aspect(field, again.sent()))
                .text("vetName", words().vetName(), "", true)
                .text("vetRegistration", words().vetRegistration(), "", true);
        for (FitnessCheck.Aspect aspect : FitnessCheck.Aspect.values()) {
            form.choice(
                    aspect.name(), words().aspect(aspect.name()), false, FitnessCheck.Answer.values(), words()::answer);
        }
        return form.choice("housedWithPets", words().withPets(), "", false, consent())
                .lines("words", usual().inWords(), "", false)
                .moment("at", words().lookedAt(), "");
    }

    private EntryForm approval(Again again, List<Option> sites) {
        return again.of("approval")
                .choice(SITE, words().about(), words().thisAnimal(), false, sites)
                .choice("of", words().whoAnswered(), true, Approval.Of.values(), words()::approvalOf)
                .truth("given", words().theySaid(), true, words().approvalYes(), words().approvalNo())
                .text("askedOf", words().askedOf(), "", false)
                .text("reference", words().reference(), "", false)
                .day("until", words().until(), "", false)
                .moment("at", words().answeredAt(), "");
    }

    private EntryForm unsuitable(Again again) {
        return again.of("unsuitable")
                .text("ground", words().ground(), words().groundHint(), true)
                .lines("words", words().seen(), "", true)
                .moment("seenAt", words().seenAt(), "");
    }

    private EntryForm clearing(Again again, List<Option> held) {
        return again.of("clearing")
                .choice(HOLD, words().whichHold(), "", true, held)
                .choice(
                        "by",
                        words().clearedBy(),
                        "",
                        true,
                        List.of(
                                new Option("authority", words().byAuthority()),
                                new Option("licensedVet", words().byVet())))
                .text("name", words().clearedName(), "", true)
                .text("reference", words().clearedReference(), "", true)
                .moment("at", usual().whenIfNotNow(), "");
    }

    private EntryForm decision(Again again) {
        return again.of("decision")
                .ticks(
                        "grounds",
                        words().grounds(),
                        "",
                        true,
                        EntryForm.options(NonReleaseGround.values(), words()::groundOf))
                .lines("words", usual().inWords(), "", true)
                .text("vetName", words().vetName(), "", true)
                .text("vetRegistration", words().vetRegistration(), "", true)
                .moment("decidedAt", words().decidedAt(), "")
                .day("reviewDueOn", words().reviewDueOn(), "", false);
    }

    void signFit(UUID caseId, SentFields sent) {
        EntryBody body = fitness(Again.read("fitness", sent)).read(region.zone());
        List<FitnessCheck.Aspect> told = told(sent);
        if (told.isEmpty()) {
            body.refuse(FitnessCheck.Aspect.movement.name(), "Nothing was looked at.", "how one of them was found");
        }
        ArrayNode items = body.told().putArray("items");
        told.forEach(aspect -> items.addObject().put("aspect", aspect.name()).put("answer", body.take(aspect.name())));
        checks.sign(caseId, body.read(bodies, CheckEntry.class));
    }

    private static List<FitnessCheck.Aspect> told(SentFields sent) {
        return Arrays.stream(FitnessCheck.Aspect.values())
                .filter(aspect -> sent.given(aspect.name()) != null)
                .toList();
    }

    /** An item of the body is an aspect's field of the form. */
    private static String aspect(String field, SentFields sent) {
        var item = ITEM.matcher(field);
        List<FitnessCheck.Aspect> told = told(sent);
        if (item.matches() && Integer.parseInt(item.group(1)) < told.size()) {
            return told.get(Integer.parseInt(item.group(1))).name();
        }
        return field.equals("items") ? FitnessCheck.Aspect.movement.name() : field;
    }

    void approve(UUID caseId, SentFields sent) {
        EntryBody body = approval(Again.read("approval", sent), List.of()).read(region.zone());
        UUID site = body.takeId(SITE);
        ApprovalEntry entry = body.read(bodies, ApprovalEntry.class);
        if (site == null) {
            approvals.recordForCase(caseId, entry);
        } else {
            approvals.recordForSite(site, entry);
        }
    }

    void assessPlace(UUID caseId, SentFields sent, String jurisdiction) {
        EntryBody body = assess(Again.read("assess", sent), List.of(), true).read(region.zone());
        body.told().put("caseId", caseId.toString());
        if (FOUND.equals(sent.given(SITE))) {
            body.take(SITE);
            PlaceView found = cases.getCase(caseId).foundPlace();
            if (found == null) {
                body.refuse(SITE, "Nobody knows where it was found.", "a known site");
            } else {
                body.told()
                        .putObject("position")
                        .put("jurisdiction", jurisdiction)
                        .put("decimalLatitude", found.decimalLatitude())
                        .put("decimalLongitude", found.decimalLongitude())
                        .put("coordinateUncertaintyInMeters", found.coordinateUncertaintyInMeters());
            }
        }
        assessments.assess(body.read(bodies, AssessmentEntry.class));
    }

    void recordUnsuitable(UUID caseId, SentFields sent) {
        assessments.recordUnsuitable(
                caseId,
                unsuitable(Again.read("unsuitable", sent)).read(region.zone()).read(bodies, UnsuitableEntry.class));
    }

    void clear(UUID caseId, SentFields sent) {
        EntryBody body = clearing(Again.read("clearing", sent), List.of()).read(region.zone());
        UUID hold = body.takeId(HOLD);
        boolean ofCase =
                holds.listHolds(caseId).stream().anyMatch(one -> one.id().equals(hold));
        if (hold != null && !ofCase) {
            body.refuse(HOLD, "That is no hold of this case.", "one of the list");
        }
        HoldClearing clearing = body.read(bodies, HoldClearing.class);
        holds.clear(Objects.requireNonNull(hold), clearing);
    }

    UUID decide(UUID caseId, SentFields sent) {
        return decisions
                .decide(
                        caseId,
                        decision(Again.read("decision", sent))
                                .read(region.zone())
                                .read(bodies, NonReleaseEntry.class))
                .id();
    }
}
