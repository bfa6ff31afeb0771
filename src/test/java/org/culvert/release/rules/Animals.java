package org.culvert.release.rules;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Animals, places and rules for tests. */
final class Animals {
    static final LocalDate DAY = LocalDate.of(2026, 12, 1);
    static final UncertainPosition FOUND = UncertainPosition.of(-27.5, 153.0, 30);

    private Animals() {}

    static Subject koala(boolean orphan, @Nullable UncertainPosition found) {
        return new Subject(
                "Phascolarctos cinereus",
                "koalas",
                false,
                orphan,
                false,
                found == null ? Origin.unknown() : Origin.found(found));
    }

    static Subject turtle(@Nullable UncertainPosition found) {
        return new Subject(
                "Chelodina longicollis",
                "turtles",
                false,
                false,
                false,
                found == null ? Origin.unknown() : Origin.found(found));
    }

    static Site queensland(UncertainPosition at) {
        return new Site(at, "AU-QLD", Site.Consent.unknown);
    }

    static RuleDraft rule(RuleKind kind, Rule.Question test) {
        return new RuleDraft(kind, test);
    }

    /** A rule with defaults. */
    static final class RuleDraft {
        private final RuleKind kind;
        private final Rule.Question test;
        private String jurisdiction;
        private @Nullable String taxonGroup;
        private @Nullable String scientificName;
        private List<String> except = List.of();
        private Rule.AppliesTo appliesTo = Rule.AppliesTo.any;
        private @Nullable Double metres;
        private @Nullable Integer days;
        private @Nullable Double knownWithin;
        private List<Ground> grounds = List.of();
        private Rule.@Nullable UnknownOrigin unknownOrigin;
        private @Nullable String consents;
        private LocalDate reviewBy = DAY.plusDays(1);
        private LocalDate validFrom = DAY;
        private @Nullable LocalDate validTo;

        private RuleDraft(RuleKind kind, Rule.Question test) {
            this.kind = kind;
            this.test = test;
            this.jurisdiction = kind == RuleKind.policy ? Rule.NETWORK : "AU-QLD";
        }

        RuleDraft in(String jurisdiction) {
            this.jurisdiction = jurisdiction;
            return this;
        }

        RuleDraft aboutGroup(String key) {
            taxonGroup = key;
            return this;
        }

        RuleDraft about(String name) {
            scientificName = name;
            return this;
        }

        RuleDraft except(String name) {
            except = List.of(name);
            return this;
        }

        RuleDraft appliesTo(Rule.AppliesTo whom) {
            appliesTo = whom;
            return this;
        }

        RuleDraft atMost(double metres) {
            this.metres = metres;
            return this;
        }

        RuleDraft days(int most) {
            days = most;
            return this;
        }

        RuleDraft knownWithin(double metres) {
            knownWithin = metres;
            return this;
        }

        RuleDraft allowing(String ground) {
            grounds = List.of(new Ground(ground, "it is a " + ground));
            return this;
        }

        RuleDraft unknownOriginIs(Rule.UnknownOrigin outcome) {
            unknownOrigin = outcome;
            return this;
        }

        RuleDraft needing(String consents) {
            this.consents = consents;
            return this;
        }

        RuleDraft reviewBy(LocalDate day) {
            reviewBy = day;
            return this;
        }

        RuleDraft valid(LocalDate from, @Nullable LocalDate to) {
            validFrom = from;
            validTo = to;
            return this;
        }

        Rule make() {
            return new Rule(
                    UUID.randomUUID(),
                    0,
                    jurisdiction,
                    kind,
                    taxonGroup,
                    scientificName,
                    except,
                    appliesTo,
                    appliesTo == Rule.AppliesTo.any ? null : "as the rule has it",
                    test,
                    metres,
                    days,
                    knownWithin,
                    List.of(),
                    false,
                    grounds,
                    unknownOrigin,
                    consents,
                    "words",
                    "source",
                    DAY,
                    reviewBy,
                    validFrom,
                    validTo);
        }
    }
}
