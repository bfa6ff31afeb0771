package org.culvert.web.traffic;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.FormParam;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.road.SaidPlaces;
import org.culvert.road.traffic.TrafficCountService.TrafficCountEntry;
import org.culvert.web.Typed;
import org.jspecify.annotations.Nullable;

/** A count that somebody types, as texts, so that what was typed stands there again. */
public class TrafficCountForm {
    private static final Set<String> NUMBERS =
            Set.of("vehiclesPerDay", "standardError", "daysCounted", "heavyVehicleShare");

    /** The server's own mapper leaves out what nobody has a right to see, which a place as it is given is no part of. */
    private static final ObjectMapper WHOLE = new ObjectMapper();

    @FormParam("place")
    @Nullable
    String place;

    @FormParam("station")
    @Nullable
    String station;

    @FormParam("from")
    @Nullable
    String from;

    @FormParam("to")
    @Nullable
    String to;

    @FormParam("vehiclesPerDay")
    @Nullable
    String vehiclesPerDay;

    @FormParam("measure")
    @Nullable
    String measure;

    @FormParam("standardError")
    @Nullable
    String standardError;

    @FormParam("daysCounted")
    @Nullable
    String daysCounted;

    @FormParam("directions")
    @Nullable
    String directions;

    @FormParam("direction")
    @Nullable
    String direction;

    @FormParam("heavyVehicleShare")
    @Nullable
    String heavyVehicleShare;

    @FormParam("kind")
    @Nullable
    String kind;

    @FormParam("source")
    @Nullable
    String source;

    @FormParam("words")
    @Nullable
    String words;

    @FormParam("key")
    @Nullable
    String key;

    /** What was typed into a field, or nothing. */
    public String typed(String field) {
        String text = all().get(field);
        return text == null ? "" : text;
    }

    private Map<String, @Nullable String> all() {
        Map<String, @Nullable String> all = new LinkedHashMap<>();
        all.put("place", place);
        all.put("station", station);
        all.put("from", from);
        all.put("to", to);
        all.put("vehiclesPerDay", vehiclesPerDay);
        all.put("measure", measure);
        all.put("standardError", standardError);
        all.put("daysCounted", daysCounted);
        all.put("directions", directions);
        all.put("direction", direction);
        all.put("heavyVehicleShare", heavyVehicleShare);
        all.put("kind", kind);
        all.put("source", source);
        all.put("words", words);
        return all;
    }

    /**
     * The count.
     *
     * @throws InvalidException naming what is wrong, in the words of the API
     */
    TrafficCountEntry entry(ObjectMapper mapper, SaidPlaces said, FormBodies bodies) {
        ObjectNode body = mapper.createObjectNode();
        all().forEach((field, text) -> {
            String given = Typed.given(text);
            if (given != null && field.equals("place")) {
                body.set("place", WHOLE.valueToTree(said.read(given)));
            } else if (given != null && NUMBERS.contains(field) && given.matches("-?\\d{1,15}(\\.\\d{1,15})?")) {
                body.put(field, new BigDecimal(given));
            } else if (given != null) {
                body.put(field, given);
            }
        });
        return bodies.read(body, TrafficCountEntry.class);
    }
}
