package org.culvert.web;

import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.when.SeasonQuestion;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Paging;
import org.jspecify.annotations.Nullable;

/** The form that asks when collisions happen, as texts, so that what was typed stands there again. */
public class SeasonsForm {
    @QueryParam("asked")
    @Nullable
    String asked;

    @QueryParam("periodFrom")
    @Nullable
    String periodFrom;

    @QueryParam("periodTo")
    @Nullable
    String periodTo;

    @QueryParam("taxonGroup")
    @Nullable
    String taxonGroup;

    @QueryParam("comparedWith")
    @Nullable
    String comparedWith;

    @QueryParam("owner")
    @Nullable
    String owner;

    /** What was typed into a field, or nothing. */
    public String typed(String field) {
        String text = switch (field) {
            case "periodFrom" -> periodFrom;
            case "periodTo" -> periodTo;
            case "taxonGroup" -> taxonGroup;
            case "comparedWith" -> comparedWith;
            case "owner" -> owner;
            default -> throw new IllegalArgumentException("there is no field " + field);
        };
        return text == null ? "" : text;
    }

    /** Whether anything was asked; the form with nothing typed asks for what is usual. */
    boolean isAsked() {
        return Typed.given(asked) != null
                || Typed.given(periodFrom) != null
                || Typed.given(periodTo) != null
                || Typed.given(taxonGroup) != null
                || Typed.given(comparedWith) != null
                || Typed.given(owner) != null;
    }

    /**
     * The question.
     *
     * @throws InvalidException naming every field that cannot be read
     */
    SeasonQuestion question() {
        List<FieldError> errors = new ArrayList<>();
        LocalDate from = day("periodFrom", periodFrom, errors);
        LocalDate to = day("periodTo", periodTo, errors);
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
        return new SeasonQuestion(from, to, Typed.given(taxonGroup), Typed.given(comparedWith), Typed.given(owner));
    }

    private static @Nullable LocalDate day(String field, @Nullable String text, List<FieldError> errors) {
        String given = Typed.given(text);
        if (given == null) {
            return null;
        }
        try {
            return Paging.day(field, given);
        } catch (InvalidException e) {
            errors.addAll(e.errors());
            return null;
        }
    }
}
