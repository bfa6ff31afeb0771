package org.culvert.web.animal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.animal.CaseLists;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.care.plan.AftercarePlanView.TaskView;
import org.culvert.care.plan.CarePlans;
import org.culvert.clinic.ClinicService;
import org.culvert.clinic.VisitView;
import org.culvert.platform.sight.Sight;
import org.culvert.roster.RosterService;
import org.culvert.web.words.CaseWords;
import org.jspecify.annotations.Nullable;

/** Gathers what waits for a clinic. */
@ApplicationScoped
class ClinicPages {
    /** Nobody is asked for longer than that. */
    private static final int REVIEWS_BACK_DAYS = 400;

    private static final int REVIEWS_AHEAD_DAYS = 2;

    /**
     * An animal, or a body.
     *
     * @param since from when it is offered, there, or waited for
     * @param need what is most pressing, in words, where something is
     * @param notes what is next, and what is not kept yet
     * @param href where that is done, in one tap
     */
    public record Row(
            UUID id,
            String title,
            Instant since,
            @Nullable String need,
            List<String> notes,
            String href,
            String link) {}

    /** What waits, the nearest to be acted on first. */
    public record Waiting(
            List<Row> coming,
            List<Row> notSeen,
            List<Row> inCare,
            List<Row> toSendOn,
            List<Row> again,
            List<Row> bodies) {}

    private final CaseLists lists;
    private final CaseService cases;
    private final ClinicService clinic;
    private final CaseNeeds needs;
    private final CarePlans plans;
    private final RosterService roster;
    private final Sight sight;
    private final Clock clock;

    ClinicPages(
            CaseLists lists,
            CaseService cases,
            ClinicService clinic,
            CaseNeeds needs,
            CarePlans plans,
            RosterService roster,
            Sight sight,
            Clock clock) {
        this.lists = lists;
        this.cases = cases;
        this.clinic = clinic;
        this.needs = needs;
        this.plans = plans;
        this.roster = roster;
        this.sight = sight;
        this.clock = clock;
    }

    @Transactional
    Waiting waiting(UUID clinicId, CaseTongue tongue) {
        LocalDate today = tongue.dayOf(clock.instant());
        List<CaseView> here = lists.listAt(clinicId);
        List<VisitView> open = seen(clinic.listOpenVisits(clinicId));
        List<VisitView> reviews = seen(clinic.listToSeeAgain(
                clinicId, today.minusDays(REVIEWS_BACK_DAYS), today.plusDays(REVIEWS_AHEAD_DAYS)));
        Map<UUID, CaseView> byId = here.stream().collect(Collectors.toMap(CaseView::id, one -> one));
        Set<UUID> further = new HashSet<>();
        open.forEach(visit -> further.add(visit.caseId()));
        reviews.forEach(visit -> further.add(visit.caseId()));
        further.removeAll(byId.keySet());
        Map<UUID, CaseView> all = new HashMap<>(byId);
        all.putAll(cases.casesById(sight.onlySeen("case", List.copyOf(further))));
        Map<UUID, CaseNeeds.Need> pressing =
                needs.of(all.values().stream().filter(one -> one.fate() == null).toList());
        Map<UUID, TaskView> next = nextTasks(all.keySet(), today);
        boolean films = roster.getOrganisation(clinicId).xRay();
        Made made = new Made(clinicId, today, tongue, pressing, next, films);
        Set<UUID> visiting = open.stream().map(VisitView::caseId).collect(Collectors.toSet());
        Map<UUID, ClinicService.SentOn> sentOn = clinic.lastSentOn(byId.keySet());
        for (CaseView one : here) {
            if (!isSentOn(one, sentOn.get(one.id()), clinicId)) {
                made.stand(one, visiting);
            }
        }
        for (VisitView visit : open) {
            CaseView one = all.get(visit.caseId());
            if (one != null) {
                made.visit(one, visit);
            }
        }
        for (VisitView visit : reviews) {
            CaseView one = all.get(visit.caseId());
            if (one != null && one.fate() == null) {
                made.review(one, visit);
            }
        }
        return made.waiting;
    }

    /** Whether it went to somebody else with this clinic's words, and nobody has said where it is since. */
    private static boolean isSentOn(CaseView one, ClinicService.@Nullable SentOn sentOn, UUID clinicId) {
        if (one.fate() != null
                || one.pendingHandOver() != null
                || sentOn == null
                || !sentOn.clinicId().equals(clinicId)
                || one.custody().isEmpty()) {
            return false;
        }
        CaseView.CustodyView last = one.custody().get(one.custody().size() - 1);
        return last.to() == null && !clinicId.equals(last.holder().organisationId());
    }

    private List<VisitView> seen(List<VisitView> visits) {
        Set<UUID> own = Set.copyOf(
                sight.onlySeen("visit", visits.stream().map(VisitView::id).toList()));
        return visits.stream().filter(one -> own.contains(one.id())).toList();
    }

    private Map<UUID, TaskView> nextTasks(Collection<UUID> ids, LocalDate today) {
        Map<UUID, TaskView> next = new HashMap<>();
        plans.listDays(ids, today)
                .forEach(day -> day.tasks().stream()
                        .filter(task -> task.entryId() == null)
                        .findFirst()
                        .ifPresent(task -> next.put(day.caseId(), task)));
        return next;
    }

    /** What was sorted so far. */
    private static final class Made {
        private final UUID clinicId;
        private final LocalDate today;
        private final CaseTongue tongue;
        private final CaseWords words;
        private final Map<UUID, CaseNeeds.Need> pressing;
        private final Map<UUID, TaskView> next;
        private final boolean films;
        private final Waiting waiting = new Waiting(
                new ArrayList<>(),
                new ArrayList<>(),
                new ArrayList<>(),
                new ArrayList<>(),
                new ArrayList<>(),
                new ArrayList<>());

        Made(
                UUID clinicId,
                LocalDate today,
                CaseTongue tongue,
                Map<UUID, CaseNeeds.Need> pressing,
                Map<UUID, TaskView> next,
                boolean films) {
            this.clinicId = clinicId;
            this.today = today;
            this.tongue = tongue;
            this.words = tongue.words();
            this.pressing = pressing;
            this.next = next;
            this.films = films;
        }

        void stand(CaseView one, Set<UUID> visiting) {
            CaseView.HandOverView offer = one.pendingHandOver();
            if (one.fate() != null) {
                waiting.bodies()
                        .add(row(
                                one,
                                one.fate().at(),
                                one.body() == null || one.body().barbiturate().equals("no")
                                        ? List.of()
                                        : List.of(words.barbiturateMayBe()),
                                "?form=disposal#form-disposal",
                                words.form("disposal")));
            } else if (offer != null
                    && clinicId.equals(offer.taker().organisationId())
                    && !visiting.contains(one.id())) {
                waiting.coming()
                        .add(row(one, offer.offeredAt(), List.of(), "?form=acceptance#custody", words.toTake()));
            } else if (!visiting.contains(one.id())) {
                waiting.notSeen()
                        .add(row(
                                one,
                                one.whereabouts() == null
                                        ? one.foundAt()
                                        : one.whereabouts().since(),
                                List.of(),
                                "?form=visit#form-visit",
                                words.form("visit")));
            }
        }

        void visit(CaseView one, VisitView visit) {
            if (visit.ofBody()) {
                // It stands among the bodies until somebody says what became of it
                return;
            }
            if (one.fate() == null && leaves(one)) {
                waiting.toSendOn()
                        .add(row(
                                one,
                                visit.arrivedAt(),
                                List.of(words.leavesWithoutWords()),
                                "?form=discharge#form-discharge-" + visit.id(),
                                words.form("discharge")));
            } else if (one.fate() == null) {
                List<String> notes = new ArrayList<>();
                TaskView task = next.get(one.id());
                if (task != null) {
                    notes.add(words.next(task.words(), tongue.day(task.lastDate())));
                }
                if (visit.weightGrams() == null) {
                    notes.add(words.noWeight());
                }
                if (visit.findings().isEmpty()) {
                    notes.add(words.noFinding());
                }
                if (films && visit.readings().isEmpty()) {
                    notes.add(words.noReading());
                }
                waiting.inCare().add(row(one, visit.arrivedAt(), notes, "#clinic", words.toClinic()));
            }
        }

        /** Whether it goes to somebody else, or has gone. */
        private boolean leaves(CaseView one) {
            CaseView.HandOverView offer = one.pendingHandOver();
            if (offer != null) {
                return !clinicId.equals(offer.taker().organisationId());
            }
            CaseView.WhereaboutsView where = one.whereabouts();
            return where != null && !clinicId.equals(where.organisationId());
        }

        void review(CaseView one, VisitView visit) {
            VisitView.DischargeView discharge = visit.discharge();
            LocalDate day = discharge == null ? null : discharge.reviewOn();
            boolean most = pressing.get(one.id()) == CaseNeeds.Need.seeAgainOver;
            waiting.again()
                    .add(row(
                            one,
                            visit.leftAt(),
                            most && day != null ? again(day) : pressing(one),
                            most || day == null ? List.of() : List.of(again(day)),
                            "?form=visit#form-visit",
                            words.form("visit")));
        }

        private String again(LocalDate day) {
            return day.isBefore(today) ? words.wasToBeSeen(tongue.day(day)) : words.seeAgain(tongue.day(day));
        }

        private @Nullable String pressing(CaseView one) {
            CaseNeeds.Need need = pressing.get(one.id());
            return need == null || need == CaseNeeds.Need.inCare || need == CaseNeeds.Need.offered
                    ? null
                    : words.need(need.name());
        }

        private Row row(CaseView one, @Nullable Instant since, List<String> notes, String to, String link) {
            return row(one, since, pressing(one), notes, to, link);
        }

        private Row row(
                CaseView one,
                @Nullable Instant since,
                @Nullable String need,
                List<String> notes,
                String to,
                String link) {
            return new Row(
                    one.id(),
                    words.caseOf(one.number(), one.animal().vernacularName()),
                    since == null ? one.foundAt() : since,
                    need,
                    notes,
                    "/cases/" + one.id() + to,
                    link);
        }
    }
}
