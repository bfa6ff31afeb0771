package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What the page of a member's day of care says. */
@MessageBundle("careDay")
public interface CareDayWords {
    @Message("Care day")
    String title();

    @Message("A member's day")
    String aDay();

    @Message("Today, {day}")
    String todayIs(String day);

    @Message("The day of {callSign}")
    String ofMember(String callSign);

    @Message("Not entered. Please look at:")
    String notEntered();

    @Message("Not entered.")
    String notEnteredHere();

    @Message("Days")
    String days();

    @Message("← the day before")
    String before();

    @Message("today")
    String today();

    @Message("the day after →")
    String after();

    @Message("To tick what is done, and without a signal too: what is to be done now")
    String toHand();

    @Message("What a carer rang in about can be entered for them here; they tick on their own page.")
    String rangIn();

    @Message("No animal is held on this day.")
    String noAnimals();

    @Message("Case {number}: {name}")
    String caseNamed(Object number, String name);

    @Message("The vet's limits:")
    String vetsLimits();

    @Message("The weight falls faster than the vet's limit: ring the clinic.")
    String falls();

    @Message("At its discharge:")
    String atDischarge();

    @Message("With its plan:")
    String withPlan();

    @Message("From {name}.")
    String fromClinic(String name);

    @Message("Seen there again by {day}.")
    String reviewBy(String day);

    @Message("It was to be seen there again by {day}. If it was not, ring the clinic.")
    String reviewOver(String day);

    @Message("No plan is in force for it. If you do not know what to do, ring the clinic.")
    String noPlan();

    @Message("Nothing more is to be done on this day.")
    String nothingMore();

    @Message("It can be ticked from that day on.")
    String fromThatDay();

    @Message("Overdue.")
    String overdue();

    @Message("The vet's limits: {limits}")
    String limits(String limits);

    @Message("✓ Done")
    String done();

    @Message("Yes")
    String yes();

    @Message("No")
    String no();

    @Message("Not now, at another time, or more to say")
    String more();

    @Message("What was seen")
    String whatSeen();

    @Message("When, if not now")
    String whenNotNow();

    @Message("Why it was not done")
    String whyNot();

    @Message("Skip it, for this reason")
    String skip();

    @Message("Entered on this day")
    String enteredThatDay();

    @Message("Add something that was seen")
    String addSeen();

    @Message("Add an entry to case {number}")
    String addTo(Object number);

    @Message("About")
    String about();

    @Message("{#switch kind}{#case 'weight'}Its weight{#case 'food'}Food{#case 'wound'}A wound{#case "
            + "'photograph'}A photograph that was taken{#else}Something else{/switch}")
    String kind(String kind);

    @Message("{#switch kind}{#case 'weight'}Weight{#case 'food'}Food{#case 'wound'}Wound{#case "
            + "'photograph'}Photograph{#else}Note{/switch}")
    String kindDone(String kind);

    @Message("Grams, of its weight only")
    String gramsOnly();

    @Message("In words")
    String inWords();

    @Message("The photograph that shows it")
    String photograph();

    @Message("none of these")
    String noneOfThese();

    @Message("No photograph of the animal is kept that could be named here.")
    String noPhotograph();

    @Message("Add one first")
    String addPhotograph();

    @Message("Add")
    String add();

    @Message("This account is no member's, so that it holds no animals.")
    String noMember();

    @Message("In the member's own calendar")
    String calendar();

    @Message("The address, shown this once.")
    String addressOnce();

    @Message("Subscribe to it in a calendar; whoever has it reads the tasks, so give it to nobody.")
    String addressUse();

    @Message("An address was made {when}. If it was lost or seen by somebody else, revoke it and make another.")
    String addressMade(String when);

    @Message("Revoke the address")
    String revoke();

    @Message("The tasks can stand in the calendar of a telephone: the number of the case and what is due, and "
            + "nothing else. Ticks are made on the page of what is to do.")
    String calendarLead();

    @Message("Make an address")
    String makeAddress();

    @Message("Another member's day")
    String another();

    @Message("Carer")
    String carer();

    @Message("Show")
    String show();

    @Message("minutes")
    String minutes();

    @Message("grams")
    String grams();

    @Message("degrees Celsius")
    String degreesCelsius();

    @Message("millimetres")
    String millimetres();

    @Message("Was due on {day}")
    String wasDue(String day);

    @Message("missed {times} times in a row")
    String missed(Object times);

    @Message("Once, by {day}")
    String onceBy(String day);

    @Message("Today")
    String todayWord();

    @Message("On {day}")
    String onDay(String day);

    @Message("from {time}")
    String fromTime(String time);

    @Message("{low} to {high} {unit}")
    String between(String low, String high, String unit);

    @Message("not below {low} {unit}")
    String notBelow(String low, String unit);

    @Message("not above {high} {unit}")
    String notAbove(String high, String unit);

    @Message("skipped: {why}")
    String skipped(String why);

    @Message("done late")
    String doneLate();

    @Message("done")
    String doneWord();

    @Message("yes")
    String answerYes();

    @Message("no")
    String answerNo();

    @Message("{#switch flag}{#case 'belowLow'}below the vet's limit: ring the clinic{#case 'aboveHigh'}above the "
            + "vet's limit: ring the clinic{#case 'flaggedAnswer'}the vet wants to hear of that: ring the "
            + "clinic{#else}the weight falls faster than the vet's limit: ring the clinic{/switch}")
    String flag(String flag);

    @Message("Weight over {days} days, from {weighings} weighings: {percent} % a week")
    String weight(Object days, Object weighings, String percent);

    @Message(", too few to say how sure that is.")
    String weightUnsure();

    @Message("({low} to {high} g a day at 95 %).")
    String weightSure(String low, String high);
}
