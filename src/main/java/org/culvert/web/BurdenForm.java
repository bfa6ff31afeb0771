package org.culvert.web;

import jakarta.ws.rs.QueryParam;
import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.works.BurdenService;
import org.culvert.hotspot.works.BurdenView;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/** The form that asks which roads carry more than roads like them, as texts, so that what was typed stands there again. */
public class BurdenForm {
    @QueryParam("asked")
    @Nullable
    String asked;

    @QueryParam("yearFrom")
    @Nullable
    String yearFrom;

    @QueryParam("yearTo")
    @Nullable
    String yearTo;

    @QueryParam("taxonGroup")
    @Nullable
    String taxonGroup;

    @QueryParam("months")
    @Nullable
    List<String> months;

    @QueryParam("windowMetres")
    @Nullable
    String windowMetres;

    @QueryParam("council")
    @Nullable
    String council;

    /** What was typed into a field, or nothing. */
    public String typed(String field) {
        String text = switch (field) {
            case "yearFrom" -> yearFrom;
            case "yearTo" -> yearTo;
            case "taxonGroup" -> taxonGroup;
            case "windowMetres" -> windowMetres;
            case "council" -> council;
            default -> throw new IllegalArgumentException("there is no field " + field);
        };
        return text == null ? "" : text;
    }

    /** The months to tick, with their names. */
    public List<RunForm.MonthBox> monthBoxes() {
        return Typed.monthBoxes(months);
    }

    /** Whether anything was asked; the form with nothing typed asks for what is usual. */
    boolean isAsked() {
        return Typed.given(asked) != null
                || Typed.given(yearFrom) != null
                || Typed.given(yearTo) != null
                || Typed.given(taxonGroup) != null
                || Typed.given(windowMetres) != null
                || Typed.given(council) != null
                || (months != null && !months.isEmpty());
    }

    /**
     * The answer.
     *
     * @throws InvalidException naming every field that cannot be read, or that the service refuses
     */
    BurdenView ask(BurdenService service) {
        List<FieldError> errors = new ArrayList<>();
        Integer first = Typed.read("yearFrom", yearFrom, Integer::valueOf, "a year such as 2021", errors);
        Integer last = Typed.read("yearTo", yearTo, Integer::valueOf, "a year such as 2025", errors);
        Double window = Typed.read("windowMetres", windowMetres, Double::valueOf, "metres, such as 1000", errors);
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
        return service.burden(
                first,
                last,
                Typed.given(taxonGroup),
                months == null || months.isEmpty() ? null : String.join(",", months),
                null,
                window,
                null,
                null,
                null,
                Typed.given(council));
    }
}
