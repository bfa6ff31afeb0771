package org.culvert.release.rules;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What else is known of an animal, a site and the hour, on the day of an assessment. All of it is kept with the assessment.
 *
 * @param approvals those that stand on the day, of the site and of the case
 * @param holds those that have not been cleared
 * @param fitness the latest; null: no vet has signed any
 * @param facts those published of its taxon
 * @param lands those that hold on the day, around the site and the origin
 * @param roadsBetween across the straight way from the origin to the site; null: no roads or no origin are known
 * @param hotspots those of its group that are known, near the site; null: no run on its group and the coming season is known
 * @param daysInCare since it was found, whole days
 */
public record Circumstances(
        List<Approval> approvals,
        List<Hold> holds,
        @Nullable FitnessCheck fitness,
        List<SpeciesFact> facts,
        List<LandSaid> lands,
        @Nullable Barrier roadsBetween,
        @Nullable List<HotspotNear> hotspots,
        int daysInCare,
        Conditions conditions) {
    /** Nothing is known. */
    public static final Circumstances NOT_KNOWN =
            new Circumstances(List.of(), List.of(), null, List.of(), List.of(), null, null, 0, Conditions.NOT_SAID);

    public Circumstances {
        approvals = List.copyOf(approvals);
        holds = List.copyOf(holds);
        facts = List.copyOf(facts);
        lands = List.copyOf(lands);
        hotspots = hotspots == null ? null : List.copyOf(hotspots);
    }

    Optional<SpeciesFact> findFact(SpeciesFact.Kind kind) {
        return facts.stream().filter(fact -> fact.kind() == kind).findFirst();
    }

    /** How far an individual of the kind goes; the greatest published, where several are. */
    public OptionalDouble movementRangeMetres() {
        return SpeciesFact.movementRangeMetres(facts);
    }

    boolean isAquatic() {
        return findFact(SpeciesFact.Kind.aquatic).isPresent();
    }

    List<LandSaid> landsOf(Land.Kind... kinds) {
        List<Land.Kind> wanted = List.of(kinds);
        return lands.stream().filter(land -> wanted.contains(land.kind())).toList();
    }
}
