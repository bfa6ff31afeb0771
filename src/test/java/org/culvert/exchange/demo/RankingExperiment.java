package org.culvert.exchange.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.culvert.hotspot.stats.rate.EmpiricalBayes;
import org.culvert.hotspot.stats.rate.SafetyPerformance;
import org.culvert.hotspot.stats.rate.SafetyPerformance.Dispersion;
import org.culvert.hotspot.stats.rate.Site;
import org.junit.jupiter.api.Test;

/**
 * Whether ranking by empirical Bayes names next year's worst stretches better than ranking by counts, on the roads of the demo
 * region: {@code mvn -Pexperiments test} writes target/experiments/ranking.md. Every stretch has a mean of its own, around one
 * that goes with traffic and class; collisions of some years are counted, and the stretches ranked; the next year follows its
 * means. As many sets a case as a tenth of {@code experiments.sets} says, or 200.
 */
class RankingExperiment {
    private static final int SETS = Math.max(1, Integer.getInteger("experiments.sets", 2000) / 10);
    private static final double STRETCH_METRES = 500;
    private static final int NAMED = 25;
    private static final double TRAFFIC_POWER = 0.6;

    /** k of a stretch's own mean around that of its like, for a kilometre. */
    private static final double PER_KILOMETRE = 0.5;

    private record Stretch(String id, double metres, double aadt, String roadClass) {}

    /** @param counted collisions a year on the whole network, on average */
    private record Case(int years, double counted) {}

    /** Of the stretches named: the mean of next year's collisions, and what was said to be coming. */
    private static final class Tally {
        private double came;
        private double said;
        private double error;
        private double amongWorst;

        void add(int[] named, double[] yearly, double[] forecast, boolean[] worst) {
            for (int stretch : named) {
                came += yearly[stretch];
                said += forecast[stretch];
                error += Math.abs(forecast[stretch] - yearly[stretch]);
                amongWorst += worst[stretch] ? 1 : 0;
            }
        }
    }

    @Test
    void whoNamesNextYearsWorst() throws IOException {
        List<Stretch> stretches = stretches();
        var text = new StringBuilder("# Who names next year's worst stretches\n\n");
        text.append(String.format(
                Locale.ROOT,
                "The roads of the demo region in %,d stretches of up to %.0f m; %d sets a case. Each stretch has its own mean, with"
                        + " an overdispersion of %.1f for a kilometre around one that goes with AADT^%.1f and class. %d are named"
                        + " in each set. `Came` is the mean of what the next year brings to all the named, as a share of what the"
                        + " truly worst %d would see; `said` over `came` is 1 where the forecast is right on average;"
                        + " `off` is the mean absolute error of a stretch's forecast, in collisions a year.%n%n",
                stretches.size(),
                STRETCH_METRES,
                SETS,
                PER_KILOMETRE,
                TRAFFIC_POWER,
                NAMED,
                NAMED));
        text.append(
                "| years counted | collisions a year | ranked by | came | truly among the worst | said / came | off |\n");
        text.append("|---|---|---|---|---|---|---|\n");
        for (Case one : List.of(new Case(1, 300), new Case(3, 300), new Case(5, 300), new Case(5, 60))) {
            run(one, stretches, text);
        }
        Path folder = Files.createDirectories(Path.of("target", "experiments"));
        Files.writeString(folder.resolve("ranking.md"), text.toString());
        System.out.println(text);
    }

    private static void run(Case asked, List<Stretch> stretches, StringBuilder text) {
        double[] like = like(stretches, asked.counted);
        var byEstimate = new Tally();
        var byCount = new Tally();
        double best = 0;
        for (int set = 0; set < SETS; set++) {
            UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(4711L + set);
            double[] yearly = new double[like.length];
            List<Site> sites = new ArrayList<>();
            for (int i = 0; i < like.length; i++) {
                Stretch stretch = stretches.get(i);
                double k = PER_KILOMETRE / (stretch.metres / 1000);
                yearly[i] = GammaDistribution.of(1 / k, k * like[i])
                        .createSampler(random)
                        .sample();
                double mean = yearly[i] * asked.years;
                int incidents = mean < 1e-9
                        ? 0
                        : PoissonDistribution.of(mean).createSampler(random).sample();
                sites.add(new Site(
                        stretch.id, stretch.metres, asked.years, stretch.aadt, stretch.roadClass, incidents, false));
            }
            var model = SafetyPerformance.of(sites, new SafetyPerformance.Settings(Dispersion.PER_KILOMETRE, 5));
            double[] estimated = new double[like.length];
            double[] counted = new double[like.length];
            for (int i = 0; i < like.length; i++) {
                EmpiricalBayes estimate = model.estimate(sites.get(i), 0.95);
                estimated[i] = estimate.estimate() / asked.years;
                counted[i] = (double) sites.get(i).incidents() / asked.years;
            }
            int[] truly = greatest(yearly);
            boolean[] worst = new boolean[like.length];
            for (int stretch : truly) {
                worst[stretch] = true;
                best += yearly[stretch];
            }
            byEstimate.add(greatest(estimated), yearly, estimated, worst);
            byCount.add(greatest(counted), yearly, counted, worst);
        }
        row(asked, "empirical Bayes", byEstimate, best, text);
        row(asked, "count", byCount, best, text);
        assertThat(byEstimate.came).as(asked.toString()).isGreaterThan(byCount.came);
        assertThat(byEstimate.error).as(asked.toString()).isLessThan(byCount.error);
        assertThat(byEstimate.said / byEstimate.came).as(asked.toString()).isBetween(0.9, 1.1);
    }

    private static void row(Case asked, String by, Tally tally, double best, StringBuilder text) {
        double all = (double) NAMED * SETS;
        text.append(String.format(
                Locale.ROOT,
                "| %d | %.0f | %s | %.0f %% | %.0f %% | %.2f | %.2f |%n",
                asked.years,
                asked.counted,
                by,
                100 * tally.came / best,
                100 * tally.amongWorst / all,
                tally.said / tally.came,
                tally.error / all));
    }

    /** The stretches with the greatest values; of equal ones the first. */
    private static int[] greatest(double[] values) {
        return IntStream.range(0, values.length)
                .boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> -values[i]).thenComparing(i -> i))
                .limit(NAMED)
                .mapToInt(i -> i)
                .toArray();
    }

    /** What is expected a year of stretches like each, so many in all. */
    private static double[] like(List<Stretch> stretches, double counted) {
        ToDoubleFunction<Stretch> rate = stretch ->
                stretch.metres * Math.pow(stretch.aadt / 1000, TRAFFIC_POWER) * (1 + stretch.roadClass.length() % 3);
        double[] like = stretches.stream().mapToDouble(rate).toArray();
        double all = Arrays.stream(like).sum();
        return Arrays.stream(like).map(one -> one * counted / all).toArray();
    }

    private static List<Stretch> stretches() {
        List<Stretch> stretches = new ArrayList<>();
        for (Road road : DemoRegion.committed().roads()) {
            int parts = (int) Math.ceil(road.lengthMetres() / STRETCH_METRES);
            for (int part = 0; part < parts; part++) {
                stretches.add(new Stretch(
                        road.number() + " " + road.carriageway() + " " + part,
                        Math.min(STRETCH_METRES, road.lengthMetres() - part * STRETCH_METRES),
                        road.aadt(),
                        road.kind().name()));
            }
        }
        return stretches;
    }
}
