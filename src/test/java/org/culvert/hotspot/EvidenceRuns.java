package org.culvert.hotspot;

import static org.culvert.platform.Role.COORDINATOR;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.culvert.platform.Patience;
import org.culvert.support.Api;

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

    /** The runs of an annual run of that year, declared by cells, that has come to its end. */
    public static List<String> annual(String cells) {
        String id = Api.post(COORDINATOR, "/api/annual-runs", """
                        {"periodFrom":"%d-01-01","periodTo":"%d-12-31","plan":"the meeting in autumn","reachMetres":300,
                         "cells":%s}
                        """.formatted(year(), year(), cells))
                .statusCode(202)
                .extract()
                .path("id");
        Patience.until(
                "annual run " + id,
                () -> Api.get(COORDINATOR, "/api/annual-runs/" + id).getInt("done")
                        == Api.get(COORDINATOR, "/api/annual-runs/" + id).getInt("cells"));
        return Api.get(COORDINATOR, "/api/annual-runs/" + id).getList("runs.id");
    }

    /** The days of the wallabies that lie within some 150 m of Row Road 4, one on each. */
    public static List<LocalDate> plantedDays() {
        return IntStream.range(0, EvidenceWorld.PLANTED)
                .mapToObj(i -> LocalDate.parse(EvidenceWorld.plantedDay(i)))
                .toList();
    }
}
