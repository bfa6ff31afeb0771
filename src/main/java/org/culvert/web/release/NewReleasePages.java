package org.culvert.web.release;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Paging;
import org.culvert.release.AssessmentService;
import org.culvert.release.AssessmentService.AssessmentView;
import org.culvert.release.ReleaseEntries.Light;
import org.culvert.release.ReleaseEntries.Manner;
import org.culvert.release.ReleaseEntries.ReleaseEntry;
import org.culvert.release.ReleaseService;
import org.culvert.release.ReleaseView;
import org.culvert.release.rules.Finding;
import org.culvert.release.rules.Lifting;
import org.culvert.release.rules.Verdict;
import org.culvert.web.HolderNames;
import org.culvert.web.Languages;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentFile;
import org.culvert.web.words.FormsWords;
import org.culvert.web.words.ReleaseWords;
import org.jspecify.annotations.Nullable;

/** Lays out the form that records a release, and carries it out. */
@ApplicationScoped
class NewReleasePages {
    private static final int LOOKED_THROUGH = 60;
    private static final int MOST_ANIMALS = 50;

    private final ReleaseService releases;
    private final AssessmentService assessments;
    private final PlanPages plans;
    private final CaseService cases;
    private final CaseNames names;
    private final HolderNames holders;
    private final FormBodies bodies;
    private final Languages languages;

    NewReleasePages(
            ReleaseService releases,
            AssessmentService assessments,
            PlanPages plans,
            CaseService cases,
            CaseNames names,
            HolderNames holders,
            FormBodies bodies,
            Languages languages) {
        this.releases = releases;
        this.assessments = assessments;
        this.plans = plans;
        this.cases = cases;
        this.names = names;
        this.holders = holders;
        this.bodies = bodies;
        this.languages = languages;
    }

    private List<AssessmentView> read(String field, List<String> ids) {
        if (ids.size() > MOST_ANIMALS) {
            throw InvalidException.of(field, "These are too many.", "at most " + MOST_ANIMALS);
        }
        return new LinkedHashSet<>(ids)
                .stream()
                        .map(id -> assessments.getAssessment(Paging.uuid(field, id)))
                        .toList();
    }

    NewReleasePage page(List<String> assessmentIds, PlanForms.Again again) {
        ReleaseTongue tongue = plans.tongue();
        List<AssessmentView> chosen = read("assessmentIds", assessmentIds);
        Map<UUID, String> animals =
                names.of(chosen.stream().map(AssessmentView::caseId).collect(Collectors.toSet()));
        Map<UUID, String> places = new HashMap<>();
        List<NewReleasePage.Chosen> rows = chosen.stream()
                .map(one -> {
                    PlanPage.AssessmentRow row = plans.row(one, places, tongue);
                    return new NewReleasePage.Chosen(
                            one.id(),
                            one.caseId(),
                            animals.getOrDefault(one.caseId(), ""),
                            row.title(),
                            row.verdictWords(),
                            row.against(),
                            row.advice());
                })
                .toList();
        return new NewReleasePage(
                rows,
                chosen.isEmpty() ? "" : plans.place(chosen.get(0).siteId(), places, tongue),
                form(again.of("release", NewReleasePages::beside), chosen, alsoThere(chosen)));
    }

    /** The latest assessments of other animals at the same place, whose cases go on. */
    private List<AssessmentView> alsoThere(List<AssessmentView> chosen) {
        if (chosen.isEmpty()) {
            return List.of();
        }
        AssessmentView first = chosen.get(0);
        Set<UUID> taken = chosen.stream().map(AssessmentView::caseId).collect(Collectors.toCollection(HashSet::new));
        Map<UUID, AssessmentView> latest = new LinkedHashMap<>();
        for (AssessmentView one :
                assessments.listAssessments(null, LOOKED_THROUGH, null).items()) {
            if (isSamePlace(one, first) && !taken.contains(one.caseId())) {
                latest.putIfAbsent(one.caseId(), one);
            }
        }
        Map<UUID, CaseView> told = cases.casesById(latest.keySet());
        return latest.values().stream()
                .filter(one -> {
                    CaseView of = told.get(one.caseId());
                    return of != null && of.fate() == null;
                })
                .toList();
    }

    private static boolean isSamePlace(AssessmentView one, AssessmentView other) {
        return Objects.equals(one.siteId(), other.siteId())
                && one.decimalLatitude() == other.decimalLatitude()
                && one.decimalLongitude() == other.decimalLongitude();
    }

    private EntryForm form(EntryForm form, List<AssessmentView> chosen, List<AssessmentView> others) {
        ReleaseWords words = languages.words(ReleaseWords.class);
        FormsWords usual = languages.words(FormsWords.class);
        Map<UUID, String> animals =
                names.of(others.stream().map(AssessmentView::caseId).collect(Collectors.toSet()));
        List<Finding> findings =
                chosen.stream().flatMap(one -> one.tests().stream()).toList();
        if (!others.isEmpty()) {
            form.ticks(
                    "withAssessmentIds",
                    words.withIt(),
                    words.withItHint(),
                    false,
                    others.stream()
                            .map(one -> new Option(one.id().toString(), animals.getOrDefault(one.caseId(), "")))
                            .toList());
        }
        List<Option> warnings = options(findings.stream()
                .filter(one -> one.key().equals(Finding.HOTSPOTS_NEAR) && one.verdict() == Verdict.fail)
                .toList());
        if (!warnings.isEmpty()) {
            form.ticks("warningsRead", words.warningsRead(), "", true, warnings);
        }
        form.text("approvedBy", words.approvedBy(), words.approvedByHint(), true)
                .text("releasedBy", words.releasedBy(), words.releasedByHint(), false)
                .moment("at", words.letGoAt(), "")
                .text("weather", words.weatherSeen(), "", false)
                .choice("light", words.lightSeen(), false, Light.values(), words::lightOf)
                .choice("manner", words.manner(), false, Manner.values(), words::mannerOf)
                .day("supportFeedingUntil", words.feedingUntil(), "", false)
                .truth("raisedTogether", words.raisedTogether(), false, usual.yes(), usual.no())
                .lines("othersPresent", words.othersPresent(), "", false);
        List<Option> own = options(standing(findings, Lifting.byOverride));
        if (!own.isEmpty()) {
            form.choice("overrideKey", words.overrideKey(), words.override(), false, own)
                    .text("overrideReason", words.overrideReason(), "", false)
                    .text("overrideAgreed", words.overrideAgreed(), "", false);
        }
        List<Option> permitted = options(standing(findings, Lifting.byPermit));
        if (!permitted.isEmpty()) {
            form.choice("permitKey", words.permitKey(), words.permit(), false, permitted)
                    .text("permitNumber", words.permitNumber(), "", false)
                    .text("permitIssuedBy", words.permitIssuedBy(), "", false)
                    .file("permitFile", words.permitFile(), "", false);
        }
        return form;
    }

    private static List<Finding> standing(List<Finding> findings, Lifting lifting) {
        return findings.stream()
                .filter(one -> one.stands() && one.lifting() == lifting)
                .toList();
    }

    private static List<Option> options(List<Finding> findings) {
        Map<String, Option> byKey = new LinkedHashMap<>();
        findings.forEach(one -> byKey.putIfAbsent(one.key(), new Option(one.key(), shortened(one.words()))));
        return List.copyOf(byKey.values());
    }

    private static String shortened(String words) {
        return words.length() <= 100 ? words : words.substring(0, 98).strip() + " …";
    }

    /**
     * Records it.
     *
     * @param permit the document, where one was chosen
     */
    ReleaseView record(SentFields sent, @Nullable SentFile permit) {
        List<String> ids = Stream.concat(sent.texts("assessmentIds").stream(), sent.texts("withAssessmentIds").stream())
                .filter(id -> !id.isBlank())
                .distinct()
                .toList();
        List<AssessmentView> chosen = read("assessmentIds", ids);
        EntryBody body = form(
                        PlanForms.Again.read("release", sent).of("release", NewReleasePages::beside), chosen, List.of())
                .read(plans.tongue().zone());
        body.take("withAssessmentIds");
        ArrayNode caseIds = body.told().putArray("caseIds");
        ArrayNode assessmentIds = body.told().putArray("assessmentIds");
        chosen.forEach(one -> {
            caseIds.add(one.caseId().toString());
            assessmentIds.add(one.id().toString());
        });
        tellMember(body, "releasedBy", body.told(), "releasedByMemberId");
        tellOverride(body);
        tellPermit(body, permit);
        return releases.release(body.read(bodies, ReleaseEntry.class));
    }

    private void tellMember(EntryBody body, String field, ObjectNode within, String as) {
        String callSign = body.take(field);
        UUID member = callSign == null ? null : body.tried(() -> holders.memberCalled(field, callSign));
        if (member != null) {
            within.put(as, member.toString());
        }
    }

    private void tellOverride(EntryBody body) {
        String key = body.take("overrideKey");
        String reason = body.take("overrideReason");
        if (key == null) {
            body.take("overrideAgreed");
            return;
        }
        ObjectNode one = body.told().putArray("overrides").addObject().put("key", key);
        one.put("reason", Objects.requireNonNullElse(reason, ""));
        tellMember(body, "overrideAgreed", one, "agreedByMemberId");
    }

    private static void tellPermit(EntryBody body, @Nullable SentFile permit) {
        String key = body.take("permitKey");
        String number = body.take("permitNumber");
        String issuedBy = body.take("permitIssuedBy");
        if (key == null) {
            return;
        }
        ObjectNode one = body.told().putArray("permits").addObject().put("key", key);
        one.put("number", Objects.requireNonNullElse(number, ""));
        one.put("issuedBy", Objects.requireNonNullElse(issuedBy, ""));
        byte[] document = body.tried(() -> SentFile.content("permitFile", permit, SentFile.Taken.DOCUMENT));
        if (document != null && permit != null) {
            one.put("documentName", permit.shortName());
            one.put("documentMediaType", permit.mediaType());
            one.put("document", document);
        }
    }

    /** What the body says of a part is said beside the field of the form that it came from. */
    private static String beside(String field) {
        if (field.startsWith("overrides")) {
            return field.endsWith("reason")
                    ? "overrideReason"
                    : field.endsWith("Id") ? "overrideAgreed" : "overrideKey";
        }
        if (field.startsWith("permits")) {
            return field.endsWith("number")
                    ? "permitNumber"
                    : field.endsWith("issuedBy")
                            ? "permitIssuedBy"
                            : field.contains("ocument") ? "permitFile" : "permitKey";
        }
        return field.equals("releasedByMemberId") ? "releasedBy" : field;
    }
}
