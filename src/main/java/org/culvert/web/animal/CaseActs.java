package org.culvert.web.animal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.CaseEntries;
import org.culvert.animal.CaseService;
import org.culvert.animal.CustodyService;
import org.culvert.care.growth.GrowthEntries;
import org.culvert.care.growth.GrowthService;
import org.culvert.care.health.SuspicionEntries;
import org.culvert.care.health.SuspicionService;
import org.culvert.care.placement.PlacementService;
import org.culvert.care.plan.PlanEntries;
import org.culvert.care.plan.PlanService;
import org.culvert.clinic.ClinicService;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.sight.Sight;
import org.culvert.release.fitness.FitnessService;
import org.culvert.release.holds.HoldService;
import org.culvert.web.HolderNames;
import org.culvert.web.forms.EntryBody;
import org.jspecify.annotations.Nullable;

/** Carries out what a form of a case says, as the API would: of records of that case that the asker sees. */
@ApplicationScoped
class CaseActs {
    private final CaseService cases;
    private final CustodyService custody;
    private final ClinicService clinic;
    private final PlanService plans;
    private final GrowthService growth;
    private final PlacementService placements;
    private final HoldService holds;
    private final SuspicionService suspicions;
    private final FitnessService checks;
    private final HolderNames holders;
    private final FormBodies bodies;
    private final Sight sight;

    CaseActs(
            CaseService cases,
            CustodyService custody,
            ClinicService clinic,
            PlanService plans,
            GrowthService growth,
            PlacementService placements,
            HoldService holds,
            SuspicionService suspicions,
            FitnessService checks,
            HolderNames holders,
            FormBodies bodies,
            Sight sight) {
        this.cases = cases;
        this.custody = custody;
        this.clinic = clinic;
        this.plans = plans;
        this.growth = growth;
        this.placements = placements;
        this.holds = holds;
        this.suspicions = suspicions;
        this.checks = checks;
        this.holders = holders;
        this.bodies = bodies;
        this.sight = sight;
    }

    /**
     * @param target the visit, hold, suspicion or hand-over of the case that the form is about; null: the case itself
     * @param body as the API takes it, but for what the page knows by itself
     */
    @Transactional
    void carryOut(CaseFormKind kind, UUID caseId, @Nullable UUID target, EntryBody body) {
        sight.requireSeen("case", caseId);
        switch (kind) {
            case visit -> clinic.admit(read(ofClinic(caseId, body), ClinicService.VisitEntry.class));
            case finding -> clinic.addFinding(visit(caseId, target), read(body, ClinicService.FindingEntry.class));
            case reading -> clinic.addReading(visit(caseId, target), read(body, ClinicService.ReadingEntry.class));
            case procedure ->
                clinic.addProcedure(visit(caseId, target), read(body, ClinicService.ProcedureEntry.class));
            case drugOrder ->
                clinic.addDrugOrder(visit(caseId, target), read(body, ClinicService.DrugOrderEntry.class));
            case discharge -> clinic.discharge(visit(caseId, target), read(body, ClinicService.DischargeEntry.class));
            case plan -> plans.make(caseId, read(ofLastDischarge(caseId, body), PlanEntries.PlanEntry.class));
            case measurement -> growth.measure(caseId, read(body, GrowthEntries.BodyMeasurementEntry.class));
            case whereabouts -> cases.move(caseId, read(body, CaseEntries.WhereaboutsEntry.class));
            case handOver -> custody.offer(caseId, read(toWhom(body), CaseEntries.HandOverEntry.class));
            case acceptance -> custody.accept(handOver(caseId, target), read(body, CaseEntries.AcceptanceEntry.class));
            case refusal -> custody.refuse(handOver(caseId, target), read(body, CaseEntries.RefusalEntry.class));
            case placement -> placements.place(caseId, read(body, PlacementService.PlacementEntry.class));
            case hold -> holds.setHold(caseId, read(body, HoldService.HoldEntry.class));
            case clearing -> holds.clear(holdOf(caseId, target), read(body, HoldService.HoldClearing.class));
            case suspicion -> suspicions.suspect(caseId, read(body, SuspicionEntries.SuspicionEntry.class));
            case telling ->
                suspicions.tell(suspicionOf(caseId, target), read(body, SuspicionEntries.SuspicionTelling.class));
            case fitness -> checks.sign(caseId, checkOf(body));
            case fate -> cases.end(caseId, read(body, CaseEntries.FateEntry.class));
            case disposal -> cases.dispose(caseId, read(body, CaseEntries.DisposalEntry.class));
        }
    }

    private <T> T read(EntryBody body, Class<T> type) {
        return body.read(bodies, type);
    }

    /** A clinic's own visits are its own; others say at which clinic. */
    private EntryBody ofClinic(UUID caseId, EntryBody body) {
        ObjectNode told = body.told().put("caseId", caseId.toString());
        UUID own = sight.viewer().organisationId();
        if (!told.has("clinicId") && own != null) {
            told.put("clinicId", own.toString());
        }
        return body;
    }

    /** A plan follows the last discharge, if there is one. */
    private EntryBody ofLastDischarge(UUID caseId, EntryBody body) {
        clinic.listVisits(caseId).stream()
                .filter(visit -> visit.discharge() != null)
                .reduce((one, later) -> later)
                .ifPresent(visit -> body.told().put("visitId", visit.id().toString()));
        return body;
    }

    /** Who takes it: an organisation, or a member by call sign, exactly as it is written. */
    private EntryBody toWhom(EntryBody body) {
        JsonNode callSign = body.told().remove("callSign");
        if (callSign != null) {
            ObjectNode taker = body.told().get("taker") instanceof ObjectNode there
                    ? there
                    : body.told().putObject("taker");
            taker.put(
                    "memberId",
                    holders.memberCalled("callSign", callSign.asText()).toString());
        }
        return body;
    }

    /** Aspects of the form are items of the body, and what is wrong with an item stands beside its aspect. */
    private FitnessService.CheckEntry checkOf(EntryBody body) {
        JsonNode told = body.told().remove("aspect");
        List<String> aspects = new ArrayList<>();
        if (told != null) {
            ArrayNode items = body.told().putArray("items");
            told.fields().forEachRemaining(one -> {
                aspects.add(one.getKey());
                items.addObject().put("aspect", one.getKey()).set("answer", one.getValue());
            });
        }
        try {
            return read(body, FitnessService.CheckEntry.class);
        } catch (InvalidException e) {
            throw new InvalidException(e.errors().stream()
                    .map(error -> new FieldError(aspect(aspects, error.field()), error.detail(), error.wanted(), null))
                    .toList());
        }
    }

    private static String aspect(List<String> aspects, String field) {
        for (int i = 0; i < aspects.size(); i++) {
            if (field.startsWith("items[" + i + "]") || field.startsWith("items." + i + ".")) {
                return "aspect." + aspects.get(i);
            }
        }
        return field;
    }

    private UUID visit(UUID caseId, @Nullable UUID target) {
        UUID id = Objects.requireNonNull(target, "the address names the visit");
        sight.requireSeen("visit", id);
        return require("visit of that case", id, caseId, clinic.getVisit(id).caseId());
    }

    private UUID handOver(UUID caseId, @Nullable UUID target) {
        UUID id = Objects.requireNonNull(target, "the address names the hand-over");
        return require(
                "hand-over of that case", id, caseId, cases.getHandOver(id).caseId());
    }

    private UUID holdOf(UUID caseId, @Nullable UUID target) {
        UUID id = Objects.requireNonNull(target, "the address names the hold");
        return require("hold of that case", id, caseId, holds.getHold(id).caseId());
    }

    private UUID suspicionOf(UUID caseId, @Nullable UUID target) {
        UUID id = Objects.requireNonNull(target, "the address names the suspicion");
        return require(
                "suspicion of that case",
                id,
                caseId,
                suspicions.getSuspicion(id).caseId());
    }

    private static UUID require(String what, UUID id, UUID caseId, UUID itsCase) {
        if (!itsCase.equals(caseId)) {
            throw new NotFoundException(what, id);
        }
        return id;
    }
}
