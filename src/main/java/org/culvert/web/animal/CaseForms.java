package org.culvert.web.animal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.sight.Viewer;
import org.jspecify.annotations.Nullable;

/** The forms of one page of a case: those that the asker may send, each with what was typed into it before. */
public final class CaseForms {
    private final UUID caseId;
    private final Viewer asker;
    private final CaseSent sent;
    private final @Nullable String asked;
    private final CaseTongue tongue;
    private final Map<String, Supplier<List<CaseFormView.Option>>> choices;
    private final Set<String> left;
    private int made;

    /**
     * @param asked the form that is to be seen at once
     * @param choices what there is to choose from, by field, where that is the page's own matter
     * @param left fields that are left out on this page
     */
    CaseForms(
            UUID caseId,
            Viewer asker,
            CaseSent sent,
            @Nullable String asked,
            CaseTongue tongue,
            Map<String, Supplier<List<CaseFormView.Option>>> choices,
            Set<String> left) {
        this.caseId = caseId;
        this.asker = asker;
        this.sent = sent;
        this.asked = asked;
        this.tongue = tongue;
        this.choices = choices;
        this.left = left;
    }

    public @Nullable CaseFormView of(String kind) {
        return make(CaseFormKind.valueOf(kind), null, Map.of());
    }

    /** About one record of the case. */
    public @Nullable CaseFormView of(String kind, UUID target) {
        return make(CaseFormKind.valueOf(kind), target, Map.of());
    }

    /** With what the page itself puts into some fields, and called after that. */
    @Nullable
    CaseFormView filled(CaseFormKind kind, UUID callIt, Map<String, String> values) {
        return make(kind, callIt, values);
    }

    private @Nullable CaseFormView make(CaseFormKind kind, @Nullable UUID target, Map<String, String> filled) {
        if (!asker.hasAny(kind.roles().toArray(String[]::new))) {
            return null;
        }
        String id = kind.id(target);
        CaseSent typed = sent.of(id);
        List<CaseFormView.Field> fields = new ArrayList<>();
        List<CaseFormView.Field> more = new ArrayList<>();
        for (CaseField field : kind.fields()) {
            if (!left.contains(field.path())) {
                (field.more() ? more : fields).add(field(kind, id, field, typed, filled));
            }
        }
        boolean moreOpen = more.stream()
                .anyMatch(one -> one.wrong() != null || !one.value().isBlank());
        List<FieldError> others = typed.errors().stream()
                .filter(error -> kind.fields().stream()
                        .noneMatch(field -> field.path().equals(error.field()) && !left.contains(field.path())))
                .toList();
        made++;
        return new CaseFormView(
                "form-" + id,
                String.valueOf(made),
                kind.address(caseId, filled.isEmpty() ? target : null),
                tongue.words().form(kind.name()),
                tongue.words().send(kind.name()),
                blankIsNull(tongue.words().caution(kind.name())),
                typed.isRefused() || id.equals(asked) || kind.name().equals(asked),
                fields,
                more,
                moreOpen,
                others);
    }

    private CaseFormView.Field field(
            CaseFormKind kind, String id, CaseField field, CaseSent typed, Map<String, String> filled) {
        boolean ofAFinding = kind == CaseFormKind.finding || field.path().startsWith("findings");
        String name = field.name();
        String label = ofAFinding && name.equals("kind")
                ? "findingKind"
                : kind == CaseFormKind.telling && name.equals("by") ? "rangBy" : name;
        return field(tongue, id, field, label, typed, filled, options(field));
    }

    static CaseFormView.Field field(
            CaseTongue tongue,
            String id,
            CaseField field,
            String label,
            CaseSent typed,
            Map<String, String> filled,
            List<CaseFormView.Option> options) {
        return new CaseFormView.Field(
                field.path(),
                id + "-" + field.path().replaceAll("[^A-Za-z0-9]", "-"),
                tongue.words().label(label),
                tongue.words().hint(label),
                field.type().name(),
                field.needed(),
                typed.typed().getOrDefault(field.path(), filled.getOrDefault(field.path(), "")),
                options,
                typed.errors().stream()
                        .filter(error -> error.field().equals(field.path()))
                        .findFirst()
                        .orElse(null));
    }

    private List<CaseFormView.Option> options(CaseField field) {
        if (field.isOfThePage()) {
            Supplier<List<CaseFormView.Option>> own = choices.get(field.name());
            return own == null ? List.of() : own.get();
        }
        return ofWords(tongue, field.values());
    }

    static List<CaseFormView.Option> ofWords(CaseTongue tongue, List<String> values) {
        return values.stream()
                .map(value -> new CaseFormView.Option(value, tongue.words().option(value)))
                .toList();
    }

    private static @Nullable String blankIsNull(String text) {
        return text.isBlank() ? null : text;
    }
}
