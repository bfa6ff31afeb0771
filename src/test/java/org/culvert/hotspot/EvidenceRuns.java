package org.culvert.hotspot;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;

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

    /** The days of the wallabies that lie within some 150 m of Row Road 4, one on each. */
    public static List<LocalDate> plantedDays() {
        return IntStream.range(0, EvidenceWorld.PLANTED)
                .mapToObj(i -> LocalDate.parse(EvidenceWorld.plantedDay(i)))
                .toList();
    }
}
