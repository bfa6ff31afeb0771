package org.culvert.hotspot;

import jakarta.enterprise.context.RequestScoped;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.culvert.call.CollisionReport;
import org.culvert.call.IncidentService;

/** The incidents of a period as road evidence reads them, read once for all questions of one request. */
@RequestScoped
public class PeriodReports {
    private record Period(Instant from, Instant before) {}

    private final IncidentService incidents;
    private final Map<Period, List<CollisionReport>> known = new HashMap<>();

    PeriodReports(IncidentService incidents) {
        this.incidents = incidents;
    }

    /** @param before the first instant that is not in the period */
    public List<CollisionReport> list(Instant from, Instant before) {
        return known.computeIfAbsent(
                new Period(from, before), period -> incidents.listCollisionReports(period.from(), period.before()));
    }
}
