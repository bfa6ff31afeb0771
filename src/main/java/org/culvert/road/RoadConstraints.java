package org.culvert.road;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class RoadConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry(
                        "road_networks_number_is_taken",
                        "Another network was imported at the same moment; send it again."),
                Map.entry(
                        "road_networks_south_is_south",
                        "The southern edge of the network is not south of the northern."),
                Map.entry("road_links_once_in_their_network", "A link is in the network twice."),
                Map.entry(
                        "road_links_last_once_in_a_network", "A link of the version before is in the network twice."));
    }
}
