package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What pages about roads say: seasons, burden and works. */
@MessageBundle("roads")
public interface RoadWords {
    @Message("Road evidence")
    String evidence();

    @Message("Ask about a stretch")
    String stretch();

    @Message("Roads beside roads like them")
    String burdenLink();

    @Message("When collisions happen")
    String seasonsLink();

    @Message("Works")
    String worksLink();

    @Message("Not answered.")
    String notAnswered();

    @Message("Not entered.")
    String notEntered();

    @Message("Ask")
    String ask();

    @Message("Animals")
    String animals();

    @Message("All animals")
    String allAnimals();

    @Message("all")
    String all();

    @Message("not told")
    String notTold();

    @Message("not known")
    String notKnown();

    @Message("none")
    String none();

    @Message("yes")
    String yes();

    @Message("no")
    String no();

    @Message("Month")
    String month();

    @Message("{from} to {to}")
    String period(String from, String to);

    @Message("on the roads of {owner}")
    String onRoadsOf(Object owner);

    @Message("Counts below {least}, and those that would give them back, are not told to you.")
    String smallNotTold(Object least);

    @Message("Do the two have the same season?")
    String sameSeason();

    @Message("statistic {statistic}, p {p}")
    String testWords(Object statistic, Object p);

    @Message("Incidents with animals of both groups, which are in neither sample here: {count}.")
    String inBoth(Object count);

    @Message("What must be known to read this")
    String toRead();

    @Message("Ask when collisions happen")
    String askWhen();

    @Message("Of whole years; with both days left empty, of the five calendar years before this one.")
    String askWhenHint();

    @Message("First day")
    String firstDay();

    @Message("Last day")
    String lastDay();

    @Message("Compared with")
    String comparedWith();

    @Message("no other group")
    String noOther();

    @Message("On roads of")
    String roadsOf();

    @Message("every owner")
    String everyOwner();

    @Message("Collisions: {count}.")
    String collisionsOf(Object count);

    @Message("Of these, counted on the day of their report since nobody knows when they happened: " + "{count}.")
    String onDayOfReport(Object count);

    @Message("By month.")
    String byMonth();

    @Message("{group} by month")
    String byMonthOf(Object group);

    @Message("January from the top and on by the clock; the area of a petal goes with its count, the "
            + "rings are the greatest count and half of it.")
    String roseOfMonths();

    @Message("There is nothing that could be drawn.")
    String nothingToDraw();

    @Message("By hour of the collision,")
    String byHour();

    @Message("{group} by hour of the day")
    String byHourOf(Object group);

    @Message("where it is known: midnight at the top.")
    String hourHint();

    @Message("Mean hour: {hour}.")
    String meanHour(Object hour);

    @Message("Hour not known: {count}.")
    String hourUnknown(Object count);

    @Message("In figures")
    String inFigures();

    @Message("By hour of the report:")
    String byReport();

    @Message("{group} by hour of the report")
    String byReportOf(Object group);

    @Message("when people ring, which is not when animals are struck.")
    String reportHint();

    @Message("Collisions and calls by month")
    String collisionsAndCalls();

    @Message("Collisions")
    String collisions();

    @Message("Calls of any kind")
    String callsOfAnyKind();

    @Message("How light it was")
    String howLight();

    @Message("Light")
    String lightHead();

    @Message("Of all time")
    String ofAllTime();

    @Message("{#switch light}{#case 'day'}day{#case 'civil-twilight'}civil twilight{#case "
            + "'nautical-twilight'}nautical twilight{#case 'astronomical-twilight'}astronomical "
            + "twilight{#case 'night'}night{#else}{light}{/switch}")
    String light(String light);

    @Message("What the tests say")
    String whatTestsSay();

    @Message("Test against the bare year")
    String testHead();

    @Message("Statistic")
    String statistic();

    @Message("By")
    String by();

    @Message("Mean day: {day};")
    String meanDay(Object day);

    @Message("{day}, give or take {days} days")
    String giveOrTake(Object day, Object days);

    @Message("length of the mean vector (0 all around the year, 1 all on one day): {length};")
    String resultant(Object length);

    @Message("circular standard deviation: {deviation}.")
    String deviation(Object deviation);

    @Message("{days} days")
    String days(Object days);

    @Message("below {figure}")
    String below(Object figure);

    @Message("Left out, and why")
    String leftOutWhy();

    @Message("Where do more animals die than on roads like it?")
    String burdenTitle();

    @Message("{from} to {to}")
    String yearsIn(Object from, Object to);

    @Message("in {council}")
    String inCouncil(Object council);

    @Message("Windows of {metres} m along all roads, each with the collisions counted there and those "
            + "of roads like it, weighed against each other by empirical Bayes. It ranks; it names no "
            + "hotspot.")
    String windowsAre(Object metres);

    @Message("The first windows")
    String firstWindows();

    @Message("Collisions in all years: × counted, | expected of roads like it, ● the estimate with "
            + "its 95 % interval. A high count is partly luck: the estimate leaves out what luck alone "
            + "would explain.")
    String comparedKey();

    @Message("By excess")
    String byExcess();

    @Message("Rank")
    String rank();

    @Message("Road")
    String road();

    @Message("Kilometres")
    String kilometres();

    @Message("Counted")
    String counted();

    @Message("Roads like it")
    String likeIt();

    @Message("Estimate")
    String estimate();

    @Message("95 % interval")
    String interval();

    @Message("Excess")
    String excess();

    @Message("Excess a km and year")
    String excessRate();

    @Message("Chance of any excess")
    String chance();

    @Message("Works there")
    String worksThere();

    @Message("{from} to {to}")
    String fromTo(Object from, Object to);

    @Message("{count} more windows were looked at.")
    String windowsMore(Object count);

    @Message("Where on these roads")
    String peaksHead();

    @Message("The shortest window whose estimate is precise enough")
    String peaksCaption();

    @Message("Coefficient of variation")
    String variation();

    @Message("none is precise enough, up to {metres} m")
    String nonePrecise(Object metres);

    @Message("Does the model fit?")
    String fitHead();

    @Message("Sums of counted less expected, in the order of vehicles a day, from {from} to {to}: "
            + "{percent} % of the way lies beyond the bounds. Where the line drifts out, roads of that "
            + "traffic are not as the model has them.")
    String residualsByTraffic(Object from, Object to, Object percent);

    @Message("Sums of counted less expected, in the order of length, from {from} to {to} m: {percent} "
            + "% of the way lies beyond the bounds. Where the line drifts out, roads of that length "
            + "are not as the model has them.")
    String residualsByLength(Object from, Object to, Object percent);

    @Message("First is {road} at km {from} to {to}: {counted} counted, {predicted} expected of roads "
            + "like it, {estimate} by empirical Bayes. The table has all figures.")
    String firstIs(Object road, Object from, Object to, Object counted, Object predicted, Object estimate);

    @Message("The model")
    String modelHead();

    @Message("Log of the collisions expected per kilometre and year; {sites} windows without works, "
            + "{left} with works left out. Overdispersion of one kilometre: {over}.")
    String modelWords(Object sites, Object left, Object over);

    @Message("Term")
    String term();

    @Message("Value")
    String value();

    @Message("Standard error")
    String standardError();

    @Message("Roads that nothing is expected of: {count}")
    String notScreened(Object count);

    @Message("What this rests on")
    String restsOn();

    @Message("{counted} collisions on the whole network, of {incidents} incidents of any cause; " + "{left} left out:")
    String basis(Object counted, Object incidents, Object left);

    @Message("Traffic: {counted} km counted, {estimated} km estimated, {file} km as the file of roads "
            + "says, {unknown} km not known.")
    String trafficWords(Object counted, Object estimated, Object file, Object unknown);

    @Message("Not allowed for:")
    String notAllowedFor();

    @Message("First year")
    String firstYear();

    @Message("Last year")
    String lastYear();

    @Message("four years before the last")
    String firstYearHint();

    @Message("the last that is over")
    String lastYearHint();

    @Message("Length of a window, metres")
    String windowMetres();

    @Message("Council or authority area")
    String council();

    @Message("Months (none ticked: all)")
    String months();

    @Message("Nothing was asked yet. With nothing filled in, the last five years of all animals on "
            + "all roads are looked at.")
    String nothingAsked();

    @Message("Works against collisions")
    String worksTitle();

    @Message("None have been entered yet. With the days on which works were built, what they did can "
            + "be told from the collisions before and after.")
    String noWorks();

    @Message("Kind")
    String kind();

    @Message("{#switch kind}{#case 'fence'}fence{#case 'crossing'}crossing{#case "
            + "'fenceAndCrossing'}fence and crossing{#case 'animalDetection'}animal detection{#case "
            + "'signs'}signs{#case 'reflectors'}reflectors{#case 'lowerSpeed'}lower speed{#case "
            + "'other'}other{#else}{kind}{/switch}")
    String worksKind(String kind);

    @Message("From to, metres")
    String fromToMetres();

    @Message("Built")
    String built();

    @Message("now: still under way")
    String underway();

    @Message("ended on {day}")
    String endedOn(Object day);

    @Message("Older records")
    String olderWorks();

    @Message("Enter works")
    String enterWorks();

    @Message("What was built or done")
    String whatBuilt();

    @Message("From, metres along the road")
    String fromMetres();

    @Message("To, metres along the road")
    String toMetres();

    @Message("How far beyond them counts as their ends, metres")
    String endsMetres();

    @Message("First day of building")
    String builtFrom();

    @Message("Last day of building (empty: still under way)")
    String builtUntil();

    @Message("Day from which they no longer work (empty: they do)")
    String endedFrom();

    @Message("What changed meanwhile in looking and answering")
    String effortChange();

    @Message("What changed in how many know whom to ring")
    String publicityChange();

    @Message("Enter")
    String enter();
}
