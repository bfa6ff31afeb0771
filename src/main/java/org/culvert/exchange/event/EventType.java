package org.culvert.exchange.event;

import java.util.Arrays;
import java.util.List;

/** What others may be told of. */
public enum EventType {
    INCIDENT_LOGGED("culvert.incident.logged"),
    INCIDENT_CLOSED("culvert.incident.closed"),
    CASE_OPENED("culvert.case.opened"),
    CASE_ENDED("culvert.case.ended"),
    RELEASE_MADE("culvert.release.made"),
    DISEASE_SUSPICION_TOLD("culvert.disease-suspicion.told"),
    HEALTH_ALERT_RAISED("culvert.health-alert.raised"),
    HOTSPOT_RUN_COMPUTED("culvert.hotspot-run.computed");

    private final String word;

    EventType(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    static List<String> words() {
        return Arrays.stream(values()).map(EventType::word).toList();
    }
}
