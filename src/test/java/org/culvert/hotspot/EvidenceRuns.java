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
        return EvidenceWorld.run(",\"taxonGroup\":\"macropods\"");
    }
}
