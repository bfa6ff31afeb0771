package org.culvert.web.release;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.culvert.release.rules.Rule;
import org.culvert.web.words.RuleWords;

/**
 * Release rules as the page lists them.
 *
 * @param changes what waits, and what begins or ends soon, the earliest first
 * @param found how many are shown
 * @param ended how many more are meant that no longer hold
 */
public record RuleList(List<Jurisdiction> jurisdictions, List<Coming> changes, int found, int ended) {
    /** How long before somebody wants to know. */
    private static final int SOON_DAYS = 90;

    private static final int SHOWN_CHANGES = 6;

    /** The first of the changes. */
    public List<Coming> soonest() {
        return changes.subList(0, Math.min(SHOWN_CHANGES, changes.size()));
    }

    /** The other changes. */
    public List<Coming> later() {
        return changes.subList(Math.min(SHOWN_CHANGES, changes.size()), changes.size());
    }

    /** Rules of one jurisdiction. */
    public record Jurisdiction(String code, List<Whom> groups) {
        public boolean isNetwork() {
            return code.equals(Rule.NETWORK);
        }

        public int count() {
            return groups.stream().mapToInt(group -> group.rules().size()).sum();
        }
    }

    /** Those of them that are about the same animals. */
    public record Whom(String words, List<RuleCard> rules) {}

    /** @param pressing whether it is past its day */
    public record Coming(LocalDate day, String words, boolean pressing, UUID rule, String asks, String whose) {}

    /**
     * Lays them out.
     *
     * @param meant rules that the filter means, whatever their days are
     * @param groups names of groups by their keys
     */
    static RuleList of(
            List<Rule> meant,
            RuleFilter filter,
            Map<String, String> groups,
            LocalDate day,
            RuleWords words,
            ReleaseTongue tongue) {
        Map<String, Map<String, List<RuleCard>>> cards = new TreeMap<>();
        List<Coming> changes = new ArrayList<>();
        int found = 0;
        int ended = 0;
        for (Rule rule : meant.stream().sorted(order(groups, words)).toList()) {
            RuleCard card = RuleCard.of(rule, groups, day, words, tongue);
            addChanges(rule, card, day, words, changes);
            if (filter.isShown(rule, day)) {
                found++;
                cards.computeIfAbsent(rule.jurisdiction(), code -> new LinkedHashMap<>())
                        .computeIfAbsent(RuleCard.whom(rule, groups, words), whom -> new ArrayList<>())
                        .add(card);
            } else if (RuleCard.State.of(rule, day) == RuleCard.State.ended) {
                ended++;
            }
        }
        changes.sort(Comparator.comparing(Coming::day));
        return new RuleList(
                cards.entrySet().stream()
                        .map(entry -> new Jurisdiction(
                                entry.getKey(),
                                entry.getValue().entrySet().stream()
                                        .map(whom -> new Whom(whom.getKey(), whom.getValue()))
                                        .toList()))
                        .toList(),
                changes,
                found,
                ended);
    }

    /** Those about all animals first, then by whom they are about, and in the order of what they ask. */
    private static Comparator<Rule> order(Map<String, String> groups, RuleWords words) {
        return Comparator.<Rule, Boolean>comparing(rule -> rule.taxonGroup() != null || rule.scientificName() != null)
                .thenComparing(rule -> RuleCard.whom(rule, groups, words))
                .thenComparing(Rule::test)
                .thenComparing(Rule::validFrom);
    }

    private static void addChanges(Rule rule, RuleCard card, LocalDate day, RuleWords words, List<Coming> changes) {
        LocalDate soon = day.plusDays(SOON_DAYS);
        LocalDate end = rule.validTo();
        if (end != null && !end.isAfter(day)) {
            return;
        }
        if (!rule.reviewBy().isAfter(soon)) {
            boolean due = rule.isDueForReview(day);
            changes.add(coming(rule, card, rule.reviewBy(), words.coming(due ? "due" : "review"), due));
        }
        if (rule.validFrom().isAfter(day) && !rule.validFrom().isAfter(soon)) {
            changes.add(coming(rule, card, rule.validFrom(), words.coming("begins"), false));
        }
        if (end != null && !end.isAfter(soon)) {
            changes.add(coming(rule, card, end, words.coming("ends"), false));
        }
    }

    private static Coming coming(Rule rule, RuleCard card, LocalDate day, String words, boolean pressing) {
        return new Coming(day, words, pressing, rule.id(), card.asks(), rule.jurisdiction() + ", " + card.about());
    }
}
