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
import org.culvert.dispatch.DispatchService;
import org.culvert.roster.Holder;

/** A dead wombat whom two drivers reported, and the young one she carried. */
@ApplicationScoped
class WombatStory {
    private final Outing outings;
    private final CaseService cases;
    private final CustodyService custody;
    private final ClinicService clinic;
    private final PlacementService placements;
    private final CaseWork work;
    private final Helpers helpers;

    WombatStory(
            Outing outings,
            CaseService cases,
            CustodyService custody,
            ClinicService clinic,
            PlacementService placements,
            CaseWork work,
            Helpers helpers) {
        this.outings = outings;
        this.cases = cases;
        this.custody = custody;
        this.clinic = clinic;
        this.placements = placements;
        this.work = work;
        this.helpers = helpers;
    }

    void tell(DemoRegion region, UUID incidentId, Incident incident, Instant start) {
        Outing.Done outing = outings.goOut(incidentId, start, DispatchService.Outcome.deadChecked, 1);
        UUID mother = outings.open(
                incidentId,
                outing,
                new CaseEntries.AnimalEntry(
                        "Vombatus ursinus",
                        CallEntry.Verification.seenByMember,
                        CallEntry.Sex.female,
                        "adult",
                        null,
                        null));
        cases.end(
                mother,
                CaseEntries.FateEntry.of(
                        CaseEntries.FateKind.deadWhenFound, outing.there().plusSeconds(300)));
        cases.dispose(
                mother,
                new CaseEntries.DisposalEntry(
                        CaseEntries.Disposal.movedOffRoad, outing.there().plusSeconds(900)));
        UUID young = cases.openForYoung(
                        mother,
                        new CaseEntries.AnimalEntry(
                                "Vombatus ursinus",
                                CallEntry.Verification.seenByMember,
                                CallEntry.Sex.male,
                                "pouch young",
                                null,
                                null),
                        outing.there().plusSeconds(600),
                        Holder.member(outing.leadId()))
                .id();
        Helpers.Clinic nearest = helpers.nearestClinic(region, incident.spot());
        Instant admitted = outing.there().plusSeconds(6000);
        work.pass(young, Holder.organisation(nearest.id()), outing.there().plusSeconds(1500), admitted);
        UUID visit = clinic.admit(new ClinicService.VisitEntry(
                        young,
                        nearest.id(),
                        admitted,
                        1480.0,
                        3,
                        CallEntry.Answer.no,
                        "dependent young, furred, unhurt",
                        null,
                        null,
                        List.of(),
                        List.of(),
                        List.of()))
                .id();
        Instant leaves = admitted.plusSeconds(10_800);
        UUID carer = helpers.findCarer(young, leaves, new Dice(incident.number(), "carer"));
        if (carer != null) {
            clinic.discharge(
                    visit,
                    new ClinicService.DischargeEntry(
                            nearest.vetName(),
                            nearest.vetRegistration(),
                            "Warm and quiet; weigh each day; a companion of its kind as soon as one is there.",
                            null,
                            "a carer who is authorised for wombats and has another young one",
                            null,
                            leaves));
            UUID handOver = placements
                    .place(young, new PlacementService.PlacementEntry(carer, visit, "with a companion", null, leaves))
                    .handOverId();
            custody.accept(handOver, new CaseEntries.AcceptanceEntry(leaves.plusSeconds(3600)));
        }
    }
}
