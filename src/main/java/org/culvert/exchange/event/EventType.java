package org.culvert.exchange.event;

import java.util.Arrays;
import java.util.List;

/** What others may be told of. */
public enum EventType {
    INCIDENT_LOGGED("org.culvert.incident.logged"),
    INCIDENT_CLOSED("org.culvert.incident.closed"),
    CASE_OPENED("org.culvert.case.opened"),
    CASE_ENDED("org.culvert.case.ended"),
    RELEASE_MADE("org.culvert.release.made"),
    DISEASE_SUSPICION_TOLD("org.culvert.disease-suspicion.told"),
    HEALTH_ALERT_RAISED("org.culvert.health-alert.raised"),
    HOTSPOT_RUN_COMPUTED("org.culvert.hotspot-run.computed");

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
