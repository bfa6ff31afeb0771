package org.culvert.care.placement;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.platform.RegionService;
import org.culvert.roster.AuthorisationService;
import org.culvert.roster.RosterService;
import org.culvert.roster.papers.Papers;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Authorisations that lapse while their holders have animals, weeks before; and a way out for each animal. */
@ApplicationScoped
public class LapseService {
    /**
     * @param lastDay on which an authorisation is listed for the holder and the group; null: none is today
     * @param daysLeft with today and the last day among them
     */
    public record LapseView(
            UUID memberId,
            String callSign,
            String taxonGroup,
            @Nullable LocalDate lastDay,
            long daysLeft,
            String words,
            List<WayOut> animals) {}

    /**
     * @param carerMemberId who could take it on the day after, each place counted once; null: nobody is known
     */
    public record WayOut(
            UUID caseId,
            long number,
            String scientificName,
            @Nullable UUID carerMemberId,
            @Nullable String callSign,
            String words) {}

    private record Held(UUID memberId, UUID groupId) {}

    private record GroupDay(UUID groupId, Instant at) {}

    private record Lapse(
            RosterService.MemberView holder,
            UUID groupId,
            @Nullable LocalDate last) {}

    private final CaseService cases;
    private final Sharer sharer;
    private final CarerSearch search;
    private final CarerService carers;
    private final KinReader kin;
    private final RosterService roster;
    private final AuthorisationService authorisations;
    private final TaxonService taxa;
    private final RegionService region;
    private final EntityManager entities;
    private final Clock clock;

    LapseService(
            CaseService cases,
            Sharer sharer,
            CarerSearch search,
            CarerService carers,
            KinReader kin,
            RosterService roster,
            AuthorisationService authorisations,
            TaxonService taxa,
            RegionService region,
            EntityManager entities,
            Clock clock) {
        this.cases = cases;
        this.sharer = sharer;
        this.search = search;
        this.carers = carers;
        this.kin = kin;
        this.roster = roster;
        this.authorisations = authorisations;
        this.taxa = taxa;
        this.region = region;
        this.entities = entities;
        this.clock = clock;
    }

    /** Holders whose last listed day for a group that they hold is within so many days; the soonest first. */
    @Transactional
    public List<LapseView> listLapses(int withinDays) {
        LocalDate today = clock.instant().atZone(region.zone()).toLocalDate();
        Map<UUID, List<AuthorisationService.AuthorisationView>> listed = new LinkedHashMap<>();
        Map<UUID, CarerProfile> profiles =
                carers.allProfiles().stream().collect(Collectors.toMap(row -> row.memberId, Function.identity()));
        // Read once for all holders: each holder's own animals count in it as with the holder, who is not asked
        Map<GroupDay, List<CarerSearch.Standing>> standings = new HashMap<>();
        Map<Held, List<UUID>> held = held();
        Map<Lapse, List<UUID>> lapsing = new LinkedHashMap<>();
        for (Map.Entry<Held, List<UUID>> one : held.entrySet()) {
            UUID group = one.getKey().groupId();
            RosterService.MemberView holder = roster.getMember(one.getKey().memberId());
            LocalDate last = lastDay(
                    listed.computeIfAbsent(group, key -> authorisations.listFor(key, today)),
                    holder,
                    profiles.get(holder.id()),
                    today);
            if (last == null || last.isBefore(today.plusDays(withinDays))) {
                lapsing.put(new Lapse(holder, group, last), one.getValue());
            }
        }
        List<UUID> caseIds = lapsing.values().stream().flatMap(List::stream).toList();
        Map<UUID, CaseView> animals = cases.casesById(caseIds);
        List<KinReader.Relative> relatives = kin.relativesOf(caseIds);
        List<KeepingRule> rules = sharer.standingRules();
        List<LapseView> lapses = new ArrayList<>();
        lapsing.forEach((lapse, ids) -> {
            Instant after = (lapse.last() == null ? today : lapse.last().plusDays(1))
                    .atTime(12, 0)
                    .atZone(region.zone())
                    .toInstant();
            var known = new Sharer.Known(
                    of -> standings.computeIfAbsent(
                            new GroupDay(of, after), key -> search.standings(of, after, Set.of(), null)),
                    relatives,
                    rules);
            lapses.add(view(
                    lapse,
                    today,
                    ids.stream()
                            .map(id -> Objects.requireNonNull(animals.get(id)))
                            .toList(),
                    known));
        });
        lapses.sort(Comparator.comparingLong(LapseView::daysLeft).thenComparing(LapseView::callSign));
        return lapses;
    }

    /** The last day of those that hold without a break from today on; of supervised ones, of the supervision. */
    private static @Nullable LocalDate lastDay(
            List<AuthorisationService.AuthorisationView> listed,
            RosterService.MemberView holder,
            @Nullable CarerProfile profile,
            LocalDate today) {
        List<AuthorisationService.AuthorisationView> theirs = listed.stream()
                .filter(one -> holder.id().equals(one.memberId())
                        || holder.organisationId().equals(one.organisationId()))
                .filter(one -> holds(one, profile))
                .toList();
        LocalDate covered = today.minusDays(1);
        boolean grows = true;
        while (grows) {
            grows = false;
            for (AuthorisationService.AuthorisationView one : theirs) {
                CarerProfile supervised = one.supervised() ? profile : null;
                LocalDate from = later(one.validFrom(), supervised == null ? null : supervised.supervisedFrom);
                LocalDate to = earlier(one.validTo(), supervised == null ? null : supervised.supervisedUntil);
                if (!from.isAfter(covered.plusDays(1)) && to.isAfter(covered)) {
                    covered = to;
                    grows = true;
                }
            }
        }
        return covered.isBefore(today) ? null : covered;
    }

    /** Whether it is for these premises, and somebody supervises where it asks for that; until when is another question. */
    private static boolean holds(AuthorisationService.AuthorisationView one, @Nullable CarerProfile profile) {
        var paper = new Papers.Paper(one.number(), one.premises(), one.supervised());
        return Papers.read(
                                one.validFrom(),
                                List.of(paper),
                                profile == null ? null : profile.premises,
                                profile != null && profile.supervisorId != null)
                        .number()
                != null;
    }

    private static LocalDate later(LocalDate one, @Nullable LocalDate other) {
        return other != null && other.isAfter(one) ? other : one;
    }

    private static LocalDate earlier(LocalDate one, @Nullable LocalDate other) {
        return other != null && other.isBefore(one) ? other : one;
    }

    private LapseView view(Lapse lapse, LocalDate today, List<CaseView> animals, Sharer.Known known) {
        RosterService.MemberView holder = lapse.holder();
        LocalDate last = lapse.last();
        List<CaseView> free =
                animals.stream().filter(one -> one.pendingHandOver() == null).toList();
        Map<UUID, Sharer.Share> shares =
                sharer.share(free, Set.of(holder.id()), known).byCase();
        return new LapseView(
                holder.id(),
                holder.callSign(),
                taxa.getGroup(lapse.groupId()).key(),
                last,
                last == null ? 0 : ChronoUnit.DAYS.between(today, last) + 1,
                last == null
                        ? "No authorisation is listed today. If one was issued, enter it; else check your local code and move the animals on."
                        : "Listed until " + last + ". Have it renewed and enter the new one, or move the animals on.",
                animals.stream().map(one -> wayOut(one, shares.get(one.id()))).toList());
    }

    private static WayOut wayOut(CaseView of, Sharer.@Nullable Share share) {
        return new WayOut(
                of.id(),
                of.number(),
                of.animal().scientificName(),
                share == null ? null : share.carerId(),
                share == null ? null : share.callSign(),
                share == null ? "A hand-over is pending." : share.words());
    }

    private Map<Held, List<UUID>> held() {
        List<?> rows = entities.createNativeQuery("""
                        select w.member_id, t.taxon_group_id, w.case_id
                        from animals_with_carers w join cases c on c.id = w.case_id
                        join animals a on a.id = c.animal_id join taxa t on t.id = a.taxon_id
                        where not w.offered order by w.member_id, t.taxon_group_id, w.case_id
                        """).getResultList();
        Map<Held, List<UUID>> held = new LinkedHashMap<>();
        for (Object one : rows) {
            Object[] row = Objects.requireNonNull((Object[]) one);
            held.computeIfAbsent(new Held((UUID) row[0], (UUID) row[1]), key -> new ArrayList<>())
                    .add((UUID) row[2]);
        }
        return held;
    }
}
