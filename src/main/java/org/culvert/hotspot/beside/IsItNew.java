package org.culvert.hotspot.beside;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import org.culvert.hotspot.beside.RoadScene.PlaceOnRoad;
import org.culvert.hotspot.stats.pattern.PlacedEvents;
import org.culvert.hotspot.stats.pattern.SpaceTimeScan;
import org.jspecify.annotations.Nullable;

/**
 * Whether there was more at one place of late than the place and the time alone explain: the space-time permutation scan of
 * {@link SpaceTimeScan}, with windows that end with the period.
 *
 * @param sentence what it says, with its error rate and the kind of chance
 * @param longestWindowDays how far back a window may go
 * @param farthestMetres greatest radius of a window along the roads
 * @param simulations how many times the dates were dealt out anew; 0 where there was too little to ask
 * @param smallestP p of the most unusual window, adjusted for all; null where there is none
 * @param places what is named, the most unusual first
 * @param notControlled what in the records may make something look new that is not
 */
public record IsItNew(
        String sentence,
        int longestWindowDays,
        double farthestMetres,
        int simulations,
        @Nullable Double smallestP,
        List<NewPlace> places,
        List<String> notControlled) {

    /**
     * A place with more of late.
     *
     * @param centre of the window
     * @param radiusMetres along the roads from there
     * @param firstDay of the window; its last is that of the period
     * @param incidents collisions in it
     * @param expected by place and time alone
     * @param adjustedP adjusted for all windows
     */
    public record NewPlace(
            PlaceOnRoad centre,
            double radiusMetres,
            LocalDate firstDay,
            int incidents,
            double expected,
            double adjustedP) {}

    /** The error rate at which a place is named, of this question alone. */
    private static final double ALPHA = 0.05;

    private static final int LONGEST_DAYS = 366;
    private static final double GREATEST_SHARE = 0.5;
    private static final int MOST_PLACES = 10;
    private static final int MANY = 2000;
    private static final int VERY_MANY = 5000;
    private static final int FEWER = 199;
    private static final int FEWEST = 99;

    private static final List<String> NOT_CONTROLLED = List.of(
            "reporting that changed at one place: somebody new who looks there, or a campaign, is found like any other change",
            "roads that were opened, closed or made faster meanwhile");

    /**
     * @param group the collisions asked about, in any order
     * @param reachMetres half-width of the search's kernel; windows reach twice as far
     * @param minimumIncidents fewer are not named
     * @param simulations of the run; fewer are made of more than 2,000 collisions
     * @param links on which a place is named; its p is of the whole network
     */
    public static IsItNew ask(
            RoadScene scene,
            List<DatedEvent> group,
            LocalDate periodFrom,
            LocalDate periodTo,
            double reachMetres,
            int minimumIncidents,
            int simulations,
            long seed,
            IntPredicate links,
            int threads) {
        int days = (int) ChronoUnit.DAYS.between(periodFrom, periodTo) + 1;
        int longest = Math.max(1, Math.min(LONGEST_DAYS, days / 2));
        double farthest = 2 * reachMetres;
        int least = Math.max(2, minimumIncidents);
        if (group.size() < 2 * least || days < 2) {
            return new IsItNew(
                    "With " + group.size() + " collisions it cannot be said whether anything is new; it takes "
                            + 2 * least + ".",
                    longest,
                    farthest,
                    0,
                    null,
                    List.of(),
                    NOT_CONTROLLED);
        }
        int sets =
                Math.min(simulations, group.size() <= MANY ? simulations : group.size() <= VERY_MANY ? FEWER : FEWEST);
        List<DatedEvent> ordered = DatedEvent.inOrder(group);
        PlacedEvents placed = scene.placed(ordered);
        SpaceTimeScan.Findings findings = SpaceTimeScan.scan(
                placed,
                ordered.stream().map(DatedEvent::day).toList(),
                new SpaceTimeScan.Settings(
                        periodFrom,
                        periodTo,
                        SpaceTimeScan.Times.ENDING_LAST,
                        longest,
                        farthest,
                        least,
                        GREATEST_SHARE,
                        sets,
                        seed),
                Integer.MAX_VALUE,
                threads);
        List<NewPlace> places = new ArrayList<>();
        for (SpaceTimeScan.Window window : findings.windows()) {
            if (window.p() <= ALPHA && links.test(window.centre().link()) && places.size() < MOST_PLACES) {
                places.add(place(scene, window));
            }
        }
        Double smallest = findings.windows().isEmpty()
                ? null
                : Double.valueOf(Figures.significant(findings.windows().get(0).p()));
        return new IsItNew(
                sentence(places, smallest, longest, sets, periodTo),
                longest,
                farthest,
                sets,
                smallest,
                places,
                NOT_CONTROLLED);
    }

    private static NewPlace place(RoadScene scene, SpaceTimeScan.Window window) {
        return new NewPlace(
                scene.place(window.centre().link(), window.centre().metres()),
                Figures.rounded(window.radiusMetres(), 0),
                window.firstDay(),
                window.observed(),
                Figures.rounded(window.expected(), 2),
                Figures.significant(window.p()));
    }

    private static String sentence(
            List<NewPlace> places, @Nullable Double smallest, int longest, int sets, LocalDate periodTo) {
        String found = places.isEmpty()
                ? "Nothing is told to be new" + (smallest == null ? "" : " (smallest adjusted p " + smallest + ")")
                : places.size() == 1 ? "One place has more of late" : places.size() + " places have more of late";
        return found + ", in windows of up to " + longest + " days that end on " + periodTo
                + ". If the days of this group's collisions had nothing to do with their places, a run like this one"
                + " would name a place anywhere on the network in at most 5 % of cases; that was found by dealing the"
                + " days out anew " + sets
                + " times. It is a question of its own beside the hotspots, with an error rate"
                + " of its own.";
    }

    /** The same with other places. */
    public IsItNew withPlaces(String newSentence, List<NewPlace> told) {
        return new IsItNew(newSentence, longestWindowDays, farthestMetres, simulations, smallestP, told, notControlled);
    }
}
