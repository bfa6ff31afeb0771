package org.culvert.hotspot;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.culvert.hotspot.beside.Beside;
import org.culvert.hotspot.beside.IsItLasting;
import org.culvert.hotspot.beside.IsItNew;
import org.culvert.hotspot.beside.RestsOn;
import org.culvert.hotspot.beside.Secondary;
import org.culvert.hotspot.beside.Sensitivity;
import org.culvert.road.traffic.TrafficUsed;
import org.jspecify.annotations.Nullable;

/**
 * What came out of a run. It holds nothing of when and by whom it was run, no caller, no carer and no single animal, so
 * that the same run on the same records is the same document, and a roads authority may have it.
 *
 * @param months collisions of the run by month of the year
 * @param hotspots by rank
 * @param isItNew where there was more of late; in runs of engine 3 and later
 * @param isItLasting where it was asked for
 * @param sensitivity where it was asked for
 * @param restsOn in runs of engine 3 and later
 * @param secondary where it was asked for
 * @param informationWithheld what the asker is not told; never in the document of a run
 */
public record HotspotReport(
        Engine engine,
        Network network,
        RunSettings settings,
        Inputs inputs,
        ErrorRate errorRate,
        List<Reason> leftOut,
        List<Month> months,
        String aboutIntervals,
        List<Stretch> hotspots,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable IsItNew isItNew,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable IsItLasting isItLasting,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Sensitivity sensitivity,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable RestsOn restsOn,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Secondary secondary,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable String informationWithheld) {

    /** What is said beside the hotspots. */
    Beside beside() {
        return new Beside(isItNew, isItLasting, sensitivity, secondary, restsOn);
    }

    /** The same, told otherwise. */
    HotspotReport told(List<Month> toldMonths, List<Stretch> toldHotspots, Beside beside, @Nullable String withheld) {
        return new HotspotReport(
                engine,
                network,
                settings,
                inputs,
                errorRate,
                leftOut,
                toldMonths,
                aboutIntervals,
                toldHotspots,
                beside.isItNew(),
                beside.isItLasting(),
                beside.sensitivity(),
                beside.restsOn(),
                beside.secondary(),
                withheld);
    }

    /** The same with what everybody may have of it. */
    HotspotReport toEverybody(int smallestCount) {
        return new HotspotReport(
                engine,
                network,
                settings,
                inputs,
                errorRate,
                List.of(),
                List.of(),
                aboutIntervals,
                hotspots.stream()
                        .filter(stretch -> stretch.incidents() >= smallestCount)
                        .map(stretch -> stretch.with(null))
                        .toList(),
                null,
                null,
                null,
                null,
                null,
                informationWithheld);
    }

    /** What computed it. */
    public record Engine(String name, String version) {}

    /** On which roads. */
    public record Network(int number, String sha256, int links, double kilometres) {}

    /**
     * From how much.
     *
     * @param incidentsInPeriod incidents of any cause in the period
     * @param collisionsCounted collisions that the run asks about
     * @param collisionsOfAllAnimals those of all animals in the same period and season
     * @param placedByJunction of those counted, how many lie by a junction whose roads are equally likely, and count on the
     *     nearest with a spread that reaches the others
     * @param timedByReport of those counted, how many count at the time of their report since nobody knows when they were
     * @param traffic which traffic was used, where the kind of chance asks for it; in runs of engine 6 and later
     */
    public record Inputs(
            int incidentsInPeriod,
            int collisionsCounted,
            int collisionsOfAllAnimals,
            int timedByReport,
            int placedByJunction,
            String sha256,

            @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable
            TrafficUsed traffic) {}

    /**
     * What the word hotspot claims here.
     *
     * @param claimed whether the rate is claimed of the real roads
     * @param chance kind of chance, in plain words
     * @param notControlled what in the records may make hotspots that are none
     * @param assumed what must hold although the records cannot show it
     */
    public record ErrorRate(
            String sentence,
            boolean claimed,
            double alpha,
            String chance,
            List<String> notControlled,
            List<String> assumed) {}

    public record Reason(String reason, int incidents) {}

    /**
     * @param month 1 for January
     * @param incidents null where the asker is not told; never in the document of a run
     */
    public record Month(int month, @Nullable Integer incidents) {}

    public record Point(double decimalLatitude, double decimalLongitude) {}

    /**
     * A hotspot.
     *
     * @param owner owners of the links on which there were incidents
     * @param fromChainageMetres where it starts along the road
     * @param incidents how many collisions
     * @param intervalLow lower end of the 95 % interval of the count
     * @param expected how many the kind of chance expects there
     * @param excess incidents less expected; it ranks
     * @param adjustedP p adjusted for all places of the network
     * @param lines longitude before latitude
     * @param alongTheRoad the road from a kilometre before the stretch to one behind it, of the first twelve, in runs made
     *     since it is told; null also where the asker is not told
     */
    public record Stretch(
            int rank,
            String road,
            @Nullable String owner,
            double fromChainageMetres,
            double toChainageMetres,
            double lengthMetres,
            int incidents,
            double intervalLow,
            double intervalHigh,
            double expected,
            double excess,
            double adjustedP,
            double incidentsPerKilometreAndYear,
            Point from,
            Point to,
            List<double[][]> lines,

            @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable
            List<Along> alongTheRoad) {
        Stretch with(@Nullable List<Along> curve) {
            return new Stretch(
                    rank,
                    road,
                    owner,
                    fromChainageMetres,
                    toChainageMetres,
                    lengthMetres,
                    incidents,
                    intervalLow,
                    intervalHigh,
                    expected,
                    excess,
                    adjustedP,
                    incidentsPerKilometreAndYear,
                    from,
                    to,
                    lines,
                    curve);
        }
    }

    /**
     * A piece of a hotspot's road. Densities are smoothed along the road, so that a collision counts on what lies around it,
     * and have four figures: what they say of the envelope is {@code significant}.
     *
     * @param fromChainageMetres where it starts along the road
     * @param toChainageMetres where it ends; another piece starts there, unless the road has a gap
     * @param incidentsPerKilometreAndYear what was reported
     * @param expectedPerKilometreAndYear what the kind of chance expects
     * @param envelopePerKilometreAndYear what would just be significant here at the error rate of the whole run; null where
     *     nothing would
     * @param significant whether what was reported reaches that
     */
    public record Along(
            double fromChainageMetres,
            double toChainageMetres,
            double incidentsPerKilometreAndYear,
            double expectedPerKilometreAndYear,
            @Nullable Double envelopePerKilometreAndYear,
            boolean significant) {}
}
