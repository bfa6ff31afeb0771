package org.culvert.hotspot.stats.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.culvert.hotspot.stats.Checks;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;

class SpaceTimeScanTest {
    private static final LocalDate FIRST = LocalDate.of(2024, 1, 1);

    /** Sites of stpscan/bruteforce.json: balls in the plane of at most so many sites. */
    private static final class BruteForce {
        private final JsonNode json = Checks.json("stpscan/bruteforce.json");
        private final int[] firstOfPlace;
        private final int[] day;
        private final Cylinders cylinders;

        BruteForce() {
            JsonNode counts = json.get("counts");
            int sites = counts.size();
            firstOfPlace = new int[sites + 1];
            List<Integer> days = new ArrayList<>();
            for (int site = 0; site < sites; site++) {
                for (int one = 0; one < counts.get(site).size(); one++) {
                    for (int i = 0; i < counts.get(site).get(one).asInt(); i++) {
                        days.add(one);
                    }
                }
                firstOfPlace[site + 1] = days.size();
            }
            day = days.stream().mapToInt(Integer::intValue).toArray();
            int most = json.get("maxSites").asInt();
            int[] first = new int[sites + 1];
            int[] place = new int[sites * most];
            double[] metres = new double[sites * most];
            for (int site = 0; site < sites; site++) {
                int centre = site;
                List<Integer> order = IntStream.range(0, sites)
                        .boxed()
                        .sorted(Comparator.comparingDouble(other -> apart(centre, other)))
                        .toList();
                for (int i = 0; i < most; i++) {
                    place[site * most + i] = order.get(i);
                    metres[site * most + i] = apart(centre, order.get(i));
                }
                first[site + 1] = (site + 1) * most;
            }
            cylinders = new Cylinders(
                    new Balls(first, place, metres),
                    firstOfPlace,
                    day,
                    counts.get(0).size(),
                    json.get("maxDays").asInt(),
                    2,
                    SpaceTimeScan.Times.ANY);
        }

        private double apart(int one, int other) {
            JsonNode a = json.get("xy").get(one);
            JsonNode b = json.get("xy").get(other);
            return Math.hypot(
                    a.get("x").asDouble() - b.get("x").asDouble(),
                    a.get("y").asDouble() - b.get("y").asDouble());
        }
    }

    /** Source: stpscan/bruteforce.json, every window looked at one by one in R. */
    @Test
    void greatestWindowIsThatOfBruteForce() {
        var brute = new BruteForce();
        JsonNode expected = brute.json.get("result");
        Cylinders.Best best = brute.cylinders.bestOfEach(brute.day).stream()
                .max(Comparator.comparingDouble(Cylinders.Best::ratio))
                .orElseThrow();
        assertThat(best.ratio()).isCloseTo(expected.get("llr").asDouble(), within(1e-11));
        // Sites and days are numbered from 1 there; the ball is the one site that "zones" lists.
        assertThat(best.centre() + 1).isEqualTo(expected.get("centre").asInt());
        assertThat(best.lastEntry()).isEqualTo(4 * best.centre());
        assertThat(expected.get("zones").asInt()).isEqualTo(best.centre() + 1);
        assertThat(best.firstDay() + 1).isEqualTo(expected.get("t0").asInt());
        assertThat(best.lastDay() + 1).isEqualTo(expected.get("t1").asInt());
        assertThat(best.observed()).isEqualTo(expected.get("c").asInt());
        assertThat((double) best.inBall() * best.onDays() / brute.day.length)
                .isCloseTo(expected.get("mu").asDouble(), within(1e-10));
    }

    /**
     * Source: the same, whose p of 99 simulations is 0.33 (standard error 0.05) and whose simulated maxima have these quantiles.
     */
    @Test
    void simulatedMaximaAreThoseOfBruteForce() {
        var brute = new BruteForce();
        double[] maxima = SpaceTimeScan.simulate(brute.cylinders, brute.day, 1999, 5, 2);
        JsonNode result = brute.json.get("result");
        assertThat(Simulations.chance(result.get("llr").asDouble(), maxima)).isCloseTo(0.33, within(0.15));
        double[] ascending = maxima.clone();
        Arrays.sort(ascending);
        JsonNode quantiles = brute.json.get("sim_max_quantiles");
        assertThat(ascending[1000]).isCloseTo(quantiles.get("50%").asDouble(), within(0.25));
        assertThat(ascending[1800]).isCloseTo(quantiles.get("90%").asDouble(), within(0.4));
        assertThat(SpaceTimeScan.gumbel(result.get("llr").asDouble(), maxima))
                .isCloseTo(Simulations.chance(result.get("llr").asDouble(), maxima), within(0.03));
    }

    /** No source: every ball and every run of days, counted one by one. */
    @Test
    void noWindowIsMissedAlongRoads() {
        for (int trial = 0; trial < 24; trial++) {
            var random = Placed.random(trial);
            RoadGraph graph = Placed.anyNetwork(random);
            int cases = 8 + random.nextInt(25);
            PlacedEvents events = Placed.anyEvents(graph, cases, random);
            List<LocalDate> dates = dates(random.nextInt(1, 30), cases, trial);
            var times = trial % 2 == 0 ? SpaceTimeScan.Times.ANY : SpaceTimeScan.Times.ENDING_LAST;
            int least = 2 + trial % 3;
            var settings = new SpaceTimeScan.Settings(FIRST, FIRST.plusDays(29), times, 8, 250, least, 0.6, 1, 1);
            double greatest = 0;
            double[][] metres = Placed.distances(events);
            for (int centre = 0; centre < cases; centre++) {
                for (int edge = 0; edge < cases; edge++) {
                    double radius = metres[centre][edge];
                    if (radius > 250) {
                        continue;
                    }
                    int c = centre;
                    int[] inside = IntStream.range(0, cases)
                            .filter(other -> metres[c][other] <= radius + 1e-6)
                            .map(events::given)
                            .toArray();
                    if (inside.length > 0.6 * cases) {
                        continue;
                    }
                    for (int from = 0; from < 30; from++) {
                        for (int to = from; to < Math.min(30, from + 8); to++) {
                            if (times == SpaceTimeScan.Times.ANY || to == 29) {
                                greatest = Math.max(greatest, ratio(inside, dates, from, to, least));
                            }
                        }
                    }
                }
            }
            SpaceTimeScan.Findings findings = SpaceTimeScan.scan(events, dates, settings, 1, 1);
            double ours =
                    findings.windows().isEmpty() ? 0 : findings.windows().get(0).logLikelihoodRatio();
            assertThat(ours).as("trial %s", trial).isCloseTo(greatest, within(1e-9));
        }
    }

    private static double ratio(int[] inside, List<LocalDate> dates, int from, int to, int least) {
        LocalDate first = FIRST.plusDays(from);
        LocalDate last = FIRST.plusDays(to);
        double c = Arrays.stream(inside)
                .filter(given ->
                        !dates.get(given).isBefore(first) && !dates.get(given).isAfter(last))
                .count();
        double onDays = dates.stream()
                .filter(date -> !date.isBefore(first) && !date.isAfter(last))
                .count();
        double all = dates.size();
        double mu = inside.length * onDays / all;
        if (c <= mu || c < least) {
            return 0;
        }
        return c * Math.log(c / mu) + (c == all ? 0 : (all - c) * Math.log((all - c) / (all - mu)));
    }

    private static List<LocalDate> dates(int days, int cases, long seed) {
        var random = Placed.random(1000 + seed);
        List<LocalDate> dates = new ArrayList<>();
        for (int i = 0; i < cases; i++) {
            dates.add(FIRST.plusDays(random.nextInt(days)));
        }
        return dates;
    }

    /** No source: planted at one place in the last fortnight, beside a place that is always busy and a season everywhere. */
    @Test
    void whatIsNewIsFoundAndWhatIsAlwaysBusyIsNot() {
        var random = Placed.random(31);
        RoadGraph graph = Checks.smallNetwork();
        List<Integer> links = new ArrayList<>();
        List<Double> metres = new ArrayList<>();
        List<LocalDate> dates = new ArrayList<>();
        for (int i = 0; i < 150; i++) {
            boolean busy = i < 60;
            int link = busy ? 2 : random.nextInt(10);
            links.add(link);
            metres.add((busy ? 0.5 : random.nextDouble()) * graph.length(link));
            dates.add(FIRST.plusDays((int) (365 * Math.sqrt(random.nextDouble()))));
        }
        for (int i = 0; i < 8; i++) {
            links.add(7);
            metres.add(300.0 + 10 * i);
            dates.add(FIRST.plusDays(352 + i));
        }
        int[] link = links.stream().mapToInt(Integer::intValue).toArray();
        double[] at = metres.stream().mapToDouble(Double::doubleValue).toArray();
        PlacedEvents events = PlacedEvents.of(graph, link, at);
        var settings = new SpaceTimeScan.Settings(
                FIRST, FIRST.plusDays(365), SpaceTimeScan.Times.ENDING_LAST, 60, 500, 2, 0.5, 199, 9);
        SpaceTimeScan.Findings findings = SpaceTimeScan.scan(events, dates, settings, 3, 2);
        SpaceTimeScan.Window found = findings.windows().get(0);
        assertThat(found.events()).contains(150, 151, 152, 153, 154, 155, 156, 157);
        assertThat(found.centre().link()).isEqualTo(7);
        assertThat(found.radiusMetres()).isLessThan(200);
        assertThat(found.lastDay()).isEqualTo(FIRST.plusDays(365));
        assertThat(found.p()).isEqualTo(0.005);
        assertThat(found.gumbelP()).isLessThan(0.005);
        assertThat(found.observed()).isEqualTo(found.events().size());
        assertThat(findings.windows().get(1).p()).isGreaterThan(0.05);

        SpaceTimeScan.Findings again = SpaceTimeScan.scan(events, dates, settings, 3, 1);
        assertThat(again).isEqualTo(findings);
        int[] order = Placed.shuffled(158, random);
        List<LocalDate> reordered = Arrays.stream(order).mapToObj(dates::get).toList();
        SpaceTimeScan.Findings otherOrder =
                SpaceTimeScan.scan(Placed.reordered(events, order), reordered, settings, 3, 2);
        SpaceTimeScan.Window same = otherOrder.windows().get(0);
        assertThat(same.logLikelihoodRatio()).isEqualTo(found.logLikelihoodRatio());
        assertThat(same.gumbelP()).isEqualTo(found.gumbelP());
        assertThat(same.events().stream().map(i -> order[i]).sorted().toList()).isEqualTo(found.events());
    }

    /**
     * No source: seeded; of 200 sets in which dates have nothing to do with places, 5 % (standard error 1.5 %). Few events would
     * make the greatest ratio the same in many sets, and the test conservative.
     */
    @Test
    void nothingIsFoundMoreOftenThanItShould() {
        RoadGraph graph = Checks.smallNetwork();
        var settings =
                new SpaceTimeScan.Settings(FIRST, FIRST.plusDays(29), SpaceTimeScan.Times.ANY, 10, 600, 2, 0.5, 39, 4);
        int hits = 0;
        for (int trial = 0; trial < 200; trial++) {
            var random = Placed.random(500 + trial);
            int[] link = new int[150];
            double[] metres = new double[150];
            for (int i = 0; i < 150; i++) {
                link[i] = random.nextInt(graph.linkCount());
                metres[i] = graph.length(link[i]) * (1 + random.nextInt(2)) / 3;
            }
            PlacedEvents events = PlacedEvents.of(graph, link, metres);
            SpaceTimeScan.Findings findings = SpaceTimeScan.scan(events, dates(30, 150, trial), settings, 1, 1);
            hits += findings.windows().get(0).p() <= 0.05 ? 1 : 0;
        }
        assertThat(hits).isBetween(2, 20);
    }

    @Test
    void eventOutsideThePeriodIsRefused() {
        var settings =
                new SpaceTimeScan.Settings(FIRST, FIRST.plusDays(9), SpaceTimeScan.Times.ANY, 5, 100, 2, 0.5, 9, 1);
        List<LocalDate> dates = new ArrayList<>(dates(10, 16, 1));
        dates.set(3, FIRST.plusDays(10));
        assertThatThrownBy(() -> SpaceTimeScan.scan(Placed.small(), dates, settings, 1, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("2024-01-11 is outside the period");
    }
}
