package org.culvert.web.release;

import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;
import org.culvert.release.rules.Rule;
import org.culvert.web.Typed;
import org.jspecify.annotations.Nullable;

/** Which release rules are asked for, as texts of the page's address. */
public class RuleFilter {
    /** Which of them by what holds when. */
    public enum When {
        toCome,
        now,
        due,
        ended,
        all
    }

    @QueryParam("jurisdiction")
    @Nullable
    String jurisdiction;

    @QueryParam("group")
    @Nullable
    String group;

    @QueryParam("state")
    @Nullable
    String state;

    @QueryParam("words")
    @Nullable
    String words;

    @QueryParam("whole")
    @Nullable
    String whole;

    /** Where what holds is asked for, or null: everywhere. */
    public @Nullable String where() {
        return Typed.given(jurisdiction);
    }

    public String group() {
        return Objects.requireNonNullElse(Typed.given(group), "");
    }

    /** Anything else than one of the list means those that hold or will. */
    public String when() {
        return chosen().name();
    }

    private When chosen() {
        for (When when : When.values()) {
            if (when.name().equals(state)) {
                return when;
            }
        }
        return When.toCome;
    }

    public String words() {
        return Objects.requireNonNullElse(Typed.given(words), "");
    }

    /** Whether all are shown open, as for printing. */
    public boolean isWhole() {
        return "yes".equals(whole);
    }

    /** Whether a rule is meant, whatever its days are; of a place, those of its country and of the network hold too. */
    boolean isMeant(Rule rule, Function<String, @Nullable String> groupOf) {
        String place = where();
        return (place == null || rule.holdsIn(place) || rule.jurisdiction().equals(place))
                && isOfGroup(rule, groupOf)
                && (words().isEmpty() || said(rule).contains(words().toLowerCase(Locale.ROOT)));
    }

    /** A rule about a kind of animal whose group nobody knows is shown with every group. */
    private boolean isOfGroup(Rule rule, Function<String, @Nullable String> groupOf) {
        String asked = group();
        if (asked.isEmpty()) {
            return true;
        }
        if (rule.taxonGroup() != null) {
            return rule.taxonGroup().equals(asked);
        }
        String itsGroup = rule.scientificName() == null ? null : groupOf.apply(rule.scientificName());
        return itsGroup == null || itsGroup.equals(asked);
    }

    private static String said(Rule rule) {
        return String.join(
                        "\n",
                        rule.words(),
                        rule.source(),
                        rule.jurisdiction(),
                        Objects.requireNonNullElse(rule.scientificName(), ""),
                        Objects.requireNonNullElse(rule.appliesDefinition(), ""),
                        Objects.requireNonNullElse(rule.consents(), ""),
                        String.join("\n", rule.exceptScientificNames()))
                .toLowerCase(Locale.ROOT);
    }

    boolean isShown(Rule rule, LocalDate day) {
        return switch (chosen()) {
            case toCome -> RuleCard.State.of(rule, day) != RuleCard.State.ended;
            case now -> rule.holdsOn(day);
            case due -> RuleCard.State.of(rule, day) == RuleCard.State.due;
            case ended -> RuleCard.State.of(rule, day) == RuleCard.State.ended;
            case all -> true;
        };
    }
}
