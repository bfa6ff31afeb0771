package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.call.CallEntry;
import org.culvert.care.health.ExposureEntries;
import org.culvert.care.health.ExposureService;
import org.culvert.care.health.SyndromeEntries;
import org.culvert.care.health.SyndromeService;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;

/**
 * Somebody who was scratched by a flying-fox, and three possums near one another that cannot use their hind legs. What is told of
 * the possums is invented, and no disease.
 */
@ApplicationScoped
class HealthStory {
    /** How many are alike in the story: as many as make an alert where nothing else was settled. */
    private static final int ALIKE = 3;

    private static final double NEAR_METRES = 10_000;
    private static final Duration SOON = Duration.ofDays(10);

    private final ExposureService exposures;
    private final SyndromeService syndromes;
    private final EntityManager entities;

    HealthStory(ExposureService exposures, SyndromeService syndromes, EntityManager entities) {
        this.exposures = exposures;
        this.syndromes = syndromes;
        this.entities = entities;
    }

    private record Found(UUID caseId, Instant at, Position place) {}

    void tell(DemoRegion region) {
        scratched(region);
        alike(region);
    }

    private void scratched(DemoRegion region) {
        Found last = found("flying-foxes").get(0);
        String[] person = Names.person(new Dice(region.settings().seed(), "who was scratched"));
        exposures.enter(new ExposureEntries.ExposureEntry(
                ExposureEntries.ExposureKind.scratch,
                new ExposureEntries.ExposedEntry(null, person[0] + ' ' + person[1], "+61 2 5550 0184", null, null),
                last.caseId(),
                null,
                "left forearm",
                CallEntry.Answer.yes,
                15,
                "a towel, no gloves",
                null,
                "Lifted it off the fence before anybody came.",
                last.at().minus(Duration.ofMinutes(40)),
                null));
    }

    private void alike(DemoRegion region) {
        UUID syndrome = syndromes
                .enterSyndrome(new SyndromeEntries.SyndromeEntry(
                        "hind legs not used",
                        "possums-and-gliders",
                        "Drags both hind legs, bright otherwise; no wound and nothing broken that can be felt.",
                        "invented for the demo",
                        region.settings().lastDay()))
                .id();
        for (Found one : near(found("possums-and-gliders"))) {
            syndromes.report(
                    one.caseId(),
                    new SyndromeEntries.ReportEntry(
                            syndrome, one.at().plus(Duration.ofHours(3)), "seen at the first visit"));
        }
    }

    /** The first of the newest that has enough others near and soon, with these. */
    private static List<Found> near(List<Found> newest) {
        return newest.stream()
                .map(one -> newest.stream()
                        .filter(other -> Geodesy.metresBetween(one.place(), other.place()) < NEAR_METRES
                                && Duration.between(one.at(), other.at()).abs().compareTo(SOON) < 0)
                        .limit(ALIKE)
                        .toList())
                .filter(together -> together.size() == ALIKE)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no possums of the region are near one another"));
    }

    /** Animals of a group that came in alive, the newest first. */
    private List<Found> found(String group) {
        List<?> rows =
                entities.createNativeQuery("""
                        select c.id, c.happened_at, p.decimal_latitude, p.decimal_longitude
                        from cases c join animals a on a.id = c.animal_id join taxa t on t.id = a.taxon_id
                        join taxon_groups g on g.id = t.taxon_group_id
                        join places p on p.id = c.found_place_id
                        where g.key = :group and exists (select 1 from visits v where v.case_id = c.id)
                        order by c.happened_at desc
                        """).setParameter("group", group).getResultList();
        return rows.stream()
                .map(row -> (Object[]) row)
                .map(row -> new Found(
                        (UUID) row[0],
                        (Instant) row[1],
                        new Position(((Number) row[2]).doubleValue(), ((Number) row[3]).doubleValue())))
                .toList();
    }
}
