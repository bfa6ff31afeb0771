package org.culvert.web.release;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Map;
import org.culvert.release.rules.Rule;
import org.culvert.web.words.RuleWords;
import org.jspecify.annotations.Nullable;

/**
 * One release rule as the page tells it.
 *
 * @param due that its source should have been read again; null where it should not
 * @param holds from when until when, and what that means today
 * @param state one of {@link State}
 */
public record RuleCard(
        Rule rule,
        String asks,
        String kind,
        String about,
        String means,
        @Nullable String unknownOrigin,
        @Nullable String originKnown,
        @Nullable String due,
        String holds,
        String state) {
    /** What it says of what holds today: {@code ended} even where nobody has read its source again. */
    enum State {
        now,
        due,
        notYet,
        ended;

        static State of(Rule rule, LocalDate day) {
            if (rule.holdsOn(day)) {
                return rule.isDueForReview(day) ? due : now;
            }
            return day.isBefore(rule.validFrom()) ? notYet : ended;
        }
    }

    /** @param groups names of groups by their keys */
    static RuleCard of(Rule rule, Map<String, String> groups, LocalDate day, RuleWords words, ReleaseTongue tongue) {
        Double metres = rule.greatestDistanceMetres();
        Double known = rule.originKnownWithinMetres();
        String means = words.means(rule.appliesTo().name());
        return new RuleCard(
                rule,
                words.asks(
                        rule.test().name(),
                        metres == null ? "" : metres(metres, tongue),
                        words.days(String.valueOf(rule.greatestDays()))),
                words.kind(rule.kind().name()) + words.lifts(rule.lifting().name()),
                about(rule, groups, words),
                rule.appliesDefinition() == null ? means : words.andCalls(means, rule.appliesDefinition()),
                rule.unknownOrigin() == null
                        ? null
                        : words.ofUnknown(rule.unknownOrigin().name()),
                known == null ? null : words.knownWithin(metres(known, tongue)),
                rule.isDueForReview(day) ? words.dueSince(tongue.day(rule.reviewBy())) : null,
                holds(rule, day, words, tongue),
                State.of(rule, day).name());
    }

    /** Of which animals, without those that it excepts. */
    static String whom(Rule rule, Map<String, String> groups, RuleWords words) {
        return rule.taxonGroup() != null
                ? groups.getOrDefault(rule.taxonGroup(), rule.taxonGroup())
                : rule.scientificName() != null ? rule.scientificName() : words.allAnimals();
    }

    private static String about(Rule rule, Map<String, String> groups, RuleWords words) {
        String about = whom(rule, groups, words);
        return rule.exceptScientificNames().isEmpty()
                ? about
                : words.butNot(about, String.join(", ", rule.exceptScientificNames()));
    }

    private static String holds(Rule rule, LocalDate day, RuleWords words, ReleaseTongue tongue) {
        String span = rule.validTo() == null
                ? words.fromNoEnd(tongue.day(rule.validFrom()))
                : words.fromTo(tongue.day(rule.validFrom()), tongue.day(rule.validTo()));
        if (rule.holdsOn(day)) {
            return span;
        }
        return span + " " + (day.isBefore(rule.validFrom()) ? words.notYet() : words.noLonger());
    }

    static String metres(double metres, ReleaseTongue tongue) {
        return metres == Math.rint(metres)
                ? String.format(tongue.locale(), "%,.0f m", metres)
                : BigDecimal.valueOf(metres).stripTrailingZeros().toPlainString() + " m";
    }
}
