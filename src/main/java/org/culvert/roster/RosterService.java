package org.culvert.roster;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Organisations and members. */
@ApplicationScoped
public class RosterService {
    public static final List<String> ORGANISATION_KINDS =
            List.of("network", "clinic", "shelter", "council", "roadsAuthority", "police", "wildlifeAuthority");

    /** An organisation as entered; kinds are {@link #ORGANISATION_KINDS}. */
    public record OrganisationEntry(
            @NotBlank @Size(max = 200) String kind,
            @NotBlank @Size(max = 200) String name,
            @Nullable Double latitude,
            @Nullable Double longitude,
            boolean xRay,
            boolean surgery) {}

    /** An organisation as shown. */
    public record OrganisationView(
            UUID id,
            String kind,
            String name,
            @Nullable Double latitude,
            @Nullable Double longitude,
            boolean xRay,
            boolean surgery,
            RecordView record) {}

    /** A member as entered, with what is personal; that part is never shown outside the network. */
    public record MemberEntry(
            @NotNull UUID organisationId,
            @NotBlank @Size(max = 200) String callSign,
            @NotBlank @Size(max = 200) String name,
            @Nullable @Size(max = 200) String phone,
            @Nullable @Size(max = 200) String email,
            @Nullable Double homeLatitude,
            @Nullable Double homeLongitude,
            boolean attends,
            boolean cares,
            @Nullable @Size(max = 200) String vetRegistration) {}

    /** A member as the work knows them. */
    public record MemberView(
            UUID id,
            UUID organisationId,
            String callSign,
            boolean attends,
            boolean cares,
            @Nullable String vetRegistration,
            @Nullable LocalDate leftOn,
            RecordView record) {}

    /** Where a member sets out from: for dispatch alone. */
    public record MemberBase(UUID memberId, double latitude, double longitude) {}

    @ApplicationScoped
    static class Organisations implements PanacheRepositoryBase<Organisation, UUID> {}

    @ApplicationScoped
    static class Members implements PanacheRepositoryBase<Member, UUID> {}

    @ApplicationScoped
    static class MemberPersons implements PanacheRepositoryBase<MemberPerson, UUID> {}

    private final Organisations organisations;
    private final Members members;
    private final MemberPersons persons;
    private final RecordViews records;

    RosterService(Organisations organisations, Members members, MemberPersons persons, RecordViews records) {
        this.organisations = organisations;
        this.members = members;
        this.persons = persons;
        this.records = records;
    }

    @Transactional
    public OrganisationView createOrganisation(OrganisationEntry entry) {
        if (!ORGANISATION_KINDS.contains(entry.kind())) {
            throw InvalidException.of(
                    "kind", "There is no such kind of organisation.", String.join(", ", ORGANISATION_KINDS));
        }
        var row = new Organisation(entry.kind(), entry.name());
        row.latitude = entry.latitude();
        row.longitude = entry.longitude();
        row.xRay = entry.xRay();
        row.surgery = entry.surgery();
        organisations.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public List<OrganisationView> listOrganisations(@Nullable String kind) {
        List<Organisation> rows = kind == null
                ? organisations.list("order by name")
                : organisations.list("kind = ?1 order by name", kind);
        return rows.stream().map(this::view).toList();
    }

    @Transactional
    public OrganisationView getOrganisation(UUID id) {
        return organisations
                .findByIdOptional(id)
                .map(this::view)
                .orElseThrow(() -> new NotFoundException("organisation", id));
    }

    @Transactional
    public MemberView createMember(MemberEntry entry) {
        getOrganisation(entry.organisationId());
        var person = new MemberPerson(entry.name());
        person.phone = entry.phone();
        person.email = entry.email();
        person.homeLatitude = entry.homeLatitude();
        person.homeLongitude = entry.homeLongitude();
        persons.persistAndFlush(person);
        var row = new Member(person.id(), entry.organisationId(), entry.callSign());
        row.attends = entry.attends();
        row.cares = entry.cares();
        row.vetRegistration = entry.vetRegistration();
        members.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public List<MemberView> listMembers() {
        return members.list("order by callSign").stream().map(this::view).toList();
    }

    @Transactional
    public MemberView getMember(UUID id) {
        return members.findByIdOptional(id).map(this::view).orElseThrow(() -> new NotFoundException("member", id));
    }

    /** Members who take animals into care and have not left. */
    @Transactional
    public List<MemberView> listCarers() {
        return members.list("cares = true and leftOn is null order by callSign").stream()
                .map(this::view)
                .toList();
    }

    /** Homes of the members who attend and have one on record. */
    @Transactional
    public List<MemberBase> listBases() {
        return homes(members.list("attends = true and leftOn is null"));
    }

    /** Homes of the members who take animals into care and have one on record. */
    @Transactional
    public List<MemberBase> listCarersHomes() {
        return homes(members.list("cares = true and leftOn is null"));
    }

    private List<MemberBase> homes(List<Member> of) {
        Map<UUID, UUID> memberByPerson = of.stream().collect(Collectors.toMap(member -> member.personId, Member::id));
        List<MemberBase> bases = new ArrayList<>();
        for (MemberPerson person : persons.list("erasedAt is null and hiddenAt is null order by id")) {
            UUID memberId = memberByPerson.get(person.id());
            Double latitude = person.homeLatitude;
            Double longitude = person.homeLongitude;
            if (memberId != null && latitude != null && longitude != null) {
                bases.add(new MemberBase(memberId, latitude, longitude));
            }
        }
        return bases;
    }

    private OrganisationView view(Organisation row) {
        return new OrganisationView(
                row.id(), row.kind, row.name, row.latitude, row.longitude, row.xRay, row.surgery, records.of(row));
    }

    private MemberView view(Member row) {
        return new MemberView(
                row.id(),
                row.organisationId,
                row.callSign,
                row.attends,
                row.cares,
                row.vetRegistration,
                row.leftOn,
                records.of(row));
    }
}
