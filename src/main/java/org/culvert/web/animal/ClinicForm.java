package org.culvert.web.animal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.time.DayOfWeek;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.TextStyle;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.culvert.clinic.profile.ProfileService.ClinicProfileView;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.FieldShape;
import org.culvert.web.forms.FieldShape.Kind;
import org.culvert.web.forms.SentFields;
import org.culvert.web.words.CaseWords;
import org.jspecify.annotations.Nullable;

/** What a clinic says of itself, as it is typed: its hours a line a span. */
final class ClinicForm {
    private static final String OPENING = "opening";
    private static final String TREATS = "treats";
    private static final Pattern SPAN =
            Pattern.compile("(\\p{L}+)\\.?\\s+(\\d{1,2}:\\d{2})\\s*[-–]\\s*(\\d{1,2}:\\d{2})");
    private static final List<Locale> TONGUES = List.of(Locale.ENGLISH, Locale.GERMAN);
    private static final int LONGEST_LINE = 200;
    private static final int LONGEST_REASON = 2000;

    private ClinicForm() {}

    /** @param correction whether something is there that is corrected */
    private static List<FieldShape> shapes(boolean correction) {
        return List.of(
                FieldShape.of(Kind.text, "phone")
                        .isNeeded()
                        .isChange(correction)
                        .atMost(LONGEST_LINE),
                FieldShape.of(Kind.list, OPENING).isNeeded(!correction).isChange(correction),
                FieldShape.of(Kind.lines, "whenClosed").isChange(correction),
                FieldShape.of(Kind.lines, "words").isChange(correction),
                FieldShape.of(Kind.ticks, TREATS).isChange(correction),
                FieldShape.of(Kind.text, "reason").isNeeded().atMost(LONGEST_REASON));
    }

    /** @param groups that can be ticked */
    static EntryForm form(
            CaseWords words, List<Option> groups, boolean correction, SentFields typed, List<FieldError> errors) {
        var form = new EntryForm("profile", typed, errors);
        for (FieldShape field : shapes(correction)) {
            if (correction || !field.name().equals("reason")) {
                // That hours may be told is no matter of whether they must be
                FieldShape shown = field.name().equals(OPENING) ? field.isNeeded(false) : field;
                form.add(
                        shown,
                        words.label(field.name()),
                        field.name().equals(OPENING) ? words.openingHint() : "",
                        field.name().equals(TREATS) ? groups : List.of());
            }
        }
        return form;
    }

    /** When it is open, as it is read: a line a span. */
    static String openingSaid(@Nullable ClinicProfileView kept, CaseTongue tongue) {
        return kept == null
                ? ""
                : kept.opening().stream()
                        .map(span -> dayOf(span, tongue.locale()) + " "
                                + (isWholeDay(span) ? tongue.words().allDay() : span.opens() + "–" + span.closes()))
                        .collect(Collectors.joining("\n"));
    }

    /** Midnight at its end is that of the next day. */
    private static boolean isWholeDay(ClinicProfileView.Opening span) {
        return span.opens().equals(LocalTime.MIDNIGHT) && span.closes().equals(LocalTime.MIDNIGHT);
    }

    private static String dayOf(ClinicProfileView.Opening span, Locale locale) {
        return DayOfWeek.valueOf(span.day()).getDisplayName(TextStyle.FULL, locale);
    }

    /** What is kept, as it would be typed. */
    static SentFields typed(@Nullable ClinicProfileView kept, Locale locale) {
        if (kept == null) {
            return SentFields.NOTHING;
        }
        Map<String, List<String>> typed = new TreeMap<>();
        typed.put("phone", List.of(kept.phone()));
        typed.put("whenClosed", List.of(Objects.requireNonNullElse(kept.whenClosed(), "")));
        typed.put("words", List.of(Objects.requireNonNullElse(kept.words(), "")));
        typed.put(TREATS, kept.treats());
        typed.put(
                OPENING,
                List.of(String.join(
                        "\n",
                        kept.opening().stream()
                                .map(span -> dayOf(span, locale) + " " + span.opens() + "-" + span.closes())
                                .toList())));
        return new SentFields(typed);
    }

    /**
     * As the API would take it: of a new profile, or of a correction of what is said otherwise.
     *
     * @param kept as {@link #typed} tells it; null where nothing is there
     */
    static EntryBody body(UUID clinic, SentFields typed, @Nullable SentFields kept, ZoneId zone) {
        boolean correction = kept != null;
        List<FieldShape> shapes = shapes(correction).stream()
                .filter(field -> correction || !field.name().equals("reason"))
                .toList();
        EntryBody body = EntryBody.of(shapes, typed, Objects.requireNonNullElse(kept, SentFields.NOTHING), zone);
        if (!correction) {
            body.told().put("clinicId", clinic.toString());
        }
        JsonNode lines = body.told().get(OPENING);
        if (lines != null) {
            body.told().set(OPENING, hours(lines, body));
        }
        return body;
    }

    private static ArrayNode hours(JsonNode lines, EntryBody body) {
        ArrayNode spans = JsonNodeFactory.instance.arrayNode();
        for (JsonNode line : lines) {
            Matcher read = SPAN.matcher(line.asText());
            DayOfWeek day = read.matches() ? day(read.group(1)) : null;
            if (day == null) {
                body.refuse(
                        OPENING,
                        "This cannot be read: " + line.asText(),
                        "a day and two times a line, such as Monday 08:00-18:30");
            } else {
                spans.addObject()
                        .put("day", day.name())
                        .put("opens", time(read.group(2)))
                        .put("closes", time(read.group(3)));
            }
        }
        return spans;
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
