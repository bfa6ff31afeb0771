package org.culvert.web.animal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Paging;
import org.culvert.platform.RegionService;
import org.culvert.platform.sight.Sight;
import org.culvert.web.PageForms;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentForm;
import org.jspecify.annotations.Nullable;

/** Takes a form of a case once and leads on to its page; one that is not taken stands there again. */
@ApplicationScoped
class CaseAnswers {
    private final PageForms forms;
    private final CaseActs acts;
    private final CasePages pages;
    private final RegionService region;
    private final Sight sight;

    CaseAnswers(PageForms forms, CaseActs acts, CasePages pages, RegionService region, Sight sight) {
        this.forms = forms;
        this.acts = acts;
        this.pages = pages;
        this.region = region;
        this.sight = sight;
    }

    Response take(String id, CaseFormKind kind, SentForm form) {
        return take(id, kind, null, form);
    }

    /** @param of the record of the case that the form is about */
    Response take(String id, CaseFormKind kind, @Nullable String of, SentForm form) {
        UUID caseId = Paging.uuid("id", id);
        UUID target = of == null ? null : Paging.uuid("target", of);
        sight.requireSeen("case", caseId);
        SentFields typed = form.fields();
        return forms.once(
                kind.address(caseId, target),
                form.key(),
                typed,
                () -> {
                    acts.carryOut(
                            kind,
                            caseId,
                            target,
                            EntryBody.of(kind.fields(), typed, SentFields.NOTHING, region.zone()));
                    return URI.create("/cases/" + caseId + "?kept=" + kind.name());
                },
                (why, errors) -> again(why.status(), caseId, kind, target, typed, errors));
    }

    private Response again(
            int status,
            UUID caseId,
            CaseFormKind kind,
            @Nullable UUID target,
            SentFields typed,
            List<FieldError> errors) {
        if (kind == CaseFormKind.placement) {
            String member = typed.text("carerMemberId");
            return PageForms.html(
                    status, pages.carers(caseId, new CaseSent(kind.name() + "-" + member, typed, errors)));
        }
        return PageForms.html(status, pages.page(caseId, null, null, new CaseSent(kind.id(target), typed, errors)));
    }

    /** The name of a form, if it is one. */
    static @Nullable String known(@Nullable String kind) {
        return Arrays.stream(CaseFormKind.values())
                .map(CaseFormKind::name)
                .filter(name -> name.equals(kind))
                .findFirst()
                .orElse(null);
    }
}
