package org.culvert.web.release;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.RegionService;
import org.culvert.release.RuleService.ReviewEntry;
import org.culvert.release.RuleService.RuleEntry;
import org.culvert.release.rules.Rule;
import org.culvert.release.rules.RuleKind;
import org.culvert.taxon.TaxonService;
import org.culvert.web.Languages;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.SentFields;
import org.culvert.web.words.FormsWords;
import org.culvert.web.words.RuleWords;

/** The forms of release rules, and what they say. */
@ApplicationScoped
class RuleForms {
    private final TaxonService taxa;
    private final FormBodies bodies;
    private final RegionService region;
    private final Languages languages;

    RuleForms(TaxonService taxa, FormBodies bodies, RegionService region, Languages languages) {
        this.taxa = taxa;
        this.bodies = bodies;
        this.region = region;
        this.languages = languages;
    }

    /** The form that enters a rule. */
    EntryForm entering(SentFields sent, List<FieldError> wrong) {
        RuleWords words = languages.words(RuleWords.class);
        FormsWords usual = languages.words(FormsWords.class);
        return new EntryForm("enter", sent, wrong)
                .text("jurisdiction", words.whose(), words.whoseHint(), true)
                .choice("kind", words.kindField(), true, RuleKind.values(), words::kind)
                .choice(
                        "taxonGroup",
                        words.group(),
                        words.groupHint(),
                        false,
                        taxa.listGroups().stream()
                                .map(group -> new Option(group.key(), group.name()))
                                .toList())
                .text("scientificName", words.scientificName(), "", false)
                .list("exceptScientificNames", words.except(), words.exceptHint(), false)
                .choice("appliesTo", words.appliesTo(), false, Rule.AppliesTo.values(), words::means)
                .text("appliesDefinition", words.appliesDefinition(), words.appliesHint(), false)
                .choice(
                        "test",
                        words.test(),
                        true,
                        Rule.Question.values(),
                        test -> words.asks(test, words.someMetres(), words.someDays()))
                .number("greatestDistanceMetres", words.metresField(), words.metresHint(), false)
                .count("greatestDays", words.daysField(), words.daysHint(), false)
                .number("originKnownWithinMetres", words.knownField(), words.knownHint(), false)
                .list("orderOfPreference", words.orderField(), words.orderHint(), false)
                .truth("asksSecondPerson", words.secondField(), false, usual.yes(), usual.no())
                .list("allowedGrounds", words.groundsField(), words.groundsHint(), false)
                .choice("unknownOrigin", words.unknownField(), false, Rule.UnknownOrigin.values(), words::ofUnknown)
                .lines("consents", words.consentsField(), "", false)
                .lines("words", words.wordsField(), words.wordsHint(), true)
                .lines("source", words.source(), words.sourceHint(), true)
                .day("readOn", words.readOn(), "", true)
                .day("reviewBy", words.reviewBy(), words.reviewHint(), true)
                .day("validFrom", words.validFrom(), "", true)
                .day("validTo", words.validTo(), words.validToHint(), false);
    }

    /** @throws InvalidException naming every field that is wrong */
    RuleEntry entered(SentFields sent) {
        EntryBody body = entering(sent, List.of()).read(region.zone());
        String whose = sent.given("jurisdiction");
        if (whose != null && !whose.matches(Rule.ISO_3166 + "|" + Rule.NETWORK)) {
            body.refuse(
                    "jurisdiction",
                    "This is no code of a country or of a part of one.",
                    "AU-QLD for Queensland, or network");
        }
        JsonNode lines = body.told().remove("allowedGrounds");
        if (lines != null) {
            var grounds = body.told().putArray("allowedGrounds");
            for (JsonNode line : lines) {
                String[] told = line.asText().split(":", 2);
                if (told.length < 2 || told[0].isBlank() || told[1].isBlank()) {
                    body.refuse(
                            "allowedGrounds",
                            "A ground has a key and words: " + line.asText() + ".",
                            "burnt: the place was burnt");
                } else {
                    grounds.addObject().put("key", told[0].strip()).put("words", told[1].strip());
                }
            }
        }
        return body.read(bodies, RuleEntry.class);
    }

    /** The form that stands beside a rule. */
    EntryForm review(SentFields sent, List<FieldError> wrong) {
        RuleWords words = languages.words(RuleWords.class);
        return new EntryForm("review", sent, wrong)
                .day("readOn", words.readOn(), "", true)
                .day("reviewBy", words.reviewBy(), words.reviewHint(), true)
                .lines("source", words.editionField(), words.editionHint(), false)
                .day("validTo", words.validTo(), words.endHint(), false)
                .lines("reason", words.reasonField(), "", true);
    }

    /** @throws InvalidException naming every field that is wrong */
    ReviewEntry reviewed(SentFields sent) {
        return review(sent, List.of()).read(region.zone()).read(bodies, ReviewEntry.class);
    }

    /** Which version of the rule the page showed. */
    static int seenVersion(SentFields sent) {
        String version = sent.text("version");
        if (!version.matches("\\d{1,9}")) {
            throw InvalidException.of(
                    "version", "It is not said which version was seen.", "the form of the page, as it came");
        }
        return Integer.parseInt(version);
    }
}
