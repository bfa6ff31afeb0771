package org.culvert.hotspot.stats;

import java.util.List;

/**
 * The kind of chance that a hotspot must be denser than.
 *
 * <p>A hotspot is a claim against one kind of chance. Each kind has a name in plain words, used in every sentence that
 * states an error rate, and says what in real records can still make false hotspots under it; a run that leaves such
 * flaws uncontrolled claims no error rate for the real road. Further kinds (other seasons, survey effort, overdispersed
 * backgrounds) join here.
 */
public sealed interface Chance {
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
                    "places where collisions come more densely for kilometres on end, without a spot to treat");
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
                    "places where collisions come more densely for kilometres on end, without a spot to treat");
        }

        @Override
        public List<String> assumptions() {
            return List.of(
                    "one incident is entered once, however many people report it",
                    "within a class and a band of traffic every kilometre is alike");
        }
    }

    /**
     * Random labelling: the group's events are a draw, without replacement, from the reports of all animals. It controls
     * traffic and reporting alike, whatever they are. Diggle, P. J. and Chetwynd, A. G. (1991), Second-order analysis of
     * spatial clustering for inhomogeneous populations, Biometrics 47, 1155-1163, is where the idea for planes comes from.
     *
     * @param reports all reports of the same period and season, the group's own among them
     */
    record PerAllReports(List<RoadEvent> reports) implements Chance {
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
}
