package org.culvert.web.forms;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.ledger.Change;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.FieldShape.Kind;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What was typed becomes the body that the API takes, whether a form is told by hand or comes of the body's class. */
class EntryBodyTest {
    /** Eleven hours ahead of UTC in January (tz database, Australia/Sydney). */
    private static final ZoneId SYDNEY = ZoneId.of("Australia/Sydney");

    private enum Side {
        left,
        right
    }

    private record Box(@NotNull Side side, @Nullable Integer eggs) {}

    private record Row(String day, int count, boolean wet) {}

    private record Body(
            @NotBlank @Size(max = 200) String name,
            @Nullable @Size(max = 4000) String words,
            @Nullable Double grams,
            @Nullable Boolean dry,
            @Nullable LocalDate from,
            @Nullable MonthDay opens,
            @Nullable Instant at,
            @Nullable Box box,
            @Nullable List<Side> sides,
            @Nullable List<String> others,
            @Nullable List<Row> rows,
            @Nullable Map<String, Integer> places,
            Change<String> reason) {}

    private static final List<FieldShape> SHAPES = BodyShapes.of(Body.class, Set.of());

    private static EntryBody body(List<FieldShape> shapes, Map<String, String> typed) {
        return EntryBody.of(shapes, SentFields.of(typed), SentFields.NOTHING, SYDNEY);
    }

    private static void assertSame(EntryBody body, String json) throws JsonProcessingException {
        assertThat(body.wrong()).isEmpty();
        assertThat(new ObjectMapper().readTree(body.told().toString())).isEqualTo(new ObjectMapper().readTree(json));
    }

    @Test
    void eachKindIsReadAsTheApiTakesIt() throws JsonProcessingException {
        assertSame(
                body(
                        SHAPES,
                        Map.ofEntries(
                                Map.entry("name", "  box 3 "),
                                Map.entry("words", "one\r\ntwo"),
                                Map.entry("grams", "412,5"),
                                Map.entry("dry", "false"),
                                Map.entry("from", "2026-07-01"),
                                Map.entry("opens", "09-01"),
                                Map.entry("at", "2026-01-04T15:10"),
                                Map.entry("box.side", "left"),
                                Map.entry("box.eggs", "4"),
                                Map.entry("sides", "right"),
                                Map.entry("others", "a\n\n b "),
                                Map.entry("rows", "Monday | 3 | true\nTuesday"),
                                Map.entry("places", "turtles: 2\nsnakes: 0"),
                                Map.entry("reason", "counted again"),
                                Map.entry("no field of it", "left out"))),
                """
                {"name":"box 3","words":"one\\ntwo","grams":412.5,"dry":false,"from":"2026-07-01","opens":"--09-01",
                 "at":"2026-01-04T04:10:00Z","box":{"side":"left","eggs":4},"sides":["right"],"others":["a","b"],
                 "rows":[{"day":"Monday","count":3,"wet":true},{"day":"Tuesday"}],"places":{"turtles":2,"snakes":0},
                 "reason":"counted again"}
                """);
    }

    @Test
    void whatIsLeftEmptyIsLeftOut() throws JsonProcessingException {
        assertSame(body(SHAPES, Map.of("name", "box 3", "words", " ")), "{\"name\":\"box 3\",\"sides\":[]}");
    }

    @Test
    void everythingThatCannotBeReadIsSaidAtOnceAsItWasTyped() {
        EntryBody body = body(
                SHAPES,
                Map.of(
                        "grams", "heavy",
                        "dry", "perhaps",
                        "from", "2026-02-30",
                        "opens", "13-01",
                        "at", "+99999-01-01T00:00",
                        "box.side", "middle",
                        "places", "turtles",
                        "rows", "1|2|3|4"));
        assertThat(body.told().toString()).isEqualTo("{\"sides\":[]}");
        assertThat(body.wrong())
                .extracting(FieldError::field)
                .containsExactlyInAnyOrder("name", "grams", "dry", "from", "opens", "at", "box.side", "places", "rows");
        assertThat(body.wrong())
                .extracting(error -> error.field() + ": " + error.detail() + " " + error.wanted())
                .contains(
                        "name: This is missing. some words",
                        "grams: This cannot be read: heavy. a number",
                        "from: This cannot be read: 2026-02-30. a day such as 2026-07-01",
                        "box.side: This cannot be read: middle. one of left, right");
    }

    @Test
    void onlyWhatIsTypedOtherwiseIsAChange() throws JsonProcessingException {
        FieldShape words = FieldShape.of(Kind.lines, "words").isChange(true);
        FieldShape phone = FieldShape.of(Kind.text, "phone").isChange(true);
        FieldShape name = FieldShape.of(Kind.text, "name").isChange(true);
        var kept = SentFields.of(Map.of("words", "a\nb", "phone", "7", "name", "Clinic"));
        assertSame(
                EntryBody.of(
                        List.of(words, phone, name),
                        SentFields.of(Map.of("words", "a\r\nb ", "phone", "", "name", "Hospital")),
                        kept,
                        SYDNEY),
                "{\"phone\":null,\"name\":\"Hospital\"}");
    }

    @Test
    void aThingIsShownAsItWouldBeTyped() throws JsonProcessingException {
        String json = """
                {"name":"box 3","words":"one\\ntwo","grams":412.5,"opens":"--09-01","at":"2026-01-04T04:10:00Z",
                 "box":{"side":"left","eggs":4},"sides":["left","right"],"others":["a","b"],
                 "rows":[{"day":"Monday","count":3,"wet":true}],"places":{"turtles":2}}
                """;
        SentFields typed = EntryBody.typed(SHAPES, new ObjectMapper().readTree(json), SYDNEY);
        assertThat(typed.text("at")).isEqualTo("2026-01-04T15:10");
        assertThat(typed.text("rows")).isEqualTo("Monday | 3 | true");
        assertThat(typed.texts("sides")).containsExactly("left", "right");
        assertSame(EntryBody.of(SHAPES, typed, SentFields.NOTHING, SYDNEY), json);
    }

    @Test
    void aFormToldByHandMakesTheSameAsOneOfTheBody() {
        var typed = SentFields.of(Map.of("name", "box 3", "box.side", "up", "others", "a\nb"));
        EntryForm byHand = new EntryForm("f", typed, List.of())
                .text("name", "Name", "", true)
                .choice("box.side", "Side", false, Side.values(), side -> side)
                .list("others", "Others", "", false);
        List<FieldShape> ofClass = SHAPES.stream()
                .filter(shape -> Set.of("name", "box.side", "others").contains(shape.name()))
                .toList();
        assertThat(byHand.read(SYDNEY)).isEqualTo(EntryBody.of(ofClass, typed, SentFields.NOTHING, SYDNEY));
    }

    @Test
    void whatIsWrongStandsBesideItsFieldOrWithTheWhole() {
        var typed = SentFields.of(Map.of("findings[0].side", "left", "note", "x"));
        var form = new EntryForm(
                        "visit",
                        typed,
                        List.of(
                                new FieldError("findings.0.side", "It has no sides.", "none", null),
                                new FieldError("act", "It has ended.", "another", null)))
                .add(FieldShape.of(Kind.text, "note"), "Note", "", List.of(new Option("dry", "")))
                .add(FieldShape.choice("findings[0].side", Side.values()).isRare(), "Side", "", List.of());
        assertThat(form.rare().get(0).id()).isEqualTo("visit-findings-0--side");
        assertThat(form.rare().get(0).isWrong()).isTrue();
        assertThat(form.isRareOpen()).isTrue();
        assertThat(form.fields()).hasSize(1);
        assertThat(form.astray()).extracting(FieldError::field).containsExactly("act");
        assertThat(form.wrong()).extracting(EntryForm.Wrong::id).containsExactly("visit-findings-0--side", "");
    }
}
