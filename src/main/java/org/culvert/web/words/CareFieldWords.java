package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** Fields that plans, clutches, clocks, releases and what is read of many records tell, by the names that the API has for them. */
@MessageBundle("careFields")
public interface CareFieldWords {

    @Message("Noted by")
    String acknowledgements();

    @Message("Adopted")
    String adoptedAt();

    @Message("Advice")
    String advice();

    @Message("Age in days")
    String ageDays();

    @Message("Agrees")
    String agrees();

    @Message("Animal is held")
    String animalHeld();

    @Message("Animals")
    String animals();

    @Message("Frame of the area")
    String box();

    @Message("Came in again")
    String cameInAgain();

    @Message("Candled by")
    String candledBy();

    @Message("Can't be told")
    String cannotTell();

    @Message("Seasons and groups")
    String cells();

    @Message("Cleared")
    String clearedAt();

    @Message("How it was closed")
    String closing();

    @Message("Day of the month")
    String dayOfMonth();

    @Message("Decided")
    String decidedAt();

    @Message("Developing")
    String developing();

    @Message("Differs by")
    String differsBy();

    @Message("Name of the document")
    String documentName();

    @Message("Done")
    String done();

    @Message("Due on")
    String due();

    @Message("Due")
    String dueAt();

    @Message("Due from")
    String dueFrom();

    @Message("Due until")
    String dueUntil();

    @Message("Earliest")
    String earliest();

    @Message("End of the word")
    String end();

    @Message("Ended by")
    String endedBy();

    @Message("Every so many days")
    String everyDays();

    @Message("Exploratory runs so far")
    String exploratoryRunsSoFar();

    @Message("Who was exposed")
    String exposed();

    @Message("Extended until")
    String extendedUntil();

    @Message("Fall over so many days")
    String fallOverDays();

    @Message("Fall in percent a week")
    String fallPercentPerWeek();

    @Message("Film says otherwise")
    String filmDiffers();

    @Message("First")
    String firstAt();

    @Message("First day")
    String firstDay();

    @Message("Answer that a vet should hear of")
    String flagAnswer();

    @Message("For the vet")
    String flags();

    @Message("Found dead")
    String foundDead();

    @Message("From day")
    String fromDay();

    @Message("Grams a day")
    String gramsPerDay();

    @Message("Taken for them, not sure")
    String guessed();

    @Message("Hatched")
    String hatched();

    @Message("Heading of the column")
    String heading();

    @Message("Height in pixels")
    String heightPixels();

    @Message("Kept from you")
    String hidden();

    @Message("Not above")
    String high();

    @Message("At most, grams a day")
    String highGramsPerDay();

    @Message("Highest, °C")
    String highestCelsius();

    @Message("Hotline")
    String hotline();

    @Message("Hour")
    String hour();

    @Message("Has a place")
    String isPlaced();

    @Message("Issued by")
    String issuedBy();

    @Message("Joined to")
    String joinedTo();

    @Message("Laid")
    String laid();

    @Message("Last")
    String lastAt();

    @Message("Last date")
    String lastDate();

    @Message("Latest")
    String latest();

    @Message("Left inside")
    String leftInside();

    @Message("Not below")
    String low();

    @Message("At least, grams a day")
    String lowGramsPerDay();

    @Message("Lowest, °C")
    String lowestCelsius();

    @Message("Made by")
    String madeBy();

    @Message("May be extended on")
    String mayBeExtendedOn();

    @Message("Medium")
    String medium();

    @Message("Parts of medium")
    String mediumParts();

    @Message("Month")
    String month();

    @Message("Month, as a number")
    String monthValue();

    @Message("Narrowed")
    String narrowed();

    @Message("Next due on")
    String nextDueOn();

    @Message("Not developing")
    String notDeveloping();

    @Message("Nothing known")
    String nothingKnown();

    @Message("Over so many days")
    String overDays();

    @Message("Cost of a collision")
    String perCollision();

    @Message("Percent a week")
    String percentPerWeek();

    @Message("Placed with")
    String placedWith();

    @Message("Read on the film")
    String readOnFilm();

    @Message("Readings")
    String readings();

    @Message("Recorded by")
    String recordedBy();

    @Message("Refused")
    String refusedAt();

    @Message("Refused because")
    String refusedReason();

    @Message("How they belong together")
    String relation();

    @Message("Reports")
    String reports();

    @Message("To be looked at again")
    String reviewDue();

    @Message("To be looked at again")
    String reviewIsDue();

    @Message("Looked at by")
    String reviewedBy();

    @Message("How often")
    String rhythm();

    @Message("Runs")
    String runs();

    @Message("Said of it")
    String said();

    @Message("In plain words")
    String saidPlainly();

    @Message("Sectors")
    String sectors();

    @Message("Seen alive")
    String seenAlive();

    @Message("In a sentence")
    String sentence();

    @Message("Set up by")
    String setUpBy();

    @Message("What it shows")
    String shows();

    @Message("Sources")
    String sources();

    @Message("Where it stands")
    String standing();

    @Message("Stands")
    String stands();

    @Message("Joined to incident")
    String standsUnder();

    @Message("Still incubating")
    String stillIncubating();

    @Message("Syndrome")
    String syndrome();

    @Message("Revision of the table")
    String tableRevision();

    @Message("Test")
    String test();

    @Message("Top marked")
    String topMarked();

    @Message("Undone because")
    String undoneReason();

    @Message("Unidentified, alive")
    String unidentifiedAlive();

    @Message("Unidentified, dead")
    String unidentifiedDead();

    @Message("Vaccinations")
    String vaccinations();

    @Message("Verdict")
    String verdict();

    @Message("Warned from")
    String warnedFrom();

    @Message("Warnings read")
    String warningsRead();

    @Message("Parts of water")
    String waterParts();

    @Message("Weighings")
    String weighings();

    @Message("Width in pixels")
    String widthPixels();

    @Message("Word")
    String word();

    @Message("Accounted for")
    String accountedFor();

    @Message("Adoptions")
    String adoptions();

    @Message("Asked too")
    String alsoAsk();

    @Message("Approved")
    String approvedAt();

    @Message("Begun")
    String begunAt();

    @Message("Burden, km")
    String burdenKilometres();

    @Message("Called off because")
    String cancelledBecause();

    @Message("Kind of chance")
    String chance();

    @Message("Corners")
    String coordinates();

    @Message("Declared before it was run")
    String declared();

    @Message("Digest of the document (SHA-256)")
    String documentSha256();

    @Message("Version of the calculation")
    String engineVersion();

    @Message("Over")
    String expired();

    @Message("Why it failed")
    String failure();

    @Message("Finished")
    String finishedAt();

    @Message("As GeoJSON")
    String geoJson();

    @Message("As GeoPackage")
    String geoPackage();

    @Message("Holds here")
    String holdsHere();

    @Message("Digest of what went in (SHA-256)")
    String inputsSha256();

    @Message("Nothing better is possible")
    String isBest();

    @Message("As JSON")
    String json();

    @Message("Largest uncertainty of a place, m")
    String largestUncertaintyMetres();

    @Message("Fewest incidents")
    String minimumIncidents();

    @Message("Months")
    String months();

    @Message("Page")
    String page();

    @Message("As PDF")
    String paper();

    @Message("Length of a piece, m")
    String pieceMetres();

    @Message("Placed")
    String placed();

    @Message("Proposed")
    String proposedAt();

    @Message("Seed of the simulation")
    String seed();

    @Message("Shown")
    String shown();

    @Message("Simulations")
    String simulations();

    @Message("Simulations done")
    String simulationsDone();

    @Message("Simulations in all")
    String simulationsTotal();

    @Message("Speed limit, km/h")
    String speedLimitKmh();

    @Message("When it was taken")
    String taken();

    @Message("Times begun")
    String timesBegun();

    @Message("Kind of shape")
    String type();

    @Message("Time looked at")
    String window();

    @Message("Taken back")
    String withdrawn();

    @Message("Moves proposed")
    String moves();
}
