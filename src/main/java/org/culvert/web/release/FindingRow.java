package org.culvert.web.release;

import java.util.ArrayList;
import java.util.List;
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

    /** Of whatever place: in the words of its rule, where figures are of one place alone. */
    static FindingRow ofAnyPlace(Finding finding, ReleaseTongue tongue) {
        FindingRow row = of(finding, tongue);
        Rule rule = finding.rule();
        return rule == null || finding.separation() == null
                ? row
                : new FindingRow(
                        row.key, row.verdict, row.verdictWords, rule.words(), row.rule, row.source, row.lifting);
    }

    /** Those that stand in the way. */
    static List<FindingRow> standing(List<Finding> findings, ReleaseTongue tongue) {
        return findings.stream()
                .filter(Finding::stands)
                .map(one -> of(one, tongue))
                .toList();
    }

    /** Those that were not passed and are mere advice. */
    static List<FindingRow> advice(List<Finding> findings, ReleaseTongue tongue) {
        return findings.stream()
                .filter(one -> one.verdict() != Verdict.pass && one.lifting() == Lifting.notNeeded)
                .map(one -> of(one, tongue))
                .toList();
    }
}
