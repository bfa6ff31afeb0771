package org.culvert.web;

import jakarta.ws.rs.QueryParam;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.release.AreaService;
import org.culvert.release.ReleaseAreaFeature;
import org.culvert.release.rules.Rule;
import org.jspecify.annotations.Nullable;

/** The form that asks where an animal may go back, as texts, so that what was typed stands there again. */
public class AreaForm {
    private static final double MOST_METRES = 200_000;

    @QueryParam("caseId")
    @Nullable
    String caseId;

    @QueryParam("jurisdiction")
    @Nullable
    String jurisdiction;

    @QueryParam("withinMetres")
    @Nullable
    String withinMetres;

    /** The form as it stands on the page. */
    List<FormField> fields(List<FieldError> wrong) {
        var make = new FormField.Maker("", wrong);
        return List.of(
                make.line("caseId", "Case", "its number or its identifier", true, caseId),
                make.line(
                        "jurisdiction",
                        "Whose rules",
                        "an ISO 3166 code such as AU-QLD; empty: those of the known site that is nearest",
                        false,
                        jurisdiction),
                make.number(
                        "withinMetres",
                        "Within, metres",
                        "empty: what the rules say, or how far its kind moves",
                        withinMetres));
    }

    /** Whether anything was asked. */
    boolean isAsked() {
        return caseId != null || jurisdiction != null || withinMetres != null;
    }

    /**
     * The answer.
     *
     * @throws InvalidException naming every field that cannot be read, or that the service refuses
     */
    ReleaseAreaFeature ask(AreaService areas, CaseService cases) {
        List<FieldError> errors = new ArrayList<>();
        String whose = Typed.given(jurisdiction);
        if (whose != null && !whose.matches(Rule.ISO_3166)) {
            errors.add(new FieldError(
                    "jurisdiction",
                    "This is no code of a country or of a part of one.",
                    "an ISO 3166 code such as AU-QLD",
                    null));
        }
        Double metres = Typed.read("withinMetres", withinMetres, Double::valueOf, "metres, such as 2000", errors);
        if (metres != null && !(metres > 0 && metres <= MOST_METRES)) {
            errors.add(
                    new FieldError("withinMetres", "This is out of range.", "more than 0 m, at most 200,000 m", null));
        }
        UUID id = caseId(cases, errors);
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
        return areas.find(Objects.requireNonNull(id), whose, metres);
    }

    private @Nullable UUID caseId(CaseService cases, List<FieldError> errors) {
        String given = Typed.given(caseId);
        if (given == null) {
            errors.add(new FieldError("caseId", "It is not said of which case.", "the number of a case", null));
            return null;
        }
        if (!given.matches("[0-9]+")) {
            return Typed.read("caseId", given, UUID::fromString, "the number of a case, or its identifier", errors);
        }
        Long number = Typed.read("caseId", given, Long::valueOf, "the number of a case", errors);
        UUID found = number == null ? null : cases.findByNumber(number).orElse(null);
        if (number != null && found == null) {
            errors.add(new FieldError(
                    "caseId",
                    "There is no case of that number, or it is not one of yours.",
                    "the number of a case",
                    null));
        }
        return found;
    }
}
