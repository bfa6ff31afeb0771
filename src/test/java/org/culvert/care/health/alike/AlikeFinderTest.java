package org.culvert.care.health.alike;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import net.sf.geographiclib.Geodesic;
import org.culvert.geo.Position;
import org.junit.jupiter.api.Test;

class AlikeFinderTest {
    private static final LocalDate DAY = LocalDate.of(2026, 2, 1);

    private static Report at(double latitude, double longitude, int day) {
        return new Report(UUID.randomUUID(), UUID.randomUUID(), new Position(latitude, longitude), DAY.plusDays(day));
    }

    /** One degree of latitude at the equator is 110,574 m long on WGS 84: NGA.STND.0036, also in many tables. */
    @Test
    void theEdgeOfDistanceCountsAndIsRoundedToWholeMetres() {
        Report here = at(0, 0, 0);
        Report aDegreeNorth = at(1, 0, 0);
        assertThat(new Threshold(3, 110.574, 0).isNear(here, aDegreeNorth)).isTrue();
        assertThat(new Threshold(3, 110.573, 0).isNear(here, aDegreeNorth)).isFalse();
        for (double metres : new double[] {4999.9, 5000, 5000.49, 5000.51, 5001}) {
            var end = Geodesic.WGS84.Direct(-31, 150, 77, metres);
            assertThat(new Threshold(3, 5, 0).isNear(at(-31, 150, 0), at(end.lat2, end.lon2, 0)))
                    .as("%s m", metres)
                    .isEqualTo(metres < 5000.5);
        }
    }

    @Test
    void theEdgeOfDaysCounts() {
        assertThat(new Threshold(3, 5, 7).isNear(at(0, 0, 0), at(0, 0, 7))).isTrue();
        assertThat(new Threshold(3, 5, 7).isNear(at(0, 0, 7), at(0, 0, 0))).isTrue();
        assertThat(new Threshold(3, 5, 7).isNear(at(0, 0, 0), at(0, 0, 8))).isFalse();
        assertThat(new Threshold(3, 5, 0).isNear(at(0, 0, 0), at(0, 0, 0))).isTrue();
        assertThat(new Threshold(3, 5, 0).isNear(at(0, 0, 0), at(0, 0, 1))).isFalse();
    }

    @Test
    void aThresholdOfOneIsNone() {
        assertThatThrownBy(() -> new Threshold(1, 5, 7)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Threshold(3, Double.NaN, 7)).isInstanceOf(IllegalArgumentException.class);
    }

    /** Two at either end of a middle are a group through it, though they are not near one another. */
    @Test
    void aGroupIsWhatIsNearItsMiddle() {
        Report west = at(0, 0, 0);
        Report middle = at(0, 0.04, 0);
        Report east = at(0, 0.08, 0);
        var finder = new AlikeFinder(new Threshold(3, 5, 7));
        List<Report> known = List.of(west, middle, east);
        assertThat(finder.groupOf(east, known, id -> false))
                .containsExactlyInAnyOrder(west.id(), middle.id(), east.id());
        assertThat(finder.groupOf(east, List.of(west, east), id -> false)).isEmpty();
    }

    @Test
    void oneAnimalSeenThreeTimesIsOne() {
        UUID animal = UUID.randomUUID();
        List<Report> known = new ArrayList<>();
        for (int day = 0; day < 3; day++) {
            known.add(new Report(UUID.randomUUID(), animal, new Position(0, 0), DAY.plusDays(day)));
        }
        var finder = new AlikeFinder(new Threshold(3, 5, 7));
        assertThat(finder.groupOf(known.get(2), known, id -> false)).isEmpty();
        known.add(at(0, 0, 1));
        known.add(at(0, 0, 1));
        assertThat(finder.groupOf(known.get(4), known, id -> false)).hasSize(5);
    }

    /** Reports as they come, against all groups of all of them worked out at once by pairs. */
    @Test
    void whateverTheOrderGroupsAreThoseOfAllPairs() {
        int grouped = 0;
        int several = 0;
        for (int seed = 0; seed < 60; seed++) {
            var random = new Random(seed);
            int count = 2 + random.nextInt(4);
            double kilometres = 1 + random.nextInt(6);
            int days = random.nextInt(6);
            List<Report> reports = new ArrayList<>();
            for (int i = 0; i < 120; i++) {
                UUID animal = i > 0 && random.nextInt(10) == 0
                        ? reports.get(random.nextInt(i)).animalId()
                        : UUID.randomUUID();
                reports.add(new Report(
                        UUID.randomUUID(),
                        animal,
                        new Position(-31 + random.nextDouble() * 0.3, 150 + random.nextDouble() * 0.3),
                        DAY.plusDays(random.nextInt(25))));
            }
            var threshold = new Threshold(count, kilometres, days);
            Set<Set<UUID>> found = asTheyCome(reports, threshold);
            assertThat(found).as("seed %s", seed).isEqualTo(allPairs(reports, count, kilometres, days));
            grouped += found.stream().mapToInt(Set::size).sum();
            several += found.size() > 1 ? 1 : 0;
        }
        assertThat(grouped).as("reports in groups").isGreaterThan(500);
        assertThat(several).as("sets with more than one group").isGreaterThan(10);
    }

    private static Set<Set<UUID>> asTheyCome(List<Report> reports, Threshold threshold) {
        var finder = new AlikeFinder(threshold);
        List<Report> known = new ArrayList<>();
        Map<UUID, Set<UUID>> groupOf = new HashMap<>();
        for (Report report : reports) {
            known.add(report);
            Set<UUID> group = finder.groupOf(report, known, groupOf::containsKey);
            Set<UUID> whole = new HashSet<>(group);
            group.forEach(id -> whole.addAll(groupOf.getOrDefault(id, Set.of())));
            whole.forEach(id -> groupOf.put(id, whole));
        }
        return new HashSet<>(groupOf.values());
    }

    static Set<Set<UUID>> allPairs(List<Report> reports, int count, double kilometres, int days) {
        List<Set<UUID>> groups = new ArrayList<>();
        for (Report middle : reports) {
            List<Report> near = reports.stream()
                    .filter(other -> Math.abs(ChronoUnit.DAYS.between(middle.day(), other.day())) <= days)
                    .filter(other -> Math.round(Geodesic.WGS84.Inverse(
                                            middle.place().latitude(),
                                            middle.place().longitude(),
                                            other.place().latitude(),
                                            other.place().longitude())
                                    .s12)
                            <= kilometres * 1000)
                    .toList();
            if (near.stream().map(Report::animalId).distinct().count() >= count) {
                Set<UUID> group = near.stream().map(Report::id).collect(Collectors.toSet());
                groups.removeIf(other -> {
                    boolean shared = other.stream().anyMatch(group::contains);
                    if (shared) {
                        group.addAll(other);
                    }
                    return shared;
                });
                groups.add(group);
            }
        }
        return new HashSet<>(groups);
    }
}
