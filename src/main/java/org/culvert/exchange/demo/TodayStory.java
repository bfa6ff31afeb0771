package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseEntries;
import org.culvert.animal.CaseService;
import org.culvert.animal.CustodyService;
import org.culvert.call.CallEntry;
import org.culvert.call.CallService;
import org.culvert.care.placement.PlacementService;
import org.culvert.clinic.ClinicService;
import org.culvert.dispatch.DispatchService;
import org.culvert.dispatch.GateKeeper;
import org.culvert.platform.Role;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/**
 * The hours before the demo is loaded, so that its desk, its rescuer, its clinic and its carer have something on their hands:
 * calls in every state, a hand-over that waits, care that is due and care that was missed.
 */
@ApplicationScoped
class TodayStory {
    private static final Duration DAYS_IN_CARE = Duration.ofDays(5);

    private final CallService calls;
    private final DispatchService dispatch;
    private final GateKeeper gate;
    private final Outing outings;
    private final CaseService cases;
    private final CustodyService custody;
    private final ClinicService clinic;
    private final PlacementService placements;
    private final CaseWork work;
    private final AftercareStory aftercare;
    private final Helpers helpers;

    TodayStory(
            CallService calls,
            DispatchService dispatch,
            GateKeeper gate,
            Outing outings,
            CaseService cases,
            CustodyService custody,
            ClinicService clinic,
            PlacementService placements,
            CaseWork work,
            AftercareStory aftercare,
            Helpers helpers) {
        this.calls = calls;
        this.dispatch = dispatch;
        this.gate = gate;
        this.outings = outings;
        this.cases = cases;
        this.custody = custody;
        this.clinic = clinic;
        this.placements = placements;
        this.work = work;
        this.aftercare = aftercare;
        this.helpers = helpers;
    }

    /** Where something happened before, and to what. */
    private record Scene(Incident incident, CallEntry.Vitality vitality, String cause) {
        String scientificName() {
            return incident.calls().get(0).animals().get(0).scientificName();
        }
    }

    void tell(DemoRegion region, UUID importId) {
        var today = new Today(region, importId, helpers.now());
        today.justRung();
        today.lyingInTheLane();
        today.askedOf();
        today.onTheWay();
        today.atThePlace();
        today.waitsForTheClinic();
        today.inCareForDays();
    }

    /** One load, told from its instant. */
    private final class Today {
        private final DemoRegion region;
        private final UUID importId;
        private final Instant now;
        private int callers;

        Today(DemoRegion region, UUID importId, Instant now) {
            this.region = region;
            this.importId = importId;
            this.now = now;
        }

        private Instant minutesAgo(long minutes) {
            return now.minus(Duration.ofMinutes(minutes));
        }

        /** The newest collision of a group that was told by road and kilometre, or one before it. */
        private Scene scene(String group, int before, CallEntry.Vitality vitality, String cause) {
            List<Incident> newest = region.incidents().stream()
                    .filter(incident -> incident.taxonGroup().equals(group)
                            && incident.cause().equals(CallMaker.COLLISION)
                            && incident.calls().get(0).place().kind() == GivenPlace.Kind.ROAD_AND_CHAINAGE)
                    .toList();
            return new Scene(newest.get(newest.size() - 1 - before), vitality, cause);
        }

        private UUID ring(Scene scene, Instant at, CallEntry.Answer pouch, String words) {
            Callers.Caller caller = region.callers().all().get(callers++);
            return calls.keep(
                            new CallEntry(
                                    at,
                                    at.minus(Duration.ofMinutes(6)),
                                    null,
                                    new CallEntry.People(CallEntry.Answer.no, CallEntry.Answer.yes, null),
                                    new CallEntry.Caller(
                                            caller.name().isEmpty() ? null : caller.name(), caller.phone(), null, null),
                                    words,
                                    scene.cause(),
                                    List.of(new CallEntry.Animal(
                                            scene.scientificName(),
                                            null,
                                            null,
                                            CallEntry.Verification.unverified,
                                            1,
                                            scene.vitality(),
                                            null,
                                            null,
                                            null,
                                            pouch,
                                            false)),
                                    CallLoader.place(
                                            scene.incident().calls().get(0).place()),
                                    null),
                            importId)
                    .incidentId();
        }

        /** Asks somebody, with a second pair of hands; null where fewer than two may go. */
        private @Nullable UUID send(UUID incident, Instant at, @Nullable UUID wanted) {
            UUID account = helpers.memberWithAccount(region, Role.RESCUER);
            List<UUID> able = gate.whoCanGo(incident, at).stream()
                    .filter(candidate -> candidate.notBecause().isEmpty())
                    .map(GateKeeper.Candidate::memberId)
                    .toList();
            List<UUID> others =
                    able.stream().filter(member -> !member.equals(account)).toList();
            if (others.size() < 2) {
                return null;
            }
            UUID lead = wanted != null && able.contains(wanted) ? wanted : others.get(0);
            return dispatch.send(
                            incident,
                            new DispatchService.AttendanceEntry(
                                    lead,
                                    List.of(others.get(1)),
                                    at,
                                    "P000812",
                                    "Police hold the lane; two people with lights."))
                    .id();
        }

        private DispatchService.StepEntry step(long minutesAgo) {
            return new DispatchService.StepEntry(minutesAgo(minutesAgo));
        }

        /** Nobody was sent yet, and a second driver rings about the same. */
        void justRung() {
            Scene scene = scene("macropods", 0, CallEntry.Vitality.alive, CallMaker.COLLISION);
            ring(
                    scene,
                    minutesAgo(7),
                    CallEntry.Answer.unknown,
                    "Hit it with the bumper. It sits on the verge and lifts its head, but it does not get up.");
            ring(
                    scene,
                    minutesAgo(2),
                    CallEntry.Answer.unknown,
                    "There is a roo sitting right beside the road, cars go past it. Somebody should come.");
        }

        void lyingInTheLane() {
            ring(
                    scene("wombats", 0, CallEntry.Vitality.dead, CallMaker.COLLISION),
                    minutesAgo(26),
                    CallEntry.Answer.no,
                    "Dead, I am fairly sure. Half in the lane. I did not touch it.");
        }

        /** The rescuer who has an account was asked, and has not answered. */
        void askedOf() {
            UUID incident = ring(
                    scene("possums-and-gliders", 0, CallEntry.Vitality.alive, CallMaker.COLLISION),
                    minutesAgo(34),
                    CallEntry.Answer.unknown,
                    "It is alive, it holds on to the post. I put my jumper over it and stay with it.");
            send(incident, minutesAgo(21), helpers.memberWithAccount(region, Role.RESCUER));
        }

        void onTheWay() {
            UUID incident = ring(
                    scene("turtles", 0, CallEntry.Vitality.alive, CallMaker.COLLISION),
                    minutesAgo(52),
                    CallEntry.Answer.unknown,
                    "A turtle with a broken shell, it still pulls its legs in. I moved it off the road, on the side it was"
                            + " going to.");
            UUID attendance = send(incident, minutesAgo(45), null);
            if (attendance != null) {
                dispatch.accept(attendance, step(41));
                dispatch.depart(attendance, step(18));
            }
        }

        void atThePlace() {
            UUID incident = ring(
                    scene("koalas", 0, CallEntry.Vitality.alive, CallMaker.COLLISION),
                    minutesAgo(96),
                    CallEntry.Answer.unknown,
                    "A koala on the ground by the guard rail, breathing hard. It does not climb.");
            UUID attendance = send(incident, minutesAgo(88), null);
            if (attendance != null) {
                dispatch.accept(attendance, step(85));
                dispatch.depart(attendance, step(74));
                dispatch.arrive(attendance, step(9));
            }
        }

        /** Collected, and offered to the hospital, which has not taken it over yet. */
        void waitsForTheClinic() {
            UUID incident = ring(
                    scene("other-birds", 0, CallEntry.Vitality.alive, CallMaker.COLLISION),
                    minutesAgo(260),
                    CallEntry.Answer.unknown,
                    "It flew into the windscreen. One wing hangs. It is in a box now and quiet.");
            if (!twoCanGo(incident, minutesAgo(250))) {
                return;
            }
            Outing.Done outing = outings.goOut(incident, minutesAgo(250), DispatchService.Outcome.collected, 0);
            UUID caseId =
                    open(incident, outing, scene("other-birds", 0, CallEntry.Vitality.alive, CallMaker.COLLISION));
            custody.offer(
                    caseId,
                    new CaseEntries.HandOverEntry(
                            Holder.organisation(
                                    helpers.clinic(region, "clinic1").id()),
                            minutesAgo(40)));
        }

        /** Stitched by the hospital and with a carer by the vet's plan, whose looks of the last days were missed. */
        void inCareForDays() {
            Instant rang = now.minus(DAYS_IN_CARE);
            Scene scene = scene("turtles", 1, CallEntry.Vitality.alive, "attackByDog");
            UUID incident = ring(
                    scene,
                    rang,
                    CallEntry.Answer.unknown,
                    "My dog had it in his mouth. There is a hole in the skin behind the leg.");
            if (!twoCanGo(incident, rang.plusSeconds(600))) {
                return;
            }
            Outing.Done outing = outings.goOut(incident, rang.plusSeconds(600), DispatchService.Outcome.collected, 0);
            UUID caseId = open(incident, outing, scene);
            Helpers.Clinic hospital = helpers.clinic(region, "clinic1");
            Instant admitted = outing.there().plus(Duration.ofMinutes(90));
            work.pass(caseId, Holder.organisation(hospital.id()), outing.there().plusSeconds(1200), admitted);
            UUID visit = clinic.admit(new ClinicService.VisitEntry(
                            caseId,
                            hospital.id(),
                            admitted,
                            731.0,
                            3,
                            CallEntry.Answer.no,
                            "bitten by a dog; skin torn in front of the right hind leg",
                            null,
                            null,
                            List.of(new ClinicService.FindingEntry(
                                    "skin in front of the hind leg",
                                    ClinicService.Side.right,
                                    "torn, 3 cm, nothing beneath it")),
                            List.of(),
                            List.of(new ClinicService.ProcedureEntry(
                                    "Wound cleaned and closed with six stitches.",
                                    hospital.vetName(),
                                    hospital.vetRegistration(),
                                    admitted.plus(Duration.ofHours(4))))))
                    .id();
            Instant leaves = admitted.plus(Duration.ofHours(28));
            Helpers.Taker taker = helpers.carerToday(region, caseId, leaves);
            if (taker == null) {
                return;
            }
            UUID carer = taker.memberId();
            clinic.discharge(
                    visit,
                    new ClinicService.DischargeEntry(
                            hospital.vetName(),
                            hospital.vetRegistration(),
                            "Out of the water for two days, then one short swim a day under your eyes. Look at the wound"
                                    + " each day.",
                            "Do not leave her in water unwatched.",
                            "a carer who is authorised for freshwater turtles",
                            leaves.plus(Duration.ofDays(42))
                                    .atZone(region.settings().zone())
                                    .toLocalDate(),
                            leaves));
            UUID handOver = placements
                    .place(
                            caseId,
                            new PlacementService.PlacementEntry(
                                    carer,
                                    visit,
                                    "dry and quiet",
                                    taker.needsReason()
                                            ? "She has a third tub, and said that she takes one more for now."
                                            : null,
                                    leaves))
                    .handOverId();
            Instant taken = leaves.plusSeconds(5400);
            custody.accept(handOver, new CaseEntries.AcceptanceEntry(taken));
            cases.move(caseId, new CaseEntries.WhereaboutsEntry(null, carer, null, taken));
            aftercare.tell(region, caseId, visit, hospital, leaves, scene.incident());
        }

        private boolean twoCanGo(UUID incident, Instant at) {
            return gate.whoCanGo(incident, at).stream()
                            .filter(candidate -> candidate.notBecause().isEmpty())
                            .count()
                    >= 2;
        }

        private UUID open(UUID incident, Outing.Done outing, Scene scene) {
            return outings.open(
                    incident,
                    outing,
                    new CaseEntries.AnimalEntry(
                            scene.scientificName(),
                            CallEntry.Verification.seenByMember,
                            CallEntry.Sex.unknown,
                            "adult",
                            null,
                            null));
        }
    }
}
