package org.culvert.hotspot;

/** The invented evidence for tests in other rooms. */
public final class EvidenceRuns {
    private EvidenceRuns() {}

    public static void make() {
        EvidenceWorld.make();
    }

    /** The year in which everything happened. */
    public static int year() {
        return EvidenceWorld.year();
    }

    /** A finished run about wallabies, with one hotspot. */
    public static String wallabies() {
        return wallabies("");
    }

    /** A run about wallabies with some more settings that has come to its end. */
    public static String wallabies(String more) {
        return EvidenceWorld.run(",\"taxonGroup\":\"macropods\"" + more);
    }

    /** How many wallabies lie within some 150 m of Row Road 4, one on each day from 10 June. */
    public static int planted() {
        return EvidenceWorld.PLANTED;
    }
}
