package org.culvert.hotspot;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The kinds of chance that a run may be judged against, by the names that runs are asked for with. */
public enum ChanceKind {
    PER_ALL_REPORTS("per-all-reports", "a random pick from all animals' reports"),
    PER_OTHER_SEASONS("per-other-seasons", "a random pick from the group's own reports of the whole year"),
    PER_TRAFFIC("per-traffic-and-class", "roads of the same class and traffic alike"),
    PER_TRAFFIC_IN_PATCHES(
            "per-traffic-and-class-in-patches",
            "roads of the same class and traffic alike, but for patches that differ as the records do"),
    PER_SURVEY_EFFORT("per-survey-effort", "every kilometre alike, each time that a survey went over it"),
    PER_KILOMETRE("per-kilometre", "every kilometre alike"),
    PER_KILOMETRE_IN_PATCHES(
            "per-kilometre-in-patches", "every kilometre alike, but for patches that differ as the records do");

    private final String key;
    private final String words;

    ChanceKind(String key, String words) {
        this.key = key;
        this.words = words;
    }

    /** Its name in settings and files. */
    public String key() {
        return key;
    }

    /** What it takes to be alike, in few words, to follow "if only". */
    public String words() {
        return words;
    }

    public static List<ChanceKind> list() {
        return List.of(values());
    }

    public static Optional<ChanceKind> find(String key) {
        return Arrays.stream(values()).filter(kind -> kind.key.equals(key)).findFirst();
    }

    static String keys() {
        return list().stream().map(ChanceKind::key).collect(Collectors.joining(", "));
    }

    /** Whether the traffic of the roads is one of the inputs of a run. */
    static boolean usesTraffic(String key) {
        return key.equals(PER_TRAFFIC.key()) || key.equals(PER_TRAFFIC_IN_PATCHES.key());
    }
}
