package org.culvert.web.traffic;

import jakarta.ws.rs.FormParam;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.road.traffic.TrafficFileSaid;
import org.culvert.web.Typed;
import org.jspecify.annotations.Nullable;

/** What is said of a file of counts, as texts, so that what was typed stands there again. */
public class TrafficFileForm {
    @FormParam("stationAttribute")
    @Nullable
    String stationAttribute;

    @FormParam("roadAttribute")
    @Nullable
    String roadAttribute;

    @FormParam("yearAttribute")
    @Nullable
    String yearAttribute;

    @FormParam("fromAttribute")
    @Nullable
    String fromAttribute;

    @FormParam("toAttribute")
    @Nullable
    String toAttribute;

    @FormParam("vehiclesPerDayAttribute")
    @Nullable
    String vehiclesPerDayAttribute;

    @FormParam("standardErrorAttribute")
    @Nullable
    String standardErrorAttribute;

    @FormParam("daysCountedAttribute")
    @Nullable
    String daysCountedAttribute;

    @FormParam("directionAttribute")
    @Nullable
    String directionAttribute;

    @FormParam("heavyVehicleAttribute")
    @Nullable
    String heavyVehicleAttribute;

    @FormParam("kindAttribute")
    @Nullable
    String kindAttribute;

    @FormParam("year")
    @Nullable
    String year;

    @FormParam("measure")
    @Nullable
    String measure;

    @FormParam("kind")
    @Nullable
    String kind;

    @FormParam("directions")
    @Nullable
    String directions;

    @FormParam("heavyVehicleUnit")
    @Nullable
    String heavyVehicleUnit;

    @FormParam("source")
    @Nullable
    String source;

    @FormParam("uncertaintyMetres")
    @Nullable
    String uncertaintyMetres;

    @FormParam("refusedRows")
    @Nullable
    String refusedRows;

    @FormParam("crs")
    @Nullable
    String crs;

    @FormParam("layer")
    @Nullable
    String layer;

    /** Digest of the file that was tried. */
    @FormParam("sha256")
    @Nullable
    String sha256;

    /** Attributes of the file that was tried. */
    @FormParam("attribute")
    @Nullable
    List<String> attributes;

    @FormParam("act")
    @Nullable
    String act;

    @FormParam("key")
    @Nullable
    String key;

    /** What was typed into a field, or nothing. */
    public String typed(String field) {
        String text = all().get(field);
        return text == null ? "" : text;
    }

    /** Everything that was typed, by its field. */
    Map<String, @Nullable String> all() {
        Map<String, @Nullable String> all = new LinkedHashMap<>();
        all.put("stationAttribute", stationAttribute);
        all.put("roadAttribute", roadAttribute);
        all.put("yearAttribute", yearAttribute);
        all.put("fromAttribute", fromAttribute);
        all.put("toAttribute", toAttribute);
        all.put("vehiclesPerDayAttribute", vehiclesPerDayAttribute);
        all.put("standardErrorAttribute", standardErrorAttribute);
        all.put("daysCountedAttribute", daysCountedAttribute);
        all.put("directionAttribute", directionAttribute);
        all.put("heavyVehicleAttribute", heavyVehicleAttribute);
        all.put("kindAttribute", kindAttribute);
        all.put("year", year);
        all.put("measure", measure);
        all.put("kind", kind);
        all.put("directions", directions);
        all.put("heavyVehicleUnit", heavyVehicleUnit);
        all.put("source", source);
        all.put("uncertaintyMetres", uncertaintyMetres);
        all.put("refusedRows", refusedRows);
        all.put("crs", crs);
        all.put("layer", layer);
        return all;
    }

    /**
     * What is meant.
     *
     * @throws InvalidException naming every number that cannot be read
     */
    TrafficFileSaid said() {
        List<FieldError> errors = new ArrayList<>();
        Integer ofYear = Typed.read("year", year, Integer::valueOf, "a calendar year such as 2024", errors);
        Double metres = Typed.read(
                "uncertaintyMetres",
                uncertaintyMetres,
                Double::valueOf,
                "metres, more than 0 and at most 1000",
                errors);
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
        Map<String, String> named = new LinkedHashMap<>();
        all().forEach((field, text) -> {
            String given = Typed.given(text);
            if (field.endsWith("Attribute") && given != null) {
                named.put(field, given);
            }
        });
        return new TrafficFileSaid(
                named,
                ofYear,
                Typed.given(measure),
                Typed.given(kind),
                Typed.given(directions),
                Typed.given(heavyVehicleUnit),
                Typed.given(source),
                metres,
                Typed.given(refusedRows));
    }
}
