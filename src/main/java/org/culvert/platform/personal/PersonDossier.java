package org.culvert.platform.personal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Gathers everything that is held about one person. */
@ApplicationScoped
public class PersonDossier {
    private final PeopleService people;
    private final Query query;

    PersonDossier(PeopleService people, Query query) {
        this.people = people;
        this.query = query;
    }

    @Transactional
    public PersonData gather(UUID id) {
        PersonView person = people.getPerson(id);
        boolean member = person.kind().equals("members");
        PersonData.Membership membership = member ? membership(id) : null;
        UUID memberId = membership == null ? null : membership.memberId();
        return new PersonData(
                person,
                member
                        ? "To send who may and can go, to know who answers for an animal, and to show that they may."
                        : "To find, help and return the animal that they told of, and to keep the records that the law asks for.",
                member
                        ? "Entered by coordinators from what the member told them."
                        : "Told by the caller, finder or holder, or read from a file that the network imported.",
                "Dispatchers and coordinators of the network; of an exposure, coordinators and the public health unit that was told."
                        + " Exports, reports and occurrences carry no names, numbers or words.",
                earlier(id),
                calls(id),
                earlierWords(id),
                held(id, memberId),
                membership,
                memberId == null ? List.of() : authorisations(memberId),
                memberId == null ? List.of() : vaccinations(memberId),
                exposures(id, memberId),
                memberId == null ? List.of() : attendances(memberId),
                memberId == null ? List.of() : accounts(memberId),
                query
                        .list(
                                "select reason from personal.erasure_requests where person_id = :id",
                                Map.of("id", id),
                                row -> row.text("reason"))
                        .stream()
                        .filter(Objects::nonNull)
                        .findFirst()
                        .orElse(null));
    }

    private List<PersonData.Earlier> earlier(UUID id) {
        return query.list(
                """
                select row_before ->> 'name' as name, row_before ->> 'phone' as phone, row_before ->> 'email' as email,
                       row_before ->> 'address' as address, replaced_at
                from personal.revisions where row_id = :id and table_name in ('people', 'members') order by row_version
                """,
                Map.of("id", id),
                row -> new PersonData.Earlier(
                        row.text("name"),
                        row.text("phone"),
                        row.text("email"),
                        row.text("address"),
                        row.when("replaced_at")));
    }

    private List<PersonData.CallTold> calls(UUID id) {
        return query.list(
                """
                select c.id, c.incident_id, c.happened_at, c.recorded_at, c.police_reference, w.said, p.verbatim
                from calls c left join personal.words w on w.id = c.words_id left join places p on p.id = c.place_id
                where c.caller_id = :id order by c.happened_at, c.id
                """,
                Map.of("id", id),
                row -> new PersonData.CallTold(
                        row.id("id"),
                        row.id("incident_id"),
                        row.when("happened_at"),
                        row.when("recorded_at"),
                        row.text("police_reference"),
                        row.text("said"),
                        row.text("verbatim")));
    }

    private List<PersonData.EarlierWords> earlierWords(UUID id) {
        return query.list(
                """
                select c.id, r.row_before ->> 'said' as said, r.replaced_at
                from calls c join personal.revisions r on r.table_name = 'words' and r.row_id = c.words_id
                where c.caller_id = :id order by r.replaced_at, r.row_version
                """,
                Map.of("id", id),
                row -> new PersonData.EarlierWords(row.id("id"), row.text("said"), row.when("replaced_at")));
    }

    private List<PersonData.Held> held(UUID id, @Nullable UUID memberId) {
        return query.list(
                """
                select case_id, lower(held) as held_from, upper(held) as held_to from custody_links
                where holder_person_id = :id or holder_member_id = :member order by lower(held), id
                """,
                Map.of("id", id, "member", memberId == null ? id : memberId),
                row -> new PersonData.Held(row.id("case_id"), row.when("held_from"), row.instant("held_to")));
    }

    private PersonData.@Nullable Membership membership(UUID id) {
        return query
                .list(
                        """
                        select m.id, m.call_sign, o.name, p.home_latitude, p.home_longitude, m.attends, m.cares,
                               m.vet_registration, m.left_on
                        from members m join personal.members p on p.id = m.person_id
                        join organisations o on o.id = m.organisation_id where m.person_id = :id
                        """,
                        Map.of("id", id),
                        row -> new PersonData.Membership(
                                row.id("id"),
                                row.word("call_sign"),
                                row.word("name"),
                                row.number("home_latitude"),
                                row.number("home_longitude"),
                                row.is("attends"),
                                row.is("cares"),
                                row.text("vet_registration"),
                                row.day("left_on")))
                .stream()
                .findFirst()
                .orElse(null);
    }

    private List<PersonData.AuthorisationTold> authorisations(UUID memberId) {
        return query.list(
                """
                select jurisdiction, class as authorisation_class, number, valid_from, valid_to from authorisations
                where member_id = :member order by valid_from, id
                """,
                Map.of("member", memberId),
                row -> new PersonData.AuthorisationTold(
                        row.word("jurisdiction"),
                        row.word("authorisation_class"),
                        row.word("number"),
                        row.on("valid_from"),
                        row.on("valid_to")));
    }

    private List<PersonData.VaccinationTold> vaccinations(UUID memberId) {
        return query.list(
                """
                select against, given_on, current_until, basis from personal.vaccinations
                where member_id = :member and erased_at is null order by given_on, id
                """,
                Map.of("member", memberId),
                row -> new PersonData.VaccinationTold(
                        row.word("against"), row.on("given_on"), row.on("current_until"), row.word("basis")));
    }

    private List<PersonData.ExposureTold> exposures(UUID id, @Nullable UUID memberId) {
        return query.list(
                """
                select id, guardian_person_id is not distinct from cast(:id as uuid) as as_guardian, happened_at, case_id,
                       incident_id, kind, body_part, washed, washed_minutes, protective_kit, words, told_at, told_unit,
                       told_reference, outcome
                from personal.exposures
                where (person_id = :id or guardian_person_id = :id or member_id = :member) and erased_at is null
                order by happened_at, id
                """,
                Map.of("id", id, "member", memberId == null ? id : memberId),
                row -> row.is("as_guardian")
                        ? new PersonData.ExposureTold(
                                row.id("id"),
                                true,
                                row.when("happened_at"),
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null)
                        : new PersonData.ExposureTold(
                                row.id("id"),
                                false,
                                row.when("happened_at"),
                                row.findId("case_id"),
                                row.findId("incident_id"),
                                row.text("kind"),
                                row.text("body_part"),
                                row.text("washed"),
                                row.number("washed_minutes") == null ? null : row.count("washed_minutes"),
                                row.text("protective_kit"),
                                row.text("words"),
                                row.instant("told_at"),
                                row.text("told_unit"),
                                row.text("told_reference"),
                                row.text("outcome")));
    }

    private List<PersonData.AttendanceTold> attendances(UUID memberId) {
        return query.list(
                """
                select a.id, a.incident_id, a.happened_at, a.outcome
                from attendances a join attendance_people p on p.attendance_id = a.id
                where p.member_id = :member order by a.happened_at, a.id
                """,
                Map.of("member", memberId),
                row -> new PersonData.AttendanceTold(
                        row.id("id"), row.id("incident_id"), row.when("happened_at"), row.text("outcome")));
    }

    private List<PersonData.AccountTold> accounts(UUID memberId) {
        return query.list(
                "select id, username, roles, created_at, disabled_at from accounts where member_id = :member order by id",
                Map.of("member", memberId),
                row -> new PersonData.AccountTold(
                        row.word("username"),
                        row.word("roles"),
                        row.when("created_at"),
                        row.instant("disabled_at"),
                        query.list(
                                "select created_at from sessions where account_id = :account order by created_at",
                                Map.of("account", row.id("id")),
                                session -> session.when("created_at")),
                        query.list(
                                "select name from api_tokens where account_id = :account order by created_at",
                                Map.of("account", row.id("id")),
                                token -> token.word("name"))));
    }
}
