package org.culvert.hotspot.stats;

import java.util.ArrayList;
import java.util.List;

/**
 * The kind of chance that a hotspot must be denser than.
 *
 * <p>A hotspot is a claim against one kind of chance. Each kind has a name in plain words, used in every sentence that
 * states an error rate, and says what in real records can still make false hotspots under it; a run that leaves such
 * flaws uncontrolled claims no error rate for the real road.
 */
public sealed interface Chance {
    /** A flaw that a patchy background takes up. */
    String DENSE_FOR_KILOMETRES =
            "places where collisions come more densely for kilometres on end, without a spot to treat";

    /** Short name for settings and files. */
    String name();

    /** The chance in plain words, to follow the word "if". */
    String clause();

    /** What in real records can make false hotspots under this kind of chance. */
    List<String> uncontrolled();

    /** What must hold for the error rate to be true, though nothing in the records shows it. */
    List<String> assumptions();

    /** Whether a run may state its error rate as one of the real road. */
    default boolean claimsErrorRate() {
        return uncontrolled().isEmpty();
    }

    /** Each event anew, anywhere on the network, uniformly by length. */
    record PerKilometre() implements Chance {
        @Override
        public String name() {
            return "per-kilometre";
        }

        @Override
        public String clause() {
            return "every kilometre of road were as likely as any other to see each collision";
        }

        @Override
        public List<String> uncontrolled() {
            return List.of(
                    "traffic and class of road: busy roads are found again",
                    "reporting: more people report near towns and where the network is well known",
                    DENSE_FOR_KILOMETRES);
        }

        @Override
        public List<String> assumptions() {
            return List.of("one incident is entered once, however many people report it");
        }
    }

    /**
     * Each event anew, uniformly by length on the roads of its own class and band of traffic.
     *
     * @param roadClass number of the class of each link
     * @param aadt vehicles a day on each link, NaN where unknown
     * @param bands how many bands of equal length of road known traffic is cut into; unknown traffic is a band of its own
     */
    record PerTrafficAndClass(int[] roadClass, double[] aadt, int bands) implements Chance {
        public PerTrafficAndClass {
            if (roadClass.length != aadt.length || bands < 1) {
                throw new IllegalArgumentException("every link needs a class and a traffic, and there must be a band");
            }
            roadClass = roadClass.clone();
            aadt = aadt.clone();
        }

        @Override
        public String name() {
            return "per-traffic-and-class";
        }

        @Override
        public String clause() {
            return "each collision could as well have happened anywhere on the roads of the same class and traffic";
        }

        @Override
        public List<String> uncontrolled() {
            return List.of(
                    "reporting: more people report near towns and where the network is well known",
                    DENSE_FOR_KILOMETRES);
        }

        @Override
        public List<String> assumptions() {
            return List.of(
                    "one incident is entered once, however many people report it",
                    "within a class and a band of traffic every kilometre is alike");
        }
    }

    /**
     * Each event anew on the ground that was surveyed, by the metres of it that surveys went over: ground surveyed three times
     * is three times as likely as ground surveyed once. The events must be those found on surveyed ground.
     *
     * @param passes where each survey went, a list of spans a survey; a stretch may come in many
     * @param notPlaced surveys that the network has no place for
     */
    record PerSurveyEffort(List<List<RoadSpan>> passes, int notPlaced) implements Chance {
        public PerSurveyEffort {
            passes = passes.stream().map(List::copyOf).toList();
            if (passes.stream().allMatch(List::isEmpty) || notPlaced < 0) {
                throw new IllegalArgumentException("somebody must have surveyed some stretch");
            }
        }

        /** Metres of road surveyed, each counted as often as a survey went over it. */
        public double surveyedMetres() {
            return passes.stream()
                    .flatMap(List::stream)
                    .mapToDouble(RoadSpan::lengthMetres)
                    .sum();
        }

        /** Metres that surveys went over in each piece, each counted as often as a survey went over it. */
        double[] metresIn(Pieces pieces) {
            double[] metres = new double[pieces.count()];
            for (List<RoadSpan> pass : passes) {
                for (RoadSpan span : pass) {
                    int last = pieces.at(span.link(), span.toMetres());
                    for (int piece = pieces.at(span.link(), span.fromMetres()); piece <= last; piece++) {
                        double from = Math.max(span.fromMetres(), pieces.start(piece));
                        double to = Math.min(span.toMetres(), pieces.end(piece));
                        metres[piece] += Math.max(0, to - from);
                    }
                }
            }
            return metres;
        }

        @Override
        public String name() {
            return "per-survey-effort";
        }

        @Override
        public String clause() {
            return "every kilometre that a survey went over, counted each time, were as likely as any other to have each"
                    + " collision found on it (" + passes.size() + (passes.size() == 1 ? " survey, " : " surveys, ")
                    + Math.round(surveyedMetres() / 1000) + " km)";
        }

        @Override
        public List<String> uncontrolled() {
            List<String> flaws = new ArrayList<>(List.of(
                    "traffic and class of road: on a busy road more animals are struck between two surveys",
                    "calls: a collision that a caller reported from ground surveyed on that day counts as found",
                    "how well surveys see: a slow one, one on foot, or the first after a long pause finds more",
                    DENSE_FOR_KILOMETRES));
            if (notPlaced > 0) {
                flaws.add("surveys that the current roads have no place for, and that count as none: " + notPlaced);
            }
            return List.copyOf(flaws);
        }

        @Override
        public List<String> assumptions() {
            return List.of(
                    "one incident is entered once, however many people report it",
                    "every survey is recorded, also one that found nothing, and what it found is entered for its day");
        }
    }

    /**
     * Random labelling: the group's events are a draw, without replacement, from the reports of all animals. It controls
     * traffic and reporting alike, whatever they are. Diggle, P. J. and Chetwynd, A. G. (1991), Second-order analysis of
     * spatial clustering for inhomogeneous populations, Biometrics 47, 1155-1163, is where the idea for planes comes from.
     *
     * @param reports all reports of the same period and season, the group's own among them
     */
    record PerAllReports(List<RoadEvent> reports) implements Relabelling {
        public PerAllReports {
            reports = List.copyOf(reports);
        }

        @Override
        public String name() {
            return "per-all-reports";
        }

        @Override
        public String clause() {
            return "the group's collisions were a random pick from the reports of collisions with all animals"
                    + " in the same period and season";
        }

        @Override
        public List<String> uncontrolled() {
            return List.of();
        }

        @Override
        public List<String> assumptions() {
            return List.of(
                    "one incident is entered once, however many people report it",
                    "people report this group in the same places as they report other animals");
        }
    }

    /** A pick, without replacement, from reports that lie where and as they do. */
    sealed interface Relabelling extends Chance {
        /** All reports that are picked from, the group's own among them. */
        List<RoadEvent> reports();
    }

    /**
     * The group's events of this season are a pick from its events of all seasons: what stands out is not where the group is
     * struck, but where it is struck in this season more than in others.
     *
     * @param reports the group's own events of the whole year in the same years
     */
    record PerOtherSeasons(List<RoadEvent> reports) implements Relabelling {
        public PerOtherSeasons {
            reports = List.copyOf(reports);
        }

        @Override
        public String name() {
            return "per-other-seasons";
        }

        @Override
        public String clause() {
            return "the collisions of this season were a random pick from the group's collisions of the whole year";
        }

        @Override
        public List<String> uncontrolled() {
            return List.of();
        }

        @Override
        public List<String> assumptions() {
            return List.of(
                    "one incident is entered once, however many people report it",
                    "people report in the same places in this season as in others");
        }
    }

    /**
     * A kind of chance on a background that differs from patch to patch of the road, as much as the records allow.
     *
     * @param even the kind of chance within patches: per kilometre, or per traffic and class
     * @param patchMetres length of a patch along the road
     */
    record Patchy(Chance even, double patchMetres) implements Chance {
        /**
         * Measured at 5 % on patches of a coefficient of variation of 0.5 (0.8): named in 4 to 5 (4 to 5) of 100 sets with 10 to
         * 200 collisions on 3,120 km, in 9 (16) with 2,000.
         */
        static final String VERY_ROUGH =
                "patches of road that differ by half of their mean or more, where there are many collisions: a part of that is"
                        + " not taken up";

        public Patchy {
            if (!(even instanceof PerKilometre || even instanceof PerTrafficAndClass) || !(patchMetres > 0)) {
                throw new IllegalArgumentException(
                        "patches have a length greater than zero, and differ per kilometre or per traffic and class");
            }
        }

        @Override
        public String name() {
            return even.name() + "-in-patches";
        }

        @Override
        public String clause() {
            return even.clause() + ", but for patches of road that differ as much as the records let them";
        }

        @Override
        public List<String> uncontrolled() {
            List<String> left = new ArrayList<>(even.uncontrolled());
            left.remove(DENSE_FOR_KILOMETRES);
            left.add(VERY_ROUGH);
            return List.copyOf(left);
        }

        @Override
        public List<String> assumptions() {
            List<String> assumed = new ArrayList<>(even.assumptions());
            assumed.add("patches of road of " + Math.round(patchMetres) + " m differ from each other independently");
            return assumed;
        }
    }
}
