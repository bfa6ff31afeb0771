package org.culvert.release.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * Queensland's published distances, at most 10 km from the rescue site for a koala that was not an orphan and at most 20
 * km for one rescued as an orphan (Release site assessment, Koala Rehabilitators Hub, Queensland environment department,
 * copy of 2024-25), at sites whose distances are GeodSolve's and PROJ's: see checks/release/README.md.
 */
class KoalaDistancesTest {
    private static final Rule NOT_AN_ORPHAN = Animals.rule(RuleKind.code, Rule.Question.greatestDistance)
            .about("Phascolarctos cinereus")
            .appliesTo(Rule.AppliesTo.adult)
            .atMost(10_000)
            .make();
    private static final Rule ORPHAN = Animals.rule(RuleKind.code, Rule.Question.greatestDistance)
            .about("Phascolarctos cinereus")
            .appliesTo(Rule.AppliesTo.orphan)
            .atMost(20_000)
            .make();

    @ParameterizedTest
    @CsvFileSource(resources = "/checks/release/koala_sites.csv", numLinesToSkip = 1)
    void aSiteIsHeldAgainstThePublishedDistance(
            double foundLatitude,
            double foundLongitude,
            double siteLatitude,
            double siteLongitude,
            double metres,
            Verdict notAnOrphan,
            Verdict orphan) {
        UncertainPosition found = UncertainPosition.of(foundLatitude, foundLongitude, 30);
        Site site = Animals.queensland(UncertainPosition.of(siteLatitude, siteLongitude, 30));

        Finding grown = only(Animals.koala(false, found), site);
        assertThat(grown.verdict()).isEqualTo(notAnOrphan);
        assertThat(grown.limitMetres()).isEqualTo(10_000);
        // 1e-5 m: the positions are written to a nanodegree, 0.1 mm, and the distance of the written ones to 1e-6 m
        assertThat(grown.separation().distanceMetres()).isCloseTo(metres, within(1e-5));

        Finding young = only(Animals.koala(true, found), site);
        assertThat(young.verdict()).isEqualTo(orphan);
        assertThat(young.limitMetres()).isEqualTo(20_000);
    }

    private static Finding only(Subject koala, Site site) {
        List<Finding> findings = Assessor.assess(
                koala, site, List.of(), List.of(NOT_AN_ORPHAN, ORPHAN), Circumstances.NOT_KNOWN, Animals.DAY);
        assertThat(findings).hasSize(1);
        return findings.get(0);
    }
}
