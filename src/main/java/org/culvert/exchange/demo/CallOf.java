package org.culvert.exchange.demo;

import java.util.Comparator;
import java.util.List;

/** A call with the incident it tells of. */
record CallOf(Incident incident, Incident.Call call) {

    /** All calls as they came in. */
    static List<CallOf> inOrder(List<Incident> incidents) {
        return incidents.stream()
                .flatMap(incident -> incident.calls().stream().map(call -> new CallOf(incident, call)))
                .sorted(Comparator.comparing(callOf -> callOf.call().id()))
                .toList();
    }
}
