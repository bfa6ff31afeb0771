package org.culvert.web.hand;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.animal.CustodyLists;
import org.culvert.animal.CustodyService;
import org.culvert.animal.photograph.PhotographService;
import org.culvert.call.IncidentService;
import org.culvert.call.IncidentView;
import org.culvert.care.day.CareDayService;
import org.culvert.care.day.CareDayView;
import org.culvert.care.plan.AftercarePlanView.TaskState;
import org.culvert.care.plan.AftercarePlanView.TaskView;
import org.culvert.care.schedule.Measure;
import org.culvert.dispatch.DispatchService;
import org.culvert.dispatch.DispatchService.AttendanceView;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.sight.Sight;
import org.culvert.platform.sight.Viewer;
import org.culvert.roster.Holder;
import org.culvert.roster.RosterService;
import org.culvert.web.hand.HandPages.Card;
import org.culvert.web.hand.HandPages.Choice;
import org.culvert.web.hand.HandPages.Held;
import org.culvert.web.kept.NamedRecords;
import org.jspecify.annotations.Nullable;

/** Gathers what waits for whoever asks, from all rooms. */
@ApplicationScoped
class HandReader {
    private static final int MOST = 200;

    private final DispatchService dispatch;
    private final IncidentService incidents;
    private final CustodyLists handOvers;
    private final CustodyService custody;
    private final CaseService cases;
    private final CareDayService days;
    private final PhotographService photographs;
    private final NamedRecords named;
    private final RosterService roster;
    private final RegionService region;
    private final Sight sight;
    private final Clock clock;

    HandReader(
            DispatchService dispatch,
            IncidentService incidents,
            CustodyLists handOvers,
            CustodyService custody,
            CaseService cases,
            CareDayService days,
            PhotographService photographs,
            NamedRecords named,
            RosterService roster,
            RegionService region,
            Sight sight,
            Clock clock) {
        this.dispatch = dispatch;
        this.incidents = incidents;
        this.handOvers = handOvers;
        this.custody = custody;
        this.cases = cases;
        this.days = days;
        this.photographs = photographs;
        this.named = named;
        this.roster = roster;
        this.region = region;
        this.sight = sight;
        this.clock = clock;
    }

    /** The first page: what waits, the most pressing first. */
    @Transactional
    HandPages.ListPage list(HandTongue tongue, Sent sent) {
        UUID member = sight.viewer().memberId();
        List<Card> due = new ArrayList<>();
        List<Card> later = new ArrayList<>();
        List<Held> held = new ArrayList<>();
        List<String> entered = new ArrayList<>();
        if (member != null) {
            outings(member, tongue, due);
            offers(member, tongue, sent, due);
            if (cares()) {
                CareDayView day = days.getDay(member, null);
                tasks(day, new TaskWords(tongue, day.date(), clock.instant()), sent, due, later);
                for (CareDayView.HeldAnimalView animal : day.animals()) {
                    held.add(new Held(
                            animal.id(),
                            tongue.words().caseNamed(animal.caseNumber(), animal.vernacularName()),
                            animal.limits(),
                            EntryWords.falls(animal.entries())));
                    animal.entries().forEach(entry -> entered.add(EntryWords.of(entry, tongue)));
                }
            } else {
                Instant now = clock.instant();
                cases
                        .casesById(sight.onlySeen("case", custody.listHeld(member, now, now.plusSeconds(1))))
                        .values()
                        .stream()
                        .sorted(Comparator.comparing(CaseView::number))
                        .forEach(one -> held.add(new Held(one.id(), named(one, tongue), null, false)));
            }
        }
        int count = due.size();
        boolean here = Stream.concat(due.stream(), later.stream())
                .anyMatch(card -> card.id().equals(sent.form()));
        return new HandPages.ListPage(
                frame(tongue),
                here ? Sent.NOTHING : sent,
                count == 0
                        ? tongue.words().nothingWaits()
                        : count == 1
                                ? tongue.words().oneWaits()
                                : tongue.words().someWait(count),
                member != null,
                cares(),
                due,
                later,
                held,
                entered);
    }

    /** Offered ones before those that are underway: somebody waits to hear whether it is accepted. */
    private void outings(UUID member, HandTongue tongue, List<Card> due) {
        List<AttendanceView> open = dispatch.listOpenOf(member).stream()
                .filter(one -> !sight.seesOwnOnly("attendance") || sight.isOwn("attendance", one.id()))
                .sorted(Comparator.comparing(one -> OutingWords.stepOf(one).equals("accept") ? 0 : 1))
                .toList();
        for (AttendanceView one : open) {
            IncidentView incident = incidents.getIncident(one.incidentId(), false);
            String step = OutingWords.stepOf(one);
            boolean offered = step.equals("accept");
            due.add(new Card(
                    "o-" + one.id(),
                    offered ? tongue.words().askedToGo() : tongue.words().goingOut(),
                    String.join(
                            " · ",
                            tongue.words().incident(incident.number()),
                            String.join(", ", OutingWords.animals(incident, tongue)),
                            OutingWords.roadLine(incident.place(), tongue)),
                    offered,
                    "/hand/attendances/" + one.id(),
                    offered
                            ? tongue.words().lookThenAccept()
                            : tongue.words().next(OutingWords.stepWords(step, tongue.words())),
                    null,
                    null));
        }
    }

    private void offers(UUID member, HandTongue tongue, Sent sent, List<Card> due) {
        List<CaseView.HandOverView> mine = handOvers.listHandOvers(true, MOST, null).items().stream()
                .filter(one -> member.equals(one.taker().memberId()))
                .toList();
        Map<UUID, CaseView> seen =
                cases.casesById(mine.stream().map(CaseView.HandOverView::caseId).collect(Collectors.toSet()));
        for (CaseView.HandOverView one : mine) {
            CaseView told = Objects.requireNonNull(seen.get(one.caseId()));
            Holder giver = custody.findHolder(one.caseId(), clock.instant()).orElse(null);
            String id = "h-" + one.id();
            due.add(new Card(
                    id,
                    tongue.words().offeredToYou(),
                    named(told, tongue) + ". "
                            + (giver == null
                                    ? tongue.words().nobodyHolds()
                                    : tongue.words().giverHolds(name(giver, tongue))),
                    false,
                    null,
                    null,
                    null,
                    new HandPages.TakeForm(one.id(), sent.of(id))));
        }
    }

    private void tasks(CareDayView day, TaskWords words, Sent sent, List<Card> due, List<Card> later) {
        record Open(CareDayView.HeldAnimalView animal, TaskView task) {}
        List<Open> open = day.animals().stream()
                .flatMap(animal -> animal.tasks().stream()
                        .filter(task -> task.entryId() == null
                                && task.state() != TaskState.lapsed
                                && task.state() != TaskState.missed)
                        .map(task -> new Open(animal, task)))
                .sorted(Comparator.comparing((Open one) -> words.isOverdue(one.task()) ? 0 : 1)
                        .thenComparing(one -> one.task().dueFrom()))
                .toList();
        Map<UUID, Map<String, String>> photographsOf = named.newestPhotographs(open.stream()
                .filter(one -> one.task().measure() == Measure.photograph)
                .map(one -> one.animal().id())
                .collect(Collectors.toSet()));
        for (Open one : open) {
            Map<String, String> offered = one.task().measure() == Measure.photograph
                    ? photographsOf.getOrDefault(one.animal().id(), Map.of())
                    : Map.of();
            (words.isLater(one.task()) ? later : due).add(words.card(one.animal(), one.task(), sent, offered));
        }
    }

    /**
     * A going-out.
     *
     * @throws NotFoundException when it is one of others
     */
    @Transactional
    HandPages.OutingPage outing(UUID id, HandTongue tongue, Sent sent) {
        sight.requireSeen("attendance", id);
        AttendanceView told = dispatch.getAttendance(id);
        return OutingWords.page(
                frame(tongue),
                told,
                incidents.getIncident(told.incidentId(), false),
                photographs
                        .listOfIncident(told.incidentId(), MOST, null)
                        .items()
                        .size(),
                sight.viewer().hasAny(Role.RESCUER, Role.COORDINATOR),
                tongue,
                sent);
    }

    /**
     * An animal that is with whoever asks.
     *
     * @throws NotFoundException when it is not
     */
    @Transactional
    HandPages.AnimalPage animal(UUID caseId, HandTongue tongue, Sent sent) {
        Viewer asker = sight.viewer();
        UUID member = asker.memberId();
        sight.requireSeen("case", caseId);
        Instant now = clock.instant();
        Holder holder = custody.findHolder(caseId, now).orElse(null);
        if (member == null || holder == null || !member.equals(holder.memberId())) {
            throw new NotFoundException("animal with you", caseId);
        }
        CaseView told = cases.getCase(caseId);
        CareDayView.HeldAnimalView care = !cares()
                ? null
                : days.getDay(member, null).animals().stream()
                        .filter(one -> one.id().equals(caseId))
                        .findFirst()
                        .orElse(null);
        List<String> more = new ArrayList<>();
        if (care != null && care.dischargePlan() != null) {
            more.add(tongue.words().atDischarge(care.dischargePlan()));
        }
        if (care != null && care.planWords() != null) {
            more.add(tongue.words().withPlan(care.planWords()));
        }
        LocalDate review = care == null ? null : care.reviewOn();
        boolean reviewOver =
                review != null && review.isBefore(now.atZone(region.zone()).toLocalDate());
        if (review != null && !reviewOver) {
            more.add(tongue.words().reviewBy(tongue.date(review)));
        }
        CaseView.HandOverView pending = told.pendingHandOver();
        boolean offers = sent.form().startsWith("g-") || sent.form().startsWith("n-");
        return new HandPages.AnimalPage(
                frame(tongue),
                pending != null && offers ? sent : Sent.NOTHING,
                caseId,
                named(told, tongue),
                told.animal().scientificName(),
                cares(),
                care == null ? null : care.limits(),
                review != null && reviewOver ? tongue.words().reviewOver(tongue.date(review)) : null,
                more,
                care != null && care.planId() != null,
                care != null && EntryWords.falls(care.entries()),
                care == null
                        ? List.of()
                        : care.entries().stream()
                                .map(entry -> EntryWords.of(entry, tongue))
                                .toList(),
                told.referOut().stream()
                        .map(one -> tongue.words().referOut(one.words() + " " + one.referTo()))
                        .toList(),
                pending == null
                        ? null
                        : tongue.words()
                                .offeredTo(
                                        name(pending.taker(), tongue),
                                        pending.offeredAt() == null ? "" : tongue.time(pending.offeredAt())),
                organisations(sent.of("g-" + caseId)),
                new HandPages.Picture(
                        "/hand/animals/" + caseId + "/photographs",
                        "/api/cases/" + caseId + "/photographs",
                        photographs.listOfCase(caseId, MOST, null).items().size(),
                        sent.of("p-" + caseId)),
                cares()
                        ? TaskWords.photographs(
                                named.newestPhotographs(Set.of(caseId)).getOrDefault(caseId, Map.of()),
                                sent.of("b-" + caseId))
                        : List.of(),
                sent.of("b-" + caseId),
                sent.of("g-" + caseId),
                sent.of("n-" + caseId));
    }

    /** Who of the network has a call sign, exactly as it is typed. */
    @Transactional
    @Nullable
    UUID findByCallSign(String callSign) {
        return roster.listMembers().stream()
                .filter(one -> one.leftOn() == null && one.callSign().equalsIgnoreCase(callSign))
                .map(RosterService.MemberView::id)
                .findFirst()
                .orElse(null);
    }

    private List<Choice> organisations(Sent sent) {
        return roster.listOrganisations(null).stream()
                .map(one -> new Choice(
                        one.id().toString(), one.name(), one.id().toString().equals(sent.typed("organisationId"))))
                .toList();
    }

    private HandPages.Frame frame(HandTongue tongue) {
        Viewer asker = sight.viewer();
        String username = Objects.requireNonNullElse(asker.username(), "");
        UUID member = asker.memberId();
        return new HandPages.Frame(
                Objects.requireNonNull(asker.accountId(), "whoever reaches this page has an account"),
                member == null ? username : roster.getMember(member).callSign() + " (" + username + ")",
                UUID.randomUUID().toString(),
                clock.instant(),
                region.zone().getId());
    }

    private boolean cares() {
        return sight.viewer().hasAny(Role.CARER, Role.COORDINATOR);
    }

    private static String named(CaseView told, HandTongue tongue) {
        return tongue.words().caseNamed(told.number(), told.animal().vernacularName());
    }

    private String name(Holder holder, HandTongue tongue) {
        if (holder.memberId() != null) {
            return roster.getMember(holder.memberId()).callSign();
        }
        return holder.organisationId() != null
                ? roster.getOrganisation(holder.organisationId()).name()
                : tongue.words().outsider();
    }
}
