package org.culvert.road;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.platform.InvalidException;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.Structure;
import org.jspecify.annotations.Nullable;

/** Reads the attributes of one feature after another, and counts values that it cannot make sense of. */
final class AttributeReader {
    private static final Pattern SPEED =
            Pattern.compile("(\\d{1,3}(?:\\.\\d+)?)\\s*(mph|km/h|kmh|kph)?", Pattern.CASE_INSENSITIVE);
    private static final double KILOMETRES_A_MILE = 1.609344;

    /** What files write where there is nothing. */
    private static final Set<String> MISSING =
            Set.of("", "-", "--", "?", "n/a", "na", "nan", "nil", "none", "null", "unknown", "inconnu", "unbekannt");

    private static final Set<String> NO = Set.of("no", "false", "0", "f", "n");

    /** F and T alone mean along and against in some files, no and yes in others. */
    private static final Map<String, Travel> TRAVEL = Map.ofEntries(
            Map.entry("yes", Travel.ALONG),
            Map.entry("true", Travel.ALONG),
            Map.entry("1", Travel.ALONG),
            Map.entry("y", Travel.ALONG),
            Map.entry("ft", Travel.ALONG),
            Map.entry("-1", Travel.AGAINST),
            Map.entry("reverse", Travel.AGAINST),
            Map.entry("tf", Travel.AGAINST),
            Map.entry("no", Travel.BOTH_WAYS),
            Map.entry("false", Travel.BOTH_WAYS),
            Map.entry("0", Travel.BOTH_WAYS),
            Map.entry("n", Travel.BOTH_WAYS),
            Map.entry("b", Travel.BOTH_WAYS),
            Map.entry("both", Travel.BOTH_WAYS),
            Map.entry("reversible", Travel.BOTH_WAYS),
            Map.entry("alternating", Travel.BOTH_WAYS));

    private final AttributeNames names;
    private final double measureFactor;
    private final boolean milesByDefault;
    private final Map<String, Integer> notUnderstood = new TreeMap<>();

    AttributeReader(AttributeNames names) {
        this.names = names;
        this.milesByDefault =
                oneOf("speedUnit", names.speedUnit(), "km/h", "mph").equals("mph");
        this.measureFactor =
                oneOf("startMeasureUnit", names.startMeasureUnit(), "m", "km").equals("km") ? 1000 : 1;
    }

    private static String oneOf(String field, @Nullable String given, String usual, String other) {
        if (given == null || given.equals(usual) || given.equals(other)) {
            return given == null ? usual : given;
        }
        throw InvalidException.of(field, "There is no unit " + given + " here.", usual + " or " + other);
    }

    Map<String, Integer> notUnderstood() {
        return notUnderstood;
    }

    RoadAttributes attributes(JsonNode properties) {
        return new RoadAttributes(
                text(properties, names.roadName()),
                text(properties, names.ref()),
                text(properties, names.roadClass()),
                speed(properties),
                positive("aadt", number("aadt", text(properties, names.aadt()))),
                text(properties, names.owner()),
                text(properties, names.carriageway()),
                level(properties),
                structure(properties),
                oneWay(properties) == null ? null : oneWay(properties) != Travel.BOTH_WAYS,
                positive("lanes", number("lanes", text(properties, names.lanes()))));
    }

    /** In which direction a line is travelled. */
    enum Travel {
        ALONG,
        AGAINST,
        BOTH_WAYS
    }

    /** Null where the source does not say. */
    @Nullable
    Travel oneWay(JsonNode properties) {
        String text = text(properties, names.oneWay());
        return text == null ? null : TRAVEL.get(text.toLowerCase(Locale.ROOT));
    }

    /** To be called once a feature. */
    void countOneWay(JsonNode properties) {
        if (text(properties, names.oneWay()) != null && oneWay(properties) == null) {
            count("oneWay");
        }
    }

    @Nullable
    Double startMeasureMetres(JsonNode properties) {
        Double measure = number("startMeasure", text(properties, names.startMeasure()));
        return measure == null ? null : measure * measureFactor;
    }

    private @Nullable Integer speed(JsonNode properties) {
        String text = text(properties, names.speedLimit());
        if (text == null) {
            return null;
        }
        Matcher matcher = SPEED.matcher(text);
        if (!matcher.matches()) {
            count("speedLimit");
            return null;
        }
        String unit = matcher.group(2);
        boolean miles = unit == null ? milesByDefault : unit.equalsIgnoreCase("mph");
        double value = Double.parseDouble(matcher.group(1)) * (miles ? KILOMETRES_A_MILE : 1);
        return positive("speedLimit", value);
    }

    /** Zero stands for a missing value in real files, and a negative one for a mistake: both are unknown. */
    private @Nullable Integer positive(String what, @Nullable Double value) {
        if (value == null || Math.round(value) > 0 && value < 1e6) {
            return value == null ? null : Integer.valueOf((int) Math.round(value));
        }
        count(what);
        return null;
    }

    private int level(JsonNode properties) {
        Double level = number("level", text(properties, names.level()));
        if (level != null && Math.abs(level) > 100) {
            count("level");
            return 0;
        }
        return level == null ? 0 : (int) Math.round(level);
    }

    private Structure structure(JsonNode properties) {
        if (isYes(text(properties, names.bridge()))) {
            return Structure.BRIDGE;
        }
        return isYes(text(properties, names.tunnel())) ? Structure.TUNNEL : Structure.NONE;
    }

    /** Sources say yes in many words ({@code yes, 1, viaduct}) and no in few. */
    private static boolean isYes(@Nullable String text) {
        return text != null && !NO.contains(text.toLowerCase(Locale.ROOT));
    }

    private @Nullable Double number(String what, @Nullable String text) {
        if (text == null) {
            return null;
        }
        try {
            double value = Double.parseDouble(text);
            if (!Double.isNaN(value) && !Double.isInfinite(value)) {
                return value;
            }
        } catch (NumberFormatException notANumber) {
            count(what);
            return null;
        }
        count(what);
        return null;
    }

    private static @Nullable String text(JsonNode properties, @Nullable String name) {
        JsonNode value = name == null ? null : properties.get(name);
        if (value == null || value.isNull() || value.isContainerNode()) {
            return null;
        }
        String text = value.asText().strip();
        return MISSING.contains(text.toLowerCase(Locale.ROOT)) ? null : text;
    }

    private void count(String what) {
        notUnderstood.merge(what, 1, Integer::sum);
    }
}
