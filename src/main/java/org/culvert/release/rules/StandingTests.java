package org.culvert.release.rules;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The tests that stand without a rule: what hurts animals or people whatever the law of a place, and what is worth knowing
 * before. Where a rule asks the same, the rule's own answer holds and the test is left out.
 */
final class StandingTests {
    private final Answers answers;
    private final Set<Rule.Question> askedByRules;
    private final List<Finding> findings = new ArrayList<>();

    private StandingTests(Answers answers, List<Finding> ofRules) {
        this.answers = answers;
        this.askedByRules = ofRules.stream()
                .map(Finding::rule)
                .filter(rule -> rule != null)
                .map(Rule::test)
                .collect(Collectors.toSet());
    }

    static List<Finding> of(Subject subject, Site site, Circumstances known, List<Finding> ofRules, LocalDate day) {
        return new StandingTests(new Answers(subject, site, known, day), ofRules).run(known, site.jurisdiction());
    }

    private List<Finding> run(Circumstances known, String jurisdiction) {
        for (Hold.Kind kind : Hold.Kind.values()) {
            if (known.holds().stream().anyMatch(hold -> hold.kind() == kind)) {
                add("healthHold." + kind, Lifting.byNothing, hold(kind));
            }
        }
        add("groundIsOpen", Lifting.byOverride, answers.groundIsOpen());
        add("notExcluded", Lifting.byOverride, answers.notExcluded());
        unlessAsked(Rule.Question.fitness, Lifting.byOverride, answers.fitness());
        unlessAsked(Rule.Question.parkApproval, Lifting.byPermit, answers.park());
        if (answers.isMapped(jurisdiction)) {
            unlessAsked(Rule.Question.borderApproval, Lifting.byPermit, answers.border(jurisdiction));
        }
        answers.otherJurisdiction().ifPresent(answer -> add("jurisdictionOnMap", Lifting.byOverride, answer));
        if (answers.isOnProperty()) {
            unlessAsked(Rule.Question.landownerConsent, Lifting.byOverride, answers.landowner());
        }
        unlessAsked(Rule.Question.notWithPets, Lifting.notNeeded, answers.notWithPets());
        if (answers.isAquatic()) {
            unlessAsked(Rule.Question.sameCatchment, Lifting.notNeeded, answers.sameCatchment());
            add("nestingGround", Lifting.notNeeded, answers.nestingGround());
        }
        UncertainPosition origin = answers.origin();
        if (origin != null && known.movementRangeMetres().isPresent()) {
            add(
                    "movementRange",
                    Lifting.notNeeded,
                    answers.movementRange(origin, known.movementRangeMetres().getAsDouble()));
        }
        add("roadsBetween", Lifting.notNeeded, answers.roadsBetween());
        add(Finding.HOTSPOTS_NEAR, Lifting.notNeeded, answers.hotspotsNear());
        unlessAsked(Rule.Question.activePeriod, Lifting.notNeeded, answers.activePeriod());
        unlessAsked(Rule.Question.fairWeather, Lifting.notNeeded, answers.weather());
        unlessAsked(Rule.Question.matesGoToo, Lifting.notNeeded, answers.matesGoToo());
        return List.copyOf(findings);
    }

    private static Answer hold(Hold.Kind kind) {
        return Answer.fail(
                switch (kind) {
                    case exposure ->
                        "It is held because somebody may have been exposed to what it may carry. It stays until the health"
                                + " authority has cleared it, and nothing overrides that. Whoever was bitten, scratched or licked"
                                + " washes at once and thoroughly and rings the public health unit now, vaccinated or not.";
                    case notifiableDisease ->
                        "It is held on suspicion of a disease that must be notified. It stays until the authority has cleared"
                                + " it, and nothing overrides that.";
                    case asked -> "A vet or an authority asked that it be held. It stays until they have cleared it.";
                });
    }

    private void unlessAsked(Rule.Question question, Lifting lifting, Answer answer) {
        if (!askedByRules.contains(question)) {
            add(question.name(), lifting, answer);
        }
    }

    private void add(String key, Lifting lifting, Answer answer) {
        findings.add(new Finding(
                key,
                key,
                null,
                lifting,
                answer.verdict(),
                answer.separation(),
                answer.limitMetres(),
                answer.words(),
                null));
    }
}
