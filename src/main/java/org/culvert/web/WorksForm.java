package org.culvert.web;

import jakarta.ws.rs.FormParam;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.culvert.hotspot.works.WorksKind;
import org.culvert.hotspot.works.WorksService.WorksEntry;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/** The form that enters works, as texts, so that what was typed stands there again. */
public class WorksForm {
    private static final int MOST_WORDS = 2000;
    private static final int MOST_ROAD = 300;

    @FormParam("kind")
    @Nullable
    String kind;

    @FormParam("words")
    @Nullable
    String words;

    @FormParam("road")
    @Nullable
    String road;

    @FormParam("fromChainageMetres")
    @Nullable
    String fromChainageMetres;

    @FormParam("toChainageMetres")
    @Nullable
    String toChainageMetres;

    @FormParam("endsMetres")
    @Nullable
    String endsMetres;

    @FormParam("builtFrom")
    @Nullable
    String builtFrom;

    @FormParam("builtUntil")
    @Nullable
    String builtUntil;

    @FormParam("endedOn")
    @Nullable
    String endedOn;

    @FormParam("effortChange")
    @Nullable
    String effortChange;

    @FormParam("publicityChange")
    @Nullable
    String publicityChange;

    @FormParam("key")
    @Nullable
    String key;

    private final List<FieldError> errors = new ArrayList<>();

    /** What was typed into a field, or nothing. */
    public String typed(String field) {
        String text = switch (field) {
            case "kind" -> kind;
            case "words" -> words;
            case "road" -> road;
            case "fromChainageMetres" -> fromChainageMetres;
            case "toChainageMetres" -> toChainageMetres;
            case "endsMetres" -> endsMetres;
            case "builtFrom" -> builtFrom;
            case "builtUntil" -> builtUntil;
            case "endedOn" -> endedOn;
            case "effortChange" -> effortChange;
            case "publicityChange" -> publicityChange;
            default -> throw new IllegalArgumentException("there is no field " + field);
        };
        return text == null ? "" : text;
    }

    /**
     * The works that are entered.
     *
     * @throws InvalidException naming every field that cannot be read
     */
    WorksEntry entry() {
        errors.clear();
        WorksKind of = Typed.read("kind", kind, WorksKind::valueOf, "one of the kinds that are listed", errors);
        String what = text("words", words, MOST_WORDS);
        String where = text("road", road, MOST_ROAD);
        Double from = number("fromChainageMetres", fromChainageMetres, -1e6, 1e7);
        Double to = number("toChainageMetres", toChainageMetres, -1e6, 1e7);
        Double ends = number("endsMetres", endsMetres, 1, 10_000);
        LocalDate begun = Typed.read("builtFrom", builtFrom, LocalDate::parse, "a day such as 2024-07-01", errors);
        LocalDate finished = Typed.read("builtUntil", builtUntil, LocalDate::parse, "a day such as 2024-07-01", errors);
        LocalDate ended = Typed.read("endedOn", endedOn, LocalDate::parse, "a day such as 2024-07-01", errors);
        needed("kind", of);
        needed("words", what);
        needed("road", where);
        needed("fromChainageMetres", from);
        needed("toChainageMetres", to);
        needed("endsMetres", ends);
        needed("builtFrom", begun);
        String effort = text("effortChange", effortChange, MOST_WORDS);
        String publicity = text("publicityChange", publicityChange, MOST_WORDS);
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
        return new WorksEntry(
                Objects.requireNonNull(of),
                Objects.requireNonNull(what),
                Objects.requireNonNull(where),
                Objects.requireNonNull(from),
                Objects.requireNonNull(to),
                Objects.requireNonNull(ends),
                Objects.requireNonNull(begun),
                finished,
                ended,
                effort,
                publicity);
    }

    private @Nullable String text(String field, @Nullable String text, int most) {
        String given = Typed.given(text);
        if (given != null && given.length() > most) {
            errors.add(new FieldError(field, "This is too long.", "at most " + most + " characters", null));
        }
        return given;
    }

    private @Nullable Double number(String field, @Nullable String text, double least, double most) {
        Double value = Typed.read(field, text, Double::valueOf, "metres", errors);
        if (value != null && !(value >= least && value <= most)) {
            errors.add(new FieldError(field, "This is out of range.", "metres", null));
        }
        return value;
    }

    private void needed(String field, @Nullable Object value) {
        if (value == null && errors.stream().noneMatch(error -> error.field().equals(field))) {
            errors.add(new FieldError(field, "This is needed.", "a value", null));
        }
    }
}
