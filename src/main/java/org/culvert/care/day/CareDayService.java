package org.culvert.care.day;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.animal.CustodyService;
import org.culvert.care.plan.CareEntryView;
import org.culvert.care.plan.CarePlans;
import org.culvert.care.plan.CarePlans.DayOfPlan;
import org.culvert.clinic.ClinicService;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.sight.Sight;
import org.culvert.platform.sight.Viewer;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/** Tells members who care what is to be done on a day. */
@ApplicationScoped
public class CareDayService {
    private static final int MOST_CASES = 500;
    private static final String NOTE =
            "If it is worse than yesterday, ring the clinic. What is to be done is the vet's;"
                    + " check your local code and your licensed vet.";

    private final CarePlans plans;
    private final CustodyService custody;
    private final CaseService cases;
    private final ClinicService clinic;
    private final RosterService roster;
    private final RegionService region;
    private final Sight sight;
    private final Clock clock;

    CareDayService(
            CarePlans plans,
            CustodyService custody,
            CaseService cases,
            ClinicService clinic,
            RosterService roster,
            RegionService region,
            Sight sight,
            Clock clock) {
        this.plans = plans;
        this.custody = custody;
        this.cases = cases;
        this.clinic = clinic;
        this.roster = roster;
        this.region = region;
        this.sight = sight;
        this.clock = clock;
    }

    /** The member who asks, if a member asks. */
    public Optional<UUID> findOwnMember() {
        return Optional.ofNullable(sight.viewer().memberId());
    }

    public LocalDate today() {
        return clock.instant().atZone(region.zone()).toLocalDate();
    }

    /**
     * A member's day: their own, or, for coordinators and clinics, anybody's as far as they see the animals.
     *
     * @param date today where it is null
     * @throws NotFoundException when it is another member's, for carers
     */
    @Transactional
    public CareDayView getDay(UUID memberId, @Nullable LocalDate date) {
        Viewer asker = sight.viewer();
        if (!memberId.equals(asker.memberId()) && !asker.hasAny(Role.COORDINATOR, Role.CLINIC)) {
            throw new NotFoundException("care day of member", memberId);
        }
        RosterService.MemberView member = roster.getMember(memberId);
        LocalDate day = date == null ? today() : date;
        ZoneId zone = region.zone();
        Instant from = day.atStartOfDay(zone).toInstant();
        Instant to = day.plusDays(1).atStartOfDay(zone).toInstant();
        List<UUID> held = sight.onlySeen("case", custody.listHeld(memberId, from, to));
        Map<UUID, CaseView> seen = cases.casesById(held);
        Map<UUID, DayOfPlan> planned =
                plans.listDays(held, day).stream().collect(Collectors.toMap(DayOfPlan::caseId, Function.identity()));
        Map<UUID, List<CareEntryView>> entered = plans.listEntries(held, from, to);
        Map<UUID, ClinicService.SentOn> sentOn = clinic.lastSentOn(held);
        return new CareDayView(
                memberId,
                member.callSign(),
                day,
                held.stream()
                        .map(id -> animal(
                                Objects.requireNonNull(seen.get(id)),
                                planned.get(id),
                                entered.getOrDefault(id, List.of()),
                                sentOn.get(id),
                                memberId,
                                from,
                                to))
                        .toList(),
                NOTE);
    }

    private CareDayView.HeldAnimalView animal(
            CaseView told,
            @Nullable DayOfPlan plan,
            List<CareEntryView> entered,
            ClinicService.@Nullable SentOn sentOn,
            UUID memberId,
            Instant from,
            Instant to) {
        List<CaseView.CustodyView> links = told.custody().stream()
                .filter(link -> memberId.equals(link.holder().memberId())
                        && link.from().isBefore(to)
                        && (link.to() == null || link.to().isAfter(from)))
                .toList();
        return new CareDayView.HeldAnimalView(
                told.id(),
                told.number(),
                told.animal().scientificName(),
                told.animal().vernacularName(),
                links.get(0).from(),
                links.get(links.size() - 1).to(),
                plan == null ? null : plan.planId(),
                plan == null ? null : plan.words(),
                plan == null ? List.of() : plan.tasks(),
                entered,
                plan == null ? null : plan.weightTrend(),
                sentOn == null
                        ? null
                        : roster.getOrganisation(sentOn.clinicId()).name(),
                sentOn == null ? null : sentOn.plan(),
                sentOn == null ? null : sentOn.limits(),
                sentOn == null ? null : sentOn.reviewOn());
    }

    /** Members who hold animals that whoever asks sees, or whoever may hold some where they see all. */
    @Transactional
    public List<RosterService.MemberView> listHolders() {
        List<RosterService.MemberView> all = roster.listMembers().stream()
                .filter(one -> one.cares() && one.leftOn() == null)
                .toList();
        if (!sight.seesOwnOnly("case")) {
            return all;
        }
        Set<UUID> holding = cases.casesById(sight.listOwn("case", null, MOST_CASES, null)).values().stream()
                .filter(one -> one.fate() == null)
                .flatMap(one -> one.custody().stream())
                .filter(link -> link.to() == null)
                .map(link -> link.holder().memberId())
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
        return all.stream().filter(one -> holding.contains(one.id())).toList();
    }
}
