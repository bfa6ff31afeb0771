package org.culvert.web.animal;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.culvert.platform.sight.Viewer;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.FieldShape;
import org.culvert.web.forms.SentFields;
import org.jspecify.annotations.Nullable;

/** The forms of one page of a case: those that the asker may send, each with what was typed into it before. */
public final class CaseForms {
    private final UUID caseId;
    private final Viewer asker;
    private final CaseSent sent;
    private final @Nullable String asked;
    private final CaseTongue tongue;
    private final Map<String, Supplier<List<Option>>> choices;
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
            Map<String, Supplier<List<Option>>> choices,
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
        var form = new EntryForm(id, typed.isRefused() ? typed.typed() : SentFields.of(filled), typed.errors())
                .rarely(tongue.words().more());
        for (FieldShape field : kind.fields()) {
            if (!left.contains(field.name())) {
                add(form, tongue, field, label(kind, field), options(field));
            }
        }
        made++;
        return new CaseFormView(
                form,
                String.valueOf(made),
                kind.address(caseId, filled.isEmpty() ? target : null),
                tongue.words().form(kind.name()),
                tongue.words().send(kind.name()),
                blankIsNull(tongue.words().caution(kind.name())),
                typed.isRefused() || id.equals(asked) || kind.name().equals(asked));
    }

    private static String label(CaseFormKind kind, FieldShape field) {
        boolean ofAFinding = kind == CaseFormKind.finding || field.name().startsWith("findings");
        return ofAFinding && field.last().equals("kind")
                ? "findingKind"
                : kind == CaseFormKind.telling && field.last().equals("by") ? "rangBy" : field.last();
    }

    static void add(EntryForm form, CaseTongue tongue, FieldShape field, String label, List<Option> options) {
        form.add(field, tongue.words().label(label), tongue.words().hint(label), options);
    }

    private List<Option> options(FieldShape field) {
        if (field.isOfThePage()) {
            Supplier<List<Option>> own = choices.get(field.last());
            return own == null ? List.of() : own.get();
        }
        return options(tongue, field);
    }

    /** Of what can always be chosen. */
    static List<Option> options(CaseTongue tongue, FieldShape field) {
        return field.kind() == FieldShape.Kind.truth
                ? EntryForm.truths(tongue.choice("yes"), tongue.choice("no"))
                : field.values().stream()
                        .map(value -> new Option(value, tongue.choice(value)))
                        .toList();
    }

    private static @Nullable String blankIsNull(String text) {
        return text.isBlank() ? null : text;
    }
}
