package org.culvert.care.placement;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.care.matching.Candidacy;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.culvert.roster.AuthorisationService;
import org.culvert.roster.RosterService;
import org.culvert.roster.VaccinationService;
import org.culvert.taxon.TaxonService;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** Who can take an animal: every carer, with what speaks for and against each. */
@ApplicationScoped
public class CarerSearch {
    /** Over which the work of a carer is counted. */
    private static final Duration LATELY = Duration.ofDays(28);

    /** Beyond that nobody is asked. */
    private static final Duration FARTHEST = Duration.ofDays(3653);

    /** A way that nobody knows counts as a long one. */
    static final double UNKNOWN_KILOMETRES = 200;

    /**
     * A carer who might be asked.
     *
     * @param answer {@code canTake}, {@code needsReason} (a rule of the network's own speaks against it) or
     *     {@code canNotTake} (no reason lifts it)
     * @param authorisation under which they may hold it; null: none
     * @param held animals held or offered now
     * @param places of their own saying, for all animals; null: not told
     * @param companions of its group there
     * @param animalDaysLately animals held in the last 28 days, in animal-days
     * @param kilometresAway straight, from where the animal is, or was found; null: not known
     * @param burdenKilometres by which those who can take it are ranked: the way, and what the last weeks' animals weigh
     */
    public record CarerOption(
            UUID memberId,
            String callSign,
            String answer,
            @Nullable String authorisation,
            int held,
            @Nullable Integer places,
            int companions,
            double animalDaysLately,
            @Nullable Double kilometresAway,
            double burdenKilometres,
            List<CarerTestView> tests) {}

    /**
     * @param strength {@code law}, {@code policy} or {@code advice}
     * @param verdict {@code pass}, {@code fail} or {@code cantTell}
     */
    public record CarerTestView(String test, String strength, String verdict, String words) {
        static CarerTestView of(Candidacy.Test test) {
            return new CarerTestView(
                    test.test(), test.strength().name(), test.verdict().name(), test.words());
        }
    }

    /**
     * What is known of one carer for animals of one group, the way apart. The way and the animal's kin are matters of advice:
     * whatever refuses an animal refuses all of its group.
     *
     * @param refusing tests that speak against the carer, each once
     */
    record Standing(
            RosterService.MemberView carer,
            Candidacy.Facts facts,
            @Nullable Position home,
            List<String> refusing) {
        static Standing of(RosterService.MemberView carer, Candidacy.Facts facts, @Nullable Position home) {
            return new Standing(
                    carer,
                    facts,
                    home,
                    Candidacy.of(facts, null, List.of()).tests().stream()
                            .filter(Candidacy.Test::refuses)
                            .map(Candidacy.Test::test)
                            .distinct()
                            .toList());
        }

        boolean isFit() {
            return refusing.isEmpty();
        }

        /** @param kin from whom the animal is not parted */
        Candidacy candidacy(@Nullable Position from, List<Candidacy.Kin> kin) {
            return Candidacy.of(facts, metres(from), kin);
        }

        @Nullable
        Double metres(@Nullable Position from) {
            return from == null || home == null ? null : Double.valueOf(Geodesy.metresBetween(from, home));
        }
    }

    private final CarerService carers;
    private final KinReader kin;
    private final CaseService cases;
    private final RosterService roster;
    private final AuthorisationService authorisations;
    private final VaccinationService vaccinations;
    private final TaxonService taxa;
    private final RegionService region;
    private final EntityManager entities;
    private final Clock clock;
    private final double kilometresPerAnimal;

    CarerSearch(
            CarerService carers,
            KinReader kin,
            CaseService cases,
            RosterService roster,
            AuthorisationService authorisations,
            VaccinationService vaccinations,
            TaxonService taxa,
            RegionService region,
            EntityManager entities,
            Clock clock,
            @ConfigProperty(name = "culvert.placement.kilometres-per-animal", defaultValue = "5")
                    double kilometresPerAnimal) {
        this.carers = carers;
        this.kin = kin;
        this.cases = cases;
        this.roster = roster;
        this.authorisations = authorisations;
        this.vaccinations = vaccinations;
        this.taxa = taxa;
        this.region = region;
        this.entities = entities;
        this.clock = clock;
        this.kilometresPerAnimal = kilometresPerAnimal;
    }

    /** Carers for the animal of a case: those who can take it first, the least burdened before the others. */
    @Transactional
    public List<CarerOption> findCarers(UUID caseId, @Nullable Instant at) {
        if (at != null && Duration.between(clock.instant(), at).abs().compareTo(FARTHEST) > 0) {
            throw InvalidException.of("at", "That is too far from now.", "an instant within ten years");
        }
        CaseView of = cases.getCase(caseId);
        Position from = positionOf(of);
        List<Candidacy.Kin> relatives = kin.kinOf(caseId);
        return standings(of.animal().taxonGroupId(), at == null ? clock.instant() : at, Set.of(caseId), null).stream()
                .map(standing -> option(standing, from, relatives))
                .sorted(ORDER)
                .toList();
    }

    private static final Comparator<CarerOption> ORDER = Comparator.<CarerOption>comparingInt(
                    option -> switch (option.answer()) {
                        case "canTake" -> 0;
                        case "needsReason" -> 1;
                        default -> 2;
                    })
            .thenComparing(option -> lacks("keptTogether", option))
            .thenComparing(option -> lacks("company", option))
            .thenComparingDouble(CarerOption::burdenKilometres)
            .thenComparing(CarerOption::callSign);

    private static boolean lacks(String advice, CarerOption option) {
        return option.tests().stream()
                .anyMatch(test -> test.test().equals(advice) && !test.verdict().equals("pass"));
    }

    private CarerOption option(Standing standing, @Nullable Position from, List<Candidacy.Kin> relatives) {
        Candidacy candidacy = standing.candidacy(from, relatives);
        Double metres = standing.metres(from);
        return new CarerOption(
                standing.carer().id(),
                standing.carer().callSign(),
                candidacy.isFit() ? "canTake" : candidacy.isListed() ? "needsReason" : "canNotTake",
                candidacy.authorisationNumber(),
                standing.facts().held(),
                standing.facts().places(),
                standing.facts().heldOfGroup(),
                standing.facts().animalDaysLately(),
                metres == null ? null : Double.valueOf(metres / 1000),
                burden(candidacy),
                candidacy.tests().stream().map(CarerTestView::of).toList());
    }

    private double burden(Candidacy candidacy) {
        return candidacy.burden(kilometresPerAnimal, UNKNOWN_KILOMETRES);
    }

    double burden(Standing standing, @Nullable Position from) {
        return Candidacy.burden(standing.facts(), standing.metres(from), kilometresPerAnimal, UNKNOWN_KILOMETRES);
    }

    /** Where the animal is, as far as that is known: at the clinic or the carer's that has it, or where it was found. */
    @Nullable
    Position positionOf(CaseView of) {
        UUID organisation = of.whereabouts() == null ? null : of.whereabouts().organisationId();
        if (organisation == null && !of.custody().isEmpty()) {
            CaseView.CustodyView last = of.custody().get(of.custody().size() - 1);
            organisation = last.to() == null ? last.holder().organisationId() : null;
        }
        if (organisation != null) {
            RosterService.OrganisationView there = roster.getOrganisation(organisation);
            if (there.latitude() != null && there.longitude() != null) {
                return new Position(there.latitude(), there.longitude());
            }
        }
        return of.foundPlace() == null
                ? null
                : new Position(
                        of.foundPlace().decimalLatitude(), of.foundPlace().decimalLongitude());
    }

    /**
     * What is known of carers for animals of a group.
     *
     * @param apartFromCases cases that are not counted as being with anyone, since they are the ones to be placed
     * @param only these carers; null: all
     */
    List<Standing> standings(UUID groupId, Instant at, Collection<UUID> apartFromCases, @Nullable Set<UUID> only) {
        LocalDate day = at.atZone(region.zone()).toLocalDate();
        TaxonService.GroupView group = taxa.getGroup(groupId);
        List<AuthorisationService.AuthorisationView> listed = authorisations.listOn(groupId, day);
        Map<UUID, Position> homes = roster.listCarersHomes().stream()
                .collect(Collectors.toMap(
                        RosterService.MemberBase::memberId, home -> new Position(home.latitude(), home.longitude())));
        String needed = group.vaccinationNeeded();
        Set<UUID> vaccinated = needed == null ? Set.of() : vaccinations.listVaccinated(needed, day);
        Map<UUID, CarerProfile> profiles =
                carers.allProfiles().stream().collect(Collectors.toMap(row -> row.memberId, Function.identity()));
        Map<UUID, LocalDate> away = new HashMap<>();
        carers.absencesOn(day)
                .forEach(row ->
                        away.merge(row.memberId, row.untilDay, (one, other) -> one.isAfter(other) ? one : other));
        Map<UUID, Map<UUID, Integer>> held = held(apartFromCases);
        Map<UUID, Double> lately = animalDays(at);
        List<KeepingRule> rules = carers.standingRules();
        List<Standing> standings = new ArrayList<>();
        for (RosterService.MemberView carer : roster.listCarers()) {
            if (only != null && !only.contains(carer.id())) {
                continue;
            }
            CarerProfile profile = profiles.get(carer.id());
            Map<UUID, Integer> there = held.getOrDefault(carer.id(), Map.of());
            standings.add(Standing.of(
                    carer,
                    new Candidacy.Facts(
                            carer.id(),
                            day,
                            authorisations.read(day, listed, carer, profile == null ? null : profile.standingOn(day)),
                            needed,
                            vaccinated.contains(carer.id()),
                            profile == null ? null : profile.places,
                            there.values().stream().mapToInt(Integer::intValue).sum(),
                            profile == null ? null : profile.placesByGroup.get(group.key()),
                            there.getOrDefault(groupId, 0),
                            neighbours(rules, groupId, there.keySet()),
                            rules.stream()
                                    .filter(rule -> rule.keep == CarerService.Keep.inCompany
                                            && rule.taxonGroupId.equals(groupId))
                                    .map(rule -> rule.words)
                                    .findFirst()
                                    .orElse(null),
                            away.get(carer.id()),
                            lately.getOrDefault(carer.id(), 0.0)),
                    homes.get(carer.id())));
        }
        return standings;
    }

    private List<Candidacy.Neighbour> neighbours(List<KeepingRule> rules, UUID groupId, Set<UUID> there) {
        List<Candidacy.Neighbour> found = new ArrayList<>();
        for (KeepingRule rule : rules) {
            UUID other = otherOf(rule, groupId);
            if (other != null && there.contains(other)) {
                found.add(new Candidacy.Neighbour(
                        "There are " + taxa.getGroup(other).name() + ". " + rule.words,
                        rule.strength == CarerService.KeepingStrength.policy));
            }
        }
        return found;
    }

    /** The group from which a rule keeps another apart, whichever way round it is entered. */
    static @Nullable UUID otherOf(KeepingRule rule, UUID groupId) {
        if (rule.keep != CarerService.Keep.apart) {
            return null;
        }
        return rule.taxonGroupId.equals(groupId)
                ? rule.otherGroupId
                : groupId.equals(rule.otherGroupId) ? rule.taxonGroupId : null;
    }

    /** How many animals of which group are with whom, or offered to them. */
    Map<UUID, Map<UUID, Integer>> held(Collection<UUID> apartFromCases) {
        List<?> rows = entities.createNativeQuery("""
                        select w.member_id, t.taxon_group_id, count(*)
                        from animals_with_carers w join cases c on c.id = w.case_id
                        join animals a on a.id = c.animal_id join taxa t on t.id = a.taxon_id
                        where not w.case_id = any(cast(:apart as uuid[]))
                        group by w.member_id, t.taxon_group_id
                        """)
                .setParameter(
                        "apart", apartFromCases.stream().map(UUID::toString).collect(Collectors.joining(",", "{", "}")))
                .getResultList();
        Map<UUID, Map<UUID, Integer>> held = new HashMap<>();
        for (Object one : rows) {
            Object[] row = (Object[]) one;
            held.computeIfAbsent((UUID) row[0], member -> new HashMap<>())
                    .put((UUID) row[1], ((Number) row[2]).intValue());
        }
        return held;
    }

    private Map<UUID, Double> animalDays(Instant at) {
        List<?> rows = entities.createNativeQuery("""
                        select holder_member_id, sum(extract(epoch from
                            least(coalesce(upper(held), cast(:at as timestamptz)), cast(:at as timestamptz))
                            - greatest(lower(held), cast(:since as timestamptz)))) / 86400
                        from custody_links
                        where holder_member_id is not null
                          and held && tstzrange(cast(:since as timestamptz), cast(:at as timestamptz))
                        group by holder_member_id
                        """)
                .setParameter("at", at)
                .setParameter("since", at.minus(LATELY))
                .getResultList();
        return rows.stream()
                .map(row -> (Object[]) row)
                .collect(Collectors.toMap(
                        row -> (UUID) row[0],
                        row -> Math.round(((Number) Objects.requireNonNull(row[1])).doubleValue() * 10) / 10.0));
    }
}
