package org.culvert.release.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.release.rules.Animals.DAY;
import static org.culvert.release.rules.Animals.FOUND;
import static org.culvert.release.rules.Animals.koala;
import static org.culvert.release.rules.Animals.queensland;
import static org.culvert.release.rules.Animals.rule;
import static org.culvert.release.rules.Animals.turtle;

import java.util.List;
import org.culvert.geo.Geodesy;
import org.junit.jupiter.api.Test;

class AssessorTest {
    /**
     * Queensland's code, section 15 (edition of 2013): where the found location is known and suitable the release is
     * there; a roadside is its example of a hazard.
     */
    private static Animals.RuleDraft foundPlaceFirst() {
        return rule(RuleKind.code, Rule.Question.foundPlaceFirst)
                .except("Phascolarctos cinereus")
                .allowing("hazard");
    }

    private static UncertainPosition away(double metres) {
        return new UncertainPosition(Geodesy.WGS84.direct(FOUND.position(), 80, metres), 30);
    }

    private static List<Finding> assess(Subject subject, Site site, Rule... rules) {
        return Assessor.assess(subject, site, List.of(), List.of(rules), Circumstances.NOT_KNOWN, DAY);
    }

    private static Finding only(List<Finding> findings) {
        assertThat(findings).hasSize(1);
        return findings.get(0);
    }

    @Test
    void itGoesBackWhereItWasFound() {
        Rule rule = foundPlaceFirst().make();
        // Both are known to 30 m: up to 60 m apart they may be one place
        assertThat(only(assess(turtle(FOUND), queensland(away(59)), rule)).verdict())
                .isEqualTo(Verdict.pass);
        Finding elsewhere = only(assess(turtle(FOUND), queensland(away(61)), rule));
        assertThat(elsewhere.verdict()).isEqualTo(Verdict.fail);
        assertThat(elsewhere.lifting()).isEqualTo(Lifting.byPermit);
        assertThat(elsewhere.stands()).isTrue();
        assertThat(elsewhere.words()).contains("61.0 m").contains("60.0 m");
    }

    @Test
    void anotherPlaceIsConsideredOnceTheFoundOneIsUnsuitableOnAnAllowedGround() {
        Rule rule = foundPlaceFirst().make();
        Site site = queensland(away(400));
        var hazard = new Unsuitability("hazard", "the shoulder of a fast road");
        var dislike = new Unsuitability("farToDrive", "it is far");
        Finding allowed = only(Assessor.assess(
                turtle(FOUND), site, List.of(dislike, hazard), List.of(rule), Circumstances.NOT_KNOWN, DAY));
        assertThat(allowed.verdict()).isEqualTo(Verdict.pass);
        assertThat(allowed.words()).contains("the shoulder of a fast road");
        assertThat(only(Assessor.assess(
                                turtle(FOUND), site, List.of(dislike), List.of(rule), Circumstances.NOT_KNOWN, DAY))
                        .verdict())
                .isEqualTo(Verdict.fail);
    }

    @Test
    void aFoundPlaceThatIsHardlyKnownIsNoFoundPlace() {
        Rule rule = foundPlaceFirst().knownWithin(1_000).make();
        var vague = new UncertainPosition(FOUND.position(), 5_000);
        Finding near = only(assess(turtle(vague), queensland(away(4_000)), rule));
        assertThat(near.verdict()).isEqualTo(Verdict.cantTell);
        assertThat(near.limitMetres()).isEqualTo(1_000);
        assertThat(only(assess(turtle(vague), queensland(away(5_100)), rule)).verdict())
                .isEqualTo(Verdict.fail);
    }

    @Test
    void anUnknownOriginIsAStateOfItsOwn() {
        Site site = queensland(FOUND);
        Rule silent = foundPlaceFirst().make();
        assertThat(only(assess(turtle(null), site, silent)).verdict()).isEqualTo(Verdict.cantTell);
        Rule strict = foundPlaceFirst()
                .unknownOriginIs(Rule.UnknownOrigin.notReleasable)
                .make();
        assertThat(only(assess(turtle(null), site, strict)).verdict()).isEqualTo(Verdict.fail);
        Rule asking = foundPlaceFirst()
                .unknownOriginIs(Rule.UnknownOrigin.withinRangeWithApproval)
                .make();
        Finding finding = only(assess(turtle(null), site, asking));
        assertThat(finding.verdict()).isEqualTo(Verdict.cantTell);
        assertThat(finding.words()).contains("with approval");
        Rule distance =
                rule(RuleKind.code, Rule.Question.greatestDistance).atMost(1e9).make();
        assertThat(only(assess(turtle(null), site, distance)).verdict()).isEqualTo(Verdict.cantTell);
    }

    @Test
    void aRuleDueForReviewAsksBeforeItPasses() {
        Rule due = foundPlaceFirst().reviewBy(DAY).make();
        Finding finding = only(assess(turtle(FOUND), queensland(FOUND), due));
        assertThat(finding.verdict()).isEqualTo(Verdict.cantTell);
        assertThat(finding.words()).contains("read again").contains("As last read it says pass");
        assertThat(finding.stands()).isTrue();
        Rule fresh = foundPlaceFirst().reviewBy(DAY.plusDays(1)).make();
        assertThat(only(assess(turtle(FOUND), queensland(FOUND), fresh)).verdict())
                .isEqualTo(Verdict.pass);
    }

    /** Rehabilitator Authorisation Guide of Victoria, 2023: some kinds are not released at all. Of other kinds it says nothing. */
    @Test
    void aProhibitedKindHasNoWayBackWhateverKindOfRuleSaysSo() {
        for (RuleKind kind : RuleKind.values()) {
            Rule rule = rule(kind, Rule.Question.noRelease).about("Rusa").make();
            var deer = new Subject("Rusa unicolor", "deer", false, false, false, Origin.found(FOUND));
            List<Finding> findings = assess(deer, queensland(FOUND), rule);
            assertThat(findings).last().satisfies(finding -> {
                assertThat(finding.verdict()).isEqualTo(Verdict.fail);
                assertThat(finding.lifting()).isEqualTo(Lifting.byNothing);
            });
            assertThat(Assessor.overall(findings)).isEqualTo(Verdict.fail);
            assertThat(assess(turtle(FOUND), queensland(FOUND), rule))
                    .extracting(Finding::test)
                    .doesNotContain("noRelease");
        }
        Rule due =
                rule(RuleKind.guidance, Rule.Question.noRelease).reviewBy(DAY).make();
        Finding asking = only(assess(turtle(FOUND), queensland(FOUND), due));
        assertThat(asking.verdict()).isEqualTo(Verdict.cantTell);
        assertThat(asking.stands()).isTrue();
    }

    @Test
    void anIntroducedKindHasNoWayBack() {
        var deer = new Subject("Rusa unicolor", "deer", true, false, false, Origin.found(FOUND));
        Rule rule = foundPlaceFirst().make();
        Finding finding = only(assess(deer, queensland(FOUND), rule));
        assertThat(finding.verdict()).isEqualTo(Verdict.fail);
        assertThat(finding.lifting()).isEqualTo(Lifting.byNothing);
        assertThat(Assessor.overall(List.of(finding))).isEqualTo(Verdict.fail);
    }

    @Test
    void whereNoLocalRuleIsEnteredNobodyCanTell() {
        Finding none = only(assess(turtle(FOUND), queensland(FOUND)));
        assertThat(none.key()).isEqualTo(Finding.LOCAL_RULE);
        assertThat(none.verdict()).isEqualTo(Verdict.cantTell);
        assertThat(none.lifting()).isEqualTo(Lifting.byOverride);

        // The network's own policy is no knowledge of what the law there says
        Rule policy = rule(RuleKind.policy, Rule.Question.foundPlaceFirst).make();
        List<Finding> withPolicy = assess(turtle(FOUND), queensland(FOUND), policy);
        assertThat(withPolicy).extracting(Finding::verdict).containsExactly(Verdict.cantTell, Verdict.pass);
        assertThat(Assessor.overall(withPolicy)).isEqualTo(Verdict.cantTell);
    }

    @Test
    void rulesAreOfTheirPlaceTheirDayAndTheirAnimals() {
        Site site = queensland(FOUND);
        Subject turtle = turtle(FOUND);
        assertThat(foundPlaceFirst().in("AU").make().holdsIn("AU-QLD")).isTrue();
        assertThat(foundPlaceFirst().in("AU-QLD").make().holdsIn("AU")).isFalse();
        assertThat(foundPlaceFirst().in("AU-NSW").make().holdsIn("AU-QLD")).isFalse();
        assertThat(rule(RuleKind.policy, Rule.Question.foundPlaceFirst).make().holdsIn("NZ"))
                .isTrue();

        assertThat(foundPlaceFirst().valid(DAY.plusDays(1), null).make().holdsOn(DAY))
                .isFalse();
        assertThat(foundPlaceFirst().valid(DAY.minusDays(9), DAY).make().holdsOn(DAY))
                .isFalse();
        assertThat(foundPlaceFirst()
                        .valid(DAY.minusDays(9), DAY.plusDays(1))
                        .make()
                        .holdsOn(DAY))
                .isTrue();

        assertThat(foundPlaceFirst().make().isAbout(koala(false, FOUND))).isFalse();
        assertThat(foundPlaceFirst().make().isAbout(turtle)).isTrue();
        assertThat(foundPlaceFirst().aboutGroup("koalas").make().isAbout(turtle))
                .isFalse();
        assertThat(foundPlaceFirst().about("Chelodina").make().isAbout(turtle)).isTrue();
        assertThat(foundPlaceFirst().about("Chelodina longi").make().isAbout(turtle))
                .isFalse();
        assertThat(assess(turtle, site, foundPlaceFirst().in("AU-NSW").make()))
                .extracting(Finding::key)
                .containsExactly(Finding.LOCAL_RULE);
    }

    @Test
    void guidanceIsShownAndStandsInNobodysWay() {
        Rule advice = rule(RuleKind.guidance, Rule.Question.foundPlaceFirst).make();
        List<Finding> findings = assess(turtle(FOUND), queensland(away(5_000)), advice);
        assertThat(only(findings).verdict()).isEqualTo(Verdict.fail);
        assertThat(only(findings).stands()).isFalse();
        assertThat(Assessor.overall(findings)).isEqualTo(Verdict.pass);
    }

    @Test
    void overallAFailOutweighsWhatNobodyCanTell() {
        Rule failing = foundPlaceFirst().make();
        Rule open = rule(RuleKind.policy, Rule.Question.landownerConsent).make();
        List<Finding> findings = assess(turtle(FOUND), queensland(away(500)), open, failing);
        assertThat(findings).extracting(Finding::verdict).containsExactly(Verdict.cantTell, Verdict.fail);
        assertThat(Assessor.overall(findings)).isEqualTo(Verdict.fail);
        assertThat(Assessor.overall(findings.subList(0, 1))).isEqualTo(Verdict.cantTell);
    }

    @Test
    void consentOfWhoeverOwnsTheLandIsYesNoOrUnknown() {
        Rule rule = rule(RuleKind.statute, Rule.Question.landownerConsent)
                .needing("written permission")
                .make();
        for (Site.Consent consent : Site.Consent.values()) {
            Finding finding = only(assess(turtle(null), new Site(FOUND, "AU-QLD", consent), rule));
            Verdict wanted = switch (consent) {
                case yes -> Verdict.pass;
                case no -> Verdict.fail;
                case unknown -> Verdict.cantTell;
            };
            assertThat(finding.verdict()).isEqualTo(wanted);
            assertThat(finding.words()).contains("written permission");
        }
    }

    @Test
    void nothingIsCalledLawfulOrSafe() {
        Rule[] rules = {
            foundPlaceFirst().make(),
            rule(RuleKind.statute, Rule.Question.greatestDistance).atMost(100).make(),
            rule(RuleKind.statute, Rule.Question.landownerConsent).make(),
            rule(RuleKind.policy, Rule.Question.greatestDistance)
                    .atMost(100)
                    .reviewBy(DAY)
                    .make(),
        };
        for (double metres : new double[] {0, 60, 100, 1_000}) {
            for (Subject subject : List.of(turtle(FOUND), turtle(null), koala(true, FOUND))) {
                assertThat(assess(subject, queensland(away(metres)), rules))
                        .allSatisfy(
                                finding -> assertThat(finding.words()).doesNotContainPattern("(?i)lawful|legal|safe"));
            }
        }
    }
}
