package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What pages of clutches say. */
@MessageBundle("clutch")
public interface ClutchWords {
    @Message("Clutches")
    String title();

    @Message("Clutch of case {number}")
    String titleOf(Object number);

    @Message("Eggs of one mother, whoever runs the incubator, and what waits for each clutch today.")
    String lead();

    @Message("No clutch is recorded that you may see. A clutch begins with the eggs of one mother, living or "
            + "dead: open it from the number of her case, below.")
    String none();

    @Message("No clutch is recorded that you may see. A clinic or a coordinator opens one from the case of the "
            + "mother.")
    String noneForReaders();

    @Message("Clutch")
    String clutchHead();

    @Message("Still incubating")
    String incubatingHead();

    @Message("Today")
    String todayHead();

    @Message("Held by")
    String heldHead();

    @Message("Case {number}, {kind}")
    String ofCase(Object number, String kind);

    @Message("All clutches")
    String all();

    @Message("Eggs:")
    String eggsOf();

    @Message("their mother is dead")
    String motherDead();

    @Message("Held by {holder}.")
    String heldBy(String holder);

    @Message("nobody is recorded")
    String nobody();

    @Message("{holder}, authorisation {number}")
    String underAuthorisation(String holder, String number);

    @Message("Today")
    String due();

    @Message("No egg is incubating: nothing waits.")
    String nothingDue();

    @Message("In what the eggs lie is not entered: enter the set-up.")
    String dueBed();

    @Message("Whether the upper sides are marked is not known or said to be no. Look before anybody moves a box.")
    String dueMarks();

    @Message("No temperature of the substrate is recorded: read one.")
    String dueFirstTemperature();

    @Message("The last temperature is {age} old. After 36 h the record has a gap, and the days of hatching "
            + "get wider: read one.")
    String dueTemperature(String age);

    @Message("The last temperature is {age} old.")
    String temperatureRead(String age);

    @Message("Nobody has candled them. When and how often, your licensed vet says; no rhythm is entered here.")
    String neverCandled();

    @Message("Last candled {days} days ago. When again, your licensed vet says; no rhythm is entered here.")
    String candledBefore(Object days);

    @Message("They may hatch now: look every day.")
    String hatchNow();

    @Message("They may hatch in {days} days.")
    String hatchIn(Object days);

    @Message("The latest day that is told passed {days} days ago. No egg is given up by that: somebody looks at "
            + "each.")
    String hatchPast(Object days);

    @Message("When they may hatch cannot be told.")
    String hatchUnknown();

    @Message("The count does not agree with the film: see below.")
    String filmDiffers();

    @Message("Temperatures and days")
    String days();

    @Message("Temperatures of the substrate by day, and when the eggs may hatch")
    String pictureTitle();

    @Message("days since the first eggs were set")
    String daysAxis();

    @Message("Striped: when they may hatch")
    String striped();

    @Message(", without an earliest day")
    String openBefore();

    @Message(", without a latest day")
    String openAfter();

    @Message("S set, C candled, F failed, H hatched. The line breaks where no temperature was read for 36 hours.")
    String signs();

    @Message("No eggs are set.")
    String noneSet();

    @Message("What the days rest on")
    String basis();

    @Message("Sources:")
    String sources();

    @Message("Sex and temperature")
    String sex();

    @Message("Every egg")
    String eggs();

    @Message("Against the film")
    String againstFilm();

    @Message("In what they lie")
    String bed();

    @Message("What happened")
    String events();

    @Message("When, in the region's time")
    String when();

    @Message("What")
    String what();

    @Message("Taken back:")
    String takenBack();

    @Message("When they may hatch cannot be told.")
    String windowUnknown();

    @Message("They may hatch from {from} to {to}.")
    String windowBoth(String from, String to);

    @Message("They may hatch from {from}; no latest day is told.")
    String windowFrom(String from);

    @Message("They may hatch to {to}; no earliest day is told.")
    String windowTo(String to);

    @Message("recovered")
    String recovered();

    @Message("of these laid")
    String laid();

    @Message("broken")
    String broken();

    @Message("discarded")
    String discarded();

    @Message("set to incubate")
    String setToIncubate();

    @Message("hatched")
    String hatched();

    @Message("failed, as somebody said")
    String failed();

    @Message("still incubating")
    String stillIncubating();

    @Message("In what the eggs lie is not entered.")
    String noBed();

    @Message("In {medium}{ratio}; {box}; {marked}.")
    String bedOf(String medium, String ratio, String box, String marked);

    @Message(", at a ratio that is not entered")
    String ratioUnknown();

    @Message(", water to medium {water} : {medium} by weight")
    String ratio(String water, String medium);

    @Message("{#switch answer}{#case 'yes'}the upper sides are marked{#case 'no'}the upper sides are not "
            + "marked{#else}whether the upper sides are marked is not known{/switch}")
    String marked(String answer);

    @Message("{all} recovered ({came}): {set} set, {broken} broken, {discarded} discarded")
    String eventRecovered(Object all, String came, Object set, Object broken, Object discarded);

    @Message("{counted} left inside, said {reader}")
    String eventInside(Object counted, String reader);

    @Message("set up by {by}")
    String eventSetUp(String by);

    @Message("candled by {by}: {developing} developing, {not} without visible development, {cannotTell} not clear")
    String eventCandled(String by, Object developing, Object not, Object cannotTell);

    @Message("{failed} failed, said {by}: {grounds}")
    String eventFailed(Object failed, String by, String grounds);

    @Message("{hatched} hatched")
    String eventHatched(Object hatched);

    @Message("1 temperature by {source}: {celsius} °C")
    String eventOneTemperature(String source, String celsius);

    @Message("{count} temperatures by {source}: {low} to {high} °C")
    String eventTemperatures(Object count, String source, String low, String high);

    @Message("to {holder}")
    String eventHandedOver(String holder);

    @Message("{#switch how}{#case 'surgery'}by surgery{#case 'afterDeath'}after her death{#case "
            + "'induced'}induced{#case 'laidInCare'}laid in care{#case 'laidInTransit'}laid in transit{#else}how "
            + "is not entered{/switch}")
    String came(String how);

    @Message("{#switch grounds}{#case 'collapsed'}collapsed{#case 'mouldy'}mouldy{#case "
            + "'noDevelopmentOnCandling'}no development on candling{#case 'openedDead'}opened, dead{#case "
            + "'broken'}broken{#else}other grounds{/switch}")
    String grounds(String grounds);

    @Message("No temperature is recorded since the eggs were set.")
    String noTemperature();

    @Message("Temperatures of the substrate from {low} to {high} °C, {mean} °C in the mean, until {until}.")
    String temperatureRange(String low, String high, String mean, String until);

    @Message("Today is {day}.")
    String todayIs(String day);

    @Message("Enter")
    String enter();

    @Message("A time that is left out is now. Figures are of this clutch alone.")
    String enterLead();

    @Message("Temperature")
    String temperature();

    @Message("of the substrate next to the eggs, not of the air")
    String temperatureHint();

    @Message("Degrees Celsius")
    String celsius();

    @Message("Which thermometer, and who read it")
    String thermometer();

    @Message("Candling")
    String candling();

    @Message("Never turn an egg while you hold a light to it. No egg fails by this.")
    String candlingCaution();

    @Message("Development seen")
    String developing();

    @Message("No development seen")
    String notDeveloping();

    @Message("Cannot be told")
    String cannotTell();

    @Message("Who candled")
    String candledBy();

    @Message("Hatching")
    String hatching();

    @Message("Each hatchling becomes a case of its own, with the found place of its mother, held by whoever holds "
            + "the clutch.")
    String hatchingLead();

    @Message("How many hatched")
    String hatchedCount();

    @Message("When, if not now")
    String hatchedAt();

    @Message("Eggs given up")
    String failing();

    @Message("Somebody says it, with a ground. No date and no count gives an egg up.")
    String failingLead();

    @Message("How many")
    String failedCount();

    @Message("On which ground")
    String groundsOf();

    @Message("Who says so")
    String saidBy();

    @Message("Set-up")
    String settingUp();

    @Message("Medium")
    String medium();

    @Message("such as vermiculite")
    String mediumHint();

    @Message("Parts of water, by weight")
    String waterParts();

    @Message("Parts of dry medium")
    String mediumParts();

    @Message("Which box, and where")
    String box();

    @Message("Are the upper sides marked?")
    String topMarked();

    @Message("Who set them up")
    String setUpBy();

    @Message("More eggs")
    String moreEggs();

    @Message("Recovered are as many as set, broken and discarded together.")
    String moreEggsLead();

    @Message("Recovered")
    String recoveredCount();

    @Message("Set to incubate")
    String setCount();

    @Message("Broken")
    String brokenCount();

    @Message("Discarded")
    String discardedCount();

    @Message("How they came")
    String howTheyCame();

    @Message("Eggs still inside her")
    String inside();

    @Message("How many")
    String counted();

    @Message("Who says so")
    String reader();

    @Message("Hand the clutch over")
    String handOver();

    @Message("Eggs are protected wildlife too: whoever takes them needs an authorisation of their own that is "
            + "listed here. Check your local code.")
    String handOverLead();

    @Message("The file of a logger")
    String logger();

    @Message("A CSV file with a column of times and one of °C, whose probe lies in the substrate next to the "
            + "eggs. All of it is taken or nothing; what was told before is left out.")
    String loggerLead();

    @Message("Which logger")
    String whichLogger();

    @Message("Name of the column of times, if it is not plain")
    String timeColumn();

    @Message("Name of the column of temperatures, if it is not plain")
    String temperatureColumn();

    @Message("Offset from UTC, if the times bear none and are not the region's")
    String utcOffset();

    @Message("File")
    String csvFile();

    @Message("Send the file")
    String sendFile();

    @Message("Take an entry back")
    String withdrawal();

    @Message("It stays readable with the reason, and counts for nothing. A hatching is not taken back here: its "
            + "animals are cases of their own.")
    String withdrawalLead();

    @Message("Which entry")
    String whichEntry();

    @Message("A new clutch")
    String newClutch();

    @Message("From the case of the mother, living or dead. Whoever runs the incubator holds protected wildlife, "
            + "under an authorisation of their own.")
    String newLead();

    @Message("Number of the mother's case")
    String motherCase();

    @Message("At which visit they came")
    String visit();

    @Message("Open the clutch")
    String open();
}
