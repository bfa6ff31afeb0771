package org.culvert.web.animal;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.ws.rs.FormParam;
import java.time.DayOfWeek;
import java.time.format.TextStyle;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.clinic.profile.ProfileService.ClinicProfileView;
import org.culvert.platform.InvalidException;
import org.culvert.web.Typed;
import org.jspecify.annotations.Nullable;

/** What a clinic says of itself, as it is typed: its hours a line a span. */
public class ClinicForm {
    private static final Pattern SPAN =
            Pattern.compile("(\\p{L}+)\\.?\\s+(\\d{1,2}:\\d{2})\\s*[-–]\\s*(\\d{1,2}:\\d{2})");
    private static final List<Locale> TONGUES = List.of(Locale.ENGLISH, Locale.GERMAN);
    private static final int MOST_LINES = 60;

    @FormParam("clinicId")
    @Nullable
    String clinicId;

    @FormParam("phone")
    @Nullable
    String phone;

    @FormParam("whenClosed")
    @Nullable
    String whenClosed;

    @FormParam("words")
    @Nullable
    String words;

    @FormParam("treats")
    @Nullable
    List<String> treats;

    @FormParam("opening")
    @Nullable
    String opening;

    @FormParam("reason")
    @Nullable
    String reason;

    @FormParam("key")
    @Nullable
    String key;

    /** As a page shows it; nothing is null. */
    public record Told(
            String phone, String whenClosed, String words, List<String> treats, String opening, String reason) {
        static final Told NOTHING = new Told("", "", "", List.of(), "", "");

        static Told of(ClinicProfileView kept, Locale locale) {
            StringBuilder hours = new StringBuilder();
            kept.opening()
                    .forEach(span -> hours.append(DayOfWeek.valueOf(span.day()).getDisplayName(TextStyle.FULL, locale))
                            .append(' ')
                            .append(span.opens())
                            .append('-')
                            .append(span.closes())
                            .append('\n'));
            return new Told(
                    kept.phone(),
                    Objects.requireNonNullElse(kept.whenClosed(), ""),
                    Objects.requireNonNullElse(kept.words(), ""),
                    kept.treats(),
                    hours.toString().strip(),
                    "");
        }
    }

    Told told() {
        return new Told(
                text(phone),
                text(whenClosed),
                text(words),
                treats == null ? List.of() : List.copyOf(treats),
                text(opening),
                text(reason));
    }

    private static String text(@Nullable String typed) {
        return Objects.requireNonNullElse(typed, "");
    }

    /** As the API would take it: of a new profile, or of a correction of all that it says. */
    ObjectNode body(boolean correction) {
        ObjectNode body = JsonNodeFactory.instance.objectNode();
        put(body, "phone", phone, correction);
        put(body, "whenClosed", whenClosed, correction);
        put(body, "words", words, correction);
        ArrayNode groups = body.putArray("treats");
        told().treats().forEach(groups::add);
        hours(body.putArray("opening"));
        if (correction) {
            put(body, "reason", reason, false);
        } else {
            put(body, "clinicId", clinicId, false);
        }
        return body;
    }

    private static void put(ObjectNode body, String field, @Nullable String typed, boolean cleared) {
        String given = Typed.given(typed);
        if (given != null || cleared) {
            body.put(field, given);
        }
    }

    private void hours(ArrayNode spans) {
        List<String> lines = text(opening)
                .lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .toList();
        for (String line : lines) {
            Matcher read = SPAN.matcher(line);
            DayOfWeek day = read.matches() ? day(read.group(1)) : null;
            if (day == null || lines.size() > MOST_LINES) {
                throw InvalidException.of(
                        "opening",
                        "This cannot be read: " + line,
                        "a day and two times a line, such as Monday 08:00-18:30");
            }
            spans.addObject()
                    .put("day", day.name())
                    .put("opens", time(read.group(2)))
                    .put("closes", time(read.group(3)));
        }
    }

    private static String time(String typed) {
        return typed.length() == 4 ? "0" + typed : typed;
    }

    private static @Nullable DayOfWeek day(String word) {
        return Arrays.stream(DayOfWeek.values())
                .filter(one -> TONGUES.stream()
                        .anyMatch(tongue ->
                                one.getDisplayName(TextStyle.FULL, tongue).equalsIgnoreCase(word)))
                .findFirst()
                .orElse(null);
    }
}
