package org.culvert.hotspot.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.culvert.road.network.RoadGraph;
import org.jspecify.annotations.Nullable;

/**
 * How often a search names something where there is nothing, and how often it finds what was planted, on one network: the
 * ways in which real records differ from the textbook are put in on purpose, one at a time.
 */
public final class Truthfulness {
    private static final double ALPHA = 0.05;
    private static final int SIMULATIONS = 99;
    private static final double PATCH_METRES = 1000;

    /** In so many sets of each case the search itself is asked as well. */
    private static final int CHECKED = 20;

    /** Reports of other animals for each of the group's, where they matter. */
    private static final int OTHERS = 5;

    /** Three seasons of four months. */
    private static final int DAYS = 360;

    private final RoadGraph graph;
    private final Chainage chainage;
    private final Pieces pieces;
    private final RoadKernel kernel;
    private final double pieceMetres;
    private final WeightedDraw anywhere;
    private final Patches patches;
    private final double[] aadt;
    private final Twins none;
    private final Map<List<Recording>, Smoother> smoothers =
            new TreeMap<>((a, b) -> a.toString().compareTo(b.toString()));

    /** What is wrong with the records, if anything. */
    public enum Flaw {
        NONE("none", null),
        ROUNDED("30 % of places rounded to whole kilometres, and known to be", null),
        ROUNDED_UNKNOWN("30 % of places rounded to whole kilometres, taken as exact", null),
        DUPLICATES("10 % of incidents entered twice", null),
        TOWN("callers three times as many within 10 km of one town", "reporting"),
        PATCHY("background of patches of 1 km with a coefficient of variation of 0.5", Chance.DENSE_FOR_KILOMETRES),
        VERY_PATCHY(
                "background of patches of 1 km with a coefficient of variation of 0.8", Chance.DENSE_FOR_KILOMETRES),
        TRAFFIC("the busier half of the roads ten times as busy", "traffic");

        private final String words;

        /** How the words begin by which a kind of chance says that it does not control it. */
        private final @Nullable String told;

        Flaw(String words, @Nullable String told) {
            this.words = words;
            this.told = told;
        }

        public String words() {
            return words;
        }
    }

    /**
     * @param graph the network
     * @param chainage of its roads
     * @param kernel what is smoothed by
     * @param pieceMetres how finely the network is cut
     */
    public Truthfulness(RoadGraph graph, Chainage chainage, RoadKernel kernel, double pieceMetres) {
        this.graph = graph;
        this.chainage = chainage;
        this.kernel = kernel;
        this.pieceMetres = pieceMetres;
        this.pieces = new Pieces(graph, pieceMetres);
        int[] all = new int[pieces.count()];
        double[] length = new double[all.length];
        Arrays.setAll(all, piece -> piece);
        Arrays.setAll(length, pieces::length);
        this.anywhere = new WeightedDraw(all, length);
        this.patches = new Patches(pieces, chainage, PATCH_METRES);
        this.none = new Twins(pieces, Carriageways.NONE);
        this.aadt = new double[graph.linkCount()];
        for (int link = 0; link < aadt.length; link++) {
            aadt[link] = chainage.road(link) % 2 == 0 ? 2000 : 200;
        }
    }

    /**
     * How often something was named at 5 % in sets without any cluster.
     *
     * @param named share of sets in which anything was
     * @param claimed share of sets in which it was, and the rate was claimed of the real roads as well
     */
    public record Alarms(double named, double claimed) {}

    /** @param chance name of the kind of chance that sets are judged against */
    public Alarms falseAlarms(Flaw flaw, String chance, int events, int sets, int threads) {
        var named = new AtomicInteger();
        var claimed = new AtomicInteger();
        Parallel.forEach(sets, threads, () -> set -> {
            UniformRandomProvider random = MonteCarlo.generator(20261125L + flaw.ordinal(), set);
            Records records = records(flaw, chance, events, random);
            Chance against = chance(chance, records.all);
            boolean found = isAnythingNamed(records.own, against, set);
            if (set < CHECKED && found != search(records.own, against, set).smallest <= ALPHA) {
                throw new IllegalStateException("the search names what was taken for nothing, or the other way round");
            }
            if (found) {
                named.incrementAndGet();
                if (against.claimsErrorRate()
                        && RecordDoubts.of(chainage, records.own, records.days)
                                .words()
                                .isEmpty()) {
                    claimed.incrementAndGet();
                }
            }
        });
        return new Alarms(named.get() / (double) sets, claimed.get() / (double) sets);
    }

    /**
     * What the search would say, found sooner: as soon as too many simulated sets are as surprising, no more of them can make
     * the place a hotspot (Besag and Clifford 1991, Sequential Monte Carlo p-values, Biometrika 78, 301-304).
     */
    private boolean isAnythingNamed(List<RoadEvent> events, Chance chance, int seed) {
        Smoother smoother = smoother(events, chance);
        var search = new HotspotSearch(graph, chainage, new Settings(kernel, pieceMetres, SIMULATIONS, seed, ALPHA, 1));
        HotspotSearch.Judged judged = search.new Judged(events, chance, smoother);
        Smoother.Brush brush = smoother.newBrush();
        brush.smooth(judged.rows);
        double least = MonteCarlo.least(MonteCarlo.greatest(brush, 0, judged.surprise));
        int[] rows = new int[judged.rows.length];
        int asSurprising = 0;
        for (int simulation = 0; simulation < SIMULATIONS; simulation++) {
            judged.model.draw(MonteCarlo.generator(seed, simulation), rows);
            brush.smooth(rows);
            asSurprising += MonteCarlo.greatest(brush, 0, judged.surprise) >= least ? 1 : 0;
            if (1 + asSurprising > ALPHA * (SIMULATIONS + 1)) {
                return false;
            }
        }
        return true;
    }

    /** Whether a run against this kind of chance says that it does not control a flaw. */
    public boolean declares(Flaw flaw, String chance) {
        return flaw.told != null
                && chance(chance, List.of()).uncontrolled().stream()
                        .anyMatch(words -> words.startsWith(flaw.told)
                                || (flaw.told.equals(Chance.DENSE_FOR_KILOMETRES)
                                        && words.equals(Chance.Patchy.VERY_ROUGH)));
    }

    /** @param all of the group and of others, where others matter */
    private record Records(List<RoadEvent> own, long[] days, List<RoadEvent> all) {}

    private Records records(Flaw flaw, String chance, int events, UniformRandomProvider random) {
        List<RoadEvent> others = scatter(flaw, events * (isRelabelling(chance) ? OTHERS + 1 : 1), random);
        List<RoadEvent> own = isRelabelling(chance) ? pick(others, events, random) : new ArrayList<>(others);
        long[] days = new long[events];
        for (int event = 0; event < events; event++) {
            days[event] = random.nextInt(DAYS);
            if (flaw == Flaw.DUPLICATES && event > 0 && random.nextDouble() < 0.1) {
                int twin = random.nextInt(event);
                own.set(event, own.get(twin));
                days[event] = days[twin];
            }
        }
        List<RoadEvent> all = new ArrayList<>(own);
        if (isRelabelling(chance)) {
            all.addAll(others);
        }
        return new Records(own, days, all);
    }

    /** What was found of planted stretches, and what else was named. */
    public record Power(double found, double falseKilometres, double expectedInside, double byChance) {}

    /**
     * Plants, in each set, one stretch of road on which collisions are more than chance would have it.
     *
     * @param extra collisions that are added, on average, to those of the background
     * @param background collisions on the whole network otherwise
     * @param stretchMetres length of the stretch
     */
    public Power power(double extra, int background, double stretchMetres, boolean busy, int sets, int threads) {
        var found = new AtomicInteger();
        double[] falseMetres = new double[sets];
        double[] allMetres = new double[sets];
        double[] chanceInside = new double[sets];
        Parallel.forEach(sets, threads, () -> set -> {
            UniformRandomProvider random = MonteCarlo.generator(977, set);
            List<RoadEvent> events = scatter(Flaw.TRAFFIC, background, random);
            int link;
            do {
                link = pieces.linkOf(anywhere.draw(random));
            } while (graph.length(link) < stretchMetres || (aadt[link] > 1000) != busy);
            double from = (graph.length(link) - stretchMetres) * random.nextDouble();
            int planted = poisson(extra, random);
            for (int i = 0; i < planted; i++) {
                events.add(new RoadEvent(link, from + stretchMetres * random.nextDouble(), Recording.EXACT));
            }
            chanceInside[set] = background * stretchMetres * (busy ? 10 : 1) / busyMetres();
            Found one = search(events, chance("per-traffic-and-class", events), set);
            boolean met = false;
            for (Hotspot hotspot : one.findings.hotspots()) {
                for (Hotspot.Span span : hotspot.spans()) {
                    double metres = span.toMetres() - span.fromMetres();
                    double beyond = span.link() == link
                            ? metres
                                    - Math.max(
                                            0,
                                            Math.min(
                                                            span.toMetres(),
                                                            from + stretchMetres + kernel.averagedMetres() / 2)
                                                    - Math.max(span.fromMetres(), from - kernel.averagedMetres() / 2))
                            : metres;
                    met |= beyond < metres;
                    falseMetres[set] += beyond;
                    allMetres[set] += metres;
                }
            }
            if (met) {
                found.incrementAndGet();
            }
        });
        double by = Arrays.stream(chanceInside).average().orElse(0);
        double named = Arrays.stream(allMetres).sum();
        return new Power(
                found.get() / (double) sets,
                named == 0 ? 0 : Arrays.stream(falseMetres).sum() / named,
                extra + by,
                by);
    }

    private double busyMetres() {
        double sum = 0;
        for (int link = 0; link < aadt.length; link++) {
            sum += graph.length(link) * (aadt[link] > 1000 ? 10 : 1);
        }
        return sum;
    }

    private record Found(double smallest, Findings findings) {}

    private Found search(List<RoadEvent> events, Chance chance, int set) {
        var settings = new Settings(kernel, pieceMetres, SIMULATIONS, set, ALPHA, 1);
        Findings findings = new HotspotSearch(graph, chainage, settings)
                .search(events, chance, smoother(events, chance), none, 1, done -> {});
        return new Found(findings.smallestP(), findings);
    }

    /** The rows of the kernel are those of the network and of how places were recorded: made once. */
    private Smoother smoother(List<RoadEvent> events, Chance chance) {
        List<Recording> recordings = (chance instanceof Chance.Relabelling all ? all.reports() : events)
                .stream()
                        .map(RoadEvent::recording)
                        .distinct()
                        .sorted((a, b) -> a.toString().compareTo(b.toString()))
                        .toList();
        synchronized (smoothers) {
            return smoothers.computeIfAbsent(
                    recordings,
                    key -> Smoother.of(
                            kernel,
                            pieces,
                            chainage,
                            none,
                            pieceMetres,
                            key.stream()
                                    .map(recording -> new RoadEvent(0, 0, recording))
                                    .toList(),
                            true,
                            2));
        }
    }

    private static boolean isRelabelling(String chance) {
        return chance.equals("per-all-reports");
    }

    private Chance chance(String name, List<RoadEvent> all) {
        return switch (name) {
            case "per-kilometre" -> new Chance.PerKilometre();
            case "per-kilometre-in-patches" -> new Chance.Patchy(new Chance.PerKilometre(), PATCH_METRES);
            case "per-traffic-and-class" -> new Chance.PerTrafficAndClass(new int[aadt.length], aadt, 2);
            case "per-all-reports" -> new Chance.PerAllReports(all);
            default -> throw new IllegalArgumentException(name);
        };
    }

    /** Exactly so many events without any cluster, but for the flaw. */
    private List<RoadEvent> scatter(Flaw flaw, int count, UniformRandomProvider random) {
        List<RoadEvent> events = new ArrayList<>(count);
        double variation = flaw == Flaw.PATCHY ? 0.5 : flaw == Flaw.VERY_PATCHY ? 0.8 : 0;
        double[] multiplier = new double[patches.count()];
        if (variation > 0) {
            var gamma = GammaDistribution.of(1 / (variation * variation), variation * variation)
                    .createSampler(random);
            Arrays.setAll(multiplier, patch -> gamma.sample());
        }
        double begun = random.nextDouble();
        int town = anywhere.draw(random);
        while (events.size() < count) {
            int piece = anywhere.draw(random);
            int link = pieces.linkOf(piece);
            double weight = switch (flaw) {
                case PATCHY, VERY_PATCHY -> multiplier[patches.of(piece, begun)] / 8;
                case TOWN -> near(piece, town) ? 1 : 1.0 / 3;
                case TRAFFIC -> aadt[link] > 1000 ? 1 : 0.1;
                default -> 1;
            };
            if (random.nextDouble() >= weight) {
                continue;
            }
            double metres = pieces.start(piece) + pieces.length(piece) * random.nextDouble();
            boolean rounds = (flaw == Flaw.ROUNDED || flaw == Flaw.ROUNDED_UNKNOWN) && random.nextDouble() < 0.3;
            if (rounds) {
                Chainage.Position written = chainage.round(link, metres, 1000);
                events.add(new RoadEvent(
                        written.link(),
                        written.metres(),
                        flaw == Flaw.ROUNDED ? new Recording(1000, 0) : Recording.EXACT));
            } else {
                events.add(new RoadEvent(link, metres, Recording.EXACT));
            }
        }
        return events;
    }

    /** Along the same road: what a town means here. */
    private boolean near(int piece, int town) {
        int link = pieces.linkOf(piece);
        int there = pieces.linkOf(town);
        return chainage.road(link) == chainage.road(there)
                && Math.abs(chainage.at(link, pieces.centre(piece)) - chainage.at(there, pieces.centre(town))) < 10_000;
    }

    /** Takes some out. */
    private static List<RoadEvent> pick(List<RoadEvent> from, int count, UniformRandomProvider random) {
        List<RoadEvent> picked = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int at = random.nextInt(from.size());
            picked.add(from.get(at));
            from.set(at, from.get(from.size() - 1));
            from.remove(from.size() - 1);
        }
        return picked;
    }

    private static int poisson(double mean, UniformRandomProvider random) {
        double product = random.nextDouble();
        int count = 0;
        while (product > Math.exp(-mean)) {
            product *= random.nextDouble();
            count++;
        }
        return count;
    }
}
