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
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.roster.papers.Papers;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** What holders may hold, in which jurisdiction, from when to when. */
@ApplicationScoped
public class AuthorisationService {
    private static final int MOST_ORDERED = 1000;

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
    static class Authorisations implements PanacheRepositoryBase<Authorisation, UUID> {}

    private final Authorisations authorisations;
    private final RosterService roster;
    private final HolderStandings standings;
    private final TaxonService taxa;
    private final RecordViews records;

    AuthorisationService(
            Authorisations authorisations,
            RosterService roster,
            HolderStandings standings,
            TaxonService taxa,
            RecordViews records) {
        this.authorisations = authorisations;
        this.roster = roster;
        this.standings = standings;
        this.taxa = taxa;
        this.records = records;
    }

    @Transactional
    public UUID create(AuthorisationEntry entry) {
        if ((entry.memberId() == null) == (entry.organisationId() == null)) {
            throw InvalidException.of(
                    "memberId", "An authorisation has exactly one holder.", "either memberId or organisationId");
        }
        if (entry.validTo().isBefore(entry.validFrom())) {
            throw InvalidException.of("validTo", "It ends before it begins.", "a day on or after validFrom");
        }
        if (entry.memberId() != null) {
            roster.getMember(entry.memberId());
        }
        if (entry.organisationId() != null) {
            roster.getOrganisation(entry.organisationId());
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
        members.forEach(roster::getMember);
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
    public AuthorisationView get(UUID id) {
        return view(authorisations.findByIdOptional(id).orElseThrow(() -> new NotFoundException("authorisation", id)));
    }

    /** Authorisations of a holder, or all, in the order in which they were entered. */
    @Transactional
    public List<AuthorisationView> list(@Nullable UUID memberId, @Nullable UUID organisationId) {
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
    public List<AuthorisationView> listFor(UUID taxonGroupId, LocalDate from) {
        return authorisations.list("taxonGroupId = ?1 and validTo >= ?2 order by id", taxonGroupId, from).stream()
                .map(this::view)
                .toList();
    }

    /** Authorisations for a group that are listed on a day, in the order in which they were entered. */
    @Transactional
    public List<AuthorisationView> listOn(UUID taxonGroupId, LocalDate day) {
        return authorisations
                .list("taxonGroupId = ?1 and validFrom <= ?2 and validTo >= ?2 order by id", taxonGroupId, day)
                .stream()
                .map(this::view)
                .toList();
    }

    /**
     * The number of an authorisation by which a holder may hold a group on a day: the member's own, or that of the
     * organisation the member works under, for these premises and under this supervision.
     */
    @Transactional
    public Optional<String> find(Holder holder, UUID taxonGroupId, LocalDate day) {
        UUID memberId = holder.memberId();
        return Optional.ofNullable(
                read(day, listOn(taxonGroupId, day), holder, memberId == null ? null : roster.getMember(memberId))
                        .number());
    }

    /**
     * Days, first and last included, on which the listed authorisations read alike.
     *
     * @param number of the one by which the holder may hold; null: none was listed that holds
     * @param unknown whether one might hold, if it were known where the holder keeps animals
     * @param against what speaks against those before it on the first of the days, in words
     */
    public record ListedDays(
            LocalDate from, LocalDate to, @Nullable String number, boolean unknown, List<String> against) {}

    /** By what a holder may hold a group on each day of a span, first and last included, as {@link #find} reads one day. */
    @Transactional
    public List<ListedDays> listDays(Holder holder, UUID taxonGroupId, LocalDate from, LocalDate to) {
        List<AuthorisationView> all = listFor(taxonGroupId, from);
        UUID memberId = holder.memberId();
        RosterService.MemberView member = memberId == null ? null : roster.getMember(memberId);
        List<ListedDays> spans = new ArrayList<>();
        for (LocalDate day = from; !day.isAfter(to); day = day.plusDays(1)) {
            Papers read = read(day, all, holder, member);
            int last = spans.size() - 1;
            ListedDays before = last < 0 ? null : spans.get(last);
            if (before != null
                    && Objects.equals(before.number(), read.number())
                    && before.unknown() == read.unknown()) {
                spans.set(
                        last, new ListedDays(before.from(), day, before.number(), before.unknown(), before.against()));
            } else {
                spans.add(new ListedDays(day, day, read.number(), read.unknown(), read.against()));
            }
        }
        return List.copyOf(spans);
    }

    private Papers read(
            LocalDate day, List<AuthorisationView> all, Holder holder, RosterService.@Nullable MemberView member) {
        List<AuthorisationView> listed = all.stream()
                .filter(one -> !one.validFrom().isAfter(day) && !one.validTo().isBefore(day))
                .toList();
        if (member == null) {
            // An organisation has no premises but those that its own authorisations name
            List<String> against = new ArrayList<>();
            for (Papers.Paper paper : papers(listed, null, holder.organisationId())) {
                if (!paper.supervised()) {
                    return new Papers(paper.number(), false, against);
                }
                against.add(paper.number() + " asks for supervision, and an organisation has none");
            }
            return new Papers(null, false, against);
        }
        boolean needsStanding = papers(listed, member.id(), member.organisationId()).stream()
                .anyMatch(paper -> paper.premises() != null || paper.supervised());
        return read(
                day,
                listed,
                member,
                needsStanding ? standings.standingOn(member.id(), day).orElse(null) : null);
    }

    /**
     * Which of the authorisations that are listed on a day holds for a member.
     *
     * @param day on which they are listed
     * @param listed for one group, as {@link #listOn} tells them
     * @param standing what is told of the member's premises and supervision on the day; null: nothing is
     */
    @Transactional
    public Papers read(
            LocalDate day,
            List<AuthorisationView> listed,
            RosterService.MemberView member,
            HolderStandings.@Nullable Standing standing) {
        UUID supervisorId = standing == null ? null : standing.supervisorId();
        return Papers.read(
                day,
                papers(listed, member.id(), member.organisationId()),
                standing == null ? null : standing.premises(),
                supervisorId != null && maySupervise(listed, roster.getMember(supervisorId)));
    }

    /** A supervisor has an authorisation of their own, or their organisation's, that asks for no supervision itself. */
    private static boolean maySupervise(List<AuthorisationView> listed, RosterService.MemberView supervisor) {
        return supervisor.leftOn() == null
                && papers(listed, supervisor.id(), supervisor.organisationId()).stream()
                        .anyMatch(one -> !one.supervised());
    }

    /** The member's own first, then those of the organisation. */
    private static List<Papers.Paper> papers(
            List<AuthorisationView> listed, @Nullable UUID memberId, @Nullable UUID organisationId) {
        return Stream.concat(
                        listed.stream().filter(one -> memberId != null && memberId.equals(one.memberId())),
                        listed.stream()
                                .filter(one -> organisationId != null && organisationId.equals(one.organisationId())))
                .map(one -> new Papers.Paper(one.number(), one.premises(), one.supervised()))
                .toList();
    }

    @Transactional
    public AuthorisationView correct(UUID id, RosterCorrections.AuthorisationCorrection correction) {
        authorisations
                .findByIdOptional(id)
                .orElseThrow(() -> new NotFoundException("authorisation", id))
                .correct(correction);
        authorisations.flush();
        return get(id);
    }
}
