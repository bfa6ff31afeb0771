package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.CaseEntries;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.animal.CustodyService;
import org.culvert.call.CallEntry;
import org.culvert.care.ClutchService;
import org.culvert.care.PlacementService;
import org.culvert.clinic.ClinicService;
import org.culvert.dispatch.DispatchService;
import org.culvert.roster.Holder;

/** A turtle struck on her way to nest: eggs recovered, a clutch with somebody else, weeks of care, and back. */
@ApplicationScoped
class TurtleStory {
    private final Outing outings;
    private final CaseService cases;
    private final CustodyService custody;
    private final ClinicService clinic;
    private final PlacementService placements;
    private final ClutchService clutches;
    private final ReleaseLoader releases;
    private final CaseWork work;
    private final Helpers helpers;

    TurtleStory(
            Outing outings,
            CaseService cases,
            CustodyService custody,
            ClinicService clinic,
            PlacementService placements,
            ClutchService clutches,
            ReleaseLoader releases,
            CaseWork work,
            Helpers helpers) {
        this.outings = outings;
        this.cases = cases;
        this.custody = custody;
        this.clinic = clinic;
        this.placements = placements;
        this.clutches = clutches;
        this.releases = releases;
        this.work = work;
        this.helpers = helpers;
    }

    void tell(DemoRegion region, UUID incidentId, Incident incident, Instant start, boolean lastSeason) {
        Outing.Done outing = outings.goOut(incidentId, start, DispatchService.Outcome.collected, 0);
        UUID caseId = outings.open(
                incidentId,
                outing,
                new CaseEntries.AnimalEntry(
                        "Chelodina longicollis",
                        CallEntry.Verification.seenByMember,
                        CallEntry.Sex.female,
                        "adult",
                        null,
                        "old notch in the third left marginal scute; photographs in the case"));
        Helpers.Clinic hospital = helpers.clinic(region, "clinic1");
        Instant admitted = outing.there().plusSeconds(6300);
        work.pass(caseId, Holder.organisation(hospital.id()), outing.there().plusSeconds(1200), admitted);
        UUID visit = clinic.admit(new ClinicService.VisitEntry(
                        caseId,
                        hospital.id(),
                        admitted,
                        lastSeason ? 684.0 : 731.0,
                        CallEntry.Answer.yes,
                        "struck by a vehicle; shell fractures; carries eggs",
                        null,
                        List.of(
                                new ClinicService.FindingEntry(
                                        "bridge of the shell", ClinicService.Side.right, "fracture, stable"),
                                new ClinicService.FindingEntry(
                                        "marginal scutes 7 to 9", ClinicService.Side.right, "abraded")),
                        List.of(
                                new ClinicService.ReadingEntry(
                                        "eggs",
                                        9,
                                        hospital.vetName(),
                                        ClinicService.Confidence.high,
                                        admitted.plusSeconds(2400)),
                                new ClinicService.ReadingEntry(
                                        "fracture of the pelvis",
                                        0,
                                        hospital.vetName(),
                                        ClinicService.Confidence.medium,
                                        admitted.plusSeconds(2400))),
                        List.of(new ClinicService.ProcedureEntry(
                                "Eggs recovered through the soft tissue in front of the right hind leg; shell stabilised.",
                                hospital.vetName(),
                                hospital.vetRegistration(),
                                admitted.plus(Duration.ofHours(18))))))
                .id();
        Instant laid = admitted.plus(Duration.ofHours(19));
        Instant leaves = admitted.plus(Duration.ofDays(3));
        UUID carer = Objects.requireNonNull(
                helpers.findCarer(region, "turtles", leaves, new Dice(incident.number(), "carer")));
        UUID clutch = clutches.createClutch(new ClutchService.ClutchEntry(
                        caseId,
                        visit,
                        Holder.member(helpers.incubator(region, "turtles", laid, carer)),
                        new ClutchService.EggsEntry(8, 7, 1, 0, laid)))
                .id();
        clinic.discharge(
                visit,
                new ClinicService.DischargeEntry(
                        hospital.vetName(),
                        hospital.vetRegistration(),
                        "Out of the water for two days, then one short swim a day under your eyes for two weeks, then"
                                + " water as before. Look at the wound each day, weigh each week. Stitches out here in"
                                + " six weeks.",
                        "Do not leave her in water unwatched before the second week is over.",
                        leaves.plus(Duration.ofDays(42))
                                .atZone(region.settings().zone())
                                .toLocalDate(),
                        leaves));
        UUID handOver = placements
                .place(caseId, new PlacementService.PlacementEntry(carer, visit, "dry and quiet", leaves))
                .handOverId();
        Instant taken = leaves.plusSeconds(5400);
        custody.accept(handOver, new CaseEntries.AcceptanceEntry(taken));
        cases.move(caseId, new CaseEntries.WhereaboutsEntry(null, carer, null, taken));
        clutches.addEggs(clutch, new ClutchService.EggsEntry(1, 1, 0, 0, taken.plus(Duration.ofDays(2))));
        if (lastSeason) {
            Instant hatched = laid.plus(Duration.ofDays(67));
            List<UUID> going = new ArrayList<>(List.of(caseId));
            clutches.hatch(clutch, new ClutchService.HatchingEntry(6, hatched)).hatchlings().stream()
                    .map(CaseView::id)
                    .forEach(going::add);
            releases.release(
                    region, going, incident.spot(), "turtles", hatched.plus(Duration.ofDays(21)), carer, hospital);
        }
    }
}
