package org.culvert.exchange.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.exchange.records.SameAnimals.Likely;
import org.culvert.exchange.records.SameAnimals.Seen;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Held against the rule itself, asked of every pair. */
class SameAnimalsTest {
    private static final long DAY = 86_400;

    private static List<Likely> find(List<Seen> all) {
        List<Likely> found = new ArrayList<>();
        var animals = new SameAnimals(found::add);
        all.stream().sorted(Comparator.comparingLong(Seen::at)).forEach(animals::take);
        return found;
    }

    private static Seen row(long number, long at, double latitude, double longitude, double metres, int... kinds) {
        return new Seen(false, number, at, latitude, longitude, metres, kinds);
    }

    private static Seen incident(long number, long at, double latitude, double longitude, double metres, int... kinds) {
        return new Seen(true, number, at, latitude, longitude, metres, kinds);
    }

    /** As the finder of incidents that may be the same has it: 36 hours, both uncertainties and 500 m, one kind. */
    private static boolean alike(Seen one, Seen other) {
        double metres = Geodesy.metresBetween(
                new Position(one.latitude(), one.longitude()), new Position(other.latitude(), other.longitude()));
        boolean kind = one.kinds().length == 0 || other.kinds().length == 0 || one.kinds()[0] == other.kinds()[0];
        return Math.abs(one.at() - other.at()) <= 36 * 3600
                && metres <= one.uncertaintyMetres() + other.uncertaintyMetres() + 500
                && kind;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void findsWhatThePairsOfAllReportsHave(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        double south = seed % 2 == 0 ? -30.6 : 61.0;
        List<Seen> all = new ArrayList<>();
        for (int i = 1; i <= 900; i++) {
            long at = random.nextLong(0, 40 * DAY);
            double latitude = south + random.nextDouble(0, 0.4);
            double longitude = wrapped((seed % 4 < 2 ? 150 : 179.8) + random.nextDouble(0, 0.4));
            double metres = random.nextInt(10) == 0 ? random.nextDouble(1000, 9000) : random.nextDouble(5, 900);
            int[] kinds = random.nextInt(8) == 0 ? new int[0] : new int[] {random.nextInt(3)};
            all.add(new Seen(random.nextInt(3) == 0, i, at, latitude, longitude, metres, kinds));
        }
        List<Likely> found = find(all);
        Set<Long> inRegister = new TreeSet<>();
        Set<Long> repeated = new TreeSet<>();
        for (Seen row : all) {
            for (Seen other : all) {
                boolean before = other.at() < row.at();
                if (!row.inRegister() && row.number() != other.number() && alike(row, other)) {
                    if (other.inRegister()) {
                        inRegister.add(row.number());
                    } else if (before) {
                        repeated.add(row.number());
                    }
                }
            }
        }
        assertThat(inRegister).as("seed %d", seed).hasSizeGreaterThan(20);
        assertThat(repeated).hasSizeGreaterThan(20);
        assertThat(found)
                .filteredOn(Likely::inRegister)
                .extracting(Likely::number)
                .doesNotHaveDuplicates();
        assertThat(new TreeSet<>(found.stream()
                        .filter(Likely::inRegister)
                        .map(Likely::number)
                        .toList()))
                .isEqualTo(inRegister);
        assertThat(new TreeSet<>(found.stream()
                        .filter(one -> !one.inRegister())
                        .map(Likely::number)
                        .toList()))
                .isEqualTo(repeated);
    }

    private static double wrapped(double longitude) {
        return longitude > 180 ? longitude - 360 : longitude;
    }

    @Test
    void aRowBeyondTheMeridianOf180DegreesIsNearToo() {
        assertThat(find(List.of(
                        row(2, 0, -17, 179.9999, 50, 1),
                        row(3, 60, -17, -179.9999, 50, 1),
                        incident(9, 120, -17, 180, 50, 1))))
                .extracting(Likely::other)
                .containsExactlyInAnyOrder(2L, 9L, 9L);
        assertThat(find(List.of(row(2, 0, -17, 179.9, 50, 1), row(3, 60, -17, -179.9, 50, 1))))
                .as("21 km apart")
                .isEmpty();
    }

    @Test
    void rowsOfOneAnimalHaveTheSameFirst() {
        List<Seen> all = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            all.add(row(10 - i, i * DAY, -30.5, 150, 50, 1));
        }
        var firsts = new TreeMap<Long, Long>();
        find(all).forEach(one -> firsts.put(one.number(), one.other()));
        assertThat(firsts).hasSize(9);
        assertThat(firsts.values()).containsOnly(10L);
    }

    @Test
    void aReportThatCameAfterTheRowIsFoundTooAndOnce() {
        assertThat(find(List.of(
                        row(2, 0, -30.5, 150, 50, 1),
                        incident(77, 3600, -30.5, 150.001, 50, 1),
                        incident(78, 7200, -30.5, 150.001, 50, 1))))
                .extracting(Likely::other)
                .containsExactly(77L);
    }

    @Test
    void thirtySevenHoursOrAnotherKindAreAnotherAnimal() {
        assertThat(find(List.of(row(2, 0, -30.5, 150, 50, 1), row(3, 37 * 3600, -30.5, 150, 50, 1))))
                .isEmpty();
        assertThat(find(List.of(row(2, 0, -30.5, 150, 50, 1), row(3, 0, -30.5, 150, 50, 2))))
                .isEmpty();
        assertThat(find(List.of(row(2, 0, -30.5, 150, 50, 1), row(3, 36 * 3600, -30.5, 150, 50))))
                .hasSize(1);
    }

    @Test
    void manyRowsAtOnePlaceOnOneDayAreFoundInTime() {
        List<Seen> all = new ArrayList<>();
        for (int i = 0; i < 100_000; i++) {
            all.add(row(i + 2, 0, -30.5, 150, 50, 1));
            all.add(incident(i, 0, -30.5, 150, 50, 1));
        }
        assertThat(find(all)).hasSize(199_999);
    }
}
