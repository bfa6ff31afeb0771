package org.culvert.dispatch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.culvert.call.IncidentService;
import org.culvert.call.IncidentView;
import org.culvert.call.PlaceView;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.platform.RegionService;
import org.culvert.road.RoadFacts;
import org.culvert.roster.RosterService;
import org.culvert.roster.VaccinationService;
import org.culvert.taxon.CautionService;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Gathers the facts of a going-out for the gate, and says who could go. */
@ApplicationScoped
public class GateKeeper {
    /**
     * Someone who could go.
     *
     * @param metresAway geodesic distance from the member's base to the place, or null where no place is known
     * @param notBecause why this member may not go; empty for one who may
     */
    public record Candidate(
            UUID memberId, String callSign, @Nullable Double metresAway, List<String> notBecause) {}

    private final IncidentService incidents;
    private final RoadFacts roads;
    private final RosterService roster;
    private final VaccinationService vaccinations;
    private final TaxonService taxa;
    private final CautionService cautions;
    private final RegionService region;
    private final EntityManager entities;

    GateKeeper(
            IncidentService incidents,
            RoadFacts roads,
            RosterService roster,
            VaccinationService vaccinations,
            TaxonService taxa,
            CautionService cautions,
            RegionService region,
            EntityManager entities) {
        this.incidents = incidents;
        this.roads = roads;
        this.roster = roster;
        this.vaccinations = vaccinations;
        this.taxa = taxa;
        this.cautions = cautions;
        this.region = region;
        this.entities = entities;
    }

    @Transactional
    List<GateTest> test(UUID incidentId, Collection<UUID> memberIds, Instant at, @Nullable String policeReference) {
        IncidentView incident = incidents.getIncident(incidentId, false);
        PlaceView place = incident.place();
        Set<UUID> groups = incidents.taxonGroupsOf(incidentId);
        List<String> needed = vaccinationsNeeded(groups);
        List<String> without = new ArrayList<>();
        Map<String, Set<UUID>> vaccinated = vaccinated(needed, at);
        for (UUID member : memberIds) {
            for (String against : needed) {
                if (!Objects.requireNonNull(vaccinated.get(against)).contains(member)) {
                    without.add(roster.getMember(member).callSign());
                }
            }
        }
        boolean mayBeHurt =
                incident.calls().stream().anyMatch(call -> !call.anyoneHurt().equals("no"));
        String reference = policeReference != null
                ? policeReference
                : incident.calls().stream()
                        .map(call -> call.policeReference())
                        .filter(given -> given != null && !given.isBlank())
                        .findFirst()
                        .orElse(null);
        Double limit = place == null || place.roadLinkId() == null || place.roadIsInDoubt()
                ? null
                : roads.findLink(place.roadLinkId())
                        .map(RoadFacts.LinkFacts::speedLimitKmh)
                        .orElse(null);
        return Gate.test(
                new Gate.Facts(
                        at,
                        place == null ? null : new Position(place.decimalLatitude(), place.decimalLongitude()),
                        limit,
                        memberIds.size(),
                        reference,
                        !groups.isEmpty(),
                        needed,
                        without,
                        mayBeHurt),
                rules(day(at)));
    }

    /** Members who attend, nearest first; those who may not go are shown with the reason. */
    @Transactional
    public List<Candidate> whoCanGo(UUID incidentId, Instant at) {
        PlaceView place = incidents.placeOf(incidentId);
        List<String> needed = vaccinationsNeeded(incidents.taxonGroupsOf(incidentId));
        Map<String, Set<UUID>> vaccinated = vaccinated(needed, at);
        List<Candidate> candidates = new ArrayList<>();
        for (RosterService.MemberBase base : roster.listBases()) {
            List<String> reasons = new ArrayList<>();
            for (String against : needed) {
                if (!Objects.requireNonNull(vaccinated.get(against)).contains(base.memberId())) {
                    reasons.add("not shown to be vaccinated against " + against);
                }
            }
            Double metres = place == null
                    ? null
                    : Geodesy.metresBetween(
                            new Position(base.latitude(), base.longitude()),
                            new Position(place.decimalLatitude(), place.decimalLongitude()));
            candidates.add(new Candidate(
                    base.memberId(), roster.getMember(base.memberId()).callSign(), metres, reasons));
        }
        candidates.sort(Comparator.comparing(
                        (Candidate candidate) -> !candidate.notBecause().isEmpty())
                .thenComparing(Candidate::metresAway, Comparator.nullsLast(Comparator.naturalOrder()))
                .thenComparing(Candidate::callSign));
        return candidates;
    }

    /** The usual cautions for whoever goes. */
    @Transactional
    List<String> sayToRescuer(UUID incidentId) {
        return cautions.listCautions(incidents.taxonGroupsOf(incidentId), "rescuer").stream()
                .map(CautionService.CautionView::words)
                .toList();
    }

    private List<String> vaccinationsNeeded(Collection<UUID> groups) {
        return groups.stream()
                .map(taxa::getGroup)
                .map(TaxonService.GroupView::vaccinationNeeded)
                .filter(needed -> needed != null)
                .distinct()
                .sorted()
                .toList();
    }

    /** Who is shown to be vaccinated, by what against. */
    private Map<String, Set<UUID>> vaccinated(List<String> needed, Instant at) {
        Map<String, Set<UUID>> vaccinated = new HashMap<>();
        needed.forEach(against -> vaccinated.put(against, vaccinations.listVaccinated(against, day(at))));
        return vaccinated;
    }

    private LocalDate day(Instant at) {
        return at.atZone(region.zone()).toLocalDate();
    }

    private Gate.Rules rules(LocalDate day) {
        Optional<Object[]> fast = rule("highSpeedKmh", day);
        Optional<Object[]> dark = rule("aloneInTheDark", day);
        return new Gate.Rules(
                fast.map(row -> ((Number) row[0]).doubleValue()), fast.map(row -> (String) row[1]), dark.map(row ->
                        (String) row[1]));
    }

    private Optional<Object[]> rule(String key, LocalDate day) {
        List<?> rows = entities.createNativeQuery("""
                        select figure, words from gate_rules
                        where key = :key and valid_from <= :day and (valid_to is null or valid_to > :day)
                        """)
                .setParameter("key", key)
                .setParameter("day", day)
                .getResultList();
        return rows.stream().map(row -> (Object[]) row).findFirst();
    }
}
