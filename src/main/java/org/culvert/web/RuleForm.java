package org.culvert.web;

import jakarta.ws.rs.FormParam;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.release.RuleService;
import org.culvert.release.rules.Ground;
import org.culvert.release.rules.Rule;
import org.culvert.release.rules.RuleKind;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** The form that enters a release rule, as texts, so that what was typed stands there again. */
public class RuleForm {
    private static final int MOST_WORDS = 4000;
    private static final int MOST_NAME = 200;
    private static final int MOST_PREFERENCE = 500;
    private static final int MOST_PREFERENCES = 20;
    private static final int MOST_LINES = 100;
    private static final String DAY = "a day such as 2026-07-01";

    @FormParam("jurisdiction")
    @Nullable
    String jurisdiction;

    @FormParam("kind")
    @Nullable
    String kind;

    @FormParam("taxonGroup")
    @Nullable
    String taxonGroup;

    @FormParam("scientificName")
    @Nullable
    String scientificName;

    @FormParam("exceptScientificNames")
    @Nullable
    String exceptScientificNames;

    @FormParam("appliesTo")
    @Nullable
    String appliesTo;

    @FormParam("appliesDefinition")
    @Nullable
    String appliesDefinition;

    @FormParam("test")
    @Nullable
    String test;

    @FormParam("greatestDistanceMetres")
    @Nullable
    String greatestDistanceMetres;

    @FormParam("greatestDays")
    @Nullable
    String greatestDays;

    @FormParam("originKnownWithinMetres")
    @Nullable
    String originKnownWithinMetres;

    @FormParam("orderOfPreference")
    @Nullable
    String orderOfPreference;

    @FormParam("asksSecondPerson")
    @Nullable
    String asksSecondPerson;

    @FormParam("allowedGrounds")
    @Nullable
    String allowedGrounds;

    @FormParam("unknownOrigin")
    @Nullable
    String unknownOrigin;

    @FormParam("consents")
    @Nullable
    String consents;

    @FormParam("words")
    @Nullable
    String words;

    @FormParam("source")
    @Nullable
    String source;

    @FormParam("readOn")
    @Nullable
    String readOn;

    @FormParam("reviewBy")
    @Nullable
    String reviewBy;

    @FormParam("validFrom")
    @Nullable
    String validFrom;

    @FormParam("validTo")
    @Nullable
    String validTo;

    private final List<FieldError> errors = new ArrayList<>();

    /** The form as it stands on the page. */
    List<FormField> fields(List<FieldError> wrong, List<TaxonService.GroupView> groups) {
        var make = new FormField.Maker("", wrong);
        return List.of(
                make.line(
                        "jurisdiction",
                        "Whose rule it is",
                        "an ISO 3166 code such as AU-QLD; network for your own policy",
                        true,
                        jurisdiction),
                make.choice("kind", "Kind", true, kind, RuleKind.values(), RuleCard::kind),
                make.choice(
                        "taxonGroup",
                        "The group it is about",
                        false,
                        taxonGroup,
                        groups.stream()
                                .map(group -> new FormField.Option(group.key(), group.name()))
                                .toList()),
                make.line(
                        "scientificName",
                        "Or the taxon it is about",
                        "its scientific name; neither: it is about all animals",
                        false,
                        scientificName),
                make.lines(
                        "exceptScientificNames",
                        "Taxa it is not about",
                        "scientific names, one a line",
                        false,
                        exceptScientificNames),
                make.choice("appliesTo", "Whom it means", false, appliesTo, Rule.AppliesTo.values(), RuleCard::means),
                make.line(
                        "appliesDefinition",
                        "What it calls an adult, an orphan or a hatchling",
                        "in its own words; needed unless it means any",
                        false,
                        appliesDefinition),
                make.choice(
                        "test",
                        "What it asks",
                        true,
                        test,
                        Rule.Question.values(),
                        question -> RuleCard.asks(question, "some metres", "some days")),
                make.number(
                        "greatestDistanceMetres",
                        "The metres it asks for",
                        "for the two questions that ask for metres",
                        greatestDistanceMetres),
                make.number(
                        "greatestDays", "The days it asks for", "for the question that asks for days", greatestDays),
                make.number(
                        "originKnownWithinMetres",
                        "A found place counts as known within, metres",
                        "empty: however well it is known",
                        originKnownWithinMetres),
                make.lines(
                        "orderOfPreference",
                        "Where an animal should rather go",
                        "the best first, one a line, in the rule's own words",
                        false,
                        orderOfPreference),
                make.choice(
                        "asksSecondPerson",
                        "Must a second person agree before it is set aside?",
                        false,
                        asksSecondPerson,
                        List.of(new FormField.Option("yes", "yes; of policy alone"))),
                make.lines(
                        "allowedGrounds",
                        "Grounds on which the found place may be left",
                        "one a line, a key and its words: burnt: the place was burnt",
                        false,
                        allowedGrounds),
                make.choice(
                        "unknownOrigin",
                        "What it says of animals whose origin nobody knows",
                        false,
                        unknownOrigin,
                        Rule.UnknownOrigin.values(),
                        RuleCard::ofUnknownOrigin),
                make.lines("consents", "Whose consent is needed besides", "", false, consents),
                make.lines("words", "What it says", "in plain words", true, words),
                make.lines("source", "Source", "what was read, and what was not", true, source),
                make.day("readOn", "Read on", "", true, readOn),
                make.day("reviewBy", "Review by", "from that day it asks before it passes", true, reviewBy),
                make.day("validFrom", "Valid from", "", true, validFrom),
                make.day("validTo", "No longer valid from", "empty: no end is known", false, validTo));
    }

    /**
     * The rule that is entered.
     *
     * @throws InvalidException naming every field that cannot be read
     */
    RuleService.RuleEntry entry() {
        errors.clear();
        String whose = text("jurisdiction", jurisdiction, MOST_NAME);
        RuleKind of = Typed.read("kind", kind, RuleKind::valueOf, "one of the kinds that are listed", errors);
        Rule.AppliesTo meant =
                Typed.read("appliesTo", appliesTo, Rule.AppliesTo::valueOf, "one of those that are listed", errors);
        Rule.Question asked =
                Typed.read("test", test, Rule.Question::valueOf, "one of the questions that are listed", errors);
        Double metres = positive("greatestDistanceMetres", greatestDistanceMetres);
        Double known = positive("originKnownWithinMetres", originKnownWithinMetres);
        Integer days = Typed.read("greatestDays", greatestDays, Integer::valueOf, "a whole number of days", errors);
        if (days != null && days < 1) {
            wrong("greatestDays", "This is out of range.", "a whole number of days, 1 or more");
        }
        Rule.UnknownOrigin unknown = Typed.read(
                "unknownOrigin", unknownOrigin, Rule.UnknownOrigin::valueOf, "one of those that are listed", errors);
        LocalDate read = day("readOn", readOn);
        LocalDate review = day("reviewBy", reviewBy);
        LocalDate from = day("validFrom", validFrom);
        LocalDate to = day("validTo", validTo);
        if (whose != null && !whose.matches(Rule.ISO_3166 + "|" + Rule.NETWORK)) {
            wrong(
                    "jurisdiction",
                    "This is no code of a country or of a part of one.",
                    "AU-QLD for Queensland, or network");
        }
        String said = text("words", words, MOST_WORDS);
        String where = text("source", source, MOST_WORDS);
        String group = text("taxonGroup", taxonGroup, MOST_NAME);
        String name = text("scientificName", scientificName, MOST_NAME);
        String definition = text("appliesDefinition", appliesDefinition, MOST_WORDS);
        String consent = text("consents", consents, MOST_WORDS);
        List<String> except = lines("exceptScientificNames", exceptScientificNames, MOST_LINES, MOST_NAME);
        List<String> rather = lines("orderOfPreference", orderOfPreference, MOST_PREFERENCES, MOST_PREFERENCE);
        List<Ground> grounds = grounds();
        needed("jurisdiction", whose);
        needed("kind", of);
        needed("test", asked);
        needed("words", said);
        needed("source", where);
        needed("readOn", read);
        needed("reviewBy", review);
        needed("validFrom", from);
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
        return new RuleService.RuleEntry(
                Objects.requireNonNull(whose),
                Objects.requireNonNull(of),
                group,
                name,
                except,
                Objects.requireNonNullElse(meant, Rule.AppliesTo.any),
                definition,
                Objects.requireNonNull(asked),
                metres,
                days,
                known,
                rather,
                Typed.given(asksSecondPerson) != null,
                grounds,
                unknown,
                consent,
                Objects.requireNonNull(said),
                Objects.requireNonNull(where),
                Objects.requireNonNull(read),
                Objects.requireNonNull(review),
                Objects.requireNonNull(from),
                to);
    }

    private List<Ground> grounds() {
        List<Ground> grounds = new ArrayList<>();
        for (String line : lines("allowedGrounds", allowedGrounds, MOST_LINES, MOST_PREFERENCE)) {
            int colon = line.indexOf(':');
            String key = colon < 0 ? "" : line.substring(0, colon).strip();
            String meaning = colon < 0 ? "" : line.substring(colon + 1).strip();
            if (key.isEmpty() || meaning.isEmpty()) {
                wrong("allowedGrounds", "A ground has a key and words: " + line + ".", "burnt: the place was burnt");
            } else {
                grounds.add(new Ground(key, meaning));
            }
        }
        return grounds;
    }

    private List<String> lines(String field, @Nullable String text, int most, int longest) {
        List<String> lines = text == null
                ? List.of()
                : text.lines()
                        .map(String::strip)
                        .filter(line -> !line.isEmpty())
                        .toList();
        if (lines.size() > most || lines.stream().anyMatch(line -> line.length() > longest)) {
            wrong(field, "This is too long.", "at most " + most + " lines of at most " + longest + " characters");
            return List.of();
        }
        return lines;
    }

    private @Nullable LocalDate day(String field, @Nullable String text) {
        return read(field, text, LocalDate::parse, DAY);
    }

    private @Nullable Double positive(String field, @Nullable String text) {
        Double value = read(field, text, Double::valueOf, "metres, such as 1000");
        if (value != null && !(value > 0 && value <= Double.MAX_VALUE)) {
            wrong(field, "This is out of range.", "metres, more than 0");
            return null;
        }
        return value;
    }

    private <T> @Nullable T read(String field, @Nullable String text, Function<String, T> reader, String wanted) {
        return Typed.read(field, text, reader, wanted, errors);
    }

    private @Nullable String text(String field, @Nullable String text, int most) {
        String given = Typed.given(text);
        if (given != null && given.length() > most) {
            wrong(field, "This is too long.", "at most " + most + " characters");
        }
        return given;
    }

    private void needed(String field, @Nullable Object value) {
        if (value == null && errors.stream().noneMatch(error -> error.field().equals(field))) {
            wrong(field, "This is needed.", "a value");
        }
    }

    private void wrong(String field, String detail, String wanted) {
        errors.add(new FieldError(field, detail, wanted, null));
    }
}
