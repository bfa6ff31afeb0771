package org.culvert.hotspot.works;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.culvert.hotspot.stats.rate.BeforeAfter;
import org.culvert.hotspot.stats.rate.BeforeAfter.Note;
import org.culvert.hotspot.stats.rate.ComparisonGroup;
import org.culvert.hotspot.stats.rate.TreatedStretch;
import org.jspecify.annotations.Nullable;

/**
 * The counts of works, before and after, made a study: what is expected of each part by the model, and the change on the
 * stretches that they are compared with.
 */
final class EffectStudy {
    static final double LEVEL = 0.95;

    /** Years of which a variance can be told. */
    private static final int LEAST_YEARS = 3;

    /**
     * What came of it.
     *
     * @param finding null where neither a model nor other stretches say what would have come
     * @param comparisonBefore collisions on the stretches that are compared
     * @param whyNot what is missing, if anything
     */
    record Outcome(
            BeforeAfter.@Nullable Finding finding,
            RoadModel model,
            List<TreatedStretch> stretches,
            int comparisonBefore,
            int comparisonAfter,
            List<String> whyNot) {}

    /** Collisions of all animals away from the works. */
    record Elsewhere(int before, int after) {}

    private final RoadPieces pieces;
    private final EffectZones zones;
    private final EffectPeriods periods;
    private final RoadModel model;
    private final List<RoadPieces.Part> compared;
    private final List<Note> notes;

    /**
     * @param compared the stretches to compare with; none for all roads of the model's classes without works
     */
    EffectStudy(
            RoadPieces pieces,
            EffectZones zones,
            EffectPeriods periods,
            RoadModel model,
            List<RoadPieces.Part> compared,
            List<Note> notes) {
        this.pieces = pieces;
        this.zones = zones;
        this.periods = periods;
        this.model = model;
        this.compared = compared;
        this.notes = notes;
    }

    Outcome of(Collisions read) {
        int[] before = new int[zones.zones().size()];
        int[] after = new int[before.length];
        int[] treatedByYear = new int[periods.before().size()];
        int[] comparedByYear = new int[treatedByYear.length];
        int comparisonAfter = 0;
        for (Collisions.Placed placed : read.ofGroup()) {
            EffectZones.Zone zone = zones.of(pieces, placed);
            boolean isCompared = zone == null && isCompared(placed);
            if (periods.isBefore(placed.day())) {
                int year = periods.yearBefore(placed.day());
                if (zone != null) {
                    before[zones.zones().indexOf(zone)]++;
                    treatedByYear[year]++;
                }
                comparedByYear[year] += isCompared ? 1 : 0;
            } else if (periods.isAfter(placed.day())) {
                if (zone != null) {
                    after[zones.zones().indexOf(zone)]++;
                }
                comparisonAfter += isCompared ? 1 : 0;
            }
        }
        List<String> whyNot = new ArrayList<>();
        List<TreatedStretch> stretches = stretches(before, after, whyNot);
        int comparisonBefore = Arrays.stream(comparedByYear).sum();
        ComparisonGroup comparison = comparison(treatedByYear, comparedByYear, comparisonAfter, whyNot);
        boolean told = comparison != null || stretches.stream().allMatch(TreatedStretch::hasModel);
        return new Outcome(
                told ? BeforeAfter.of(new BeforeAfter.Study(stretches, comparison, notes, LEVEL)) : null,
                model,
                stretches,
                comparisonBefore,
                comparisonAfter,
                whyNot);
    }

    private boolean isCompared(Collisions.Placed placed) {
        if (compared.isEmpty()) {
            return model.isReference(pieces, placed);
        }
        RoadPieces.Piece piece = pieces.pieceOf(placed.link());
        double chainage = pieces.chainage(placed.link(), placed.metres());
        return compared.stream()
                .anyMatch(part ->
                        part.piece().number() == piece.number() && part.from() <= chainage && chainage <= part.to());
    }

    private List<TreatedStretch> stretches(int[] before, int[] after, List<String> whyNot) {
        String obstacle = zones.roads().stream()
                .map(model::obstacle)
                .filter(words -> !words.isEmpty())
                .findFirst()
                .orElse("");
        if (!obstacle.isEmpty()) {
            whyNot.add(obstacle);
        }
        int yearsBefore = periods.before().size();
        int yearsAfter = periods.after().size();
        List<TreatedStretch> stretches = new ArrayList<>();
        for (int i = 0; i < before.length; i++) {
            EffectZones.Zone zone = zones.zones().get(i);
            String id = zone.road().piece().id() + " " + zone.road().from() + "-"
                    + zone.road().to();
            stretches.add(
                    obstacle.isEmpty()
                            ? new TreatedStretch(
                                    id,
                                    zone.part(),
                                    before[i],
                                    after[i],
                                    yearsBefore,
                                    yearsAfter,
                                    model.expected(zone.road(), yearsBefore),
                                    model.expectedLater(zone.road(), yearsAfter),
                                    model.overdispersion(zone.road().lengthMetres()))
                            : TreatedStretch.withoutModel(
                                    id, zone.part(), before[i], after[i], yearsBefore, yearsAfter));
        }
        return stretches;
    }

    private @Nullable ComparisonGroup comparison(
            int[] treatedByYear, int[] comparedByYear, int after, List<String> whyNot) {
        int before = Arrays.stream(comparedByYear).sum();
        if (before < 1 || after < 1) {
            whyNot.add("On the stretches to compare with there was no collision " + (before < 1 ? "before" : "after")
                    + ": how everything changed meanwhile cannot be told from them.");
            return null;
        }
        boolean inEveryYear = Arrays.stream(treatedByYear).allMatch(count -> count > 0)
                && Arrays.stream(comparedByYear).allMatch(count -> count > 0);
        double variance = inEveryYear && treatedByYear.length >= LEAST_YEARS
                ? ComparisonGroup.varianceOfOmega(boxed(treatedByYear), boxed(comparedByYear))
                : 0;
        return new ComparisonGroup(
                before,
                after,
                (double) periods.after().size() / periods.before().size(),
                variance);
    }

    private static List<Integer> boxed(int[] counts) {
        return Arrays.stream(counts).boxed().toList();
    }

    Elsewhere reportsElsewhere(Collisions read) {
        int before = 0;
        int after = 0;
        for (Collisions.Placed placed : read.all()) {
            if (zones.of(pieces, placed) == null) {
                before += periods.isBefore(placed.day()) ? 1 : 0;
                after += periods.isAfter(placed.day()) ? 1 : 0;
            }
        }
        return new Elsewhere(before, after);
    }
}
