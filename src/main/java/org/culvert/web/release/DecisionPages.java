package org.culvert.web.release;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.culvert.platform.Role;
import org.culvert.platform.sight.Sight;
import org.culvert.release.nonrelease.NonReleaseEntries.OutcomeKind;
import org.culvert.release.nonrelease.NonReleaseService;
import org.culvert.release.nonrelease.NonReleaseView;
import org.culvert.web.Languages;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.SentFields;
import org.culvert.web.kept.KeptLinks;
import org.culvert.web.words.FormsWords;
import org.culvert.web.words.ReleaseWords;
import org.jspecify.annotations.Nullable;

/** Lays out a decision that an animal does not go back, and its forms. */
@ApplicationScoped
class DecisionPages {
    private final NonReleaseService decisions;
    private final PlanPages plans;
    private final Languages languages;
    private final KeptLinks kept;
    private final Sight sight;

    DecisionPages(NonReleaseService decisions, PlanPages plans, Languages languages, KeptLinks kept, Sight sight) {
        this.decisions = decisions;
        this.plans = plans;
        this.languages = languages;
        this.kept = kept;
        this.sight = sight;
    }

    DecisionPage page(UUID id, PlanForms.Again again) {
        sight.requireSeen("non-release", id);
        ReleaseTongue tongue = plans.tongue();
        ReleaseWords words = tongue.words();
        NonReleaseView told = decisions.getDecision(id);
        boolean reads = sight.viewer().hasAny(Role.COORDINATOR, Role.OFFICER);
        List<DecisionPage.Part> opinions = told.secondOpinions().stream()
                .map(one -> part(
                        one.id(),
                        one.at(),
                        one.vetName() + ", " + one.vetRegistration() + ": "
                                + (one.agrees() ? words.agrees() : words.agreesNot()) + "; " + one.words(),
                        one.withdrawnBecause(),
                        tongue))
                .toList();
        List<DecisionPage.Part> notices = told.authorityNotices().stream()
                .map(one -> part(
                        one.id(),
                        one.at(),
                        one.authority() + (one.reference() == null ? "" : ", " + one.reference()),
                        one.withdrawnBecause(),
                        tongue))
                .toList();
        List<DecisionPage.Part> permits = told.permitsToKeep().stream()
                .map(one -> new DecisionPage.Part(
                        one.id(),
                        tongue.day(one.validFrom()),
                        words.liftedPermit(one.number(), one.issuedBy())
                                + (one.validTo() == null ? "" : words.approvalUntil(tongue.day(one.validTo()))),
                        reads ? "/api/non-release-decisions/" + id + "/permits-to-keep/" + one.id() : null,
                        one.withdrawnBecause()))
                .toList();
        List<DecisionPage.Part> reviews = told.welfareReviews().stream()
                .map(one -> part(
                        one.id(),
                        one.at(),
                        one.reviewedBy() + ", " + words.nextDue(tongue.day(one.nextDueOn())) + ": " + one.words(),
                        one.withdrawnBecause(),
                        tongue))
                .toList();
        List<DecisionPage.Part> outcomes = told.outcomes().stream()
                .map(one -> part(
                        one.id(),
                        one.at(),
                        Stream.of(words.outcomeOf(one.outcome()), one.placedWith(), one.approvedBy(), one.words())
                                .filter(said -> said != null && !said.isBlank())
                                .collect(Collectors.joining("; ")),
                        one.withdrawnBecause(),
                        tongue))
                .toList();
        return new DecisionPage(
                told,
                !sight.onlySeen("case", List.of(told.caseId())).isEmpty(),
                words.decidedBy(told.vetName(), told.vetRegistration(), tongue.moment(told.decidedAt())),
                words.standing(told.standing()),
                told.grounds().stream().map(words::groundOf).collect(Collectors.joining(", ")),
                told.reviewDueOn() == null ? null : words.reviewDue(tongue.day(told.reviewDueOn())),
                opinions,
                notices,
                permits,
                reviews,
                outcomes,
                told.withdrawnAt() != null
                        ? Map.of()
                        : forms(
                                options(permits),
                                options(Stream.of(opinions, notices, permits, reviews, outcomes)
                                        .flatMap(List::stream)
                                        .toList()),
                                again),
                kept.waysOf("non-release-decisions", id));
    }

    private static DecisionPage.Part part(
            UUID id, @Nullable Instant at, String words, @Nullable String withdrawn, ReleaseTongue tongue) {
        return new DecisionPage.Part(id, at == null ? "" : tongue.moment(at), words, null, withdrawn);
    }

    private static List<Option> options(List<DecisionPage.Part> parts) {
        return parts.stream()
                .filter(one -> one.withdrawn() == null)
                .map(one -> new Option(
                        one.id().toString(),
                        one.words().length() <= 80
                                ? one.words()
                                : one.words().substring(0, 78).strip() + " …"))
                .toList();
    }

    private Map<String, EntryForm> forms(List<Option> permits, List<Option> parts, PlanForms.Again again) {
        Map<String, EntryForm> forms = new LinkedHashMap<>();
        List<String> names = new ArrayList<>();
        if (sight.viewer().hasAny(Role.COORDINATOR, Role.CLINIC)) {
            names.addAll(List.of("opinion", "review", "outcome", "withdrawal"));
        }
        if (sight.viewer().hasAny(Role.COORDINATOR)) {
            names.addAll(List.of("notice", "permit"));
            if (!parts.isEmpty()) {
                names.add("part");
            }
        }
        names.forEach(name -> forms.put(name, form(name, again.of(name, DecisionPages::beside), permits, parts)));
        return forms;
    }

    /** A form that was sent, read again. */
    EntryForm sent(String name, SentFields sent) {
        return form(name, new EntryForm(name, sent, List.of(), DecisionPages::beside), List.of(), List.of());
    }

    private static String beside(String field) {
        return field.startsWith("document") ? "document" : field;
    }

    private EntryForm form(String name, EntryForm form, List<Option> permits, List<Option> parts) {
        ReleaseWords words = languages.words(ReleaseWords.class);
        FormsWords usual = languages.words(FormsWords.class);
        return switch (name) {
            case "opinion" ->
                form.text("vetName", words.vetName(), "", true)
                        .text("vetRegistration", words.vetRegistration(), "", true)
                        .truth("agrees", words.doesAgree(), true, words.agrees(), words.agreesNot())
                        .lines("words", usual.inWords(), "", true)
                        .moment("at", usual.whenIfNotNow(), "");
            case "review" ->
                form.text("reviewedBy", words.reviewedBy(), "", true)
                        .lines("words", usual.inWords(), "", true)
                        .day("nextDueOn", words.nextDueOn(), "", true)
                        .moment("at", usual.whenIfNotNow(), "");
            case "outcome" ->
                form.choice("outcome", words.outcomeWhat(), true, OutcomeKind.values(), words::outcomeOf)
                        .text("placedWith", words.placedWith(), "", false)
                        .choice("permitToKeepId", words.permitToKeep(), "", false, permits)
                        .text("approvedBy", words.outcomeApprovedBy(), "", false)
                        .lines("words", usual.inWords(), "", false)
                        .moment("at", usual.whenIfNotNow(), "");
            case "notice" ->
                form.text("authority", words.authority(), "", true)
                        .text("reference", words.authorityReference(), "", false)
                        .moment("at", usual.whenIfNotNow(), "");
            case "permit" ->
                form.text("number", words.permitNumber(), "", true)
                        .text("issuedBy", words.permitIssuedBy(), "", true)
                        .day("validFrom", words.validFrom(), "", true)
                        .day("validTo", words.validTo(), "", false)
                        .file("document", words.permitFile(), "", true);
            case "part" ->
                form.choice("part", words.whichPart(), "", true, parts).text("reason", usual.why(), "", true);
            default -> form.text("reason", usual.why(), "", true);
        };
    }
}
