package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What is said of a run beside its hotspots, and under the curves of its roads. */
@MessageBundle("beside")
public interface BesideWords {
    @Message("Is anything new?")
    String isItNew();

    @Message("More of late, the most unusual first")
    String moreOfLate();

    @Message("About km")
    String aboutKm();

    @Message("Within m")
    String withinMetres();

    @Message("Since")
    String since();

    @Message("Not controlled:")
    String notControlledHere();

    @Message("Is it lasting?")
    String isItLasting();

    @Message("Hotspots of this run through the windows")
    String throughWindows();

    @Message("Found in windows")
    String foundInWindows();

    @Message("Windows")
    String windows();

    @Message("Window")
    String window();

    @Message("Of them without a year in common")
    String windowsApart();

    @Message("Does it hang on the bandwidth?")
    String hangsOnBandwidth();

    @Message("Hotspots of this run at other bandwidths")
    String atOtherBandwidths();

    @Message("Bandwidth m")
    String bandwidth();

    @Message("Found")
    String foundThere();

    @Message("Ranks that stay")
    String ranksStay();

    @Message("Ranks that go")
    String ranksGo();

    @Message("Found besides")
    String foundBesides();

    @Message("What it rests on")
    String whatItRestsOn();

    @Message("Reports by year; – is not told")
    String reportsByYear();

    @Message("Incidents of any cause")
    String ofAnyCause();

    @Message("Collisions of all animals on these roads, in the season")
    String ofAllAnimals();

    @Message("Counted here")
    String countedHere();

    @Message("{year} (in part)")
    String inPart(int year);

    @Message("How sure the places are, along the road to either side")
    String howSurePlaces();

    @Message("Said to a whole step along the road: {count}. The simulated sets are rounded and spread " + "alike.")
    String saidToAStep(String count);

    @Message("Pairs within 200 m along one road and a day of each other: {pairs}; {byChance} if places "
            + "and days went separately. A pair may be one collision entered twice, or two animals struck "
            + "in one night.")
    String closePairs(String pairs, String byChance);

    @Message("What other methods show")
    String otherMethods();

    @Message("Segments tested one by one")
    String oneByOne();

    @Message("Segments with their neighbours")
    String withNeighbours();

    @Message("Groups")
    String groups();

    @Message("{count} groups of at least {fewest} collisions within {metres} m of each other; {ungrouped} "
            + "collisions in none.")
    String groupsWithin(int count, int fewest, String metres, String ungrouped);

    @Message("{count} groups of at least {fewest} collisions; {ungrouped} collisions in none.")
    String groupsOfAnyDensity(int count, int fewest, String ungrouped);

    @Message("The largest groups within one distance")
    String largestWithin();

    @Message("The largest groups of any density")
    String largestOfAnyDensity();

    @Message("Nearer together than even")
    String nearerThanEven();

    @Message("The greatest difference is at {metres} m, where they are nearer together than even: p {mad} "
            + "(MAD); p {dclf} over all distances (DCLF).")
    String nearerAt(String metres, String mad, String dclf);

    @Message("The greatest difference is at {metres} m, where they are farther apart than even: p {mad} "
            + "(MAD); p {dclf} over all distances (DCLF).")
    String fartherAt(String metres, String mad, String dclf);

    @Message("none")
    String none();

    @Message("Expected")
    String expected();

    @Message("Adjusted p")
    String adjustedShort();

    @Message("Metres")
    String metres();

    @Message("Share")
    String share();

    @Message("Days")
    String days();

    @Message("Hotspots")
    String hotspots();

    @Message("Segments")
    String segments();

    @Message("{tested} segments of {metres} m tested, {told} told.")
    String segmentsTested(int tested, String metres, int told);

    @Message("Segments with an adjusted p of at most 0.05; no hotspots")
    String segmentsCaption();

    @Message("more than {metres}")
    String moreThan(Object metres);

    @Message("{first} to {last}")
    String daysFromTo(String first, String last);

    @Message("Most was reported at km {kilometre}: {reported} collisions per km and year, smoothed along "
            + "the road, where chance expects {byChance}")
    String curveMost(String kilometre, String reported, String byChance);

    @Message("and {rate} would just be significant.")
    String curveSignificant(String rate);

    @Message("and nothing would be significant.")
    String curveNothing();

    @Message("Nowhere here does the line reach the shading's edge.")
    String curveNowhere();

    @Message("The line is at or above the shading's edge")
    String curveAbove();

    @Message("from km {from} to {to}")
    String fromKmToKm(String from, String to);

    @Message("and")
    String and();
}
