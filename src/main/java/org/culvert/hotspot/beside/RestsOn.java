package org.culvert.hotspot.beside;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.culvert.hotspot.stats.RecordDoubts;
import org.culvert.hotspot.stats.Recording;
import org.jspecify.annotations.Nullable;

/**
 * What a report rests on, and what the records cannot show.
 *
 * @param years how much was reported in each year
 * @param positions how sure the places are
 * @param roundedPositions of the collisions counted, how many were said to a whole step along the road; the search rounds its
 *     simulated ones alike. Null where the asker is not told
 * @param closePairs pairs of collisions counted that lie close along one road and within a day of each other: entered twice, or
 *     struck in one night. Null where the asker is not told
 * @param closePairsExpected how many there would be if places and days went separately; null where the asker is not told
 * @param caveats what no record shows
 */
public record RestsOn(
        List<Year> years,
        String aboutYears,
        List<Band> positions,
        @Nullable Integer roundedPositions,
        @Nullable Integer closePairs,
        @Nullable Double closePairsExpected,
        List<Caveat> caveats) {

    /**
     * A calendar year.
     *
     * @param whole whether all of it is in the period
     * @param incidents of any cause and any animal, in all seasons
     * @param collisionsOfAllAnimals those that were placed, in the season of the run
     * @param collisionsCounted those that the run asks about
     */
    public record Year(
            int year,
            boolean whole,
            @Nullable Integer incidents,
            @Nullable Integer collisionsOfAllAnimals,
            @Nullable Integer collisionsCounted) {}

    /**
     * Collisions whose place is known to so many metres.
     *
     * @param toMetres null for more than {@code fromMetres}
     * @param collisions null where the asker is not told
     * @param share of the collisions counted, null where the asker is not told or there is none
     */
    public record Band(
            double fromMetres,
            @Nullable Double toMetres,
            @Nullable Integer collisions,
            @Nullable Double share) {}

    /** Something that no record shows, and who found it. */
    public record Caveat(String words, @Nullable String source) {}

    private static final double[] BANDS = {0, 25, 100, 250, 500, 1000};

    private static final List<Caveat> CAVEATS = List.of(
            new Caveat(
                    "Many of the struck are never reported: half of the carcasses were gone after a day, fewer than a tenth"
                            + " of those there were seen, and deaths came to 2 to 10 times the counts. The figures here are"
                            + " of reports; what stands behind them differs between animals and roads, and is in no interval.",
                    "Santos et al. 2016, PLoS ONE, doi 10.1371/journal.pone.0165608"),
            new Caveat(
                    "A large animal is likely to be seen from farther and for longer than a small one: counts of two groups"
                            + " are no measure of how often each is struck (common experience; no figure of it here).",
                    null),
            new Caveat("Where nobody was sent to look, a road without reports is not a road without deaths.", null));

    /** @param incidentsByYear of any cause */
    public static RestsOn of(
            List<DatedEvent> group,
            List<DatedEvent> reports,
            SortedMap<Integer, Integer> incidentsByYear,
            LocalDate periodFrom,
            LocalDate periodTo,
            RecordDoubts doubts) {
        SortedMap<Integer, Integer> all = byYear(reports);
        SortedMap<Integer, Integer> counted = byYear(group);
        List<Year> years = new ArrayList<>();
        for (int year = periodFrom.getYear(); year <= periodTo.getYear(); year++) {
            boolean whole =
                    !periodFrom.isAfter(LocalDate.of(year, 1, 1)) && !periodTo.isBefore(LocalDate.of(year, 12, 31));
            years.add(new Year(
                    year,
                    whole,
                    incidentsByYear.getOrDefault(year, 0),
                    all.getOrDefault(year, 0),
                    counted.getOrDefault(year, 0)));
        }
        int rounded = (int) group.stream()
                .filter(dated -> dated.event().recording().roundingMetres() > 0)
                .count();
        return new RestsOn(
                years,
                aboutYears(years),
                bands(group),
                rounded,
                doubts.closePairs(),
                Figures.rounded(doubts.closePairsExpected(), 2),
                CAVEATS);
    }

    private static SortedMap<Integer, Integer> byYear(List<DatedEvent> events) {
        SortedMap<Integer, Integer> years = new TreeMap<>();
        events.forEach(dated -> years.merge(dated.day().getYear(), 1, Integer::sum));
        return years;
    }

    private static String aboutYears(List<Year> years) {
        int fewest = Integer.MAX_VALUE;
        int most = 0;
        int whole = 0;
        for (Year year : years) {
            Integer incidents = year.incidents();
            if (year.whole() && incidents != null) {
                whole++;
                fewest = Math.min(fewest, incidents);
                most = Math.max(most, incidents);
            }
        }
        String words = "A year in which fewer people ring looks calmer, whatever happens on the roads.";
        if (whole < 2) {
            return words + " There are too few whole years to see whether reporting changed.";
        }
        if (fewest == 0) {
            return words + " In some whole year nothing was reported at all.";
        }
        return words + " The busiest whole year had " + Figures.text((double) most / fewest, 1)
                + " times as many incidents of any cause as the calmest.";
    }

    private static List<Band> bands(List<DatedEvent> group) {
        int[] counts = new int[BANDS.length];
        for (DatedEvent dated : group) {
            Recording recording = dated.event().recording();
            int band = 0;
            while (band + 1 < BANDS.length && recording.spreadMetres() > BANDS[band + 1]) {
                band++;
            }
            counts[band]++;
        }
        List<Band> bands = new ArrayList<>();
        for (int band = 0; band < BANDS.length; band++) {
            bands.add(new Band(
                    BANDS[band],
                    band + 1 < BANDS.length ? Double.valueOf(BANDS[band + 1]) : null,
                    counts[band],
                    group.isEmpty() ? null : Double.valueOf(Figures.rounded((double) counts[band] / group.size(), 3))));
        }
        return bands;
    }
}
