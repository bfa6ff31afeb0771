package org.culvert.hotspot.stats.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.rng.UniformRandomProvider;
import org.culvert.hotspot.stats.Checks;
import org.culvert.hotspot.stats.rate.NegativeBinomialFit.Outcome;
import org.culvert.hotspot.stats.rate.SafetyPerformance.Basis;
import org.culvert.hotspot.stats.rate.SafetyPerformance.Dispersion;
import org.culvert.hotspot.stats.rate.SafetyPerformance.Settings;
import org.junit.jupiter.api.Test;

class SafetyPerformanceTest {
    private static final Settings PER_SITE = new Settings(Dispersion.PER_SITE, 5);

    /** From sites to ranks in one go, beside R with MASS's glm.nb. */
    @Test
    void fourHundredSitesAreRankedAsByR() {
        JsonNode mass = Checks.json("eb/nb_spf400.json");
        List<Site> sites = RateScenes.spf400();
        SafetyPerformance performance = SafetyPerformance.of(sites, PER_SITE);
        assertThat(performance.basis()).isEqualTo(Basis.RISK);
        assertThat(performance.fit().coefficients().get(0))
                .isCloseTo(mass.at("/coef/(Intercept)").asDouble(), within(1e-6));
        assertThat(performance.fit().theta()).isCloseTo(mass.get("theta").asDouble(), within(1e-4));
        List<CSVRecord> rows = Checks.csv("eb/nb_spf400.csv");
        for (EmpiricalBayes.Ranked ranked : performance.ranking(sites, 0.9)) {
            CSVRecord row = rows.get(Integer.parseInt(ranked.id()) - 1);
            assertThat(ranked.estimate().predicted()).isCloseTo(Checks.number(row, "mu_hat"), within(1e-6));
            assertThat(ranked.estimate().excess()).isCloseTo(Checks.number(row, "excess"), within(1e-5));
            assertThat(ranked.rank()).isEqualTo(Integer.parseInt(row.get("rank_excess")));
        }
    }

    /** By MASS, length and years alone. */
    @Test
    void withoutTrafficThereIsLengthAloneAndItSaysBurden() {
        List<Site> sites = RateScenes.spf400().stream()
                .map(site -> withTraffic(site, Double.NaN))
                .toList();
        SafetyPerformance performance = SafetyPerformance.of(sites, PER_SITE);
        assertThat(performance.basis()).isEqualTo(Basis.BURDEN);
        assertThat(performance.basis().sentence()).startsWith("Burden, not risk");
        assertThat(performance.design().names()).containsExactly("constant");
        assertThat(performance.fit().coefficients().get(0))
                .isCloseTo(Checks.json("eb/nb_null400.json").get("coef").asDouble(), within(1e-6));
        assertThat(performance.remarks()).anyMatch(remark -> remark.contains("none of the sites"));
        double one = performance.expected(1000, 1, Double.NaN, "rural");
        assertThat(performance.expected(2500, 4, Double.NaN, "rural")).isCloseTo(10 * one, within(1e-10));
        assertThat(performance.expected(1000, 1, 5000, "rural")).isEqualTo(one);
    }

    @Test
    void trafficKnownForSomeLeavesTheirSlopeAndGivesTheOthersALevel() {
        List<Site> known = RateScenes.sites(3, 300, 0.4);
        List<Site> mixed = new ArrayList<>(known);
        UniformRandomProvider random = RateScenes.random(8);
        for (int i = 0; i < 100; i++) {
            mixed.add(new Site("u" + i, 1000, 5, Double.NaN, "local", RateScenes.poisson(random, 9), false));
        }
        SafetyPerformance performance = SafetyPerformance.of(mixed, PER_SITE);
        assertThat(performance.design().names())
                .containsExactly("constant", "log AADT", "AADT not known", "class main");
        double slope =
                SafetyPerformance.of(known, PER_SITE).fit().coefficients().get(1);
        assertThat(performance.fit().coefficients().get(1)).isCloseTo(slope, within(0.03));
        assertThat(performance.expected(1000, 5, Double.NaN, "local")).isCloseTo(9, within(0.7));
        assertThat(performance.basis(2000)).isEqualTo(Basis.RISK);
        assertThat(performance.basis(Double.NaN)).isEqualTo(Basis.BURDEN);
        assertThat(performance.remarks()).anyMatch(remark -> remark.contains("100 of 400"));
        SafetyPerformance all = SafetyPerformance.of(known, PER_SITE);
        assertThatThrownBy(() -> all.expected(1000, 5, Double.NaN, "local"))
                .hasMessageContaining("traffic was known for every site");
    }

    @Test
    void treatedSitesTeachNothing() {
        List<Site> sites = RateScenes.sites(5, 200, 0.4);
        List<Site> withWorks = new ArrayList<>(sites);
        for (int i = 0; i < 30; i++) {
            withWorks.add(new Site("fence " + i, 900, 5, 4000, "main", 0, true));
        }
        SafetyPerformance plain = SafetyPerformance.of(sites, PER_SITE);
        SafetyPerformance performance = SafetyPerformance.of(withWorks, PER_SITE);
        assertThat(performance.fit()).isEqualTo(plain.fit());
        assertThat(performance.leftOut()).hasSize(30);
        assertThat(performance.leftOut().get(0).reason()).contains("works");
        assertThat(performance.estimate(withWorks.get(200), 0.95).excess()).isNegative();
    }

    @Test
    void plantedSlopeAndClassAreFound() {
        SafetyPerformance performance = SafetyPerformance.of(RateScenes.sites(11, 900, 0.4), PER_SITE);
        List<Double> coefficients = performance.fit().coefficients();
        List<Double> errors = performance.fit().standardErrors();
        assertThat(coefficients.get(1)).isCloseTo(0.7, within(3 * errors.get(1)));
        double timesAsMany = performance.expected(1000, 1, 900, "main") / performance.expected(1000, 1, 900, "local");
        assertThat(Math.log(timesAsMany)).isCloseTo(Math.log(2), within(3 * errors.get(2)));
        assertThat(performance.fit().overdispersion()).isCloseTo(0.4, within(0.1));
        assertThat(errors.get(1)).isLessThan(0.06);
    }

    @Test
    void classesOfTooFewIncidentsAreJoinedAndItIsSaid() {
        List<Site> sites = new ArrayList<>(RateScenes.sites(12, 200, 0.4));
        sites.add(new Site("lane", 800, 5, 400, "lane", 0, false));
        sites.add(new Site("track", 800, 5, 300, "track", 2, false));
        SafetyPerformance joined = SafetyPerformance.of(sites, PER_SITE);
        assertThat(joined.fit().outcome()).isEqualTo(Outcome.CONVERGED);
        assertThat(joined.design().names()).containsExactly("constant", "log AADT", "class main");
        assertThat(joined.remarks())
                .containsExactly("Too few incidents for a level of their own (lane, track): joined to class local.");
        assertThat(joined.expected(1000, 1, 500, "lane")).isEqualTo(joined.expected(1000, 1, 500, "local"));
        sites.add(new Site("drive", 800, 5, 300, "drive", 4, false));
        SafetyPerformance together = SafetyPerformance.of(sites, PER_SITE);
        assertThat(together.design().names()).contains("other classes");
        assertThat(together.expected(1000, 1, 500, "lane")).isEqualTo(together.expected(1000, 1, 500, "drive"));
        assertThatThrownBy(() -> together.expected(1000, 1, 500, "motorway")).hasMessageContaining("motorway");
    }

    /** Sites whose spread is that of a road cut up, long and short: the right kind of overdispersion is the likelier. */
    @Test
    void overdispersionPerKilometreLetsPartsAddUp() {
        UniformRandomProvider random = RateScenes.random(21);
        List<Site> sites = new ArrayList<>();
        for (int i = 0; i < 1500; i++) {
            double kilometres = i % 2 == 0 ? 0.2 : 4;
            double own = RateScenes.gamma(random, 3 * kilometres, 0.5 / kilometres);
            sites.add(new Site("s" + i, 1000 * kilometres, 1, Double.NaN, "x", RateScenes.poisson(random, own), false));
        }
        SafetyPerformance perKilometre = SafetyPerformance.of(sites, new Settings(Dispersion.PER_KILOMETRE, 1));
        SafetyPerformance perSite = SafetyPerformance.of(sites, PER_SITE);
        assertThat(perKilometre.fit().logLikelihood())
                .isGreaterThan(perSite.fit().logLikelihood() + 10);
        assertThat(perKilometre.overdispersion(1000)).isCloseTo(0.5, within(0.08));
        assertThat(perKilometre.overdispersion(250)).isCloseTo(4 * perKilometre.overdispersion(1000), within(1e-12));
        assertThat(perSite.overdispersion(250)).isEqualTo(perSite.overdispersion(4000));
        EmpiricalBayes whole = EmpiricalBayes.of(8, 0.2, 9, 0.95);
        EmpiricalBayes half = EmpiricalBayes.of(4, 0.4, 4, 0.95);
        EmpiricalBayes otherHalf = EmpiricalBayes.of(4, 0.4, 5, 0.95);
        assertThat(half.estimate() + otherHalf.estimate()).isCloseTo(whole.estimate(), within(1e-12));
        assertThat(half.variance() + otherHalf.variance()).isCloseTo(whole.variance(), within(1e-12));
    }

    @Test
    void residualsOfARightModelKeepToTheirBoundsAndThoseOfAWrongOneDoNot() {
        double outside = 0;
        for (long seed = 1; seed <= 20; seed++) {
            outside += SafetyPerformance.of(RateScenes.sites(seed, 300, 0.4), PER_SITE)
                            .residualsByTraffic()
                            .shareOutside()
                    / 20;
        }
        assertThat(outside).as("right model").isLessThan(0.1);
        UniformRandomProvider random = RateScenes.random(77);
        List<Site> shunned = new ArrayList<>();
        for (int i = 0; i < 600; i++) {
            double aadt = 200 * Math.exp(4 * random.nextDouble());
            double mean = 40 * aadt / 1000 * Math.exp(-aadt / 1500);
            shunned.add(new Site("s" + i, 1000, 5, aadt, "x", RateScenes.poisson(random, mean), false));
        }
        CumulativeResiduals residuals = SafetyPerformance.of(shunned, PER_SITE).residualsByTraffic();
        assertThat(residuals.shareOutside())
                .as("traffic that keeps animals off")
                .isGreaterThan(0.3);
    }

    @Test
    void sitesOfOneNameAreRefused() {
        Site site = new Site("a", 1000, 5, 400, "x", 2, false);
        assertThatThrownBy(() -> SafetyPerformance.of(List.of(site, site), PER_SITE))
                .hasMessageContaining("name of its own");
        Site treated = new Site("a", 1000, 5, 400, "x", 2, true);
        assertThatThrownBy(() -> SafetyPerformance.of(List.of(treated), PER_SITE))
                .hasMessageContaining("free of works");
        assertThatThrownBy(() -> new Site("a", 1000, 5, 0, "x", 2, false))
                .hasMessageContaining("NaN where it is not known");
    }

    private static Site withTraffic(Site site, double aadt) {
        return new Site(
                site.id(), site.lengthMetres(), site.years(), aadt, site.roadClass(), site.incidents(), site.treated());
    }
}
