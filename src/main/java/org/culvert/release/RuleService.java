package org.culvert.release;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.StaleException;
import org.culvert.release.rules.Ground;
import org.culvert.release.rules.Rule;
import org.culvert.release.rules.Rule.Question;
import org.culvert.release.rules.RuleKind;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Keeps release rules: shipped, and those a network enters for itself. */
@ApplicationScoped
public class RuleService {
    /**
     * A rule as entered.
     *
     * @param jurisdiction ISO 3166 code of a country or of a part of one, such as {@code AU-QLD}; {@code network} for
     *     the network's own policy, and for that alone
     * @param taxonGroup key of the group it is about; with {@code scientificName} left out too it is about all
     * @param appliesDefinition what the rule itself calls an adult or an orphan; needed unless it is about any
     * @param greatestDistanceMetres needed for {@code greatestDistance} and {@code waterWithin}, and for these alone
     * @param greatestDays needed for {@code daysInCare}, and for that alone
     * @param asksSecondPerson whether a second person must agree before it is set aside; for the network's own policy alone
     * @param orderOfPreference where an animal should rather go, first the best, in the rule's own words
     * @param reviewBy the day from which it asks before it passes
     */
    public record RuleEntry(
            @NotNull @Pattern(regexp = Rule.ISO_3166 + "|network", message = "must be an ISO 3166 code or network")
            String jurisdiction,

            @NotNull RuleKind kind,
            @Nullable @Size(max = 200) String taxonGroup,
            @Nullable @Size(max = 200) String scientificName,
            List<String> exceptScientificNames,
            Rule.AppliesTo appliesTo,
            @Nullable String appliesDefinition,
            @NotNull Question test,
            @Nullable @Positive Double greatestDistanceMetres,
            @Nullable @Positive Integer greatestDays,
            @Nullable @Positive Double originKnownWithinMetres,
            @Size(max = 20) List<@NotBlank @Size(max = 500) String> orderOfPreference,
            Boolean asksSecondPerson,
            List<Ground> allowedGrounds,
            Rule.@Nullable UnknownOrigin unknownOrigin,
            @Nullable String consents,
            @NotBlank String words,
            @NotBlank String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @NotNull LocalDate validFrom,
            @Nullable LocalDate validTo) {
        public RuleEntry {
            exceptScientificNames = exceptScientificNames == null ? List.of() : List.copyOf(exceptScientificNames);
            appliesTo = appliesTo == null ? Rule.AppliesTo.any : appliesTo;
            orderOfPreference = orderOfPreference == null ? List.of() : List.copyOf(orderOfPreference);
            asksSecondPerson = asksSecondPerson != null && asksSecondPerson;
            allowedGrounds = allowedGrounds == null ? List.of() : List.copyOf(allowedGrounds);
        }
    }

    /**
     * Someone has read the source of a rule again.
     *
     * @param source what was read, where it is another edition; left out: the same
     * @param reviewBy the day from which it asks again
     * @param validTo the first day on which it no longer holds, where the source says so; what holds instead is a new row
     */
    public record ReviewEntry(
            @Nullable String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @Nullable LocalDate validTo,
            @NotBlank String reason) {}

    private final ReleaseRepositories.ReleaseRules rules;
    private final TaxonService taxa;

    RuleService(ReleaseRepositories.ReleaseRules rules, TaxonService taxa) {
        this.rules = rules;
        this.taxa = taxa;
    }

    @Transactional
    public Rule createRule(RuleEntry entry) {
        requireWhole(entry);
        UUID groupId = entry.taxonGroup() == null
                ? null
                : taxa.requireGroup("taxonGroup", entry.taxonGroup()).id();
        ReleaseRule row = ReleaseRule.of(entry, groupId);
        rules.persistAndFlush(row);
        return row.rule(entry.taxonGroup());
    }

    /**
     * As {@link #review(UUID, ReviewEntry)}, by somebody who saw the rule as one version of it.
     *
     * @throws StaleException if it is no longer that version
     */
    @Transactional
    public Rule review(UUID id, int version, ReviewEntry entry) {
        if (require(id).version() != version) {
            throw new StaleException("Somebody changed this rule in between.");
        }
        return review(id, entry);
    }

    /** Records that the source was read again, and on what day it wants reading next. */
    @Transactional
    public Rule review(UUID id, ReviewEntry entry) {
        ReleaseRule row = require(id);
        if (!entry.reviewBy().isAfter(entry.readOn())) {
            throw InvalidException.of("reviewBy", "It would be due at once.", "a day after readOn");
        }
        if (entry.validTo() != null && !entry.validTo().isAfter(row.validFrom)) {
            throw InvalidException.of("validTo", "It ends before it begins.", "a day after " + row.validFrom);
        }
        row.review(entry);
        rules.flush();
        return row.rule(row.taxonGroupId == null ? null : groupKeys().get(row.taxonGroupId));
    }

    @Transactional
    public Rule getRule(UUID id) {
        ReleaseRule row = require(id);
        return row.rule(row.taxonGroupId == null ? null : groupKeys().get(row.taxonGroupId));
    }

    private ReleaseRule require(UUID id) {
        return rules.findByIdOptional(id).orElseThrow(() -> new NotFoundException("release rule", id));
    }

    /** All rules, those of other days too, in a stable order. */
    @Transactional
    public List<Rule> listRules() {
        Map<UUID, String> keys = groupKeys();
        return rules.list("order by jurisdiction, id").stream()
                .map(row -> row.rule(row.taxonGroupId == null ? null : keys.get(row.taxonGroupId)))
                .toList();
    }

    private Map<UUID, String> groupKeys() {
        return taxa.listGroups().stream()
                .collect(Collectors.toMap(TaxonService.GroupView::id, TaxonService.GroupView::key));
    }

    private static void requireWhole(RuleEntry entry) {
        if ((entry.kind() == RuleKind.policy) != entry.jurisdiction().equals(Rule.NETWORK)) {
            throw InvalidException.of(
                    "jurisdiction",
                    "The network's own rules are policy, and policy is the network's own.",
                    "network for policy, an ISO 3166 code for the rest");
        }
        if (entry.taxonGroup() != null && entry.scientificName() != null) {
            throw InvalidException.of("scientificName", "It is about a group or about a taxon.", "one of the two");
        }
        if (entry.appliesTo() != Rule.AppliesTo.any && isBlank(entry.appliesDefinition())) {
            throw InvalidException.of(
                    "appliesDefinition", "It does not say whom it means.", "what the rule calls an adult or an orphan");
        }
        if (entry.test().asksForMetres() != (entry.greatestDistanceMetres() != null)) {
            throw InvalidException.of(
                    "greatestDistanceMetres",
                    "A greatest distance is asked for by greatestDistance and waterWithin, and by these alone.",
                    "metres for greatestDistance and waterWithin, nothing for the rest");
        }
        if ((entry.test() == Question.daysInCare) != (entry.greatestDays() != null)) {
            throw InvalidException.of(
                    "greatestDays",
                    "A number of days is asked for by daysInCare, and by that alone.",
                    "days for daysInCare, nothing for the rest");
        }
        if (entry.asksSecondPerson() && entry.kind() != RuleKind.policy) {
            throw InvalidException.of(
                    "asksSecondPerson",
                    "Only the network's own policy is set aside by a person, so only it can ask for a second one.",
                    "true for policy, nothing for the rest");
        }
        for (Ground ground : entry.allowedGrounds()) {
            if (isBlank(ground.key()) || isBlank(ground.words())) {
                throw InvalidException.of("allowedGrounds", "A ground has a key and words.", "both of them");
            }
        }
        if (entry.validTo() != null && !entry.validTo().isAfter(entry.validFrom())) {
            throw InvalidException.of("validTo", "It ends before it begins.", "a day after validFrom");
        }
    }

    private static boolean isBlank(@Nullable String text) {
        return text == null || text.isBlank();
    }
}
