package org.culvert.roster;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Organisations, members, authorisations and vaccinations. */
@ApplicationScoped
public class RosterService {
    private static final int MOST_ORDERED = 1000;

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

    /**
     * What a holder may hold.
     *
     * @param authorisationClass the jurisdiction's own class
     * @param taxonGroup key of the group it covers
     * @param premises that it names, in its own words, never an address; left out: it names none
     * @param supervised whether it holds only under somebody who has one of their own
     */
    public record AuthorisationEntry(
            @Nullable UUID memberId,
            @Nullable UUID organisationId,
            @NotBlank @Size(max = 200) String jurisdiction,
            @NotBlank @Size(max = 200) String authorisationClass,
            @NotBlank @Size(max = 200) String number,
            @NotBlank @Size(max = 200) String taxonGroup,
            @NotNull LocalDate validFrom,
            @NotNull LocalDate validTo,
            @Nullable @Size(max = 200) String premises,
            boolean supervised) {}

    /**
     * Authorisations that an authority gives many at once, for a fire, a flood or a heat.
     *
     * @param number of the order
     * @param order whose it is, of which day, and where it can be read
     * @param memberIds who may hold
     * @param taxonGroups keys of what
     */
    public record OrderedAuthorisations(
            @NotBlank @Size(max = 200) String jurisdiction,
            @NotBlank @Size(max = 200) String authorisationClass,
            @NotBlank @Size(max = 200) String number,
            @NotBlank @Size(max = 2000) String order,
            @NotNull @Size(min = 1, max = MOST_ORDERED) List<@NotNull UUID> memberIds,
            @NotNull @Size(min = 1, max = MOST_ORDERED) List<@NotBlank @Size(max = 200) String> taxonGroups,
            @NotNull LocalDate validFrom,
            @NotNull LocalDate validTo) {}

    /** An authorisation as kept. */
    public record AuthorisationView(
            UUID id,
            @Nullable UUID memberId,
            @Nullable UUID organisationId,
            String jurisdiction,
            String authorisationClass,
            String number,
            String taxonGroup,
            LocalDate validFrom,
            LocalDate validTo,
            @Nullable String premises,
            boolean supervised,
            @Nullable String byOrder,
            RecordView record) {}

    @ApplicationScoped
    static class Organisations implements PanacheRepositoryBase<Organisation, UUID> {}

    @ApplicationScoped
    static class Members implements PanacheRepositoryBase<Member, UUID> {}

    @ApplicationScoped
    static class MemberPersons implements PanacheRepositoryBase<MemberPerson, UUID> {}

    @ApplicationScoped
    static class Authorisations implements PanacheRepositoryBase<Authorisation, UUID> {}

    private final Organisations organisations;
    private final Members members;
    private final MemberPersons persons;
    private final Authorisations authorisations;
    private final TaxonService taxa;
    private final RecordViews records;

    RosterService(
            Organisations organisations,
            Members members,
            MemberPersons persons,
            Authorisations authorisations,
            TaxonService taxa,
            RecordViews records) {
        this.organisations = organisations;
        this.members = members;
        this.persons = persons;
        this.authorisations = authorisations;
        this.taxa = taxa;
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

    @Transactional
    public UUID createAuthorisation(AuthorisationEntry entry) {
        if ((entry.memberId() == null) == (entry.organisationId() == null)) {
            throw InvalidException.of(
                    "memberId", "An authorisation has exactly one holder.", "either memberId or organisationId");
        }
        if (entry.validTo().isBefore(entry.validFrom())) {
            throw InvalidException.of("validTo", "It ends before it begins.", "a day on or after validFrom");
        }
        if (entry.memberId() != null) {
            getMember(entry.memberId());
        }
        if (entry.organisationId() != null) {
            getOrganisation(entry.organisationId());
        }
        var row = Authorisation.of(
                entry, taxa.requireGroup("taxonGroup", entry.taxonGroup()).id());
        authorisations.persistAndFlush(row);
        return row.id();
    }

    /** Enters authorisations by order, one for each member and group, all or none. */
    @Transactional
    public List<AuthorisationView> createByOrder(OrderedAuthorisations entry) {
        if (entry.validTo().isBefore(entry.validFrom())) {
            throw InvalidException.of("validTo", "It ends before it begins.", "a day on or after validFrom");
        }
        Set<UUID> members = new LinkedHashSet<>(entry.memberIds());
        Set<String> groups = new LinkedHashSet<>(entry.taxonGroups());
        if ((long) members.size() * groups.size() > MOST_ORDERED) {
            throw InvalidException.of(
                    "memberIds", "There are too many at once.", "at most " + MOST_ORDERED + " of members and groups");
        }
        members.forEach(this::getMember);
        List<Authorisation> rows = new ArrayList<>();
        for (String group : groups) {
            UUID groupId = taxa.requireGroup("taxonGroups", group).id();
            for (UUID member : members) {
                Authorisation row = Authorisation.of(
                        new AuthorisationEntry(
                                member,
                                null,
                                entry.jurisdiction(),
                                entry.authorisationClass(),
                                entry.number(),
                                group,
                                entry.validFrom(),
                                entry.validTo(),
                                null,
                                false),
                        groupId);
                row.byOrder = entry.order();
                authorisations.persist(row);
                rows.add(row);
            }
        }
        authorisations.flush();
        return rows.stream().map(this::view).toList();
    }

    @Transactional
    public AuthorisationView getAuthorisation(UUID id) {
        return view(authorisations.findByIdOptional(id).orElseThrow(() -> new NotFoundException("authorisation", id)));
    }

    /** Authorisations of a holder, or all, in the order in which they were entered. */
    @Transactional
    public List<AuthorisationView> listAuthorisations(@Nullable UUID memberId, @Nullable UUID organisationId) {
        return authorisations
                .list(
                        "(?1 is null or memberId = ?1) and (?2 is null or organisationId = ?2) order by id",
                        memberId,
                        organisationId)
                .stream()
                .map(this::view)
                .toList();
    }

    private AuthorisationView view(Authorisation row) {
        return new AuthorisationView(
                row.id(),
                row.memberId,
                row.organisationId,
                row.jurisdiction,
                row.authorisationClass,
                row.number,
                taxa.getGroup(row.taxonGroupId).key(),
                row.validFrom,
                row.validTo,
                row.premises,
                row.supervised,
                row.byOrder,
                records.of(row));
    }

    /** Authorisations for a group that are listed on a day or later, in the order in which they were entered. */
    @Transactional
    public List<AuthorisationView> listAuthorisationsFor(UUID taxonGroupId, LocalDate from) {
        return authorisations.list("taxonGroupId = ?1 and validTo >= ?2 order by id", taxonGroupId, from).stream()
                .map(this::view)
                .toList();
    }

    /** Authorisations for a group that are listed on a day, in the order in which they were entered. */
    @Transactional
    public List<AuthorisationView> listAuthorisationsOn(UUID taxonGroupId, LocalDate day) {
        return authorisations
                .list("taxonGroupId = ?1 and validFrom <= ?2 and validTo >= ?2 order by id", taxonGroupId, day)
                .stream()
                .map(this::view)
                .toList();
    }

    /**
     * The number of an authorisation by which a holder may hold a group on a day: the member's own, or that of the
     * organisation the member works under.
     */
    @Transactional
    public Optional<String> findAuthorisation(Holder holder, UUID taxonGroupId, LocalDate day) {
        UUID organisationId = holder.organisationId();
        if (holder.memberId() != null) {
            Optional<String> own = authorisations
                    .find(
                            "memberId = ?1 and taxonGroupId = ?2 and validFrom <= ?3 and validTo >= ?3 order by id",
                            holder.memberId(),
                            taxonGroupId,
                            day)
                    .firstResultOptional()
                    .map(row -> row.number);
            if (own.isPresent()) {
                return own;
            }
            organisationId = getMember(holder.memberId()).organisationId();
        }
        if (organisationId == null) {
            return Optional.empty();
        }
        return authorisations
                .find(
                        "organisationId = ?1 and taxonGroupId = ?2 and validFrom <= ?3 and validTo >= ?3 order by id",
                        organisationId,
                        taxonGroupId,
                        day)
                .firstResultOptional()
                .map(row -> row.number);
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
