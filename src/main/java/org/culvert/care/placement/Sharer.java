package org.culvert.care.placement;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.culvert.animal.CaseView;
import org.culvert.care.matching.Candidacy;
import org.culvert.care.matching.Sharing;
import org.culvert.geo.Position;
import org.jspecify.annotations.Nullable;

/** Shares out many animals among the carers who can take them. */
@ApplicationScoped
class Sharer {
    /** A carer whose places are not told is asked for no more than this at once. */
    private static final int PLACES_NOT_TOLD = 2;

    /**
     * @param carerId who could take it; null: nobody
     * @param words why, or what spoke against everybody
     */
    record Share(
            @Nullable UUID carerId,
            @Nullable String callSign,
            @Nullable Double burdenKilometres,
            String words) {}

    /** @param isBest whether it is known that there is no better way to share them out */
    record Shares(Map<UUID, Share> byCase, boolean isBest) {}

    private final CarerSearch search;
    private final CarerService carers;
    private final KinReader kin;

    Sharer(CarerSearch search, CarerService carers, KinReader kin) {
        this.search = search;
        this.carers = carers;
        this.kin = kin;
    }

    /**
     * Shares animals out, as many as can be placed and with the least burden; those that are not parted go to one carer.
     *
     * @param cases open ones
     * @param at for which day; authorisations, absences and vaccinations of that day count
     * @param butNot carers who take none
     */
    @Transactional
    Shares share(List<CaseView> cases, Instant at, Set<UUID> butNot) {
        Set<UUID> caseIds = cases.stream().map(CaseView::id).collect(Collectors.toSet());
        return share(
                cases,
                butNot,
                new Known(
                        group -> search.standings(group, at, caseIds, null),
                        kin.relativesOf(caseIds),
                        standingRules()));
    }

    /**
     * What is read before animals are shared out, and can be of more animals than these.
     *
     * @param ofGroup all carers, in one order, by the group of the animals; of those who take none it does not matter what
     *     they have
     */
    record Known(
            Function<UUID, List<CarerSearch.Standing>> ofGroup,
            List<KinReader.Relative> relatives,
            List<KeepingRule> rules) {}

    List<KeepingRule> standingRules() {
        return carers.standingRules();
    }

    /** Shares animals out as above, by what is known of them. */
    @Transactional
    Shares share(List<CaseView> cases, Set<UUID> butNot, Known known) {
        Set<UUID> caseIds = cases.stream().map(CaseView::id).collect(Collectors.toSet());
        List<UUID> groups = cases.stream()
                .map(one -> one.animal().taxonGroupId())
                .distinct()
                .sorted()
                .toList();
        Map<UUID, List<CarerSearch.Standing>> standings = new LinkedHashMap<>();
        for (UUID group : groups) {
            standings.put(
                    group,
                    known.ofGroup().apply(group).stream()
                            .filter(standing ->
                                    !butNot.contains(standing.carer().id()))
                            .toList());
        }
        List<CarerSearch.Standing> firsts =
                standings.values().stream().findFirst().orElse(List.of());
        // Who can take none of them need not be weighed
        int[] able = IntStream.range(0, firsts.size())
                .filter(j ->
                        standings.values().stream().anyMatch(of -> of.get(j).isFit()))
                .toArray();
        List<CarerSearch.Standing> asked =
                Arrays.stream(able).mapToObj(firsts::get).toList();
        List<Sharing.Home> homes =
                Arrays.stream(able).mapToObj(j -> home(groups, standings, j)).toList();
        List<Sharing.Beast> beasts = new ArrayList<>();
        for (CaseView one : cases) {
            List<CarerSearch.Standing> of =
                    Objects.requireNonNull(standings.get(one.animal().taxonGroupId()));
            Position from = search.positionOf(one);
            double[] burden = Arrays.stream(able)
                    .mapToObj(of::get)
                    .mapToDouble(carer -> carer.isFit() ? search.burden(carer, from) : Double.POSITIVE_INFINITY)
                    .toArray();
            beasts.add(new Sharing.Beast(groups.indexOf(one.animal().taxonGroupId()), burden));
        }
        Map<UUID, String> against = new HashMap<>();
        standings.forEach((group, of) -> against.put(group, reasons(of)));
        Map<UUID, Integer> placeOf = new HashMap<>();
        for (int i = 0; i < cases.size(); i++) {
            placeOf.put(cases.get(i).id(), i);
        }
        List<List<Integer>> families = KinReader.families(caseIds, known.relatives()).stream()
                .map(family -> family.stream()
                        .map(id -> Objects.requireNonNull(placeOf.get(id)))
                        .toList())
                .toList();
        Sharing.Shared shared = Sharing.share(
                beasts,
                homes,
                apart(groups, known.rules()),
                families.stream().map(Sharing.Together::new).toList());
        Map<UUID, Share> byCase = new LinkedHashMap<>();
        for (int i = 0; i < cases.size(); i++) {
            byCase.put(
                    cases.get(i).id(),
                    told(
                            shared.carerByAnimal()[i],
                            beasts.get(i),
                            asked,
                            Objects.requireNonNull(
                                    against.get(cases.get(i).animal().taxonGroupId())),
                            withWhom(i, families, cases)));
        }
        return new Shares(byCase, shared.isBest());
    }

    private static Sharing.Home home(List<UUID> groups, Map<UUID, List<CarerSearch.Standing>> standings, int carer) {
        int[] byGroup = new int[groups.size()];
        int all = 0;
        for (int g = 0; g < byGroup.length; g++) {
            Candidacy.Facts facts = Objects.requireNonNull(standings.get(groups.get(g)))
                    .get(carer)
                    .facts();
            Integer places = facts.places();
            Integer ofGroup = facts.groupPlaces();
            all = places != null ? Math.max(0, places - facts.held()) : Integer.MAX_VALUE;
            byGroup[g] = ofGroup != null
                    ? Math.max(0, ofGroup - facts.heldOfGroup())
                    : places != null ? all : PLACES_NOT_TOLD;
        }
        return new Sharing.Home(Math.min(all, Arrays.stream(byGroup).sum()), byGroup);
    }

    private static List<Sharing.Apart> apart(List<UUID> groups, List<KeepingRule> rules) {
        List<Sharing.Apart> apart = new ArrayList<>();
        for (KeepingRule rule : rules) {
            int one = groups.indexOf(rule.taxonGroupId);
            int other = rule.otherGroupId == null ? -1 : groups.indexOf(rule.otherGroupId);
            if (rule.keep == CarerService.Keep.apart
                    && rule.strength == CarerService.KeepingStrength.policy
                    && one >= 0
                    && other >= 0
                    && one != other) {
                apart.add(new Sharing.Apart(one, other));
            }
        }
        return apart;
    }

    /** Numbers of the cases from which one is not parted, in words; empty where there are none. */
    private static String withWhom(int animal, List<List<Integer>> families, List<CaseView> cases) {
        return families.stream()
                .filter(family -> family.contains(animal))
                .flatMap(List::stream)
                .filter(other -> other != animal)
                .map(other -> cases.get(other).number())
                .sorted()
                .map(number -> "case " + number)
                .collect(Collectors.joining(", "));
    }

    private static Share told(
            int carer, Sharing.Beast beast, List<CarerSearch.Standing> carers, String against, String withWhom) {
        if (carer >= 0) {
            double burden = beast.burden()[carer];
            return new Share(
                    carers.get(carer).carer().id(),
                    carers.get(carer).carer().callSign(),
                    burden,
                    "Can take it, as far as is entered. Ask before the animal sets out."
                            + (withWhom.isEmpty() ? "" : " Together with " + withWhom + "."));
        }
        boolean couldBeTaken = Arrays.stream(beast.burden()).anyMatch(Double::isFinite);
        return new Share(
                null,
                null,
                null,
                couldBeTaken
                        ? withWhom.isEmpty()
                                ? "Those who could take it are full with the others."
                                : "Nobody who could take it has room for all of those that are kept together: it and "
                                        + withWhom + "."
                        : "Nobody can take it: " + against + ".");
    }

    private static String reasons(List<CarerSearch.Standing> carers) {
        Map<String, Integer> against = new HashMap<>();
        carers.forEach(carer -> carer.refusing().forEach(test -> against.merge(test, 1, Integer::sum)));
        Collection<Map.Entry<String, Integer>> sorted = against.entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue()
                        .reversed()
                        .thenComparing(Map.Entry.comparingByKey()))
                .toList();
        return sorted.isEmpty()
                ? "no carer is entered"
                : sorted.stream()
                        .map(one -> one.getKey() + " (" + one.getValue() + " of " + carers.size() + " carers)")
                        .collect(Collectors.joining(", "));
    }
}
