package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What the pages and the paper of road evidence say. */
@MessageBundle("evidence")
public interface EvidenceWords {
    @Message("Road evidence")
    String title();

    @Message("A hotspot is a stretch of road on which a season's collisions are denser than a named "
            + "kind of chance allows, at a stated error rate. Each run below says which kind of chance, "
            + "and what it cannot rule out.")
    String whatAHotspotIs();

    @Message("The network opens this to everybody: the runs of its latest declared year. Whoever "
            + "answers for roads or records sees more when signed in.")
    String openToAll();

    @Message("More road evidence")
    String otherPages();

    @Message("Where more die than on roads like it")
    String burdenLink();

    @Message("Ask about any stretch")
    String stretchLink();

    @Message("When collisions happen")
    String seasonsLink();

    @Message("Works, and whether they helped")
    String worksLink();

    @Message("Runs")
    String runs();

    @Message("No run has been asked for yet. Ask for the first one below: the days of some whole years "
            + "and a group of animals are enough.")
    String noRuns();

    @Message("No declared year is whole yet, so there is nothing to show. A year is shown when each of "
            + "its groups and seasons is done.")
    String noOpenRuns();

    @Message("Animals")
    String animals();

    @Message("Period")
    String period();

    @Message("Season")
    String season();

    @Message("Roads")
    String roads();

    @Message("If only chance")
    String ifOnlyChance();

    @Message("Kind")
    String kind();

    @Message("State")
    String state();

    @Message("Asked for")
    String askedFor();

    @Message("{done} of {total}")
    String done(Object done, Object total);

    @Message("Older runs")
    String olderRuns();

    @Message("Ask for a run")
    String ask();

    @Message("A run asked for here is exploratory: of twenty such runs, about one names something that "
            + "is only chance. How many there have been is counted with each.")
    String askMeans();

    @Message("Not started.")
    String notStarted();

    @Message("Please look at:")
    String lookAt();

    @Message("Right would be:")
    String rightWouldBe();

    @Message("First day")
    String firstDay();

    @Message("Last day")
    String lastDay();

    @Message("all")
    String all();

    @Message("by months")
    String byMonths();

    @Message("Months (none ticked: all)")
    String months();

    @Message("Also ask (each takes longer)")
    String alsoAsk();

    @Message("Show roads of")
    String showRoadsOf();

    @Message("every owner")
    String everyOwner();

    @Message("If only chance were at work")
    String chanceQuestion();

    @Message("the usual: for a group, a pick from all animals' reports; for all, roads of the same "
            + "class and traffic")
    String usualChance();

    @Message("Reach along the road, metres")
    String reach();

    @Message("Or standard deviation of the heat kernel, metres: smoother, and slower")
    String sigma();

    @Message("Simulated sets")
    String simulations();

    @Message("Seed")
    String seed();

    @Message("How it is computed, and what else to ask: the usual stands there")
    String howComputed();

    @Message("Start the run")
    String start();

    @Message("All runs")
    String allRuns();

    @Message("{who}: where collisions are denser than chance")
    String whereDenser(String who);

    @Message("Declared beforehand.")
    String declared();

    @Message("Exploratory, one of {runs} on this server so far.")
    String exploratory(Object runs);

    @Message("No stretch is denser than this kind of chance allows.")
    String noneDenser();

    @Message("That does not mean that no animals die there: see the counts below.")
    String noneDenserMeans();

    @Message("{#if stretches == 1}One stretch, {kilometres} km of road, stands out{#else}{stretches} "
            + "stretches, together {kilometres} km of road, stand out{/if}: {there} of the {counted} "
            + "collisions counted were reported there.")
    String found(int stretches, String kilometres, int there, int counted);

    @Message("Judged against:")
    String judgedAgainst();

    @Message("error rate {percent} % for the whole network.")
    String errorRateOf(String percent);

    @Message("What is counted is what was reported: where more people drive, look and ring, more is " + "reported.")
    String reportedOnly();

    @Message("{#if stretches == 1}The hotspot{#else}{stretches} hotspots, by collisions beyond what "
            + "chance expects{/if}")
    String ranking(int stretches);

    @Message("The first {shown} of {stretches}; the others are in the table at the end.")
    String firstOf(int shown, int stretches);

    @Message("Rank")
    String rank();

    @Message("Road")
    String road();

    @Message("From km")
    String fromKm();

    @Message("To km")
    String toKm();

    @Message("Collisions")
    String collisions();

    @Message("So dense by chance")
    String byChance();

    @Message("Beyond chance")
    String beyondChance();

    @Message("Owner")
    String owner();

    @Message("about 1 in {odds}")
    String oneIn(String odds);

    @Message("So dense by chance: of so many networks on which nothing but the kind of chance named "
            + "here were at work, about one would show a place as extreme as this anywhere.")
    String howSureMeans();

    @Message("not known")
    String notKnown();

    @Message("not told")
    String notTold();

    @Message("Show hotspot {rank} on the map")
    String showOnMap(int rank);

    @Message("Where they are")
    String whereTheyAre();

    @Message("Map of the roads with the hotspots drawn as thick, numbered lines. The table says the "
            + "same in figures.")
    String mapWords();

    @Message("road")
    String keyRoad();

    @Message("hotspot, numbered by rank")
    String keyHotspot();

    @Message("north is up")
    String northIsUp();

    @Message("Grey: roads; thick: hotspots, numbered by rank.")
    String mapKey();

    @Message("The shortest pieces of road are left out, there are so many.")
    String mapPartly();

    @Message("Open its card")
    String openCard();

    @Message("Ask what works there would be worth")
    String askAboutIt();

    @Message("The same days, of other animals and seasons")
    String otherAsked();

    @Message("Not asked yet; each opens the form filled in:")
    String otherAskedNone();

    @Message("this run")
    String thisOne();

    @Message("Along the road")
    String along();

    @Message("Each hotspot's road, from a kilometre before it to a kilometre behind it where the road "
            + "goes so far. The line is what was reported, smoothed along the road; the dashed line "
            + "what chance expects. The shading ends where a density would just be significant at the "
            + "error rate of the whole run: the line reaches beyond it exactly where a place stands "
            + "out. Where it fills the drawing, no density would be, or one far above. The bar on the "
            + "axis is the hotspot, which is named from its first collision to its last.")
    String alongMeans();

    @Message("At most twelve are drawn; to whom small numbers are not told, the hotspot itself alone, "
            + "and none with fewer collisions than are told.")
    String alongMost();

    @Message("km along the road; up: collisions per km and year")
    String curveAxes();

    @Message("What was counted")
    String counted();

    @Message("{counted} {#if counted == 1}incident whose cause is a collision{#else}incidents whose "
            + "cause is a collision{/if}, each once, whoever rang and however many animals were struck, "
            + "alive or dead; of {all} incidents of any cause in the period.")
    String countedWords(int counted, int all);

    @Message("{count} of them count on the day they were reported, since nobody knows when they " + "happened.")
    String timedByReport(int count);

    @Message("{count} lie by a junction whose roads are equally likely: they count on the nearest, "
            + "spread as far as the others.")
    String placedByJunction(int count);

    @Message("Left out, and why")
    String leftOutWhy();

    @Message("Reason")
    String reason();

    @Message("Incidents")
    String incidents();

    @Message("All")
    String sum();

    @Message("By month")
    String byMonth();

    @Message("Collisions counted in this run by month of the year, January to December; – is a small "
            + "number that is not told.")
    String monthsCaption();

    @Message("The months around the year")
    String aroundTheYear();

    @Message("January from the top and on by the clock. The area of a petal goes with its count; the "
            + "rings are the greatest count and half of it. A month is drawn as it was reported: where "
            + "more people ring, more is drawn.")
    String roseCaption();

    @Message("What the word hotspot claims here")
    String claim();

    @Message("Kind of chance:")
    String kindOfChance();

    @Message("Not controlled, so that the error rate is not claimed of the real roads:")
    String notControlled();

    @Message("Assumed:")
    String assumed();

    @Message("Beside the hotspots")
    String beside();

    @Message("Files")
    String files();

    @Message("This report on paper")
    String paper();

    @Message("PDF: a page for a meeting, a page of method, a page for each of the first twelve "
            + "hotspots, then the rest. It takes some seconds.")
    String paperMeans();

    @Message("How far it is")
    String paperState();

    @Message("The report is being made from the run and today's counts. It takes some seconds, and comes by itself.")
    String paperMaking();

    @Message("The report is ready.")
    String paperReady();

    @Message("The report did not come. Try its address once more.")
    String paperFailed();

    @Message("The report as a file (PDF)")
    String paperFile();

    @Message("What is in it")
    String paperHolds();

    @Message("One page for a meeting: the stretches in order, and a map")
    String paperMeeting();

    @Message("One page of method: what was counted, what is assumed, what was left out and why")
    String paperMethod();

    @Message("A page for each of the first {cards} of {hotspots} hotspots, with its map and charts")
    String paperCards(int cards, int hotspots);

    @Message("What it does not show, and the data in a table")
    String paperCaveats();

    @Message("for QGIS and other map programs")
    String geoPackage();

    @Message("the same for programs on the web")
    String geoJson();

    @Message("for a table")
    String csv();

    @Message("The whole result")
    String wholeResult();

    @Message("the same bytes whenever this run is made again on the same records")
    String wholeResultMeans();

    @Message("Made from")
    String madeFrom();

    @Message("Engine {version}; roads version {number}, {links} links, {kilometres} km;")
    String engine(String version, int number, Object links, Object kilometres);

    @Message("heat kernel of {metres} m")
    String heatKernel(Object metres);

    @Message("reach {metres} m")
    String reachOf(Object metres);

    @Message("pieces of {metres} m, {sets} simulated sets, seed {seed};")
    String piecesAndSets(Object metres, Object sets, Object seed);

    @Message("inputs SHA-256")
    String inputsDigest();

    @Message("result SHA-256")
    String resultDigest();

    @Message("Run {id}, asked for {when}.")
    String runAsked(String id, String when);

    @Message("This run could not be computed.")
    String notComputed();

    @Message("This run was called off.")
    String calledOff();

    @Message("Simulated sets done")
    String setsDone();

    @Message("Why it is not wanted any more")
    String why();

    @Message("Call the run off")
    String callOff();

    @Message("Hotspot {rank}: {road}, km {from} to {to}")
    String hotspot(int rank, String road, String from, String to);

    @Message("The whole run")
    String backToRun();

    @Message("Hotspot {rank} before it")
    String previous(int rank);

    @Message("Hotspot {rank} after it")
    String next(int rank);

    @Message("{collisions} {#if collisions == 1}collision was{#else}collisions were{/if} reported on "
            + "{metres} m of road, where the kind of chance named here expects {expected}.")
    String cardLead(int collisions, String metres, String expected);

    @Message("If that chance alone were at work, about 1 in {odds} networks like this one would show a "
            + "place as dense as this anywhere.")
    String cardSure(String odds);

    @Message("Where")
    String where();

    @Message("Kilometres")
    String kilometres();

    @Message("{from} to {to}, {metres} m")
    String kmFromTo(String from, String to, String metres);

    @Message("Council area")
    String council();

    @Message("Roads that meet it")
    String meets();

    @Message("{road} at km {kilometre}")
    String crossingOn(String road, String kilometre);

    @Message("{road}, {metres} m before it")
    String crossingBefore(String road, String metres);

    @Message("{road}, {metres} m behind it")
    String crossingBehind(String road, String metres);

    @Message("none known")
    String noneKnown();

    @Message("The roads around it")
    String aroundIt();

    @Message("How many, and how sure")
    String howManyHowSure();

    @Message("{collisions} counted; 95 % interval of the count {low} to {high}; chance expects " + "{expected}.")
    String intervalWords(int collisions, String low, String high, String expected);

    @Message("● counted, with the 95 % interval of the count as a bar; the dashed line is what chance " + "expects.")
    String intervalCaption();

    @Message("{excess} beyond what chance expects; {rate} per km and year.")
    String excessRate(String excess, String rate);

    @Message("Counted in the records as they stand, of the whole years {yearFrom} to {yearTo}, from km "
            + "{from} to {to}. The run counted its whole period in the records as they were when it was "
            + "made, so that its figures differ.")
    String nowCounted(int yearFrom, int yearTo, String from, String to);

    @Message("When")
    String when();

    @Message("By month")
    String months12();

    @Message("Filled: months of the run's season; outlined: the other months.")
    String hatched();

    @Message("By hour of the day")
    String hours();

    @Message("Above: collisions whose hour is known, by the clocks here. Below: how light it is at "
            + "that hour in each month, January on top: dark is night, grey twilight, pale day.")
    String hoursCaption();

    @Message("Hour not known: {count}.")
    String hourUnknown(String count);

    @Message("No collision here has a known hour that could be told.")
    String noHour();

    @Message("The hours are not told.")
    String noHourToAll();

    @Message("of all time")
    String ofAllTime();

    @Message("{#switch light}{#case 'day'}day{#case 'civil-twilight'}civil twilight{#case "
            + "'nautical-twilight'}nautical twilight{#case 'astronomical-twilight'}astronomical "
            + "twilight{#case 'night'}night{#else}not known{/switch}")
    String lightName(String light);

    @Message("Year by year")
    String yearByYear();

    @Message("Collisions by year; – is a small number that is not told.")
    String yearsCaption();

    @Message("– is a small number that is not told.")
    String dashNotTold();

    @Message("Dashed with a letter: when building began (see the works below).")
    String worksMarked();

    @Message("Which animals")
    String whichAnimals();

    @Message("Group")
    String group();

    @Message("What works did here")
    String whatWorksDid();

    @Message("No works are on record here. Whoever knows of a fence, a passage or a speed limit can "
            + "enter it, so that it is not taken for chance.")
    String noWorks();

    @Message("Enter works")
    String enterWorks();

    @Message("{kind}, built {days}")
    String builtWords(String kind, String days);

    @Message("Part")
    String part();

    @Message("Before")
    String before();

    @Message("After")
    String after();

    @Message("Expected after without works")
    String expectedWithout();

    @Message("Ratio")
    String ratio();

    @Message("95 % interval of the ratio")
    String ratioInterval();

    @Message("So")
    String so();

    @Message("What may be expected")
    String mayBeExpected();

    @Message("Roads like it have {predicted} collisions on such a length in these years; this stretch "
            + "may be expected to have {estimate} (95 % interval {interval}), by empirical Bayes.")
    String mayBeExpectedWords(String predicted, String estimate, String interval);

    @Message("What is usual on roads like it cannot be told.")
    String nothingExpected();

    @Message("What it does not show")
    String whatDoesItNotShow();

    @Message("That a place is no hotspot does not make it safe, and that one is does not say why. What "
            + "may be built or done on a road is for its owner and the law there.")
    String notSafe();

    @Message("The run looked at the whole network and at this group and season. Another group, season "
            + "or kind of chance is another question.")
    String allPlaces();

    @Message("What is never reported is in no figure here.")
    String unreported();

    @Message("All figures")
    String inFigures();

    @Message("95 % interval of the count")
    String interval95();

    @Message("Expected by chance")
    String expectedByChance();

    @Message("p adjusted for all places of the network")
    String adjustedP();

    @Message("Per km and year")
    String perKmYear();

    @Message("Year")
    String year();

    @Message("{#if shown < all}A page is printed for each of the first {shown} of {all} hotspots; the "
            + "others have their cards on the server.{/if}")
    String paperPages(int shown, int all);

    @Message("Method")
    String method();

    @Message("Page")
    String page();

    @Message("of")
    String pageOf();

    @Message("Culvert road report")
    String roadReport();

    @Message("Demo. The region and everything in it is invented.")
    String demo();

    @Message("A stretch of road")
    String stretchTitle();

    @Message("What about this stretch?")
    String whatAboutIt();

    @Message("Not answered.")
    String notAnswered();

    @Message("Roads beside roads like them")
    String burdenShort();

    @Message("Works")
    String works();

    @Message("All works")
    String allWorks();

    @Message("Did it help? {words}")
    String didItHelp(String words);

    @Message("{kind} on {road} from {stretch} m, built from {built}. Their ends reach {ends} m " + "further.")
    String worksAre(String kind, String road, String stretch, String built, String ends);

    @Message("Collisions by year")
    String byYear();

    @Message("Each incident once, whoever rang and however many animals were struck; – is a small "
            + "number that is not told.")
    String eachOnce();

    @Message("By animals")
    String byAnimals();

    @Message("{count} of these may lie beyond the ends, so far as their places are sure.")
    String perhapsElsewhere(Object count);

    @Message("{count} more, beside the stretch, may lie on it and are not counted.")
    String perhapsHere(Object count);

    @Message("What may be expected here")
    String expectedHere();

    @Message("Roads of the same class, on such a length in such a time")
    String roadsAlike();

    @Message("This stretch, by empirical Bayes")
    String byBayes();

    @Message("95 % interval")
    String interval95Short();

    @Message("Excess")
    String excess();

    @Message("Chance that there is any excess")
    String chanceOfExcess();

    @Message("What is never reported")
    String neverReported();

    @Message("{low} to {high} times as many:")
    String timesAsMany(Object low, Object high);

    @Message("Here that would be {low} to {high} a year.")
    String perYearHere(Object low, Object high);

    @Message("Nobody knows the figure here: it is in none of the estimates on this page.")
    String nobodyKnows();

    @Message("Would an effect be seen?")
    String wouldItBeSeen();

    @Message("Years after")
    String yearsAfter();

    @Message("Chance of seeing it")
    String chanceOfSeeing();

    @Message("At the very best")
    String atBest();

    @Message("What works here would be worth")
    String wouldBeWorth();

    @Message("Cost of {name}: {amount} {currency}, says {source}")
    String costOf(String name, Object amount, String currency, String source);

    @Message("Collisions a year without works")
    String perYearWithout();

    @Message("Benefits, {currency}")
    String benefits(String currency);

    @Message("Costs, {currency}")
    String costs(String currency);

    @Message("Benefits less costs")
    String net();

    @Message("Benefits over costs")
    String benefitCost();

    @Message("They are equal where works prevent")
    String breakEven();

    @Message("What works have done elsewhere")
    String doneElsewhere();

    @Message("Fewer by")
    String fewerBy();

    @Message("Study")
    String study();

    @Message("Source")
    String source();

    @Message("What this rests on")
    String restsOn();

    @Message("{counted} collisions on the whole network, of {all} incidents of any cause; {leftOut} " + "left out:")
    String basis(int counted, int all, Object leftOut);

    @Message("Not allowed for:")
    String notAllowedFor();

    @Message("Ask about a stretch")
    String askAStretch();

    @Message("From, metres along the road")
    String fromMetres();

    @Message("To, metres along the road")
    String toMetres();

    @Message("First year")
    String firstYear();

    @Message("Last year")
    String lastYear();

    @Message("four years before the last")
    String fourBefore();

    @Message("the last that is over")
    String lastOver();

    @Message("Was it chosen before anyone looked at the records?")
    String chosenBefore();

    @Message("not said")
    String notSaid();

    @Message("yes")
    String yes();

    @Message("no, because the records are high there")
    String chosenAfter();

    @Message("Works that are thought of")
    String worksThoughtOf();

    @Message("any")
    String any();

    @Message("How much they would prevent, per cent")
    String wouldPrevent();

    @Message("What they would be worth: your own figures")
    String ownFigures();

    @Message("Leave all of them empty for no answer to that. Nothing here has a usual value.")
    String ownFiguresMeans();

    @Message("Currency")
    String currency();

    @Message("Prices of the year")
    String pricesOf();

    @Message("Cost of a collision")
    String costACollision();

    @Message("Who says so")
    String whoSaysSo();

    @Message("Building")
    String building();

    @Message("Upkeep a year")
    String upkeep();

    @Message("Discount rate, per cent a year")
    String discount();

    @Message("Life, years")
    String life();

    @Message("They prevent at least, per cent")
    String atLeast();

    @Message("Most likely, per cent")
    String mostLikely();

    @Message("At most, per cent")
    String atMost();

    @Message("Ask")
    String askIt();

    @Message("Ask again")
    String askAgain();

    @Message("Whole years before")
    String yearsBefore();

    @Message("Whole years after")
    String wholeYearsAfter();

    @Message("Before and after")
    String beforeAndAfter();

    @Message("{beforeFrom} to {beforeTo} against {afterFrom} to {afterTo}.")
    String beforeAgainstAfter(String beforeFrom, String beforeTo, String afterFrom, String afterTo);

    @Message("Counts alone prove nothing: works go where counts happened to be high. What would have "
            + "come without the works is estimated from roads of the same class and from the comparison "
            + "named here:")
    String countsAlone();

    @Message("Elsewhere on the network {before} collisions of all animals were reported before and " + "{after} after.")
    String elsewhereBefore(Object before, Object after);

    @Message("What else changed")
    String whatElseChanged();

    @Message("What to bear in mind")
    String bearInMind();

    @Message("All animals")
    String allAnimals();

    @Message("all months")
    String allMonths();

    @Message("whole network")
    String wholeNetwork();

    @Message("{from} to {to}")
    String fromTo(Object from, Object to);

    @Message("{name} ({from} to {to})")
    String windowOfDays(String name, String from, String to);

    @Message("{#switch kind}{#case 'declared'}declared{#else}exploratory{/switch}")
    String kindName(String kind);

    @Message("{#switch state}{#case 'waiting'}waiting{#case 'computing'}computing{#case 'done'}done{#case "
            + "'failed'}failed{#case 'cancelled'}called off{#else}{state}{/switch}")
    String stateName(String state);

    @Message("{#switch chance}{#case 'per-all-reports'}a random pick from all animals' reports{#case "
            + "'per-other-seasons'}a random pick from the group's own reports of the whole year{#case "
            + "'per-traffic-and-class'}roads of the same class and traffic alike{#case "
            + "'per-traffic-and-class-in-patches'}roads of the same class and traffic alike, but for "
            + "patches that differ as the records do{#case 'per-survey-effort'}every kilometre alike, each "
            + "time that a survey went over it{#case 'per-kilometre'}every kilometre alike{#case "
            + "'per-kilometre-in-patches'}every kilometre alike, but for patches that differ as the "
            + "records do{#else}{chance}{/switch}")
    String chanceName(String chance);

    @Message("The server does not answer; trying again.")
    String noAnswer();

    @Message("{#switch part}{#case 'inside'}inside{#case 'ends'}ends{#case 'beyond'}beyond{#case "
            + "'combined'}combined{#else}{part}{/switch}")
    String partName(String part);

    @Message("%d of %t")
    String doneOfTotal();
}
