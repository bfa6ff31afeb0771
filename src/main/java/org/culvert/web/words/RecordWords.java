package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What the pages of old records say. */
@MessageBundle("records")
public interface RecordWords {
    @Message("Old records")
    String title();

    @Message("A table of old records, saved as text, is looked through, tried and taken in. Nothing is "
            + "entered before the last step, and until then it can be called off.")
    String whatHappens();

    @Message("1. Bring a file. 2. Decide how it is read. 3. Try it: every row is read and looked up. 4. Take "
            + "the rows in.")
    String steps();

    @Message("Bring a file")
    String bring();

    @Message("File (CSV or other text, at most 200 MB)")
    String file();

    @Message("Of a workbook, save the sheet as CSV, best in UTF-8. Years in the name of the file count as "
            + "those it is of.")
    String fileHint();

    @Message("Bring it and look through it")
    String bringIt();

    @Message("A large file takes a while to be sent; stay on this page until the next one comes.")
    String largeTakesTime();

    @Message("Brought so far")
    String broughtSoFar();

    @Message("No file was brought yet. The first can be small: some rows show whether its columns are " + "understood.")
    String nothingBrought();

    @Message("File")
    String fileHead();

    @Message("How far it is")
    String stateHead();

    @Message("Next step")
    String nextHead();

    @Message("brought {when}")
    String broughtAt(String when);

    @Message("{octets} octets")
    String octets(Object octets);

    @Message("{#switch state}{#case 'brought'}looked through; how it is read is not decided{#case "
            + "'decided'}decided how it is read; not tried{#case 'beingTried'}being tried{#case "
            + "'tried'}tried; nothing is entered yet{#case 'trialFailed'}the trial failed; nothing is "
            + "entered{#case 'beingTaken'}being taken in{#case 'takingFailed'}the taking failed; nothing is "
            + "entered{#case 'taken'}taken in{#case 'calledOff'}called off{#case 'erased'}no longer "
            + "kept{#else}{state}{/switch}")
    String state(String state);

    @Message("{#switch state}{#case 'brought'}Decide how it is read{#case 'decided'}Try it{#case "
            + "'beingTried'}See how far it is{#case 'tried'}Look at the report, take rows in{#case "
            + "'trialFailed'}See why{#case 'beingTaken'}See how far it is{#case 'takingFailed'}See why{#case "
            + "'taken'}See what was taken, and the rest{#else}See what it was{/switch}")
    String next(String state);

    @Message("rows: {rows}")
    String rowsTakenSoFar(Object rows);

    @Message("kept until {day}, unless it is taken in before")
    String keptUntil(String day);

    @Message("Older ones")
    String older();

    @Message("All files")
    String allFiles();

    @Message("It was not done. What was entered stays.")
    String notDone();

    @Message("Right would be:")
    String rightWouldBe();

    @Message("How {name} is read")
    String readHead(String name);

    @Message("What was found")
    String found();

    @Message("Rows below the headings: {rows}")
    String rowsFound(Object rows);

    @Message("Empty rows, which are left out: {rows}")
    String emptyRows(Object rows);

    @Message("Rows of fewer cells than there are headings: {rows}")
    String shorterRows(Object rows);

    @Message("Rows of more cells than there are headings: {rows}")
    String longerRows(Object rows);

    @Message("Rows in which a quote does not close: {rows}")
    String brokenQuotes(Object rows);

    @Message("Above the headings stands:")
    String above();

    @Message("its octets tell that")
    String encodingSure();

    @Message("its octets do not tell: look at words with accents")
    String encodingUnsure();

    @Message("How the text is taken apart")
    String apartHead();

    @Message("Encoding")
    String encoding();

    @Message("Between cells stands")
    String separator();

    @Message("{#switch sign}{#case 'comma'}a comma{#case 'semicolon'}a semicolon{#case 'tab'}a tab{#case "
            + "'bar'}a bar{#else}{sign}{/switch}")
    String separatorSign(String sign);

    @Message("Row of headings (0 where there is none)")
    String headingRow();

    @Message("First rows")
    String firstRows();

    @Message("What each column holds")
    String columnsHead();

    @Message("Column")
    String column();

    @Message("Examples")
    String examples();

    @Message("Holds")
    String holds();

    @Message("What {heading} holds")
    String holdsOf(String heading);

    @Message("Why")
    String why();

    @Message("nothing that is read")
    String notUsed();

    @Message("no proposal")
    String notProposed();

    @Message("cells that say something: {told}")
    String told(Object told);

    @Message("that do not: {missing}")
    String missing(Object missing);

    @Message("Columns left out here: {more}. What they hold can be said over the API.")
    String moreColumns(Object more);

    @Message("Questions that the file does not answer")
    String questionsHead();

    @Message("None: the file tells what has to be known.")
    String noQuestions();

    @Message("needed")
    String needed();

    @Message("not answered")
    String notAnswered();

    @Message("as the file tells it")
    String asTheFileTells();

    @Message("Uncertainty of coordinates whose row tells none, in metres")
    String uncertainty();

    @Message("Left empty: it is not known. A pin on a telephone is seldom better than 10 m.")
    String uncertaintyHint();

    @Message("Words that have to mean something")
    String wordsHead();

    @Message("None: every word is understood, or no column holds words.")
    String noWords();

    @Message("Word")
    String word();

    @Message("Rows")
    String rows();

    @Message("Means")
    String means();

    @Message("What “{word}” means")
    String meaningOf(String word);

    @Message("or another kind of the register")
    String anotherKind();

    @Message("Another kind of the register for “{word}”")
    String anotherKindOf(String word);

    @Message("as it is read: {meaning}")
    String asRead(String meaning);

    @Message("nothing that is known")
    String nothingYet();

    @Message("a domestic animal: counted apart, never taken")
    String domestic();

    @Message("not decided: each row is in doubt")
    String undecided();

    @Message("Words that are understood: {words}")
    String understood(Object words);

    @Message("Rarer words left out here: {more}. The trial names the rows of those that mean nothing.")
    String moreWords(Object more);

    @Message("{#switch meaning}{#case 'alive'}alive{#case 'dead'}dead{#case 'unknown'}unknown{#case "
            + "'north'}north{#case 'northEast'}north-east{#case 'east'}east{#case "
            + "'southEast'}south-east{#case 'south'}south{#case 'southWest'}south-west{#case "
            + "'west'}west{#case 'northWest'}north-west{#case 'both'}both directions{#case 'ramp'}a "
            + "ramp{#case 'increasing'}towards higher chainages{#case 'decreasing'}towards lower "
            + "chainages{#case 'domestic'}a domestic animal{#else}{meaning}{/switch}")
    String meaning(String meaning);

    @Message("A name to keep this reading by")
    String nameHead();

    @Message("It is proposed again for files with the same headings. May stay empty.")
    String nameHint();

    @Message("A file with the same headings was read as “{name}”.")
    String former(String name);

    @Message("A file with the same headings was read before.")
    String formerUnnamed();

    @Message("Fill in as it was decided then")
    String useFormer();

    @Message("It is filled in as was decided last.")
    String asDecided();

    @Message("Look again with these choices")
    String lookAgain();

    @Message("Try it: nothing is entered")
    String tryIt();

    @Message("The text is taken apart otherwise now. Look at the columns again before you try it.")
    String lookedAgain();

    @Message("Call the file off")
    String callOffHead();

    @Message("What it holds is forgotten; that it was there, and why it is not wanted, stays.")
    String callOffMeans();

    @Message("Why")
    String reason();

    @Message("Call it off")
    String callOff();

    @Message("It was called off: {reason}")
    String calledOff(String reason);

    @Message("What it held is no longer kept. Bring it again, if it is still wanted.")
    String erased();

    @Message("Rows of it were taken in, or are being taken in: how it is read is decided for good.")
    String takenAlready();

    @Message("Its last trial")
    String lastTrial();

    @Message("Trial of {name}")
    String trialOf(String name);

    @Message("Nothing of it is entered.")
    String nothingEntered();

    @Message("How it is read")
    String toReading();

    @Message("It waits for its turn.")
    String waiting();

    @Message("Rows read: {read} of {all}")
    String rowsReadOf(Object read, Object all);

    @Message("Rows read: {read}")
    String rowsRead(Object read);

    @Message("Rows made ready: {entered} of {all}. Nothing is in the register before the last.")
    String rowsEnteredOf(Object entered, Object all);

    @Message("Look how far it is now")
    String refresh();

    @Message("The trial failed:")
    String trialFailed();

    @Message("Try it again")
    String tryAgain();

    @Message("What became of the rows: {rows}")
    String result(Object rows);

    @Message("{#switch verdict}{#case 'right'}right{#case 'doubtful'}in doubt{#case 'apart'}apart{#case "
            + "'refused'}refused{#else}{verdict}{/switch}")
    String verdict(String verdict);

    @Message("{#switch verdict}{#case 'right'}can be taken as they stand{#case 'doubtful'}can be taken where "
            + "you say so{#case 'apart'}domestic animals and repeated rows: counted, never taken{#case "
            + "'refused'}cannot be taken as they stand{#else}{verdict}{/switch}")
    String verdictMeans(String verdict);

    @Message("{right} right, {doubtful} in doubt, {apart} apart, {refused} refused")
    String barWords(Object right, Object doubtful, Object apart, Object refused);

    @Message("What the rows have")
    String findingsHead();

    @Message("Nothing that anybody must know of.")
    String noFindings();

    @Message("What the whole file shows")
    String signsHead();

    @Message("Finding")
    String finding();

    @Message("Weight")
    String weightHead();

    @Message("{#switch weight}{#case 'note'}told{#case 'doubt'}doubt{#case "
            + "'refusal'}refused{#else}{weight}{/switch}")
    String weight(String weight);

    @Message("Words that name no animal of the register")
    String unknownHead();

    @Message("perhaps")
    String perhaps();

    @Message("Decide what they mean")
    String decideWords();

    @Message("The rows")
    String rowsHead();

    @Message("all")
    String allRows();

    @Message("Row {number}")
    String row(Object number);

    @Message("Read as")
    String readAs();

    @Message("In the file")
    String original();

    @Message("perhaps one with row {number}")
    String oneWith(Object number);

    @Message("no time")
    String noTime();

    @Message("no place")
    String noPlace();

    @Message("{latitude}, {longitude}")
    String place(Object latitude, Object longitude);

    @Message("within {metres} m")
    String within(Object metres);

    @Message("× {count}")
    String countOf(Object count);

    @Message("The next rows")
    String nextRows();

    @Message("From the first row on")
    String firstOnes();

    @Message("There is no such row.")
    String noRows();

    @Message("under {heading}")
    String inColumn(String heading);

    @Message("Report of all rows (CSV)")
    String report();

    @Message("Rows that were not taken, to mend and bring again (CSV)")
    String rest();

    @Message("the same with those kept apart (CSV)")
    String restWithApart();

    @Message("Its rows can no longer be taken.")
    String stale();

    @Message("Take rows in")
    String takeHead();

    @Message("Which rows")
    String which();

    @Message("all of them ({rows}): refused while rows are refused, or in doubt and not said to be taken")
    String whichAll(Object rows);

    @Message("the good ones ({rows} are right); the rest is a file to mend")
    String whichGood(Object rows);

    @Message("rows in doubt too ({rows})")
    String doubtfulToo(Object rows);

    @Message("Rows that perhaps tell of one animal")
    String sameAnimal();

    @Message("each an incident of its own")
    String ownIncident();

    @Message("calls of one incident")
    String oneIncident();

    @Message("Whose records they are, and why they are taken in")
    String takeReason();

    @Message("Take them in")
    String take();

    @Message("All or none of those that are asked for is entered; each keeps the row it came from. This is "
            + "the last step and cannot be called off.")
    String takeMeans();

    @Message("Rows taken in: {rows}.")
    String taken(Object rows);

    @Message("Because: {reason}")
    String takenBecause(String reason);

    @Message("Nothing was taken:")
    String takingFailed();

    @Message("Rows left to mend, or to leave: {rows}.")
    String rowsLeft(Object rows);

    @Message("No row is left to mend.")
    String noRest();

    @Message("The rows are no longer kept with this trial.")
    String rowsGone();

    @Message("{#switch field}{#case 'day'}day{#case 'time'}hour{#case 'year'}year{#case 'month'}month{#case "
            + "'dayOfMonth'}day of the month{#case 'decimalLatitude'}latitude in degrees{#case "
            + "'decimalLongitude'}longitude in degrees{#case 'coordinates'}both coordinates{#case "
            + "'easting'}easting in a grid{#case 'northing'}northing in a grid{#case 'geodeticDatum'}geodetic "
            + "datum{#case 'coordinateUncertaintyInMeters'}uncertainty in metres{#case 'road'}road{#case "
            + "'crossingRoad'}road that it meets{#case 'chainage'}distance along the road{#case "
            + "'direction'}direction{#case 'locality'}place in words{#case 'scientificName'}animal, or its "
            + "scientific name{#case 'vernacularName'}animal as people call it{#case "
            + "'occurrenceStatus'}whether it was there{#case 'individualCount'}how many{#case "
            + "'youngCount'}how many young{#case 'vitality'}alive or dead{#case 'lifeStage'}age{#case "
            + "'sex'}sex{#case 'cause'}what happened{#case 'identifier'}number of the record{#case "
            + "'remarks'}remarks{#else}{field}{/switch}")
    String field(String field);

    @Message("{#switch kind}{#case 'missingDay'}no day{#case 'unreadableDay'}a day that cannot be read{#case "
            + "'twoWaysOfDay'}a day that can be read in two ways{#case 'dayInFuture'}a day in the "
            + "future{#case 'yearAlone'}a year alone{#case 'severalDays'}several days{#case 'yearOutside'}a "
            + "year the file is not of{#case 'monthsWithoutRows'}months without rows{#case 'missingTime'}no "
            + "hour{#case 'unreadableTime'}an hour that cannot be read{#case 'officeHours'}hours of an "
            + "office{#case 'missingPlace'}no place{#case 'routeOnly'}a road and nothing more{#case "
            + "'localityOnly'}a place in words alone{#case 'unreadableCoordinates'}coordinates that cannot be "
            + "read{#case 'halfACoordinate'}one coordinate of two{#case 'zeroCoordinates'}coordinates of "
            + "zero{#case 'otherDatum'}another datum{#case 'otherDecimalMark'}another decimal mark{#case "
            + "'swappedAxes'}latitude and longitude swapped{#case 'missingSign'}a missing minus sign{#case "
            + "'outsideRegion'}outside the region{#case 'noRoadNear'}no road near{#case 'roadInDoubt'}the "
            + "road is in doubt{#case 'unknownRoad'}an unknown road{#case 'noChainageThere'}a distance the "
            + "road does not have{#case 'unreadableChainage'}a distance that cannot be read{#case "
            + "'roundedChainage'}a rounded distance{#case 'chainageInText'}a distance in words{#case "
            + "'crossingInText'}a crossing in words{#case 'blockAddress'}an address of a block{#case "
            + "'copiedPin'}a pin that stands in many rows{#case 'tiedPins'}pins tied to a grid{#case "
            + "'oddDirection'}a direction the road does not have{#case 'unreadableUncertainty'}an uncertainty "
            + "that cannot be read{#case 'noUncertainty'}no uncertainty told{#case 'noEffort'}nothing tells "
            + "how hard was looked{#case 'missingAnimal'}no animal{#case 'unknownAnimal'}an animal the "
            + "register does not know{#case 'undecidedAnimal'}an animal left undecided{#case "
            + "'namesDisagree'}names that disagree{#case 'synonym'}another name of a kind{#case 'domestic'}a "
            + "domestic animal{#case 'unreadableCount'}a number that cannot be read{#case 'unknownWord'}an "
            + "unknown word{#case 'repeatedInFile'}repeats another row{#case 'perhapsOneAnimal'}perhaps one "
            + "animal with another row{#case 'inRegister'}may be in the register already{#case "
            + "'cellsMissing'}cells are missing{#case 'cellsTooMany'}too many cells{#case 'brokenQuote'}a "
            + "quote that does not close{#case 'unreadableCharacters'}letters that cannot be read{#case "
            + "'asAbove'}taken from the row above{#case 'noRecord'}no record{#else}{kind}{/switch}")
    String kind(String kind);

    @Message("Being sent:")
    String sending();

    @Message("It is sent, and is being looked through.")
    String beingLookedThrough();

    @Message("It is larger than 200 MB. Send it in parts, each with the row of headings.")
    String tooLarge();

    @Message("The server does not answer. Nothing was entered; try again.")
    String sendingFailed();
}
