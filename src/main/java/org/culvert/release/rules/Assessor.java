package org.culvert.release.rules;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Runs release rules for one animal and one place.
 *
 * <p>Distances are geodesics on WGS 84 and count the uncertainty of both ends ({@link Separation}). Where an origin is
 * unknown, each rule's own outcome holds, and where a rule says nothing of it nobody can tell. A rule that is due for
 * review never passes: what its figures say is shown, and the verdict is can't tell.
 */
public final class Assessor {
    private Assessor() {}

    /**
     * One finding for each rule that is about the animal and holds at the place on the day, in the order of the rules.
     *
     * <p>An introduced kind has one finding, a fail that nothing lifts. Where no rule of the place's own jurisdiction is
     * about the animal, one more finding says that nobody can tell what holds there; the network's own rules do not
     * count as such.
     *
     * @param unsuitabilities those of the animal's found place
     * @param rules any rules; those that do not apply are passed over
     * @param known what else is known of the animal, the place and the hour
     * @param day the day in the region's zone
     */
    public static List<Finding> assess(
            Subject subject,
            Site site,
            List<Unsuitability> unsuitabilities,
            List<Rule> rules,
            Circumstances known,
            LocalDate day) {
        if (subject.introduced()) {
            return List.of(new Finding(
                    Finding.INTRODUCED,
                    Finding.INTRODUCED,
                    null,
                    Lifting.byNothing,
                    Verdict.fail,
                    null,
                    null,
                    "Its kind is listed as introduced here, so there is no way back into the wild for it."
                            + " Ask your wildlife authority.",
                    null));
        }
        List<Rule> applicable = rules.stream()
                .filter(rule -> rule.holdsOn(day) && rule.holdsIn(site.jurisdiction()) && rule.isAbout(subject))
                .toList();
        List<Finding> findings = new ArrayList<>();
        if (applicable.stream().allMatch(rule -> rule.kind() == RuleKind.policy)) {
            findings.add(noLocalRule(site));
        }
        for (Rule rule : applicable) {
            findings.add(asking(rule, apply(rule, subject, site, unsuitabilities, known, day), day));
        }
        return List.copyOf(findings);
    }

    /** The same, and the tests that stand without a rule after them; of an introduced kind there are none. */
    public static List<Finding> assessWhole(
            Subject subject,
            Site site,
            List<Unsuitability> unsuitabilities,
            List<Rule> rules,
            Circumstances known,
            LocalDate day) {
        List<Finding> findings = new ArrayList<>(assess(subject, site, unsuitabilities, rules, known, day));
        if (!subject.introduced()) {
            findings.addAll(StandingTests.of(subject, site, known, findings, day));
        }
        return List.copyOf(findings);
    }

    /**
     * What all tests come to that are in the way when they are not passed: fail if one fails, else can't tell if one
     * can't tell, else pass. Guidance is shown and does not count.
     */
    public static Verdict overall(List<Finding> findings) {
        Verdict overall = Verdict.pass;
        for (Finding finding : findings) {
            if (finding.lifting().stands()) {
                if (finding.verdict() == Verdict.fail) {
                    return Verdict.fail;
                }
                if (finding.verdict() == Verdict.cantTell) {
                    overall = Verdict.cantTell;
                }
            }
        }
        return overall;
    }

    private static Finding noLocalRule(Site site) {
        return new Finding(
                Finding.LOCAL_RULE,
                Finding.LOCAL_RULE,
                null,
                Lifting.byOverride,
                Verdict.cantTell,
                null,
                null,
                "No rule of " + site.jurisdiction() + " for this animal is entered here, which does not mean that there"
                        + " is none. Check your local code and your licensed vet, and enter what it says.",
                null);
    }

    private static Finding apply(
            Rule rule,
            Subject subject,
            Site site,
            List<Unsuitability> unsuitabilities,
            Circumstances known,
            LocalDate day) {
        var answers = new Answers(subject, site, known, day);
        return switch (rule.test()) {
            case noRelease ->
                finding(rule, Answer.fail("By this rule its kind is let go nowhere. Ask your wildlife authority."));
            case foundPlaceFirst, greatestDistance -> byOrigin(rule, subject, site, unsuitabilities);
            case landownerConsent -> finding(rule, answers.landowner());
            case parkApproval -> finding(rule, answers.park());
            case borderApproval ->
                finding(
                        rule,
                        answers.border(
                                rule.jurisdiction().equals(Rule.NETWORK) ? site.jurisdiction() : rule.jurisdiction()));
            case officerApproval ->
                finding(rule, answers.approval(Approval.Of.wildlifeOfficer, "the wildlife officer of the place"));
            case sameCatchment -> finding(rule, answers.sameCatchment());
            case waterWithin -> finding(rule, answers.waterWithin(limit(rule.greatestDistanceMetres())));
            case activePeriod -> finding(rule, answers.activePeriod());
            case fairWeather -> finding(rule, answers.weather());
            case daysInCare -> finding(rule, answers.daysInCare((int) limit(rule.greatestDays())));
            case fitness -> finding(rule, answers.fitness());
            case notWithPets -> finding(rule, answers.notWithPets());
            case matesGoToo -> finding(rule, answers.matesGoToo());
        };
    }

    private static double limit(@Nullable Number asked) {
        if (asked == null) {
            throw new IllegalArgumentException("the rule does not say what it holds an animal against");
        }
        return asked.doubleValue();
    }

    private static Finding finding(Rule rule, Answer answer) {
        return finding(rule, answer.verdict(), answer.separation(), answer.limitMetres(), answer.words());
    }

    private static Finding byOrigin(Rule rule, Subject subject, Site site, List<Unsuitability> unsuitabilities) {
        UncertainPosition origin = subject.origin().at();
        if (origin == null) {
            return originUnknown(rule);
        }
        Separation separation = origin.to(site.at());
        Double limit = rule.greatestDistanceMetres();
        return limit == null
                ? foundPlaceFirst(rule, separation, unsuitabilities)
                : greatestDistance(rule, separation, limit);
    }

    private static Finding greatestDistance(Rule rule, Separation separation, double limit) {
        Verdict verdict = separation.atMost(limit);
        String words = switch (verdict) {
            case pass -> distance(separation) + " At most " + metres(limit) + " is asked for, and it is that.";
            case fail -> distance(separation) + " At most " + metres(limit) + " is asked for, and it is more.";
            case cantTell ->
                distance(separation) + " At most " + metres(limit)
                        + " is asked for, and with these uncertainties it may be that or more.";
        };
        return finding(rule, verdict, separation, limit, words);
    }

    private static Finding foundPlaceFirst(Rule rule, Separation separation, List<Unsuitability> unsuitabilities) {
        Double knownWithin = rule.originKnownWithinMetres();
        if (separation.mayBeOnePlace()) {
            if (knownWithin != null && separation.originUncertaintyMetres() > knownWithin) {
                return finding(
                        rule,
                        Verdict.cantTell,
                        separation,
                        knownWithin,
                        distance(separation) + " The place where it was found is known to "
                                + metres(separation.originUncertaintyMetres()) + " only, and counts as known within "
                                + metres(knownWithin) + ": whether this is the place, nobody can tell.");
            }
            return finding(
                    rule,
                    Verdict.pass,
                    separation,
                    null,
                    distance(separation) + " As far as that is known it is the place where the animal was found.");
        }
        for (Unsuitability unsuitability : unsuitabilities) {
            Optional<Ground> ground = rule.findGround(unsuitability.ground());
            if (ground.isPresent()) {
                return finding(
                        rule,
                        Verdict.pass,
                        separation,
                        null,
                        distance(separation) + " The place where it was found is recorded as unsuitable, because "
                                + ground.get().words() + ": " + unsuitability.words());
            }
        }
        return finding(
                rule,
                Verdict.fail,
                separation,
                null,
                distance(separation) + " This is another place than where it was found, and that place is not recorded"
                        + " as unsuitable on a ground that the rule allows.");
    }

    private static Finding originUnknown(Rule rule) {
        Rule.UnknownOrigin outcome = rule.unknownOrigin();
        if (outcome == null) {
            return finding(
                    rule,
                    Verdict.cantTell,
                    null,
                    null,
                    "Nobody knows where it was found, and the rule as read says nothing of that.");
        }
        return switch (outcome) {
            case notReleasable ->
                finding(
                        rule,
                        Verdict.fail,
                        null,
                        null,
                        "Nobody knows where it was found, and by this rule such an animal is not released.");
            case withinRange ->
                finding(
                        rule,
                        Verdict.cantTell,
                        null,
                        null,
                        "Nobody knows where it was found; by this rule such an animal may go to fit habitat within the"
                                + " normal range of its kind. Whether the site is that is for somebody who knows the kind to"
                                + " say.");
            case withinRangeWithApproval ->
                finding(
                        rule,
                        Verdict.cantTell,
                        null,
                        null,
                        "Nobody knows where it was found; by this rule such an animal may go to fit habitat within the"
                                + " range of its kind, with approval.");
        };
    }

    /** A rule that is due for review asks before it passes, and before it fails too. */
    private static Finding asking(Rule rule, Finding finding, LocalDate day) {
        if (!rule.isDueForReview(day)) {
            return finding;
        }
        return new Finding(
                finding.key(),
                finding.test(),
                finding.kind(),
                finding.lifting(),
                Verdict.cantTell,
                finding.separation(),
                finding.limitMetres(),
                "This rule was to be read again by " + rule.reviewBy() + " and nobody has recorded that it was: read"
                        + " its source, and record the review. As last read it says " + said(finding.verdict()) + ". "
                        + finding.words(),
                rule);
    }

    private static String said(Verdict verdict) {
        return switch (verdict) {
            case pass -> "pass";
            case fail -> "fail";
            case cantTell -> "can't tell";
        };
    }

    private static Finding finding(
            Rule rule, Verdict verdict, @Nullable Separation separation, @Nullable Double limitMetres, String words) {
        String consents = rule.consents() == null ? "" : " Needed beside: " + rule.consents();
        return new Finding(
                rule.id().toString(),
                rule.test().name(),
                rule.kind(),
                rule.lifting(),
                verdict,
                separation,
                limitMetres,
                words + consents,
                rule);
    }

    private static String distance(Separation separation) {
        return "It is " + metres(separation.distanceMetres()) + " from where the animal was found, give or take "
                + metres(separation.doubtMetres()) + ".";
    }

    private static String metres(double metres) {
        return String.format(Locale.ROOT, "%,.1f m", metres);
    }
}
