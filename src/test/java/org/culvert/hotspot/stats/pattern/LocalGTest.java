package org.culvert.hotspot.stats.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.culvert.hotspot.stats.Checks;
import org.junit.jupiter.api.Test;

class LocalGTest {
    private static int[][] near(double[] x, double[] y, double distance) {
        return IntStream.range(0, x.length)
                .mapToObj(a -> IntStream.range(0, x.length)
                        .filter(b -> b != a && Math.hypot(x[a] - x[b], y[a] - y[b]) <= distance + 1e-9)
                        .toArray())
                .toArray(int[][]::new);
    }

    /** Source: the 256 cells of Getis and Ord (1996), by spdep 1.2-7 for R. */
    @Test
    void statisticsOfGetisAndOrdsGrid() {
        List<CSVRecord> rows = Checks.csv("gistar/getisord_localG.csv");
        double[] x = Checks.column(rows, "x");
        double[] y = Checks.column(rows, "y");
        double[] value = Checks.column(rows, "val");
        for (int distance = 30; distance <= 150; distance += 30) {
            var local = new LocalG(value, near(x, y, distance));
            double[] gi = local.gi();
            double[] star = local.giStar();
            for (int i = 0; i < value.length; i++) {
                assertThat(gi[i]).isCloseTo(Checks.number(rows.get(i), "Gi_d" + distance), within(1e-9));
                assertThat(star[i]).isCloseTo(Checks.number(rows.get(i), "GiStar_d" + distance), within(1e-9));
            }
        }
    }

    /** Source: the cell that Getis and Ord (1996) printed, number 120. */
    @Test
    void publishedCell() {
        List<CSVRecord> rows = Checks.csv("gistar/getisord_localG.csv");
        double[] x = Checks.column(rows, "x");
        double[] y = Checks.column(rows, "y");
        double[] value = Checks.column(rows, "val");
        double[] published = {1.221979, 1.748098, 1.986135, 1.893374, 1.237454};
        for (int step = 0; step < 5; step++) {
            var local = new LocalG(value, near(x, y, 30 * (step + 1)));
            assertThat(local.gi()[119]).isCloseTo(published[step], within(5e-7));
        }
        assertThat(new LocalG(value, near(x, y, 30)).giStar()[119]).isCloseTo(1.450780, within(5e-7));
    }

    /** Source: 40 segments of road, neighbours two to each side, by spdep 1.2-7 for R. */
    @Test
    void roadOfSegments() {
        List<CSVRecord> rows = Checks.csv("gistar/road_chain40.csv");
        double[] count = Checks.column(rows, "count");
        double[] at = IntStream.range(0, 40).mapToDouble(i -> i).toArray();
        var local = new LocalG(count, near(at, new double[40], 2));
        double[] p = LocalG.upperP(local.giStar());
        double[] adjusted = FalseDiscovery.benjaminiHochberg(p);
        for (int i = 0; i < 40; i++) {
            CSVRecord row = rows.get(i);
            assertThat(local.gi()[i]).isCloseTo(Checks.number(row, "Gi"), within(1e-9));
            assertThat(local.giStar()[i]).isCloseTo(Checks.number(row, "GiStar"), within(1e-9));
            assertThat(p[i]).isCloseTo(Checks.number(row, "p_upper"), within(1e-9));
            assertThat(adjusted[i]).isCloseTo(Checks.number(row, "bh_upper"), within(1e-9));
        }
    }

    /** No source: for many neighbours and values that are nearly normal, permutations agree with the normal distribution. */
    @Test
    void permutationsAgreeWithTheNormalDistributionWhereThatHolds() {
        var random = Placed.random(2);
        double[] value = new double[200];
        NormalDistribution normal = NormalDistribution.of(10, 2);
        Arrays.setAll(value, i -> normal.inverseCumulativeProbability((random.nextInt(9999) + 1) / 10_000.0));
        double[] at = IntStream.range(0, 200).mapToDouble(i -> i).toArray();
        var local = new LocalG(value, near(at, new double[200], 15));
        double[] byNormal = LocalG.upperP(local.gi());
        double[] byPermutation = local.permutationP(999, 4);
        for (int i = 0; i < 200; i++) {
            assertThat(byPermutation[i]).as("place %s, seed 4", i).isCloseTo(byNormal[i], within(0.08));
        }
        assertThat(local.permutationP(999, 4)).isEqualTo(byPermutation);
        assertThat(local.permutationP(999, 5)).isNotEqualTo(byPermutation);
    }

    /** No source: exact, every deal of three sparse counts counted out. */
    @Test
    void permutationsOfSparseCountsAreExact() {
        double[] value = {1, 4, 0, 0, 0, 0, 0, 1};
        int[][] neighbours = new int[8][0];
        neighbours[0] = new int[] {1, 2};
        double[] p = new LocalG(value, neighbours).permutationP(99_999, 1);
        // Two of the seven others {4, 0 x5, 1} sum to at least 4: those with the 4, 6 of 21.
        assertThat(p[0]).isCloseTo(6 / 21.0, within(0.005));
        assertThat(p[1]).isNaN();
    }

    @Test
    void likeValuesTellNothingAndBadNeighboursAreRefused() {
        int[][] chain = {{1}, {0, 2}, {1, 3}, {2}};
        assertThat(new LocalG(new double[] {2, 2, 2, 2}, chain).giStar()).containsOnly(Double.NaN);
        assertThatThrownBy(() -> new LocalG(new double[] {1, 2, 3}, new int[][] {{0}, {}, {}}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("is itself");
    }

    /** Source: Benjamini and Hochberg (1995), 15 p-values of thrombolysis (from memory), 4 rejected; Bonferroni 3. */
    @Test
    void fifteenPublishedPValues() {
        JsonNode published = Checks.json("gistar/bh1995.json");
        double[] p = Checks.numbers(published.get("p"));
        double[] adjusted = FalseDiscovery.benjaminiHochberg(p);
        double[] expected = Checks.numbers(published.get("bh"));
        for (int i = 0; i < p.length; i++) {
            assertThat(adjusted[i]).isCloseTo(expected[i], within(1e-9));
        }
        assertThat(Arrays.stream(adjusted).filter(one -> one <= 0.05).count()).isEqualTo(4);
        assertThat(Arrays.stream(FalseDiscovery.bonferroni(p))
                        .filter(one -> one <= 0.05)
                        .count())
                .isEqualTo(3);
    }

    /** Source: getisord_fdr_d30.csv, p.adjust of R. */
    @Test
    void adjustedPValuesAreThoseOfR() {
        List<CSVRecord> rows = Checks.csv("gistar/getisord_fdr_d30.csv");
        double[] upper = Checks.column(rows, "p_upper");
        double[] two = Checks.column(rows, "p_two");
        agrees(FalseDiscovery.benjaminiHochberg(upper), Checks.column(rows, "bh_upper"));
        agrees(FalseDiscovery.benjaminiHochberg(two), Checks.column(rows, "bh_two"));
        agrees(FalseDiscovery.benjaminiYekutieli(two), Checks.column(rows, "by_two"));
        agrees(FalseDiscovery.holm(two), Checks.column(rows, "holm_two"));
        agrees(FalseDiscovery.bonferroni(two), Checks.column(rows, "bonf_two"));
        agrees(LocalG.upperP(Checks.column(rows, "z")), upper);
    }

    private static void agrees(double[] ours, double[] theirs) {
        for (int i = 0; i < ours.length; i++) {
            assertThat(ours[i]).isCloseTo(theirs[i], within(1e-9));
        }
    }

    /** No source: not tested is not a test. */
    @Test
    void whatWasNotTestedDoesNotCount() {
        double[] p = {0.01, Double.NaN, 0.04};
        assertThat(FalseDiscovery.bonferroni(p)).containsExactly(0.02, Double.NaN, 0.08);
        assertThat(FalseDiscovery.benjaminiHochberg(p)).containsExactly(0.02, Double.NaN, 0.04);
        assertThatThrownBy(() -> FalseDiscovery.holm(new double[] {1.2})).hasMessageContaining("between 0 and 1");
    }
}
