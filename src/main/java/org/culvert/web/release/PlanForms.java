package org.culvert.web.release;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.culvert.animal.CaseService;
import org.culvert.call.PlaceView;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Paging;
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
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.SentFields;
import org.culvert.web.words.FormsWords;
import org.culvert.web.words.ReleaseWords;

/** The forms of the planner, and what each does. */
@ApplicationScoped
class PlanForms {
    private static final Pattern ITEM = Pattern.compile("items[.\\[](\\d{1,3}).*");

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
            return name.equals(form)
                    ? new EntryForm(name, sent, wrong)
                    : new EntryForm(name, SentFields.NOTHING, List.of());
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
            places.add(new Option("found", words().foundPlace()));
        }
        places.addAll(sites);
        return again.of("assess")
                .choice("siteId", words().site(), "", true, places)
                .choice("light", words().light(), false, Conditions.Light.values(), words()::lightOf)
                .choice("weather", words().weather(), false, Conditions.Weather.values(), words()::weatherOf)
                .choice("matesGoToo", words().mates(), "", false, consent());
    }

    private EntryForm fitness(Again again) {
        EntryForm form = again.of("fitness")
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
                .choice("siteId", words().about(), words().thisAnimal(), false, sites)
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
                .choice("holdId", words().whichHold(), "", true, held)
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

    private static Again sent(String form, SentFields sent) {
        return new Again(form, sent, List.of());
    }

    void signFit(UUID caseId, SentFields sent) {
        ObjectNode body = fitness(sent("fitness", sent)).body(region.zone());
        ArrayNode items = body.putArray("items");
        for (FitnessCheck.Aspect aspect : FitnessCheck.Aspect.values()) {
            if (body.remove(aspect.name()) != null) {
                items.addObject().put("aspect", aspect.name()).put("answer", sent.given(aspect.name()));
            }
        }
        if (items.isEmpty()) {
            throw InvalidException.of(
                    FitnessCheck.Aspect.movement.name(), "Nothing was looked at.", "how one of them was found");
        }
        try {
            checks.sign(caseId, bodies.read(body, CheckEntry.class));
        } catch (InvalidException e) {
            throw new InvalidException(
                    e.errors().stream().map(error -> besideAspect(error, items)).toList());
        }
    }

    /** An item of the body is an aspect's field of the form. */
    private static FieldError besideAspect(FieldError error, ArrayNode items) {
        var found = ITEM.matcher(error.field());
        return found.matches() && items.has(Integer.parseInt(found.group(1)))
                ? new FieldError(
                        items.get(Integer.parseInt(found.group(1)))
                                .get("aspect")
                                .asText(),
                        error.detail(),
                        error.wanted(),
                        null)
                : error;
    }

    void approve(UUID caseId, SentFields sent) {
        ObjectNode body = approval(sent("approval", sent), List.of()).body(region.zone());
        String site = sent.given("siteId");
        body.remove("siteId");
        ApprovalEntry entry = bodies.read(body, ApprovalEntry.class);
        if (site == null) {
            approvals.recordForCase(caseId, entry);
        } else {
            approvals.recordForSite(Paging.uuid("siteId", site), entry);
        }
    }

    void assessPlace(UUID caseId, SentFields sent, String jurisdiction) {
        ObjectNode body = assess(sent("assess", sent), List.of(), true).body(region.zone());
        body.put("caseId", caseId.toString());
        if ("found".equals(sent.given("siteId"))) {
            body.remove("siteId");
            PlaceView found = cases.getCase(caseId).foundPlace();
            if (found == null) {
                throw InvalidException.of("siteId", "Nobody knows where it was found.", "a known site");
            }
            body.putObject("position")
                    .put("jurisdiction", jurisdiction)
                    .put("decimalLatitude", found.decimalLatitude())
                    .put("decimalLongitude", found.decimalLongitude())
                    .put("coordinateUncertaintyInMeters", found.coordinateUncertaintyInMeters());
        }
        assessments.assess(bodies.read(body, AssessmentEntry.class));
    }

    void recordUnsuitable(UUID caseId, SentFields sent) {
        assessments.recordUnsuitable(
                caseId, bodies.read(unsuitable(sent("unsuitable", sent)).body(region.zone()), UnsuitableEntry.class));
    }

    void clear(UUID caseId, SentFields sent) {
        ObjectNode body = clearing(sent("clearing", sent), List.of()).body(region.zone());
        UUID hold = Paging.uuid("holdId", String.valueOf(sent.given("holdId")));
        body.remove("holdId");
        boolean ofCase =
                holds.listHolds(caseId).stream().anyMatch(one -> one.id().equals(hold));
        if (!ofCase) {
            throw InvalidException.of("holdId", "That is no hold of this case.", "one of the list");
        }
        holds.clear(hold, bodies.read(body, HoldClearing.class));
    }

    UUID decide(UUID caseId, SentFields sent) {
        ObjectNode body = decision(sent("decision", sent)).body(region.zone());
        return decisions
                .decide(caseId, bodies.read(body, NonReleaseEntry.class))
                .id();
    }
}
