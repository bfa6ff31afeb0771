package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseEntries;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.animal.CustodyService;
import org.culvert.call.CallEntry;
import org.culvert.care.clutch.ClutchEntries;
import org.culvert.care.clutch.ClutchService;
import org.culvert.care.placement.PlacementService;
import org.culvert.clinic.ClinicService;
import org.culvert.dispatch.DispatchService;
import org.culvert.release.nonrelease.NonReleaseEntries;
import org.culvert.release.nonrelease.NonReleaseService;
import org.culvert.roster.Holder;

/** Turtles struck on their way to nest: eggs recovered, a clutch with somebody else, weeks of care, and back, or not. */
@ApplicationScoped
class TurtleStory {
    private final Outing outings;
    private final CaseService cases;
    private final CustodyService custody;
    private final ClinicService clinic;
    private final PlacementService placements;
    private final ClutchService clutches;
    private final IncubatorStory incubator;
    private final ReleaseLoader releases;
    private final NonReleaseService nonReleases;
    private final AftercareStory aftercare;
    private final CaseWork work;
    private final Helpers helpers;

    TurtleStory(
            Outing outings,
            CaseService cases,
            CustodyService custody,
            ClinicService clinic,
            PlacementService placements,
            ClutchService clutches,
            IncubatorStory incubator,
            ReleaseLoader releases,
            NonReleaseService nonReleases,
            AftercareStory aftercare,
            CaseWork work,
            Helpers helpers) {
        this.outings = outings;
        this.cases = cases;
        this.custody = custody;
        this.clinic = clinic;
        this.placements = placements;
        this.clutches = clutches;
        this.incubator = incubator;
        this.releases = releases;
        this.nonReleases = nonReleases;
        this.aftercare = aftercare;
        this.work = work;
        this.helpers = helpers;
    }

    /** One of last season, who went back with her hatchlings. */
    void tellOfOneThatWentBack(DemoRegion region, UUID incidentId, Incident incident, Instant start) {
        Told told = admit(region, incidentId, start, 684.0, 9, 0);
        UUID clutch = recoverEggs(region, told, incident);
        Instant laid = told.admitted().plus(Duration.ofHours(19));
        UUID carer = sendHome(region, told, incident);
        clutches.addEggs(
                clutch,
                new ClutchEntries.EggsEntry(
                        1,
                        1,
                        0,
                        0,
                        ClutchEntries.EggsCame.laidInCare,
                        told.leaves().plus(Duration.ofHours(50))));
        Instant hatched = laid.plus(Duration.ofDays(67));
        List<UUID> going = new ArrayList<>(List.of(told.caseId()));
        clutches.hatch(clutch, new ClutchEntries.HatchingEntry(6, hatched)).hatchlings().stream()
                .map(CaseView::id)
                .forEach(going::add);
        releases.release(
                region, going, incident.spot(), "turtles", hatched.plus(Duration.ofDays(21)), carer, told.hospital());
    }

    /** One of this spring: eggs in the incubator, herself with a carer. */
    void tellOfOneInCare(DemoRegion region, UUID incidentId, Incident incident, Instant start) {
        Told told = admit(region, incidentId, start, 731.0, 9, 0);
        UUID clutch = recoverEggs(region, told, incident);
        sendHome(region, told, incident);
        aftercare.tell(region, told.caseId(), told.visit(), told.hospital(), told.leaves(), incident);
        clutches.addEggs(
                clutch,
                new ClutchEntries.EggsEntry(
                        1,
                        1,
                        0,
                        0,
                        ClutchEntries.EggsCame.laidInCare,
                        told.leaves().plus(Duration.ofHours(50))));
        incubator.tell(clutch, told.admitted().plus(Duration.ofHours(19)), incident);
    }

    /** One whose pelvis healed too narrow for eggs: two vets say that she stays, and somebody looks again. */
    void tellOfOneThatStays(DemoRegion region, UUID incidentId, Incident incident, Instant start) {
        Told told = admit(region, incidentId, start, 655.0, 0, 2);
        sendHome(region, told, incident);
        Instant looked = told.leaves().plus(Duration.ofDays(49));
        UUID decision = nonReleases
                .decide(
                        told.caseId(),
                        new NonReleaseEntries.NonReleaseEntry(
                                List.of(NonReleaseEntries.NonReleaseGround.cannotBreedSafely),
                                "Both fractures of the pelvis have healed, and the way through is narrower than an egg of"
                                        + " her kind. In the wild she would die of the next clutch.",
                                told.hospital().vetName(),
                                told.hospital().vetRegistration(),
                                looked,
                                looked.plus(Duration.ofDays(365))
                                        .atZone(region.settings().zone())
                                        .toLocalDate()))
                .id();
        Helpers.Clinic other = helpers.clinic(region, "clinic2");
        nonReleases.addOpinion(
                decision,
                new NonReleaseEntries.SecondOpinionEntry(
                        other.vetName(),
                        other.vetRegistration(),
                        true,
                        "I measured the same on the films, and agree.",
                        looked.plus(Duration.ofDays(4))));
        nonReleases.addNotice(
                decision,
                new NonReleaseEntries.AuthorityNoticeEntry(
                        "the wildlife authority of the demo region", "N-0417", looked.plus(Duration.ofDays(5))));
        nonReleases.addReview(
                decision,
                new NonReleaseEntries.WelfareReviewEntry(
                        told.hospital().vetName(),
                        "Eats, basks and swims evenly; pond, shelter and feed are as they should be.",
                        looked.plus(Duration.ofDays(95)),
                        looked.plus(Duration.ofDays(460))
                                .atZone(region.settings().zone())
                                .toLocalDate()));
    }

    private record Told(
            UUID caseId, UUID visit, Helpers.Clinic hospital, Instant admitted, Instant leaves, List<String> orders) {}

    private Told admit(
            DemoRegion region, UUID incidentId, Instant start, double grams, int eggs, int fracturesOfPelvis) {
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
        boolean gravid = eggs > 0;
        UUID visit = clinic.admit(new ClinicService.VisitEntry(
                        caseId,
                        hospital.id(),
                        admitted,
                        grams,
                        3,
                        gravid ? CallEntry.Answer.yes : CallEntry.Answer.no,
                        "struck by a vehicle; shell fractures" + (gravid ? "; carries eggs" : ""),
                        null,
                        null,
                        List.of(
                                new ClinicService.FindingEntry(
                                        "bridge of the shell", ClinicService.Side.right, "fracture, stable"),
                                new ClinicService.FindingEntry(
                                        "marginal scutes 7 to 9", ClinicService.Side.right, "abraded")),
                        List.of(
                                reading(hospital, "eggs", eggs, ClinicService.Confidence.high, admitted),
                                reading(
                                        hospital,
                                        "fracture of the pelvis",
                                        fracturesOfPelvis,
                                        ClinicService.Confidence.medium,
                                        admitted)),
                        List.of(new ClinicService.ProcedureEntry(
                                gravid
                                        ? "Eggs recovered through the soft tissue in front of the right hind leg; shell"
                                                + " stabilised."
                                        : "Shell stabilised; the pelvis left to heal at rest.",
                                hospital.vetName(),
                                hospital.vetRegistration(),
                                admitted.plus(Duration.ofHours(18))))))
                .id();
        List<String> orders = gravid
                ? List.of(
                        "Out of the water for two days, then one short swim a day under your eyes for two weeks, then"
                                + " water as before. Look at the wound each day, weigh each week. Stitches out here in"
                                + " six weeks.",
                        "Do not leave her in water unwatched before the second week is over.")
                : List.of(
                        "Rest in a small dry box, one short swim a day under your eyes. Weigh each week. Films of the"
                                + " pelvis here in six weeks.",
                        "No climbing and no deep water until seen again.");
        return new Told(caseId, visit, hospital, admitted, admitted.plus(Duration.ofDays(3)), orders);
    }

    private static ClinicService.ReadingEntry reading(
            Helpers.Clinic hospital, String of, int count, ClinicService.Confidence confidence, Instant admitted) {
        return new ClinicService.ReadingEntry(of, count, hospital.vetName(), confidence, admitted.plusSeconds(2400));
    }

    private UUID carer(DemoRegion region, Told told, Incident incident) {
        return helpers.carerWithAccount(region, "turtles", told.leaves(), new Dice(incident.number(), "carer"));
    }

    private UUID recoverEggs(DemoRegion region, Told told, Incident incident) {
        Instant laid = told.admitted().plus(Duration.ofHours(19));
        UUID carer = carer(region, told, incident);
        return clutches.createClutch(new ClutchEntries.ClutchEntry(
                        told.caseId(),
                        told.visit(),
                        Holder.member(helpers.incubator(region, "turtles", laid, carer)),
                        new ClutchEntries.EggsEntry(8, 7, 1, 0, ClutchEntries.EggsCame.surgery, laid)))
                .id();
    }

    /** To a carer, with what the vet ordered; answers who that is. */
    private UUID sendHome(DemoRegion region, Told told, Incident incident) {
        UUID carer = carer(region, told, incident);
        clinic.discharge(
                told.visit(),
                new ClinicService.DischargeEntry(
                        told.hospital().vetName(),
                        told.hospital().vetRegistration(),
                        told.orders().get(0),
                        told.orders().get(1),
                        "a carer who is authorised for freshwater turtles and has a dry and quiet room",
                        told.leaves()
                                .plus(Duration.ofDays(42))
                                .atZone(region.settings().zone())
                                .toLocalDate(),
                        told.leaves()));
        UUID handOver = placements
                .place(
                        told.caseId(),
                        new PlacementService.PlacementEntry(carer, told.visit(), "dry and quiet", null, told.leaves()))
                .handOverId();
        Instant taken = told.leaves().plusSeconds(5400);
        custody.accept(handOver, new CaseEntries.AcceptanceEntry(taken));
        cases.move(told.caseId(), new CaseEntries.WhereaboutsEntry(null, carer, null, taken));
        return carer;
    }
}
