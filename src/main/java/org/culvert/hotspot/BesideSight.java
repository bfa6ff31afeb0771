package org.culvert.hotspot;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.culvert.hotspot.beside.Beside;
import org.culvert.hotspot.beside.IsItLasting;
import org.culvert.hotspot.beside.IsItNew;
import org.culvert.hotspot.beside.RestsOn;
import org.culvert.hotspot.beside.Secondary;
import org.culvert.hotspot.stats.SmallNumbers;
import org.jspecify.annotations.Nullable;

/** What a roads authority sees of what is said beside the hotspots. */
final class BesideSight {
    private final int smallest;

    BesideSight(int smallest) {
        this.smallest = smallest;
    }

    /** Places are not told of a group with a sensitive species; the numbers by year and the sureness of places are. */
    Beside ofASensitiveGroup(Beside beside) {
        RestsOn rests = beside.restsOn();
        return new Beside(null, null, null, null, rests == null ? null : seen(rests));
    }

    Beside seen(Beside beside) {
        IsItNew isNew = beside.isItNew();
        IsItLasting lasting = beside.isItLasting();
        Secondary secondary = beside.secondary();
        RestsOn rests = beside.restsOn();
        return new Beside(
                isNew == null ? null : seen(isNew),
                lasting == null ? null : seen(lasting),
                beside.sensitivity(),
                secondary == null ? null : seen(secondary),
                rests == null ? null : seen(rests));
    }

    private IsItNew seen(IsItNew whole) {
        List<IsItNew.NewPlace> told = whole.places().stream()
                .filter(place -> place.incidents() >= smallest)
                .toList();
        int left = whole.places().size() - told.size();
        return left == 0
                ? whole
                : whole.withPlaces(
                        whole.sentence() + " Places with fewer than " + smallest + " collisions are not told to you: "
                                + left + ".",
                        told);
    }

    private IsItLasting seen(IsItLasting whole) {
        return new IsItLasting(
                whole.sentence(),
                whole.windowYears(),
                whole.simulations(),
                whole.windows().stream()
                        .map(window -> new IsItLasting.Window(
                                window.from(),
                                window.to(),
                                orNull(window.collisions()),
                                window.hotspots(),
                                window.why()))
                        .toList(),
                whole.hotspots());
    }

    private Secondary seen(Secondary whole) {
        return new Secondary(
                whole.sentence(),
                seen(whole.segments()),
                seen(whole.neighbours()),
                seen(whole.groups()),
                seen(whole.groupsOfAnyDensity()),
                whole.together(),
                whole.togetherCorrected());
    }

    private Secondary.Groups seen(Secondary.Groups whole) {
        return new Secondary.Groups(
                whole.method(),
                whole.epsMetres(),
                whole.minimumIncidents(),
                whole.count(),
                orNull(whole.ungrouped()),
                whole.largest().stream()
                        .filter(group -> orNull(group.incidents()) != null)
                        .toList());
    }

    private Secondary.Segments seen(Secondary.Segments whole) {
        return new Secondary.Segments(
                whole.method(),
                whole.segmentMetres(),
                whole.tested(),
                whole.found().stream()
                        .filter(segment -> orNull(segment.incidents()) != null)
                        .toList());
    }

    private RestsOn seen(RestsOn whole) {
        return new RestsOn(
                years(whole.years()),
                whole.aboutYears(),
                bands(whole.positions()),
                orNull(whole.roundedPositions()),
                orNull(whole.closePairs()),
                orNull(whole.closePairs()) == null ? null : whole.closePairsExpected(),
                whole.caveats());
    }

    /** By year: what is counted, the rest of the placed collisions, and all other incidents, which together are all. */
    private List<RestsOn.Year> years(List<RestsOn.Year> years) {
        if (years.isEmpty()) {
            return years;
        }
        int[][] counts = years.stream()
                .map(year -> {
                    int counted = number(year.collisionsCounted());
                    int placed = Math.max(counted, number(year.collisionsOfAllAnimals()));
                    return new int[] {counted, placed - counted, Math.max(0, number(year.incidents()) - placed)};
                })
                .toArray(int[][]::new);
        boolean[][] hidden = SmallNumbers.hidden(counts, smallest);
        List<RestsOn.Year> told = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            RestsOn.Year year = years.get(i);
            boolean[] hides = hidden[i];
            // The first two together give nothing back that the total would not
            boolean tellsPlaced = hides[0] == hides[1] && !(hides[0] && hides[2]);
            told.add(new RestsOn.Year(
                    year.year(),
                    year.whole(),
                    hides[3] ? null : year.incidents(),
                    tellsPlaced ? year.collisionsOfAllAnimals() : null,
                    hides[0] ? null : year.collisionsCounted()));
        }
        return told;
    }

    private List<RestsOn.Band> bands(List<RestsOn.Band> bands) {
        int[] counts =
                bands.stream().mapToInt(band -> number(band.collisions())).toArray();
        boolean[] hidden = SmallNumbers.hidden(new int[][] {counts}, smallest)[0];
        List<RestsOn.Band> told = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            RestsOn.Band band = bands.get(i);
            told.add(hidden[i] ? new RestsOn.Band(band.fromMetres(), band.toMetres(), null, null) : band);
        }
        return told;
    }

    private @Nullable Integer orNull(@Nullable Integer count) {
        return count != null && count > 0 && count < smallest ? null : count;
    }

    private static int number(@Nullable Integer count) {
        return Objects.requireNonNullElse(count, 0);
    }
}
