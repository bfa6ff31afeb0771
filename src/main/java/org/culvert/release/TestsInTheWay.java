package org.culvert.release;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RefusedException;
import org.culvert.release.ReleaseEntries.Overriding;
import org.culvert.release.ReleaseEntries.Permit;
import org.culvert.release.ReleaseEntries.ReleaseEntry;
import org.culvert.release.rules.Finding;
import org.culvert.release.rules.Verdict;
import org.culvert.roster.RosterService;

/** Holds a release against the tests of its assessments: what was not passed, what lifts it, and what must have been read. */
@ApplicationScoped
class TestsInTheWay {
    private final AssessmentService assessments;
    private final CaseService cases;
    private final RosterService roster;

    TestsInTheWay(AssessmentService assessments, CaseService cases, RosterService roster) {
        this.assessments = assessments;
        this.cases = cases;
        this.roster = roster;
    }

    /** @throws RefusedException with every test that stands in the way and what would lift it */
    void requireNothing(ReleaseEntry entry, List<Assessment> assessed) {
        List<String> reasons = new ArrayList<>();
        Set<String> liftable = new HashSet<>();
        Set<String> permitted = entry.permits().stream().map(Permit::key).collect(Collectors.toSet());
        Set<String> overridden = entry.overrides().stream().map(Overriding::key).collect(Collectors.toSet());
        for (Overriding override : entry.overrides()) {
            if (override.agreedByMemberId() != null) {
                roster.getMember(override.agreedByMemberId());
            }
        }
        for (Assessment assessment : assessed) {
            CaseView told = cases.getCase(assessment.caseId);
            if (told.fate() != null) {
                throw new ConflictException(
                        "Case " + told.number() + " has ended: " + told.fate().fate() + ".");
            }
            if (!stillSays(assessment, told)) {
                reasons.add("Case " + told.number() + ": what is known, or the rules, changed since it was assessed."
                        + " Assess it again.");
                continue;
            }
            for (Finding finding : assessment.findings) {
                requireAgreed(finding, entry);
                if (isUnread(finding, entry)) {
                    reasons.add("Case " + told.number() + ", " + finding.key() + ": " + finding.words()
                            + " Name it in warningsRead when whoever lets it go has read that.");
                }
                if (finding.stands()) {
                    liftable.add(finding.key());
                    boolean isLifted = switch (finding.lifting()) {
                        case byPermit -> permitted.contains(finding.key());
                        case byOverride -> overridden.contains(finding.key());
                        case byNothing -> false;
                        case notNeeded -> true;
                    };
                    if (!isLifted) {
                        reasons.add(reason(told, finding));
                    }
                }
            }
        }
        if (!reasons.isEmpty()) {
            throw new RefusedException("A test stands in the way of this release.", reasons);
        }
        requireKnown("permits", permitted, liftable);
        requireKnown("overrides", overridden, liftable);
    }

    /** A hotspot beside the place is nobody's order, but no one lets an animal go there without knowing. */
    private static boolean isUnread(Finding finding, ReleaseEntry entry) {
        return finding.key().equals(Finding.HOTSPOTS_NEAR)
                && finding.verdict() == Verdict.fail
                && !entry.warningsRead().contains(finding.key());
    }

    private static void requireAgreed(Finding finding, ReleaseEntry entry) {
        boolean asks = finding.rule() != null && finding.rule().asksSecondPerson();
        for (int i = 0; asks && i < entry.overrides().size(); i++) {
            Overriding override = entry.overrides().get(i);
            if (override.key().equals(finding.key()) && override.agreedByMemberId() == null) {
                throw InvalidException.of(
                        "overrides[" + i + "].agreedByMemberId",
                        "The rule asks that a second person agrees.",
                        "the member who agrees, another than you");
            }
        }
    }

    private boolean stillSays(Assessment assessment, CaseView told) {
        List<Finding> now = assessments.runAgain(told, assessment);
        List<Finding> then = assessment.findings;
        boolean same = now.size() == then.size() && assessment.subject.equals(assessments.subject(told));
        for (int i = 0; same && i < then.size(); i++) {
            same = then.get(i).agreesWith(now.get(i));
        }
        return same;
    }

    private static String reason(CaseView told, Finding finding) {
        String by = switch (finding.lifting()) {
            case byPermit -> "Only a permit with its number and document lifts it.";
            case byOverride -> "A named person may override it with a reason.";
            default -> "Nothing lifts it.";
        };
        String of = finding.rule() == null
                ? ""
                : " (" + finding.rule().kind() + ", " + finding.rule().jurisdiction() + ")";
        // Only a test of a rule goes by another name than its own
        String key = finding.key().equals(finding.test()) ? "" : " with key " + finding.key();
        return "Case " + told.number() + ", " + finding.test() + of + key + ": " + finding.words() + " " + by;
    }

    private static void requireKnown(String field, Set<String> keys, Set<String> liftable) {
        for (String key : keys) {
            if (!liftable.contains(key)) {
                throw InvalidException.of(
                        field, "No test with the key " + key + " stands in the way.", String.join(", ", liftable));
            }
        }
    }
}
