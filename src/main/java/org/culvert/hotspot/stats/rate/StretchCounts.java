package org.culvert.hotspot.stats.rate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What is known of one stretch of a road that a person asked about.
 *
 * @param stretch which
 * @param firstYear of the records
 * @param lastYear of the records
 * @param incidents with their place as recorded on the stretch
 * @param perhapsElsewhere those of them whose uncertainty reaches over an end of the stretch
 * @param perhapsHere incidents recorded beside the stretch whose uncertainty reaches onto it; not counted
 * @param ofUnknownUncertainty those counted whose uncertainty is not known
 * @param byYear counts, with every year of the records
 * @param bySeason counts, by name
 * @param byGroup counts, by name
 * @param cells counts of each year, season and group that has any, in that order
 * @param expected the empirical Bayes estimate for all years together; null where no model expects anything here
 */
public record StretchCounts(
        Stretch stretch,
        int firstYear,
        int lastYear,
        int incidents,
        int perhapsElsewhere,
        int perhapsHere,
        int ofUnknownUncertainty,
        List<Count> byYear,
        List<Count> bySeason,
        List<Count> byGroup,
        List<Cell> cells,
        @Nullable EmpiricalBayes expected) {
    /** Whether a stretch was chosen for what the records show. */
    public enum Choice {
        /** For a reason that is not in the records, such as a planned road widening. */
        BEFORE_LOOKING("It was chosen before anyone looked at the records."),
        /** Because the records are high there. */
        AFTER_LOOKING(
                "It was chosen after looking at the records: the count itself overstates what is usual here, and no"
                        + " test on the same records means anything."),
        /** Nobody said. */
        NOT_STATED("Whether it was chosen after looking at the records was not said: take it that it was.");

        private final String sentence;

        Choice(String sentence) {
            this.sentence = sentence;
        }

        /** For a report. */
        public String sentence() {
            return sentence;
        }
    }

    /**
     * A stretch.
     *
     * @param road its road
     * @param fromChainageMetres where it starts
     * @param toChainageMetres where it ends, greater
     * @param choice how it was chosen
     */
    public record Stretch(String road, double fromChainageMetres, double toChainageMetres, Choice choice) {
        public Stretch {
            if (!(fromChainageMetres < toChainageMetres)
                    || !Double.isFinite(fromChainageMetres)
                    || !Double.isFinite(toChainageMetres)) {
                throw new IllegalArgumentException("a stretch goes from a chainage to a greater one");
            }
        }

        /** Length in metres. */
        public double lengthMetres() {
            return toChainageMetres - fromChainageMetres;
        }
    }

    /**
     * A collision.
     *
     * @param road its road
     * @param chainageMetres where on it
     * @param uncertaintyMetres how far it may be from there, 0 or more; NaN where not known
     * @param year when
     * @param season name of its season, or the word for one that is not known
     * @param group name of the group of its animals, or the word for one that is not known
     */
    public record Collision(
            String road, double chainageMetres, double uncertaintyMetres, int year, String season, String group) {
        public Collision {
            if (!Double.isFinite(chainageMetres) || uncertaintyMetres < 0) {
                throw new IllegalArgumentException(
                        "a collision needs a chainage and an uncertainty of 0 or more, or NaN; one without a place is"
                                + " counted elsewhere");
            }
        }
    }

    /** A count and what it is of. */
    public record Count(String of, int incidents) {}

    /** A count by all three. */
    public record Cell(int year, String season, String group, int incidents) {}

    /**
     * What a model expects of a stretch.
     *
     * @param predicted for its length and all years of the records, above 0
     * @param overdispersion k of a stretch of this length
     * @param level of the interval
     */
    public record Prediction(double predicted, double overdispersion, double level) {}

    public StretchCounts {
        byYear = List.copyOf(byYear);
        bySeason = List.copyOf(bySeason);
        byGroup = List.copyOf(byGroup);
        cells = List.copyOf(cells);
    }

    /**
     * Counts. A collision at either end of the stretch is on it.
     *
     * @param collisions of the whole network or of any part that has the stretch and what lies beside it
     * @param firstYear of the records
     * @param lastYear of the records; collisions of other years are not counted
     * @param prediction null where no model expects anything here
     * @throws IllegalArgumentException where the last year is before the first
     */
    public static StretchCounts of(
            Stretch stretch, List<Collision> collisions, int firstYear, int lastYear, @Nullable Prediction prediction) {
        if (lastYear < firstYear) {
            throw new IllegalArgumentException("the last year, " + lastYear + ", is before the first, " + firstYear);
        }
        List<Collision> here = new ArrayList<>();
        int perhapsHere = 0;
        int perhapsElsewhere = 0;
        int unknown = 0;
        for (Collision collision : collisions) {
            if (!collision.road().equals(stretch.road())
                    || collision.year() < firstYear
                    || collision.year() > lastYear) {
                continue;
            }
            double inside = Math.min(
                    collision.chainageMetres() - stretch.fromChainageMetres(),
                    stretch.toChainageMetres() - collision.chainageMetres());
            if (inside < 0) {
                perhapsHere += -inside <= collision.uncertaintyMetres() ? 1 : 0;
                continue;
            }
            here.add(collision);
            perhapsElsewhere += inside < collision.uncertaintyMetres() ? 1 : 0;
            unknown += Double.isNaN(collision.uncertaintyMetres()) ? 1 : 0;
        }
        Map<Integer, Integer> years = new TreeMap<>();
        for (int year = firstYear; year <= lastYear; year++) {
            years.put(year, 0);
        }
        Map<String, Integer> seasons = new TreeMap<>();
        Map<String, Integer> groups = new TreeMap<>();
        for (Collision collision : here) {
            years.merge(collision.year(), 1, Integer::sum);
            seasons.merge(collision.season(), 1, Integer::sum);
            groups.merge(collision.group(), 1, Integer::sum);
        }
        return new StretchCounts(
                stretch,
                firstYear,
                lastYear,
                here.size(),
                perhapsElsewhere,
                perhapsHere,
                unknown,
                counts(years),
                counts(seasons),
                counts(groups),
                cells(here),
                prediction == null
                        ? null
                        : EmpiricalBayes.of(
                                prediction.predicted(), prediction.overdispersion(), here.size(), prediction.level()));
    }

    /** Years of the records. */
    public int years() {
        return lastYear - firstYear + 1;
    }

    /** Incidents per kilometre and year. */
    public double perKilometreYear() {
        return EmpiricalBayes.perKilometreYear(incidents, stretch.lengthMetres(), years());
    }

    private static <K> List<Count> counts(Map<K, Integer> counted) {
        return counted.entrySet().stream()
                .map(entry -> new Count(String.valueOf(entry.getKey()), entry.getValue()))
                .toList();
    }

    private static List<Cell> cells(List<Collision> here) {
        Map<Integer, Map<String, Map<String, Integer>>> counted = new TreeMap<>();
        for (Collision collision : here) {
            counted.computeIfAbsent(collision.year(), year -> new TreeMap<>())
                    .computeIfAbsent(collision.season(), season -> new TreeMap<>())
                    .merge(collision.group(), 1, Integer::sum);
        }
        List<Cell> cells = new ArrayList<>();
        counted.forEach((year, seasons) -> seasons.forEach((season, groups) ->
                groups.forEach((group, incidents) -> cells.add(new Cell(year, season, group, incidents)))));
        return cells;
    }
}
