package org.culvert.web.animal;

import static org.culvert.web.animal.CaseField.Type.day;
import static org.culvert.web.animal.CaseField.Type.flag;
import static org.culvert.web.animal.CaseField.Type.hidden;
import static org.culvert.web.animal.CaseField.Type.line;
import static org.culvert.web.animal.CaseField.Type.lines;
import static org.culvert.web.animal.CaseField.Type.moment;
import static org.culvert.web.animal.CaseField.Type.number;
import static org.culvert.web.animal.CaseField.choice;
import static org.culvert.web.animal.CaseField.of;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
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
            choice("gravid", CallEntry.Answer.values()).isMore(),
            of(lines, "causeOfDeath").isMore(),
            of(moment, "stabilisedAt").isMore(),
            choice("findings[0].part").isMore(),
            of(line, "findings[0].bodyPart").isMore(),
            choice("findings[0].side", Side.values()).isMore(),
            choice("findings[0].kind", FindingKind.values()).isMore(),
            of(lines, "findings[0].finding").isMore(),
            of(line, "readings[0].what").isMore(),
            of(number, "readings[0].counted").isMore(),
            of(line, "readings[0].reader").isMore(),
            choice("readings[0].confidence", Confidence.values()).isMore(),
            of(lines, "procedures[0].procedure").isMore(),
            of(line, "procedures[0].vetName").isMore(),
            of(line, "procedures[0].vetRegistration").isMore()),
    finding(
            "visits/{target}/findings",
            Set.of(Role.CLINIC),
            choice("part"),
            of(line, "bodyPart"),
            choice("side", Side.values()),
            choice("kind", FindingKind.values()),
            of(lines, "finding").isNeeded()),
    reading(
            "visits/{target}/readings",
            Set.of(Role.CLINIC),
            of(line, "what").isNeeded(),
            of(number, "counted"),
            of(line, "reader").isNeeded(),
            choice("confidence", Confidence.values()).isNeeded(),
            of(moment, "at")),
    procedure(
            "visits/{target}/procedures",
            Set.of(Role.CLINIC),
            of(lines, "procedure").isNeeded(),
            of(line, "vetName").isNeeded(),
            of(line, "vetRegistration").isNeeded(),
            of(moment, "at")),
    drugOrder(
            "visits/{target}/drug-orders",
            Set.of(Role.CLINIC),
            of(line, "drug").isNeeded(),
            of(line, "dose").isNeeded(),
            of(line, "route").isNeeded(),
            of(line, "times").isNeeded(),
            of(day, "from"),
            of(day, "until"),
            of(flag, "controlled"),
            of(line, "vetName").isNeeded(),
            of(line, "vetRegistration").isNeeded()),
    discharge(
            "visits/{target}/discharge",
            Set.of(Role.CLINIC),
            of(line, "vetName").isNeeded(),
            of(line, "vetRegistration").isNeeded(),
            of(lines, "plan").isNeeded(),
            of(lines, "limits"),
            of(line, "mayHold"),
            of(day, "reviewOn"),
            of(moment, "at")),
    plan(
            "aftercare-plans",
            Set.of(Role.CLINIC),
            choice("templateId").isNeeded(),
            of(line, "vetName").isNeeded(),
            of(line, "vetRegistration").isNeeded(),
            of(day, "dayZero"),
            of(lines, "words")),
    measurement(
            "body-measurements",
            Set.of(Role.CLINIC, Role.CARER, Role.COORDINATOR),
            choice("measure", BodyMeasure.values()).isNeeded(),
            of(number, "value").isNeeded(),
            of(moment, "at"),
            of(line, "words")),
    whereabouts(
            "whereabouts",
            Set.of(Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR),
            choice("organisationId"),
            of(line, "words"),
            of(moment, "at")),
    handOver("hand-overs", everybody(), choice("taker.organisationId"), of(line, "callSign"), of(moment, "at")),
    acceptance("hand-overs/{target}/acceptance", everybody(), of(moment, "at")),
    refusal("hand-overs/{target}/refusal", everybody(), of(line, "reason").isNeeded()),
    placement(
            "placements",
            Set.of(Role.CLINIC, Role.COORDINATOR),
            of(hidden, "carerMemberId"),
            of(lines, "conditions"),
            of(line, "despite")),
    hold(
            "holds",
            everybody(),
            choice("kind", Hold.Kind.values()).isNeeded(),
            of(moment, "since"),
            of(line, "askedBy"),
            of(line, "reference")),
    clearing(
            "holds/{target}/clearing",
            Set.of(Role.CLINIC, Role.COORDINATOR),
            choice("by", ClearedBy.values()).isNeeded(),
            of(line, "name").isNeeded(),
            of(line, "reference").isNeeded(),
            of(moment, "at")),
    suspicion(
            "disease-suspicions",
            everybody(),
            choice("conditionId").isNeeded(),
            of(lines, "signs").isNeeded(),
            of(line, "suspectedBy").isNeeded(),
            of(moment, "at")),
    telling(
            "disease-suspicions/{target}/telling",
            everybody(),
            of(line, "to").isNeeded(),
            of(line, "by").isNeeded(),
            of(line, "reference"),
            of(moment, "at")),
    fitness(
            "fitness-checks",
            Set.of(Role.CLINIC, Role.COORDINATOR),
            Stream.of(
                            Stream.of(
                                    of(line, "vetName").isNeeded(),
                                    of(line, "vetRegistration").isNeeded()),
                            Arrays.stream(FitnessCheck.Aspect.values())
                                    .map(one -> choice("aspect." + one, FitnessCheck.Answer.values())),
                            Stream.of(
                                    choice("housedWithPets", Site.Consent.values()),
                                    of(lines, "words"),
                                    of(moment, "at")))
                    .flatMap(one -> one)
                    .toArray(CaseField[]::new)),
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
            of(line, "deathConfirmedBy"),
            of(moment, "deathConfirmedAt"),
            of(line, "method"),
            of(line, "authority"),
            of(line, "approvedBy"),
            of(flag, "barbiturate")),
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
    private final List<CaseField> fields;

    CaseFormKind(String path, Set<String> roles, CaseField... fields) {
        this.path = path;
        this.roles = roles;
        this.fields = List.of(fields);
    }

    Set<String> roles() {
        return roles;
    }

    List<CaseField> fields() {
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

    /** What was typed, as the API would take it. */
    ObjectNode body(Map<String, String> typed, ZoneId zone) {
        ObjectNode body = JsonNodeFactory.instance.objectNode();
        for (CaseField field : fields) {
            String told = typed.getOrDefault(field.path(), "").strip();
            if (!told.isEmpty()) {
                field.put(body, told, zone);
            }
        }
        return body;
    }
}
