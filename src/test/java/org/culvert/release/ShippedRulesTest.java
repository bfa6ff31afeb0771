package org.culvert.release;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import org.culvert.release.rules.Assessor;
import org.culvert.release.rules.Circumstances;
import org.culvert.release.rules.Finding;
import org.culvert.release.rules.Lifting;
import org.culvert.release.rules.Origin;
import org.culvert.release.rules.Rule;
import org.culvert.release.rules.Site;
import org.culvert.release.rules.Subject;
import org.culvert.release.rules.UncertainPosition;
import org.culvert.release.rules.Unsuitability;
import org.culvert.release.rules.Verdict;
import org.junit.jupiter.api.Test;

/**
 * The rows that the migration ships, run on a day on which they stand. Outside values: Release site assessment, Koala
 * Rehabilitators Hub, Queensland environment department (copy of 2024-25); Code of Practice, Care of Sick, Injured or
 * Orphaned Protected Animals in Queensland, section 15 (edition of 2013). Distances: checks/release/README.md.
 */
@QuarkusTest
class ShippedRulesTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 1);
    private static final UncertainPosition FOUND = UncertainPosition.of(-27.5, 153.0, 30);
    // 10,100.0 m from there, and 20,200.0 m
    private static final Site TEN_AND_A_BIT =
            new Site(UncertainPosition.of(-27.585644134, 152.965013590, 30), "AU-QLD", Site.Consent.yes);
    private static final Site TWENTY_AND_A_BIT =
            new Site(UncertainPosition.of(-27.562214376, 152.807791984, 30), "AU-QLD", Site.Consent.yes);

    @Inject
    RuleService rules;

    private List<Finding> assess(boolean orphan, Site site, LocalDate day, Unsuitability... against) {
        var koala = new Subject("Phascolarctos cinereus", "koalas", false, orphan, false, Origin.found(FOUND));
        return Assessor.assess(koala, site, List.of(against), shipped(), Circumstances.NOT_KNOWN, day);
    }

    /** Rehabilitator Authorisation Guide of Victoria, 30 June 2023: deer are not released at all. */
    @Test
    void inVictoriaADeerIsNotReleased() {
        Site there = new Site(FOUND, "AU-VIC", Site.Consent.yes);
        var deer = new Subject("Rusa unicolor", "deer", false, false, false, Origin.found(FOUND));
        assertThat(Assessor.assess(deer, there, List.of(), shipped(), Circumstances.NOT_KNOWN, DAY))
                .filteredOn(finding -> finding.test().equals("noRelease"))
                .singleElement()
                .satisfies(finding -> {
                    assertThat(finding.verdict()).isEqualTo(Verdict.fail);
                    assertThat(finding.lifting()).isEqualTo(Lifting.byNothing);
                });
        var stubbleQuail = new Subject("Coturnix pectoralis", "quail", false, false, false, Origin.found(FOUND));
        assertThat(Assessor.assess(stubbleQuail, there, List.of(), shipped(), Circumstances.NOT_KNOWN, DAY))
                .extracting(Finding::test)
                .doesNotContain("noRelease");
    }

    private List<Rule> shipped() {
        return rules.listRules().stream()
                .filter(rule -> rule.id().toString().startsWith("01920000-0000-7000-8000-"))
                .toList();
    }

    @Test
    void aKoalasRescueSiteComesFirst() {
        Site there = new Site(FOUND, "AU-QLD", Site.Consent.yes);
        assertThat(assess(false, there, DAY)).extracting(Finding::verdict).containsExactly(Verdict.pass, Verdict.pass);
        assertThat(assess(true, TEN_AND_A_BIT, DAY))
                .extracting(Finding::verdict)
                .containsExactly(Verdict.fail, Verdict.pass);
        var unsuitable = new Unsuitability("notSuitable", "cleared last month");
        assertThat(assess(true, TEN_AND_A_BIT, DAY, unsuitable))
                .extracting(Finding::verdict)
                .containsExactly(Verdict.pass, Verdict.pass);
    }

    @Test
    void aKoalaThatWasNoOrphanGoesTenKilometresAndAnOrphanTwenty() {
        assertThat(assess(false, TEN_AND_A_BIT, DAY).get(1).verdict()).isEqualTo(Verdict.fail);
        assertThat(assess(false, TEN_AND_A_BIT, DAY).get(1).limitMetres()).isEqualTo(10_000);
        assertThat(assess(true, TEN_AND_A_BIT, DAY).get(1).verdict()).isEqualTo(Verdict.pass);
        assertThat(assess(true, TWENTY_AND_A_BIT, DAY).get(1).verdict()).isEqualTo(Verdict.fail);
        assertThat(assess(true, TWENTY_AND_A_BIT, DAY).get(1).limitMetres()).isEqualTo(20_000);
    }

    @Test
    void fromTheStagedRepealOnTheKoalaRowsAsk() {
        assertThat(assess(true, TEN_AND_A_BIT, LocalDate.of(2027, 8, 31)))
                .extracting(Finding::verdict)
                .containsExactly(Verdict.fail, Verdict.pass);
        assertThat(assess(true, TEN_AND_A_BIT, LocalDate.of(2027, 9, 1)))
                .extracting(Finding::verdict)
                .containsExactly(Verdict.cantTell, Verdict.cantTell);
    }

    @Test
    void theGeneralCodeAsksSinceItsNewerEditionWasNotRead() {
        var turtle = new Subject("Chelodina longicollis", "turtles", false, false, false, Origin.found(FOUND));
        Site there = new Site(FOUND, "AU-QLD", Site.Consent.yes);
        List<Finding> findings = Assessor.assess(turtle, there, List.of(), shipped(), Circumstances.NOT_KNOWN, DAY);
        assertThat(findings).extracting(Finding::verdict).containsExactly(Verdict.cantTell);
        assertThat(findings.get(0).words()).contains("As last read it says pass");
    }
}
