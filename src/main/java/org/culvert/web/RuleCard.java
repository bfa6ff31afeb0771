package org.culvert.web;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.release.rules.Lifting;
import org.culvert.release.rules.Rule;
import org.culvert.release.rules.RuleKind;
import org.jspecify.annotations.Nullable;

/**
 * One release rule as the page tells it.
 *
 * @param due that its source should have been read again; null where it should not
 * @param holds from when until when, and what that means today
 * @param review the form to say that its source was read again
 * @param refused whether that form was sent and not taken
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
        List<FormField> review,
        List<FieldError> wrong,
        boolean refused) {

    /** Rules of one jurisdiction. */
    public record Jurisdiction(String code, List<RuleCard> rules) {
        public String name() {
            return code.equals(Rule.NETWORK) ? "The network's own policy" : code;
        }
    }

    /** @param groups names of groups by their keys */
    static RuleCard of(
            Rule rule, Map<String, String> groups, LocalDate day, List<FormField> review, List<FieldError> wrong) {
        Double metres = rule.greatestDistanceMetres();
        Double known = rule.originKnownWithinMetres();
        return new RuleCard(
                rule,
                asks(rule.test(), metres == null ? "" : metres(metres), rule.greatestDays() + " days"),
                rule.kind() + lifts(rule.lifting()),
                about(rule, groups),
                means(rule.appliesTo())
                        + (rule.appliesDefinition() == null ? "" : ", and calls them: " + rule.appliesDefinition()),
                rule.unknownOrigin() == null ? null : ofUnknownOrigin(rule.unknownOrigin()),
                known == null ? null : "only when it is known within " + metres(known),
                rule.isDueForReview(day)
                        ? "Due for review since " + rule.reviewBy()
                                + ". Until somebody has read its source again, it passes nothing without asking."
                        : null,
                holds(rule, day),
                review,
                wrong,
                !wrong.isEmpty());
    }

    private static String about(Rule rule, Map<String, String> groups) {
        String about = rule.taxonGroup() != null
                ? groups.getOrDefault(rule.taxonGroup(), rule.taxonGroup())
                : rule.scientificName() != null ? rule.scientificName() : "all animals";
        return rule.exceptScientificNames().isEmpty()
                ? about
                : about + ", but not " + String.join(", ", rule.exceptScientificNames());
    }

    private static String holds(Rule rule, LocalDate day) {
        String span = "From " + rule.validFrom()
                + (rule.validTo() == null ? ", no end is known." : " until the day before " + rule.validTo() + ".");
        if (rule.holdsOn(day)) {
            return span;
        }
        return span + (day.isBefore(rule.validFrom()) ? " It does not hold yet." : " It no longer holds.");
    }

    static String metres(double metres) {
        if (metres == Math.rint(metres)) {
            return String.format(Locale.ROOT, "%,.0f m", metres);
        }
        return BigDecimal.valueOf(metres).stripTrailingZeros().toPlainString() + " m";
    }

    static String kind(RuleKind kind) {
        return kind + lifts(kind.lifting());
    }

    private static String lifts(Lifting lifting) {
        return switch (lifting) {
            case byPermit -> ": only a permit with its number and document lifts it";
            case byOverride -> ": a named person lifts it, with a reason";
            case byNothing -> ": nothing lifts it";
            case notNeeded -> ": advice, which is shown and in nobody's way";
        };
    }

    static String means(Rule.AppliesTo means) {
        return switch (means) {
            case any -> "any age";
            case adult -> "adults";
            case orphan -> "orphans";
            case hatchling -> "hatchlings";
        };
    }

    static String ofUnknownOrigin(Rule.UnknownOrigin unknown) {
        return switch (unknown) {
            case notReleasable -> "it is not released";
            case withinRange -> "it goes somewhere within its kind's range";
            case withinRangeWithApproval -> "it goes somewhere within its kind's range, once that is approved";
        };
    }

    /**
     * What a rule asks, in words.
     *
     * @param metres the figure where it asks for metres
     * @param days the figure where it asks for days
     */
    static String asks(Rule.Question question, String metres, String days) {
        return switch (question) {
            case noRelease -> "Its kind is let go nowhere.";
            case foundPlaceFirst ->
                "It goes back where it was found, unless that place is unsuitable on a ground that the rule allows.";
            case greatestDistance -> "It goes no farther than " + metres + " from where it was found.";
            case landownerConsent -> "Who owns the land consents.";
            case parkApproval -> "Who keeps a park or reserve has approved, where the place is in one.";
            case borderApproval -> "Who may allow it across a border has approved.";
            case officerApproval -> "The wildlife officer of the place has approved.";
            case sameCatchment -> "An animal of the water goes to water of the catchment that it comes from.";
            case waterWithin -> "Water is no farther than " + metres + ".";
            case activePeriod -> "It is let go at a time of the day when its kind is about.";
            case fairWeather -> "It is not let go in weather that is likely to be hard on it.";
            case daysInCare -> "It has been in care no longer than " + days + ".";
            case fitness -> "A vet has signed that it is fit.";
            case notWithPets -> "It was not kept with pets.";
            case matesGoToo -> "Animals that were raised with it go with it.";
        };
    }
}
