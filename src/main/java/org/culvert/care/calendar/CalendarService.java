package org.culvert.care.calendar;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.animal.CaseView.CustodyView;
import org.culvert.animal.CustodyService;
import org.culvert.animal.CustodyService.Changes;
import org.culvert.care.plan.CarePlans;
import org.culvert.care.plan.CarePlans.TaskThrough;
import org.culvert.platform.ConstraintSentences;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.account.Secrets;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.Sight;
import org.culvert.platform.sight.Viewer;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/** Makes and revokes the addresses of calendars, and tells what stands in them. */
@ApplicationScoped
public class CalendarService {
    /** A calendar begins as many days back. */
    static final int DAYS_BACK = 35;

    /** And ends as many days ahead: most plans are over by then, and the calendar is read again and again. */
    static final int DAYS_AHEAD = 400;

    /** An address that was made, without the secret in it. */
    public record CareCalendarView(
            UUID id, UUID memberId, @Nullable Instant revokedAt, RecordView record) {}

    /**
     * An address that was just made.
     *
     * @param address path of the calendar, with its secret: shown this once and kept nowhere
     */
    public record CareCalendarMade(UUID id, String address) {}

    @ApplicationScoped
    static class Calendars implements PanacheRepositoryBase<CareCalendar, UUID> {}

    @ApplicationScoped
    static class Sentences implements ConstraintSentences {
        @Override
        public Map<String, String> sentences() {
            return Map.of(
                    "a_member_has_one_calendar",
                    "That member has the address of a calendar already: revoke it before another is made.",
                    "a_calendar_has_an_address_of_its_own",
                    "That address is of another calendar.",
                    "a_calendar_keeps_a_digest",
                    "Of an address the digest is kept.",
                    "a_calendar_is_revoked_after_it_was_made",
                    "An address is revoked after it was made.");
        }
    }

    private final Calendars calendars;
    private final CarePlans plans;
    private final CustodyService custody;
    private final RosterService roster;
    private final RegionService region;
    private final RecordViews records;
    private final Sight sight;
    private final EntityManager entities;
    private final Clock clock;

    CalendarService(
            Calendars calendars,
            CarePlans plans,
            CustodyService custody,
            RosterService roster,
            RegionService region,
            RecordViews records,
            Sight sight,
            EntityManager entities,
            Clock clock) {
        this.calendars = calendars;
        this.plans = plans;
        this.custody = custody;
        this.roster = roster;
        this.region = region;
        this.records = records;
        this.sight = sight;
        this.entities = entities;
        this.clock = clock;
    }

    /**
     * Makes an address for a member: their own, or anybody's for coordinators.
     *
     * @throws NotFoundException when it is another member's, for carers
     */
    @Transactional
    public CareCalendarMade make(UUID memberId) {
        requireOwn(memberId);
        String secret = Secrets.random();
        var row = new CareCalendar(memberId, Secrets.digest(secret), clock.instant());
        calendars.persistAndFlush(row);
        return new CareCalendarMade(row.id(), "/calendars/" + secret + ".ics");
    }

    /** A member's addresses, newest first. */
    @Transactional
    public List<CareCalendarView> listCalendars(UUID memberId) {
        requireOwn(memberId);
        List<CareCalendar> rows = calendars.list("memberId = ?1 order by id desc", memberId);
        records.lookUp(rows);
        return rows.stream().map(this::view).toList();
    }

    /** From now on nothing is at the address. */
    @Transactional
    public CareCalendarView revoke(UUID memberId, UUID id) {
        requireOwn(memberId);
        CareCalendar row = calendars
                .findByIdOptional(id)
                .filter(one -> one.memberId.equals(memberId))
                .orElseThrow(() -> new NotFoundException("calendar", id));
        row.revoke(clock.instant());
        calendars.flush();
        return view(row);
    }

    private void requireOwn(UUID memberId) {
        Viewer asker = sight.viewer();
        if (!memberId.equals(asker.memberId()) && !asker.hasAny(Role.COORDINATOR)) {
            throw new NotFoundException("calendar of member", memberId);
        }
        roster.getMember(memberId);
    }

    private CareCalendarView view(CareCalendar row) {
        return new CareCalendarView(row.id(), row.memberId, row.revokedAt, records.of(row));
    }

    /**
     * The calendar at an address, as iCalendar.
     *
     * @throws NotFoundException when none is there, or it was revoked, or its member has left or may not sign in any more
     */
    @Transactional
    public String read(String secret) {
        CareCalendar calendar = calendars
                .find("secret = ?1 and revokedAt is null", Secrets.digest(secret))
                .firstResultOptional()
                .orElseThrow(CalendarService::nothing);
        Instant now = clock.instant();
        ZoneId zone = region.zone();
        LocalDate today = now.atZone(zone).toLocalDate();
        if (!isActive(calendar.memberId, today)) {
            throw nothing();
        }
        return CalendarText.write(events(calendar.memberId, today, zone, now));
    }

    private static NotFoundException nothing() {
        return new NotFoundException("calendar", "at this address");
    }

    /** An account that was disabled ends what its member reads; a member without any reads by the address alone. */
    private boolean isActive(UUID memberId, LocalDate today) {
        return Boolean.TRUE.equals(entities.createNativeQuery("""
                        select (m.left_on is null or m.left_on > ?2) and p.erased_at is null
                            and coalesce((select bool_or(a.disabled_at is null) from accounts a where a.member_id = m.id), true)
                        from members m join personal.members p on p.id = m.person_id
                        where m.id = ?1
                        """)
                .setParameter(1, memberId)
                .setParameter(2, today)
                .getSingleResult());
    }

    private List<TaskEvent> events(UUID memberId, LocalDate today, ZoneId zone, Instant now) {
        LocalDate first = today.minusDays(DAYS_BACK);
        List<UUID> held = custody.listHeld(memberId, first.atStartOfDay(zone).toInstant(), now);
        Map<UUID, Changes> changes = custody.changesByCase(held);
        List<TaskEvent> events = new ArrayList<>();
        for (TaskThrough told : plans.listThrough(held, first, today.plusDays(DAYS_AHEAD))) {
            List<CustodyView> links = told.seen().custody().stream()
                    .filter(link -> memberId.equals(link.holder().memberId()))
                    .toList();
            boolean theirs = links.stream().anyMatch(link -> isWith(link, told));
            if (theirs || links.stream().anyMatch(link -> wasWith(link, told))) {
                events.add(event(
                        memberId,
                        told,
                        told.off() || !theirs,
                        changes.get(told.seen().id())));
            }
        }
        events.sort(Comparator.comparing((TaskEvent event) -> event.task().date())
                .thenComparing(TaskEvent::caseNumber)
                .thenComparing(event -> event.task().step().key())
                .thenComparing(TaskEvent::uid));
        return events;
    }

    /** Whether the animal was with the member while the task was due. */
    private static boolean isWith(CustodyView link, TaskThrough told) {
        return link.from().isBefore(told.task().dueUntil())
                && (link.to() == null || link.to().isAfter(told.task().dueFrom()));
    }

    /** Whether it went on to somebody else before the task was due, and the member knew of the task already. */
    private static boolean wasWith(CustodyView link, TaskThrough told) {
        return link.to() != null
                && !link.to().isAfter(told.task().dueFrom())
                && told.cameAt().isBefore(link.to());
    }

    private static TaskEvent event(UUID memberId, TaskThrough told, boolean off, @Nullable Changes ofCase) {
        Instant changedAt = told.changedAt();
        return new TaskEvent(
                TaskEvent.uid(memberId, told.planId(), told.task()),
                told.seen().number(),
                told.task(),
                off,
                told.changes() + (ofCase == null ? 0 : ofCase.count()),
                ofCase != null && ofCase.last().isAfter(changedAt) ? ofCase.last() : changedAt);
    }
}
