package org.culvert.web.release;

import jakarta.ws.rs.QueryParam;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.release.rules.Rule;
import org.culvert.web.Typed;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.SentFields;
import org.culvert.web.words.ReleaseWords;
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

    /** As it is asked again. */
    static AreaForm of(String caseId, SentFields sent) {
        var form = new AreaForm();
        form.caseId = caseId;
        form.jurisdiction = sent.given("jurisdiction");
        form.withinMetres = sent.given("withinMetres");
        return form;
    }

    /**
     * The form as it stands on the page.
     *
     * @param number of the case, by which people know it; null where there is none
     */
    EntryForm form(ReleaseWords words, @Nullable Long number, List<FieldError> wrong) {
        Map<String, List<String>> typed = new HashMap<>();
        put(typed, "caseId", number == null ? caseId : number.toString());
        put(typed, "jurisdiction", jurisdiction);
        put(typed, "withinMetres", withinMetres);
        return new EntryForm("ask", new SentFields(typed), wrong)
                .text("caseId", words.askCase(), words.askCaseHint(), true)
                .text("jurisdiction", words.askWhose(), words.askWhoseHint(), false)
                .number("withinMetres", words.askWithin(), words.askWithinHint(), false);
    }

    private static void put(Map<String, List<String>> typed, String name, @Nullable String text) {
        if (text != null) {
            typed.put(name, List.of(text));
        }
    }

    /** What stands behind its address, so that the same is asked again. */
    String address() {
        StringBuilder address = new StringBuilder("/release-area?caseId=");
        address.append(encoded(caseId == null ? "" : caseId));
        if (Typed.given(jurisdiction) != null) {
            address.append("&jurisdiction=").append(encoded(String.valueOf(jurisdiction)));
        }
        if (Typed.given(withinMetres) != null) {
            address.append("&withinMetres=").append(encoded(String.valueOf(withinMetres)));
        }
        return address.toString();
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    /** Whether anything was asked. */
    boolean isAsked() {
        return caseId != null || jurisdiction != null || withinMetres != null;
    }

    /** What is asked, read. */
    record Asked(
            UUID caseId,
            @Nullable String jurisdiction,
            @Nullable Double withinMetres) {}

    /**
     * Reads what is asked.
     *
     * @throws InvalidException naming every field that cannot be read
     */
    Asked read(CaseService cases) {
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
        return new Asked(Objects.requireNonNull(id), whose, metres);
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
