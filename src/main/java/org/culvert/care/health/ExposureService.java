package org.culvert.care.health;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Stream;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.call.IncidentService;
import org.culvert.call.OutsidePeople;
import org.culvert.platform.Actor;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.Sight;
import org.culvert.release.holds.HoldService;
import org.culvert.release.rules.Hold;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/** Keeps exposures of people, and the animals held for them. */
@ApplicationScoped
public class ExposureService {
    /**
     * What is asked of whoever handles the animal of an exposure: by its case, else by what was told of its incident. Where no
     * kind is known, whatever is asked of any.
     */
    private static final String VACCINATIONS = """
            with asked as (select * from personal.exposures where id in (:ids)),
            kinds as (
                select e.id, t.taxon_group_id as group_id
                from asked e join cases c on c.id = e.case_id join animals a on a.id = c.animal_id
                join taxa t on t.id = a.taxon_id
                union
                select e.id, coalesce(t.taxon_group_id, r.taxon_group_id)
                from asked e join calls k on k.incident_id = e.incident_id join reported_animals r on r.call_id = k.id
                left join taxa t on t.id = r.taxon_id where e.case_id is null)
            select distinct e.id, g.vaccination_needed,
                exists (select 1 from personal.vaccinations v
                        where v.member_id = e.member_id and v.against = g.vaccination_needed and v.erased_at is null
                          and (e.happened_at at time zone :zone)::date between v.given_on and v.current_until)
            from asked e join taxon_groups g on g.vaccination_needed is not null
            where exists (select 1 from kinds k where k.id = e.id and k.group_id = g.id)
               or not exists (select 1 from kinds k where k.id = e.id and k.group_id is not null)
            order by 1, 2
            """;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<Exposure, UUID> {}

    private final Rows rows;
    private final HoldService holds;
    private final CaseService cases;
    private final IncidentService incidents;
    private final RosterService roster;
    private final OutsidePeople people;
    private final RecordViews records;
    private final RegionService region;
    private final EntityManager entities;
    private final Sight sight;
    private final Actor actor;
    private final Clock clock;

    ExposureService(
            Rows rows,
            HoldService holds,
            CaseService cases,
            IncidentService incidents,
            RosterService roster,
            OutsidePeople people,
            RecordViews records,
            RegionService region,
            EntityManager entities,
            Sight sight,
            Actor actor,
            Clock clock) {
        this.rows = rows;
        this.holds = holds;
        this.cases = cases;
        this.incidents = incidents;
        this.roster = roster;
        this.people = people;
        this.records = records;
        this.region = region;
        this.entities = entities;
        this.sight = sight;
        this.actor = actor;
        this.clock = clock;
    }

    /** Keeps an exposure, and holds the animal that it names in the same transaction. */
    @Transactional
    public ExposureReceipt enter(ExposureEntries.ExposureEntry entry) {
        Instant at = Corrections.passed("happenedAt", entry.happenedAt(), clock);
        Exposure row = Exposure.of(entry, at);
        if (entry.told() != null) {
            row.told(entry.told(), Corrections.passed("told.at", entry.told().at(), clock));
        }
        CaseView told = entry.caseId() == null ? null : named(row, entry.caseId());
        UUID incident = entry.incidentId();
        if (incident != null) {
            sight.requireSeen("incident", incident);
            incidents.getIncident(incident, false);
        }
        tellWho(row, entry.exposed(), at);
        rows.persistAndFlush(row);
        HoldService.Standing hold = holdFor(row);
        return new ExposureReceipt(
                row.id(),
                row.caseId,
                hold == null ? "none" : hold.set() ? "set" : "kept",
                hold == null ? null : hold.id(),
                HealthAdvice.afterAnExposure(row, told != null && told.fate() != null),
                ExposureReceipt.NOTE);
    }

    @Transactional
    public ExposureView getExposure(UUID id) {
        return viewer(List.of(require(id))).apply(require(id));
    }

    /**
     * Exposures in the order in which they were entered.
     *
     * @param untold only those of which the public health unit has not been told; venom is none of these
     */
    @Transactional
    public Page<ExposureView> listExposures(boolean untold, @Nullable UUID caseId, int limit, @Nullable UUID after) {
        List<Exposure> found = rows.find(
                        "erasedAt is null and (?1 is null or id > ?1) and (?2 is null or caseId = ?2) and (?3 = false or"
                                + " (toldAt is null and kind <> 'venom' and closedAt is null and withdrawnAt is null))"
                                + " order by id",
                        after,
                        caseId,
                        untold)
                .page(0, limit + 1)
                .list();
        return Page.of(found, limit, viewer(found), row -> row.id().toString());
    }

    /** Those of whoever asks, the latest first; nobody else is in them. */
    @Transactional
    public List<MyExposureView> listOwn() {
        List<?> member = entities.createNativeQuery(
                        "select member_id from accounts where id = ?1 and member_id is not null")
                .setParameter(1, actor.accountId())
                .getResultList();
        List<Exposure> own = member.isEmpty()
                ? List.of()
                : rows.list("memberId = ?1 and erasedAt is null order by happenedAt desc, id desc", member.get(0));
        return own.stream().map(viewer(own)).map(MyExposureView::of).toList();
    }

    @Transactional
    public ExposureView correct(UUID id, ExposureEntries.ExposureCorrection correction) {
        Exposure row = require(id);
        row.correct(correction);
        if (correction.caseId().isMade()) {
            UUID caseId = correction.caseId().value();
            if (caseId == null) {
                throw InvalidException.of(
                        "caseId", "An animal that was named stays.", "a case, or leave the field out");
            }
            named(row, caseId);
        }
        rows.flush();
        holdFor(row);
        return viewer(List.of(row)).apply(row);
    }

    @Transactional
    public ExposureView tell(UUID id, ExposureEntries.UnitTelling telling) {
        Exposure row = require(id);
        row.tell(telling, Corrections.passed("at", telling.at(), clock));
        rows.flush();
        return viewer(List.of(row)).apply(row);
    }

    /** Ends it for the person; the hold on the animal stands until the authority clears it. */
    @Transactional
    public ExposureView close(UUID id, ExposureEntries.ExposureClosing closing) {
        Exposure row = require(id);
        row.close(closing, Corrections.passed("at", closing.at(), clock));
        rows.flush();
        return viewer(List.of(row)).apply(row);
    }

    /** Takes back what should not have been entered; the hold stands here as well. */
    @Transactional
    public ExposureView withdraw(UUID id, ExposureEntries.ExposureWithdrawal withdrawal) {
        Exposure row = require(id);
        row.withdraw(clock.instant(), withdrawal.reason());
        rows.flush();
        return viewer(List.of(row)).apply(row);
    }

    private CaseView named(Exposure row, UUID caseId) {
        sight.requireSeen("case", caseId);
        CaseView told = cases.getCase(caseId);
        row.name(caseId, told.incidentId());
        return told;
    }

    private HoldService.@Nullable Standing holdFor(Exposure row) {
        return row.caseId == null || !row.holdsTheAnimal()
                ? null
                : holds.keepHeld(row.caseId, Hold.Kind.exposure, Objects.requireNonNull(row.happenedAt()));
    }

    private void tellWho(Exposure row, ExposureEntries.ExposedEntry exposed, Instant at) {
        boolean named = !isBlank(exposed.name());
        if ((exposed.memberId() == null) != named) {
            throw InvalidException.of(
                    "exposed", "One person was exposed.", "either memberId or name; each exposed person by themselves");
        }
        if (exposed.memberId() != null) {
            if (!isBlank(exposed.phone()) || !isBlank(exposed.guardianName()) || !isBlank(exposed.guardianPhone())) {
                throw InvalidException.of(
                        "exposed", "How a member is reached is in the roster.", "memberId alone, or name and phone");
            }
            roster.getMember(exposed.memberId());
            return;
        }
        if (isBlank(exposed.guardianName()) && !isBlank(exposed.guardianPhone())) {
            throw InvalidException.of("exposed.guardianName", "It does not say whose number it is.", "a name");
        }
        row.personId = people.enter(new OutsidePeople.Contact(exposed.name(), exposed.phone()), at);
        if (!isBlank(exposed.guardianName())) {
            row.guardianPersonId =
                    people.enter(new OutsidePeople.Contact(exposed.guardianName(), exposed.guardianPhone()), at);
        }
    }

    private static boolean isBlank(@Nullable String text) {
        return text == null || text.isBlank();
    }

    private Exposure require(UUID id) {
        return rows.findByIdOptional(id)
                .filter(row -> row.erasedAt == null)
                .orElseThrow(() -> new NotFoundException("exposure", id));
    }

    /** Reads at once what the views of some rows need. */
    private Function<Exposure, ExposureView> viewer(List<Exposure> shown) {
        records.lookUp(shown);
        Set<UUID> held = shown.isEmpty()
                ? Set.of()
                : holds.heldAmong(
                        shown.stream()
                                .flatMap(row -> Stream.ofNullable(row.caseId))
                                .toList(),
                        Hold.Kind.exposure);
        Map<UUID, OutsidePeople.Contact> contacts = people.contactsById(shown.stream()
                .flatMap(row -> Stream.concat(Stream.ofNullable(row.personId), Stream.ofNullable(row.guardianPersonId)))
                .toList());
        Map<UUID, String> callSigns = callSigns(shown);
        Map<UUID, List<ExposureView.Vaccinated>> vaccinations = vaccinations(shown);
        return row -> view(row, held, contacts, callSigns, vaccinations.getOrDefault(row.id(), List.of()));
    }

    private Map<UUID, String> callSigns(List<Exposure> shown) {
        List<UUID> members =
                shown.stream().flatMap(row -> Stream.ofNullable(row.memberId)).toList();
        if (members.isEmpty()) {
            return Map.of();
        }
        Map<UUID, String> callSigns = new HashMap<>();
        List<?> found = entities.createNativeQuery(
                        "select id, call_sign from members where id in (:ids)", Object[].class)
                .setParameter("ids", members)
                .getResultList();
        for (Object row : found) {
            Object[] columns = (Object[]) row;
            callSigns.put((UUID) columns[0], (String) columns[1]);
        }
        return callSigns;
    }

    private Map<UUID, List<ExposureView.Vaccinated>> vaccinations(List<Exposure> shown) {
        if (shown.isEmpty()) {
            return Map.of();
        }
        Map<UUID, List<ExposureView.Vaccinated>> told = new HashMap<>();
        List<?> found = entities.createNativeQuery(VACCINATIONS, Object[].class)
                .setParameter("ids", shown.stream().map(Exposure::id).toList())
                .setParameter("zone", region.zone().getId())
                .getResultList();
        for (Object row : found) {
            Object[] columns = (Object[]) row;
            String against = (String) columns[1];
            boolean current = (Boolean) columns[2];
            told.computeIfAbsent((UUID) columns[0], id -> new ArrayList<>())
                    .add(new ExposureView.Vaccinated(
                            against,
                            current,
                            current
                                    ? "Recorded as current on that day against " + against + "."
                                    : "Not shown to be vaccinated against " + against + " on that day."));
        }
        return told;
    }

    private ExposureView view(
            Exposure row,
            Set<UUID> held,
            Map<UUID, OutsidePeople.Contact> contacts,
            Map<UUID, String> callSigns,
            List<ExposureView.Vaccinated> vaccinations) {
        OutsidePeople.Contact person = row.personId == null ? null : contacts.get(row.personId);
        OutsidePeople.Contact guardian = row.guardianPersonId == null ? null : contacts.get(row.guardianPersonId);
        // What was said goes with whoever is hidden
        boolean hidden = row.personId != null && person == null;
        Instant toldAt = row.toldAt;
        Instant closedAt = row.closedAt;
        return new ExposureView(
                row.id(),
                row.kind().name(),
                new ExposureView.Exposed(
                        row.memberId,
                        row.memberId == null ? null : callSigns.get(row.memberId),
                        row.personId,
                        person == null ? null : person.name(),
                        person == null ? null : person.phone(),
                        row.guardianPersonId,
                        guardian == null ? null : guardian.name(),
                        guardian == null ? null : guardian.phone(),
                        hidden),
                row.caseId,
                row.incidentId,
                row.caseId != null && held.contains(row.caseId),
                row.bodyPart,
                Objects.requireNonNull(row.washed),
                row.washedMinutes,
                row.protectiveKit,
                row.needleUsedOnAnimal,
                hidden ? null : row.words,
                vaccinations,
                toldAt == null
                        ? null
                        : new ExposureView.UnitTold(
                                Objects.requireNonNull(row.toldUnit),
                                Objects.requireNonNull(row.toldBy),
                                row.toldReference,
                                toldAt),
                closedAt == null
                        ? null
                        : new ExposureView.ClosedBy(
                                Objects.requireNonNull(row.closedBy), Objects.requireNonNull(row.outcome), closedAt),
                row.withdrawnAt,
                row.withdrawnBecause,
                HealthAdvice.afterAnExposure(row, false),
                records.of(row));
    }
}
