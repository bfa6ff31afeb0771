package org.culvert.exchange.features;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.culvert.geo.Bounds;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.RegionService;
import org.jspecify.annotations.Nullable;

/** Reads the parameters of a request: what is not known, wrong or told twice is refused, each with its name. */
@ApplicationScoped
class QueryReader {
    static final int DEFAULT_LIMIT = 100;
    static final int MAXIMUM_LIMIT = 10_000;
    static final Set<String> OF_ITEMS = Set.of("limit", "bbox", "datetime", "cursor");

    private static final Set<String> PAGES = Set.of("limit", "cursor");

    private static final String BOX_WANTED =
            "west,south,east,north in degrees on WGS 84, or six numbers with heights, which do not count";

    private final FeatureCatalogue catalogue;
    private final RegionService region;

    QueryReader(FeatureCatalogue catalogue, RegionService region) {
        this.catalogue = catalogue;
        this.region = region;
    }

    /**
     * The values of parameters.
     *
     * @param sent all that was sent
     * @param known names beside {@code f}
     * @throws InvalidException naming every parameter that is not known or was sent twice
     */
    static Map<String, String> read(Map<String, List<String>> sent, Set<String> known) {
        List<FieldError> errors = new ArrayList<>();
        Map<String, String> read = new LinkedHashMap<>();
        sent.forEach((name, values) -> {
            if (!name.equals(LinkMaker.FORMAT) && !known.contains(name)) {
                errors.add(new FieldError(
                        name.isBlank() ? "parameter" : name,
                        "There is no such parameter here.",
                        Stream.concat(Stream.of(LinkMaker.FORMAT), known.stream())
                                .sorted()
                                .collect(Collectors.joining(", ")),
                        null));
            } else if (values.size() > 1) {
                errors.add(new FieldError(name, "This parameter was sent more than once.", "one value", null));
            } else {
                read.put(name, values.get(0));
            }
        });
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
        return read;
    }

    /** The names of all parameters of a collection's features. */
    Set<String> names(FeatureSource source) {
        return Stream.concat(
                        OF_ITEMS.stream(), catalogue.filters(source).stream().map(FeatureProperty::name))
                .collect(Collectors.toSet());
    }

    /** The names of all parameters of a collection's files, which have no pages. */
    Set<String> namesOfFiles(FeatureSource source) {
        return names(source).stream().filter(name -> !PAGES.contains(name)).collect(Collectors.toSet());
    }

    FeatureQuery query(FeatureSource source, Map<String, String> parameters) {
        Map<String, Object> equal = new LinkedHashMap<>();
        for (FeatureProperty property : catalogue.filters(source)) {
            String text = parameters.get(property.name());
            if (text != null) {
                equal.put(property.name(), property.parse(text));
            }
        }
        String bbox = parameters.get("bbox");
        String datetime = parameters.get("datetime");
        TimeSpan time = datetime == null ? TimeSpan.EVER : TimeSpan.parse(datetime, region.zone());
        // Features without a time lie in every span
        return new FeatureQuery(
                bbox == null ? null : box(bbox), source.time() == null ? TimeSpan.EVER : time, Map.copyOf(equal));
    }

    /** A limit above the greatest is that one. */
    static int limit(@Nullable String text) {
        if (text == null) {
            return DEFAULT_LIMIT;
        }
        if (!text.matches("[0-9]{1,100}") || text.matches("0+")) {
            throw InvalidException.of(
                    "limit", "This is no number of features.", "a whole number of 1 or more; 1 to " + MAXIMUM_LIMIT);
        }
        String digits = text.replaceFirst("^0+", "");
        return digits.length() > 9 ? MAXIMUM_LIMIT : Math.min(Integer.parseInt(digits), MAXIMUM_LIMIT);
    }

    private static Bounds box(String text) {
        String[] parts = text.split(",", -1);
        if (parts.length != 4 && parts.length != 6) {
            throw wrongBox("A box has four or six numbers.");
        }
        double[] numbers = new double[parts.length];
        try {
            for (int i = 0; i < parts.length; i++) {
                numbers[i] = Double.parseDouble(parts[i].strip());
            }
        } catch (NumberFormatException e) {
            throw wrongBox("These are no numbers.");
        }
        int half = parts.length / 2;
        if (parts.length == 6 && !(numbers[2] <= numbers[5])) {
            throw wrongBox("The box ends below where it begins.");
        }
        try {
            return new Bounds(numbers[1], numbers[0], numbers[half + 1], numbers[half]);
        } catch (IllegalArgumentException impossible) {
            throw wrongBox("There is no such box.");
        }
    }

    private static InvalidException wrongBox(String detail) {
        return InvalidException.of("bbox", detail, BOX_WANTED);
    }

    /** Whether a page is wanted, by the parameter or else by what the client accepts; a program may accept anything. */
    static boolean wantsPage(@Nullable String format, @Nullable String accept) {
        if (format != null) {
            if (format.equals("json") || format.equals("html")) {
                return format.equals("html");
            }
            throw InvalidException.of(LinkMaker.FORMAT, "There is no such form of an answer.", "json or html");
        }
        String wanted = Objects.requireNonNullElse(accept, "").toLowerCase(java.util.Locale.ROOT);
        return wanted.contains(WebLink.HTML) && !wanted.contains("json");
    }
}
