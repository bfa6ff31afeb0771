package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseEntries;
import org.culvert.animal.CaseService;
import org.culvert.animal.CustodyService;
import org.culvert.call.CallEntry;
import org.culvert.care.placement.PlacementService;
import org.culvert.clinic.ClinicService;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/** The way of animals that were collected lately: to the nearest clinic, and on to a carer who may hold them, or not. */
@ApplicationScoped
class CaseWork {
    private final CaseService cases;
    private final CustodyService custody;
    private final ClinicService clinic;
    private final PlacementService placements;
    private final Helpers helpers;

    CaseWork(
            CaseService cases,
            CustodyService custody,
            ClinicService clinic,
            PlacementService placements,
            Helpers helpers) {
        this.cases = cases;
        this.custody = custody;
        this.clinic = clinic;
        this.placements = placements;
        this.helpers = helpers;
    }

    void open(
            DemoRegion region,
            UUID incidentId,
            Incident incident,
            Incident.Call call,
            UUID attendance,
            UUID lead,
            Instant found,
            Dice dice) {
        Incident.Animal animal = call.animals().stream()
                .filter(each -> each.vitality().equals("alive"))
                .findFirst()
                .orElse(call.animals().get(0));
        boolean young = animal.lifeStage().equals("juvenile");
        UUID caseId = cases.open(new CaseEntries.CaseEntry(
                        null,
                        new CaseEntries.AnimalEntry(
                                animal.scientificName(),
                                CallEntry.Verification.seenByMember,
                                CallEntry.Sex.valueOf(animal.sex()),
                                animal.lifeStage().equals("unknown") ? null : animal.lifeStage(),
                                null,
                                null),
                        incidentId,
                        attendance,
                        found,
                        false,
                        young,
                        Holder.member(lead)))
                .id();
        Instant there = found.plusSeconds(60L * dice.from(45, 110));
        Helpers.Clinic nearest = helpers.nearestClinic(region, incident.spot());
        pass(caseId, Holder.organisation(nearest.id()), found.plusSeconds(1800), there);
        UUID visit = clinic.admit(new ClinicService.VisitEntry(
                        caseId,
                        nearest.id(),
                        there,
                        null,
                        null,
                        CallEntry.Answer.unknown,
                        young ? "dependent young, cold" : "struck; seen by the vet",
                        null,
                        null,
                        List.of(),
                        List.of(),
                        List.of()))
                .id();
        double fate = dice.unit();
        if (fate < 0.3) {
            end(caseId, CaseEntries.FateKind.euthanased, there.plusSeconds(5400), nearest.vetName());
            return;
        }
        if (fate < 0.4) {
            end(caseId, CaseEntries.FateKind.died, there.plusSeconds(30_000), null);
            return;
        }
        Instant leaves = there.plusSeconds(3600L * dice.from(14, 40));
        UUID carer = helpers.findCarer(caseId, leaves, dice);
        if (carer != null && leaves.isBefore(helpers.now())) {
            clinic.discharge(
                    visit,
                    new ClinicService.DischargeEntry(
                            nearest.vetName(),
                            nearest.vetRegistration(),
                            "Rest, warmth and quiet; weigh each day; back here in a week.",
                            "No climbing and no flight until seen again.",
                            null,
                            leaves.plusSeconds(7 * 86_400)
                                    .atZone(region.settings().zone())
                                    .toLocalDate(),
                            leaves));
            UUID handOver = placements
                    .place(caseId, new PlacementService.PlacementEntry(carer, visit, null, null, leaves))
                    .handOverId();
            Instant taken = leaves.plusSeconds(5400);
            custody.accept(handOver, new CaseEntries.AcceptanceEntry(taken));
            cases.move(caseId, new CaseEntries.WhereaboutsEntry(null, carer, null, taken));
        }
    }

    private void end(UUID caseId, CaseEntries.FateKind fate, Instant at, @Nullable String vet) {
        boolean putDown = fate == CaseEntries.FateKind.euthanased;
        cases.end(
                caseId,
                putDown
                        ? new CaseEntries.FateEntry(
                                fate,
                                at,
                                "injection by the vet",
                                "the vet's registration",
                                vet,
                                true,
                                vet,
                                at.plusSeconds(300))
                        : CaseEntries.FateEntry.of(fate, at));
        cases.dispose(caseId, new CaseEntries.DisposalEntry(CaseEntries.Disposal.incinerated, at.plusSeconds(86_400)));
    }

    /** Hands an animal on, offered and accepted. */
    void pass(UUID caseId, Holder taker, Instant offered, Instant accepted) {
        UUID handOver = custody.offer(caseId, new CaseEntries.HandOverEntry(taker, offered));
        custody.accept(handOver, new CaseEntries.AcceptanceEntry(accepted));
    }
}
