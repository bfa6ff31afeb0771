package org.culvert.hotspot.stats.rate;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * How many collisions a piece of road like this one has: a safety performance function fitted to the sites themselves.
 *
 * <p>{@code log mu = log(km * years) + b0 + b1 log AADT + class}: a negative binomial model with length and years as an
 * offset (E. Hauer, D. W. Harwood, F. M. Council and M. S. Griffith 2002, Transportation Research Record 1784, 126-131,
 * doi:10.3141/1784-16). Treated sites are left out: they would make works look useless. Where the traffic of some sites is
 * not known, they have a level of their own beside the slope of the others. Where it is known nowhere, or does not differ,
 * there are only length and class, and the basis is {@link Basis#BURDEN}.
 *
 * <p>The slope on log AADT fails where traffic keeps animals off the road: look at {@link #residualsByTraffic()} before the
 * figures are believed.
 *
 * @param basis what the comparison between sites means
 * @param fit the model; without estimates it says why
 * @param design how a site becomes a row of the model
 * @param settings as given
 * @param sites what it was fitted to
 * @param leftOut what it was not fitted to, with the reason
 * @param remarks what a reader must know of how the model was made
 */
public record SafetyPerformance(
        Basis basis,
        NegativeBinomialFit fit,
        RoadDesign design,
        Settings settings,
        List<Site> sites,
        List<LeftOut> leftOut,
        List<String> remarks) {
    /** What is compared. */
    public enum Basis {
        /** Traffic is allowed for: sites are compared per vehicle, as far as the model goes. */
        RISK("Risk: traffic is allowed for, as far as the model goes."),
        /** Traffic is not allowed for. */
        BURDEN("Burden, not risk: traffic is not allowed for, so a busy road counts as worse for being busy.");

        private final String sentence;

        Basis(String sentence) {
            this.sentence = sentence;
        }

        /** For a report. */
        public String sentence() {
            return sentence;
        }
    }

    /** How the overdispersion depends on a site's length. */
    public enum Dispersion {
        /** The same k for each site, whatever its length: for sites of about the same length. */
        PER_SITE,
        /** k falls as one over the length, as it must for parts of a site to add up (Hauer 2001). */
        PER_KILOMETRE
    }

    /**
     * How to fit.
     *
     * @param dispersion how k depends on length
     * @param smallestClassIncidents incidents that a class of road must have to get a level of its own, 1 or more
     */
    public record Settings(Dispersion dispersion, int smallestClassIncidents) {
        public Settings {
            if (smallestClassIncidents < 1) {
                throw new IllegalArgumentException("a class needs at least 1 incident to have a level of its own");
            }
        }
    }

    /**
     * A site that the model does not use.
     *
     * @param id the site
     * @param reason why
     */
    public record LeftOut(String id, String reason) {}

    public SafetyPerformance {
        sites = List.copyOf(sites);
        leftOut = List.copyOf(leftOut);
        remarks = List.copyOf(remarks);
    }

    /**
     * Fits the function.
     *
     * @throws IllegalArgumentException where two sites have the same name, or none is untreated
     */
    public static SafetyPerformance of(List<Site> sites, Settings settings) {
        if (sites.stream().map(Site::id).distinct().count() < sites.size()) {
            throw new IllegalArgumentException("every site needs a name of its own");
        }
        List<Site> used = sites.stream().filter(site -> !site.treated()).toList();
        if (used.isEmpty()) {
            throw new IllegalArgumentException("no site is free of works: a model needs some that are");
        }
        List<LeftOut> leftOut = sites.stream()
                .filter(Site::treated)
                .map(site -> new LeftOut(site.id(), "works against collisions stand on it"))
                .toList();
        List<String> remarks = new ArrayList<>();
        RoadDesign design = RoadDesign.of(used, settings.smallestClassIncidents(), remarks);
        int rows = used.size();
        double[][] covariates = new double[rows][];
        double[] logExposure = new double[rows];
        int[] counts = new int[rows];
        double[] shares = new double[rows];
        for (int row = 0; row < rows; row++) {
            Site site = used.get(row);
            covariates[row] = design.row(site.aadt(), site.roadClass());
            logExposure[row] = Math.log(site.kilometreYears());
            counts[row] = site.incidents();
            shares[row] = share(settings.dispersion(), site.lengthMetres());
        }
        var fit = NegativeBinomialFit.of(design.names(), covariates, logExposure, counts, shares);
        Basis basis = design.usesTraffic() ? Basis.RISK : Basis.BURDEN;
        return new SafetyPerformance(basis, fit, design, settings, used, leftOut, remarks);
    }

    /** What a comparison of this site with others means: burden where its own traffic is not known. */
    public Basis basis(double aadt) {
        return Double.isNaN(aadt) ? Basis.BURDEN : basis;
    }

    /**
     * Expected incidents on a piece of road.
     *
     * @param lengthMetres above 0
     * @param years above 0
     * @param aadt vehicles a day; NaN where not known, and then only if some sites of the model had none, or none is used
     * @param roadClass a class that the model knows
     * @throws IllegalArgumentException where the model has no level for the class, or none for unknown traffic
     * @throws IllegalStateException where the model has no estimates
     */
    public double expected(double lengthMetres, double years, double aadt, String roadClass) {
        var site = new Site("here", lengthMetres, years, aadt, roadClass, 0, false);
        return fit.mean(design.row(site.aadt(), site.roadClass()), Math.log(site.kilometreYears()));
    }

    /** Expected incidents on a site. */
    public double expected(Site site) {
        return expected(site.lengthMetres(), site.years(), site.aadt(), site.roadClass());
    }

    /** k of a piece of road of a given length; 0 at the Poisson limit. */
    public double overdispersion(double lengthMetres) {
        return fit.overdispersion() / share(settings.dispersion(), lengthMetres);
    }

    /** The empirical Bayes estimate of a site, treated or not, used or not. */
    public EmpiricalBayes estimate(Site site, double level) {
        return EmpiricalBayes.of(expected(site), overdispersion(site.lengthMetres()), site.incidents(), level);
    }

    /** Sites by excess over what is expected of them, the greatest first. */
    public List<EmpiricalBayes.Ranked> ranking(List<Site> candidates, double level) {
        return EmpiricalBayes.rank(candidates.stream()
                .map(site -> new EmpiricalBayes.Named(site.id(), estimate(site, level)))
                .toList());
    }

    /** Cumulative residuals against traffic, of those sites whose traffic is known. */
    public CumulativeResiduals residualsByTraffic() {
        return residuals(Site::aadt);
    }

    /** Cumulative residuals against length. */
    public CumulativeResiduals residualsByLength() {
        return residuals(Site::lengthMetres);
    }

    /** Cumulative residuals against any covariate; sites for which it is NaN are left out. */
    public CumulativeResiduals residuals(ToDoubleFunction<Site> covariate) {
        return CumulativeResiduals.of(sites.stream()
                .filter(site -> !Double.isNaN(covariate.applyAsDouble(site)))
                .map(site -> new CumulativeResiduals.Residual(
                        covariate.applyAsDouble(site), site.incidents(), expected(site)))
                .toList());
    }

    private static double share(Dispersion dispersion, double lengthMetres) {
        return dispersion == Dispersion.PER_SITE ? 1 : lengthMetres / 1000;
    }
}
