package org.culvert.hotspot.stats.rate;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.culvert.hotspot.stats.Checks;

/** Roads made up for tests, from a seed. */
final class RateScenes {
    private RateScenes() {}

    static UniformRandomProvider random(long seed) {
        return RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    }

    static int poisson(UniformRandomProvider random, double mean) {
        return mean == 0
                ? 0
                : PoissonDistribution.of(mean).createSampler(random).sample();
    }

    /** Gamma with mean {@code mean} and variance {@code k mean^2}. */
    static double gamma(UniformRandomProvider random, double mean, double k) {
        return k == 0
                ? mean
                : GammaDistribution.of(1 / k, k * mean).createSampler(random).sample();
    }

    /** The 400 sites of {@code eb/nb_spf400.csv}, length in metres. */
    static List<Site> spf400() {
        return Checks.csv("eb/nb_spf400.csv").stream()
                .map(row -> new Site(
                        row.get("id"),
                        1000 * Checks.number(row, "length_km"),
                        Checks.number(row, "years"),
                        Checks.number(row, "aadt"),
                        "rural",
                        Integer.parseInt(row.get("y")),
                        false))
                .toList();
    }

    /** Sites of two classes, main with twice the rate of local at equal traffic, slope 0.7 on log AADT. */
    static List<Site> sites(long seed, int number, double k) {
        UniformRandomProvider random = random(seed);
        List<Site> sites = new ArrayList<>();
        for (int i = 0; i < number; i++) {
            double length = 300 + 700 * random.nextDouble();
            double aadt = 300 * Math.exp(3 * random.nextDouble());
            String roadClass = i % 3 == 0 ? "main" : "local";
            double mean = length / 1000 * 5 * 0.9 * Math.pow(aadt / 1000, 0.7) * (i % 3 == 0 ? 2 : 1);
            sites.add(new Site("s" + i, length, 5, aadt, roadClass, poisson(random, gamma(random, mean, k)), false));
        }
        return sites;
    }
}
