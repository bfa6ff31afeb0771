package org.culvert.web.animal;

import static org.culvert.web.forms.FieldShape.Kind.day;
import static org.culvert.web.forms.FieldShape.Kind.hidden;
import static org.culvert.web.forms.FieldShape.Kind.lines;
import static org.culvert.web.forms.FieldShape.Kind.moment;
import static org.culvert.web.forms.FieldShape.Kind.number;
import static org.culvert.web.forms.FieldShape.Kind.text;
import static org.culvert.web.forms.FieldShape.Kind.truth;
import static org.culvert.web.forms.FieldShape.choice;
import static org.culvert.web.forms.FieldShape.of;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.animal.CaseEntries.Disposal;
import org.culvert.animal.CaseEntries.FateKind;
import org.culvert.call.CallEntry;
import org.culvert.care.growth.GrowthEntries.BodyMeasure;
import org.culvert.clinic.ClinicService.Confidence;
import org.culvert.clinic.ClinicService.FindingKind;
import org.culvert.clinic.ClinicService.Side;
import org.culvert.platform.Role;
import org.culvert.release.holds.HoldService.ClearedBy;
import org.culvert.release.rules.FitnessCheck;
import org.culvert.release.rules.Hold;
import org.culvert.release.rules.Site;
import org.culvert.web.forms.FieldShape;
import org.jspecify.annotations.Nullable;

/** The forms of a case: where each is sent, who has it, and what it asks. */
enum CaseFormKind {
    visit(
            "visits",
            Set.of(Role.CLINIC, Role.COORDINATOR),
            choice("clinicId"),
            of(moment, "arrivedAt"),
            of(number, "weightGrams"),
            of(number, "bodyCondition"),
            of(lines, "diagnosis"),
            choice("gravid", CallEntry.Answer.values()).isRare(),
            of(lines, "causeOfDeath").isRare(),
            of(moment, "stabilisedAt").isRare(),
            choice("findings[0].part").isRare(),
            of(text, "findings[0].bodyPart").isRare(),
            choice("findings[0].side", Side.values()).isRare(),
            choice("findings[0].kind", FindingKind.values()).isRare(),
            of(lines, "findings[0].finding").isRare(),
            of(text, "readings[0].what").isRare(),
            of(number, "readings[0].counted").isRare(),
            of(text, "readings[0].reader").isRare(),
            choice("readings[0].confidence", Confidence.values()).isRare(),
            of(lines, "procedures[0].procedure").isRare(),
            of(text, "procedures[0].vetName").isRare(),
            of(text, "procedures[0].vetRegistration").isRare()),
    finding(
            "visits/{target}/findings",
            Set.of(Role.CLINIC),
            choice("part"),
            of(text, "bodyPart"),
            choice("side", Side.values()),
            choice("kind", FindingKind.values()),
            of(lines, "finding").isNeeded()),
    reading(
            "visits/{target}/readings",
            Set.of(Role.CLINIC),
            of(text, "what").isNeeded(),
            of(number, "counted"),
            of(text, "reader").isNeeded(),
            choice("confidence", Confidence.values()).isNeeded(),
            of(moment, "at")),
    procedure(
            "visits/{target}/procedures",
            Set.of(Role.CLINIC),
            of(lines, "procedure").isNeeded(),
            of(text, "vetName").isNeeded(),
            of(text, "vetRegistration").isNeeded(),
            of(moment, "at")),
    drugOrder(
            "visits/{target}/drug-orders",
            Set.of(Role.CLINIC),
            of(text, "drug").isNeeded(),
            of(text, "dose").isNeeded(),
            of(text, "route").isNeeded(),
            of(text, "times").isNeeded(),
            of(day, "from"),
            of(day, "until"),
            of(truth, "controlled"),
            of(text, "vetName").isNeeded(),
            of(text, "vetRegistration").isNeeded()),
    discharge(
            "visits/{target}/discharge",
            Set.of(Role.CLINIC),
            of(text, "vetName").isNeeded(),
            of(text, "vetRegistration").isNeeded(),
            of(lines, "plan").isNeeded(),
            of(lines, "limits"),
            of(text, "mayHold"),
            of(day, "reviewOn"),
            of(moment, "at")),
    plan(
            "aftercare-plans",
            Set.of(Role.CLINIC),
            choice("templateId").isNeeded(),
            of(text, "vetName").isNeeded(),
            of(text, "vetRegistration").isNeeded(),
            of(day, "dayZero"),
            of(lines, "words")),
    measurement(
            "body-measurements",
            Set.of(Role.CLINIC, Role.CARER, Role.COORDINATOR),
            choice("measure", BodyMeasure.values()).isNeeded(),
            of(number, "value").isNeeded(),
            of(moment, "at"),
            of(text, "words")),
    whereabouts(
            "whereabouts",
            Set.of(Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR),
            choice("organisationId"),
            of(text, "words"),
            of(moment, "at")),
    handOver("hand-overs", everybody(), choice("taker.organisationId"), of(text, "callSign"), of(moment, "at")),
    acceptance("hand-overs/{target}/acceptance", everybody(), of(moment, "at")),
    refusal("hand-overs/{target}/refusal", everybody(), of(text, "reason").isNeeded()),
    placement(
            "placements",
            Set.of(Role.CLINIC, Role.COORDINATOR),
            of(hidden, "carerMemberId"),
            choice("visitId"),
            of(lines, "conditions"),
            of(text, "despite")),
    hold(
            "holds",
            everybody(),
            choice("kind", Hold.Kind.values()).isNeeded(),
            of(moment, "since"),
            of(text, "askedBy"),
            of(text, "reference")),
    clearing(
            "holds/{target}/clearing",
            Set.of(Role.CLINIC, Role.COORDINATOR),
            choice("by", ClearedBy.values()).isNeeded(),
            of(text, "name").isNeeded(),
            of(text, "reference").isNeeded(),
            of(moment, "at")),
    suspicion(
            "disease-suspicions",
            everybody(),
            choice("conditionId").isNeeded(),
            of(lines, "signs").isNeeded(),
            of(text, "suspectedBy").isNeeded(),
            of(moment, "at")),
    telling(
            "disease-suspicions/{target}/telling",
            everybody(),
            of(text, "to").isNeeded(),
            of(text, "by").isNeeded(),
            of(text, "reference"),
            of(moment, "at")),
    fitness(
            "fitness-checks",
            Set.of(Role.CLINIC, Role.COORDINATOR),
            Stream.of(
                            Stream.of(
                                    of(text, "vetName").isNeeded(),
                                    of(text, "vetRegistration").isNeeded()),
                            Arrays.stream(FitnessCheck.Aspect.values())
                                    .map(one -> choice("aspect." + one, FitnessCheck.Answer.values())),
                            Stream.of(
                                    choice("housedWithPets", Site.Consent.values()),
                                    of(lines, "words"),
                                    of(moment, "at")))
                    .flatMap(one -> one)
                    .toArray(FieldShape[]::new)),
    fate(
            "fate",
            Set.of(Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR),
            choice(
                            "fate",
                            Arrays.stream(FateKind.values())
                                    .filter(one -> one != FateKind.released)
                                    .toArray(FateKind[]::new))
                    .isNeeded(),
            of(moment, "at"),
            of(text, "deathConfirmedBy"),
            of(moment, "deathConfirmedAt"),
            of(text, "method"),
            of(text, "authority"),
            of(text, "approvedBy"),
            of(truth, "barbiturate")),
    disposal(
            "body/disposal",
            Set.of(Role.RESCUER, Role.CLINIC, Role.COORDINATOR),
            choice("disposal", Disposal.values()).isNeeded(),
            of(moment, "at"));

    private static Set<String> everybody() {
        return Set.of(Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR);
    }

    private final String path;
    private final Set<String> roles;
    private final List<FieldShape> fields;

    CaseFormKind(String path, Set<String> roles, FieldShape... fields) {
        this.path = path;
        this.roles = roles;
        this.fields = List.of(fields);
    }

    Set<String> roles() {
        return roles;
    }

    List<FieldShape> fields() {
        return fields;
    }

    /** Where it is sent. */
    String address(UUID caseId, @Nullable UUID target) {
        return "/cases/" + caseId + "/" + (target == null ? path : path.replace("{target}", target.toString()));
    }

    /** What it is called on its page. */
    String id(@Nullable UUID target) {
        return target == null ? name() : name() + "-" + target;
    }
}
