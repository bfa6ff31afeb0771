package org.culvert.web.release;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.culvert.release.rules.Finding;
import org.culvert.release.rules.Lifting;
import org.culvert.release.rules.Rule;
import org.culvert.release.rules.Verdict;
import org.culvert.web.words.ReleaseWords;

/**
 * What one test says, with its rule.
 *
 * @param verdict {@code pass}, {@code fail} or {@code cantTell}
 * @param said what it comes to, as the test says it
 * @param rule its kind, whose it is, its source and dates; empty where the test stands without a rule
 */
public record FindingRow(
        String key, String verdict, String verdictWords, String said, String rule, String source, String lifting) {
    static FindingRow of(Finding finding, ReleaseTongue tongue) {
        ReleaseWords words = tongue.words();
        Rule rule = finding.rule();
        List<String> about = new ArrayList<>();
        if (rule != null) {
            about.add(words.kind(rule.kind().name()));
            about.add(rule.jurisdiction());
            about.add(words.read(tongue.day(rule.readOn())));
            about.add(words.reviewBy(tongue.day(rule.reviewBy())));
        }
        return new FindingRow(
                finding.key(),
                finding.verdict().name(),
                words.verdict(finding.verdict().name()),
                finding.words(),
                String.join(", ", about),
                rule == null ? "" : rule.source(),
                finding.verdict() == Verdict.pass
                        ? ""
                        : words.lifting(finding.lifting().name()));
    }

    /** Those that were not passed: what stands in the way before mere advice. */
    static List<FindingRow> notPassed(List<Finding> findings, ReleaseTongue tongue) {
        return Stream.concat(
                        findings.stream().filter(Finding::stands),
                        findings.stream()
                                .filter(one -> one.verdict() != Verdict.pass && one.lifting() == Lifting.notNeeded))
                .map(one -> of(one, tongue))
                .toList();
    }
}
