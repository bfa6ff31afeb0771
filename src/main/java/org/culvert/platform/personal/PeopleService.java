package org.culvert.platform.personal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.platform.Actor;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.jspecify.annotations.Nullable;

/** Finds people, hides them, and takes their requests. */
@ApplicationScoped
public class PeopleService {
    private static final int MOST_FOUND = 50;
    private static final int SHORTEST = 3;

    /**
     * Whom to look for; each that is given must fit. It travels in a body, since addresses of requests are logged on their
     * way.
     *
     * @param name part of a name or call sign
     * @param phone digits of a number, however they are grouped
     * @param email part of an address
     */
    public record PersonSought(
            @Nullable @Size(max = 200) String name,
            @Nullable @Size(max = 100) String phone,
            @Nullable @Size(max = 200) String email) {}

    private static final String PERSON = """
            select p.*, r.last_dealing_at, r.goes_on, r.due_on, r.years, q.happened_at as requested_at,
                   u.jurisdiction, u.source,
                   (select count(*) from calls c where c.caller_id = p.id) as calls
            from (select id, 'people' as kind, name, phone, email, address, cast(null as text) as call_sign, hidden_at,
                         erased_at, recorded_at
                  from personal.people
                  union all
                  select m.id, 'members', m.name, m.phone, m.email, null, r.call_sign, m.hidden_at, m.erased_at, m.recorded_at
                  from personal.members m join members r on r.person_id = m.id) p
            left join personal.retention_of(p.id, :day) r on true
            left join retention_rules u on u.id = r.rule_id
            left join personal.erasure_requests q on q.person_id = p.id
            """;

    private final Query query;
    private final ErasureList list;
    private final Actor actor;
    private final Clock clock;

    PeopleService(Query query, ErasureList list, Actor actor, Clock clock) {
        this.query = query;
        this.list = list;
        this.actor = actor;
        this.clock = clock;
    }

    /** The latest entered first, at most fifty. */
    @Transactional
    public List<PersonView> find(PersonSought sought) {
        String name = sought.name() == null ? "" : sought.name().strip();
        String digits = sought.phone() == null ? "" : sought.phone().replaceAll("[^0-9]", "");
        String email = sought.email() == null ? "" : sought.email().strip();
        if (name.length() < SHORTEST && digits.length() < SHORTEST && email.length() < SHORTEST) {
            throw InvalidException.of(
                    "name",
                    "There is too little to look for.",
                    "at least " + SHORTEST + " letters or digits of a name, a phone number or an e-mail address");
        }
        return query.list(
                PERSON + """
                        where (:name = '' or p.name ilike :likeName or p.call_sign ilike :likeName)
                          and (:digits = '' or regexp_replace(p.phone, '[^0-9]', '', 'g') like :likeDigits)
                          and (:email = '' or p.email ilike :likeEmail)
                        order by p.recorded_at desc, p.id limit :most
                        """,
                Map.of(
                        "day",
                        today(),
                        "name",
                        name,
                        "likeName",
                        like(name),
                        "digits",
                        digits,
                        "likeDigits",
                        like(digits),
                        "email",
                        email,
                        "likeEmail",
                        like(email),
                        "most",
                        MOST_FOUND),
                PeopleService::view);
    }

    @Transactional
    public PersonView getPerson(UUID id) {
        return query.list(PERSON + "where p.id = :id", Map.of("day", today(), "id", id), PeopleService::view).stream()
                .findFirst()
                .orElseThrow(() -> new NotFoundException("person", id));
    }

    /** Locks the rows that a person is. */
    void lock(UUID id) {
        for (String table : List.of("people", "members")) {
            query.list(
                    "select id from personal." + table + " where id = :id for update",
                    Map.of("id", id),
                    row -> row.id("id"));
        }
    }

    /** From now on nobody who works with records sees this person or what they said. */
    @Transactional
    public PersonView hide(UUID id, String reason) {
        PersonView person = requireNotErased(id);
        if (person.hiddenAt() != null) {
            throw new ConflictException("This person is hidden already.");
        }
        Instant at = now();
        setHidden(person, at, reason);
        list.append(new ErasureList.Entry(at, ErasureList.What.hidden, id));
        return getPerson(id);
    }

    @Transactional
    public PersonView show(UUID id, String reason) {
        PersonView person = requireNotErased(id);
        if (person.hiddenAt() == null) {
            throw new ConflictException("This person is not hidden.");
        }
        setHidden(person, null, reason);
        list.append(new ErasureList.Entry(now(), ErasureList.What.shown, id));
        return getPerson(id);
    }

    /** Keeps that a person asked to be erased: hidden at once, erased when the longest duty ends. */
    @Transactional
    public PersonView requestErasure(UUID id, Instant askedAt, @Nullable String reason) {
        PersonView person = requireNotErased(id);
        if (person.erasureRequestedAt() != null) {
            throw new ConflictException("This person has asked to be erased already.");
        }
        if (askedAt.isAfter(clock.instant())) {
            throw InvalidException.of("askedAt", "This lies in the future.", "an instant that has passed");
        }
        query.update(
                """
                insert into personal.erasure_requests (id, person_id, reason, happened_at, recorded_at, recorded_by)
                values (gen_random_uuid(), :person, :reason, :asked, :at, :account)
                """,
                values("person", id, "reason", reason, "asked", askedAt, "at", now(), "account", actor.accountId()));
        if (person.hiddenAt() == null) {
            hide(id, "asked to be erased");
        }
        return getPerson(id);
    }

    private void setHidden(PersonView person, @Nullable Instant hiddenAt, String reason) {
        query.update(
                "update personal." + person.kind() + """
                 set hidden_at = cast(:hidden as timestamptz), version = version + 1, revised_at = :at,
                     revised_by = :account, revision_reason = :reason
                where id = :id
                """,
                values(
                        "hidden",
                        hiddenAt,
                        "at",
                        now(),
                        "account",
                        actor.accountId(),
                        "reason",
                        reason,
                        "id",
                        person.id()));
    }

    private PersonView requireNotErased(UUID id) {
        PersonView person = getPerson(id);
        if (person.erasedAt() != null) {
            throw new ConflictException("This person has been erased.");
        }
        return person;
    }

    /** As the database keeps instants. */
    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    private LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    }

    private static Map<String, @Nullable Object> values(@Nullable Object... namesAndValues) {
        Map<String, @Nullable Object> values = new java.util.HashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            values.put(String.valueOf(namesAndValues[i]), namesAndValues[i + 1]);
        }
        return values;
    }

    private static String like(String part) {
        return "%" + part.replace("\\", "\\\\").replace("%", "\\%").replace("_", "\\_") + "%";
    }

    private static PersonView view(Query.Row row) {
        return new PersonView(
                row.id("id"),
                row.word("kind"),
                row.text("name"),
                row.text("phone"),
                row.text("email"),
                row.text("address"),
                row.text("call_sign"),
                row.count("calls"),
                row.instant("last_dealing_at"),
                row.instant("hidden_at"),
                row.instant("requested_at"),
                row.instant("erased_at"),
                row.instant("erased_at") == null ? row.day("due_on") : null,
                why(row));
    }

    private static String why(Query.Row row) {
        boolean member = row.word("kind").equals("members");
        if (row.instant("erased_at") != null) {
            return "Erased: what stays says nothing of who it was.";
        }
        if (row.is("goes_on")) {
            return member
                    ? "Kept while they are a member, answer for an animal, or an exposure of theirs is open."
                    : "Kept while a case that they reported or held, or an exposure of theirs, goes on.";
        }
        if (row.day("due_on") == null) {
            return "Kept, since no rule says for how long "
                    + (member ? "members who left" : "callers and finders")
                    + " are: enter the duty with its source, or that somebody looked and found none.";
        }
        return "Kept for " + row.count("years") + " years from their last dealing, the longest duty that holds now ("
                + row.word("jurisdiction") + ": " + row.word("source") + ").";
    }
}
