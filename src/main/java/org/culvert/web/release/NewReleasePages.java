package org.culvert.web.release;

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
import org.culvert.platform.InvalidException.FieldError;
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
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.SentFields;
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
                form(again.of("release"), chosen, alsoThere(chosen)));
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
                .text("releasedBy", usual.callSign(), words.releasedByHint(), false)
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
        ObjectNode body = form(new EntryForm("release", sent, List.of()), chosen, List.of())
                .body(plans.tongue().zone());
        body.remove("withAssessmentIds");
        var caseIds = body.putArray("caseIds");
        var assessmentIds = body.putArray("assessmentIds");
        chosen.forEach(one -> {
            caseIds.add(one.caseId().toString());
            assessmentIds.add(one.id().toString());
        });
        putMember(body, "releasedBy", "releasedByMemberId", sent);
        override(body, sent);
        permit(body, sent, permit);
        try {
            return releases.release(bodies.read(body, ReleaseEntry.class));
        } catch (InvalidException e) {
            throw new InvalidException(
                    e.errors().stream().map(NewReleasePages::besideField).toList());
        }
    }

    private void putMember(ObjectNode body, String field, String as, SentFields sent) {
        body.remove(field);
        String callSign = sent.given(field);
        if (callSign != null) {
            body.put(as, holders.memberCalled(field, callSign).toString());
        }
    }

    private void override(ObjectNode body, SentFields sent) {
        body.remove(List.of("overrideKey", "overrideReason", "overrideAgreed"));
        String key = sent.given("overrideKey");
        if (key != null) {
            ObjectNode one = body.putArray("overrides").addObject().put("key", key);
            one.put("reason", Objects.requireNonNullElse(sent.given("overrideReason"), ""));
            putMember(one, "overrideAgreed", "agreedByMemberId", sent);
        }
    }

    private static void permit(ObjectNode body, SentFields sent, @Nullable SentFile permit) {
        body.remove(List.of("permitKey", "permitNumber", "permitIssuedBy"));
        String key = sent.given("permitKey");
        if (key == null) {
            return;
        }
        ObjectNode one = body.putArray("permits").addObject().put("key", key);
        one.put("number", Objects.requireNonNullElse(sent.given("permitNumber"), ""));
        one.put("issuedBy", Objects.requireNonNullElse(sent.given("permitIssuedBy"), ""));
        if (permit == null) {
            throw InvalidException.of("permitFile", "No file was chosen.", "the permit, as PDF, JPEG or PNG");
        }
        one.put("documentName", permit.name());
        one.put("documentMediaType", permit.mediaType());
        one.put("document", permit.content());
    }

    /** What the body says of a part is said beside the field of the form that it came from. */
    private static FieldError besideField(FieldError error) {
        String field = error.field();
        String beside = field.startsWith("overrides")
                ? field.endsWith("reason") ? "overrideReason" : field.endsWith("Id") ? "overrideAgreed" : "overrideKey"
                : field.startsWith("permits")
                        ? field.endsWith("number")
                                ? "permitNumber"
                                : field.endsWith("issuedBy")
                                        ? "permitIssuedBy"
                                        : field.contains("ocument") ? "permitFile" : "permitKey"
                        : field.equals("releasedByMemberId") ? "releasedBy" : field;
        return new FieldError(beside, error.detail(), error.wanted(), null);
    }
}
