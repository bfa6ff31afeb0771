package org.culvert.hotspot.works;

import java.util.List;
import org.culvert.road.network.LinkTraffic;
import org.culvert.road.network.LinkTraffic.Basis;

/**
 * How traffic changed from the years before works to those after. Only counts of one station tell that; where none counted in
 * both, the traffic after is taken to be that of before.
 */
record TrafficChange(LinkTraffic before, LinkTraffic after) {
    private boolean isCounted(int link) {
        return before.basis(link) == Basis.COUNTED
                && after.basis(link) == Basis.COUNTED
                && before.station(link) == after.station(link);
    }

    double vehiclesPerDayAfter(int link) {
        return isCounted(link) ? after.vehiclesPerDay(link) : before.vehiclesPerDay(link);
    }

    /** What is said of it, where the model asks for traffic; pieces and parts are of the same roads. */
    List<String> words(RoadModel model, RoadPieces pieces, List<RoadPieces.Part> parts) {
        if (parts.stream().anyMatch(part -> !model.obstacle(part).isEmpty()) || !model.usesTraffic(parts)) {
            return List.of();
        }
        double whole = 0;
        double counted = 0;
        double vehicleMetresBefore = 0;
        double vehicleMetresAfter = 0;
        for (RoadPieces.Part part : parts) {
            for (var span : pieces.spans(part)) {
                double metres = span.toMetres() - span.fromMetres();
                whole += metres;
                if (isCounted(span.link())) {
                    counted += metres;
                    vehicleMetresBefore += metres * before.vehiclesPerDay(span.link());
                    vehicleMetresAfter += metres * after.vehiclesPerDay(span.link());
                }
            }
        }
        if (!(counted > 0)) {
            return List.of(
                    "No station counted traffic here both before and after: what is expected after is expected as if"
                            + " traffic had stayed as it was.");
        }
        String rest = counted < whole - 1
                ? " On the rest of it no station counted both, and traffic is taken to have stayed as it was."
                : "";
        return List.of("By counts, traffic on " + Figures.number(Math.rint(counted)) + " m of this stretch was "
                + Figures.number(Math.rint(vehicleMetresBefore / counted)) + " vehicles a day before and "
                + Figures.number(Math.rint(vehicleMetresAfter / counted))
                + " after: what is expected after is expected at the traffic of that time." + rest);
    }
}
