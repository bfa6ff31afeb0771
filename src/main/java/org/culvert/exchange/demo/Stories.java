package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.Predicate;

/**
 * A few animals of the region whose whole way is told: the gravid turtle of last season, one of this spring that is in
 * care, one of last summer that may not go back, a wombat with young that two drivers reported. What the vets of the demo order is invented and no advice.
 */
@ApplicationScoped
class Stories {
    private final TurtleStory turtle;
    private final WombatStory wombat;

    Stories(TurtleStory turtle, WombatStory wombat) {
        this.turtle = turtle;
        this.wombat = wombat;
    }

    enum Story {
        TURTLE_OF_LAST_SEASON,
        TURTLE_IN_CARE,
        TURTLE_THAT_STAYS,
        WOMBAT_WITH_YOUNG
    }

    /** Which incidents of the region have a story, by number. */
    static Map<Integer, Story> choose(DemoRegion region) {
        Map<Integer, Story> chosen = new HashMap<>();
        Predicate<Incident> liveTurtle = incident -> incident.plantId() != null
                && incident.taxonGroup().equals("turtles")
                && incident.calls().size() == 1
                && incident.calls().get(0).animals().size() == 1
                && incident.calls().get(0).animals().get(0).vitality().equals("alive");
        put(
                region,
                chosen,
                Story.TURTLE_OF_LAST_SEASON,
                "2025-10-01",
                "2025-12-15",
                liveTurtle.and(incident -> hasSiteNear(region, incident)));
        put(region, chosen, Story.TURTLE_IN_CARE, "2026-09-20", "2026-10-30", liveTurtle);
        put(region, chosen, Story.TURTLE_THAT_STAYS, "2026-01-05", "2026-02-28", liveTurtle);
        put(
                region,
                chosen,
                Story.WOMBAT_WITH_YOUNG,
                "2025-06-01",
                "2026-10-25",
                incident -> incident.taxonGroup().equals("wombats")
                        && incident.cause().equals(CallMaker.COLLISION)
                        && incident.deskJoin() == Incident.DeskJoin.LATER);
        return chosen;
    }

    /** The incident that a story is told of. */
    static Incident incidentOf(DemoRegion region, Story story) {
        Map<Integer, Story> chosen = choose(region);
        return region.incidents().stream()
                .filter(incident -> chosen.get(incident.number()) == story)
                .findFirst()
                .orElseThrow();
    }

    private static boolean hasSiteNear(DemoRegion region, Incident incident) {
        Spot site =
                ReleaseLoader.nearestSite(region, incident.spot(), "turtles").spot();
        return region.settings().ground().distance(site, incident.spot()) < 7_000;
    }

    private static void put(
            DemoRegion region,
            Map<Integer, Story> chosen,
            Story story,
            String from,
            String to,
            Predicate<Incident> fits) {
        LocalDate first = LocalDate.parse(from);
        LocalDate last = LocalDate.parse(to);
        for (Incident incident : region.incidents()) {
            LocalDate day = incident.happened().atZone(region.settings().zone()).toLocalDate();
            boolean placed = incident.calls().get(0).place().kind() != GivenPlace.Kind.NONE;
            if (placed && !day.isBefore(first) && !day.isAfter(last) && fits.test(incident)) {
                chosen.put(incident.number(), story);
                return;
            }
        }
        throw new IllegalStateException("no incident of the region fits the story " + story);
    }

    void tell(DemoRegion region, Story story, UUID incidentId, Incident incident) {
        Incident.Call last = incident.calls().get(incident.calls().size() - 1);
        Instant start = last.received().plusSeconds(600);
        switch (story) {
            case TURTLE_OF_LAST_SEASON -> turtle.tellOfOneThatWentBack(region, incidentId, incident, start);
            case TURTLE_IN_CARE -> turtle.tellOfOneInCare(region, incidentId, incident, start);
            case TURTLE_THAT_STAYS -> turtle.tellOfOneThatStays(region, incidentId, incident, start);
            case WOMBAT_WITH_YOUNG -> wombat.tell(region, incidentId, incident, start);
        }
    }
}
