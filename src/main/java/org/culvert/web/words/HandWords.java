package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What the pages of rescuers and carers say. */
@MessageBundle("hand")
public interface HandWords {
    /** BCP 47 */
    @Message("en")
    String language();

    /** Pattern of a day, as {@link java.time.format.DateTimeFormatter} reads it. */
    @Message("EEEE d MMMM")
    String dayPattern();

    /** Pattern of a day of any year. */
    @Message("d MMMM yyyy")
    String datePattern();

    @Message("To do")
    String toDo();

    @Message("Nothing waits for you now")
    String nothingWaits();

    @Message("One thing waits for you")
    String oneWaits();

    @Message("{count} things wait for you")
    String someWait(int count);

    @Message("When somebody offers you an animal or asks you to go out, it stands here, the most pressing first.")
    String whatComesHere();

    @Message("This account belongs to no member, so that nothing can wait for it. A coordinator can change that.")
    String noMember();

    @Message("Then")
    String then();

    @Message("Later today")
    String later();

    @Message("With you")
    String withYou();

    @Message("No animal is with you.")
    String noneWithYou();

    @Message("done")
    String entryDone();

    @Message("done late")
    String entryLate();

    @Message("not done: {why}")
    String entrySkipped(String why);

    @Message("taken back")
    String entryWithdrawn();

    @Message("outside of the vet’s limits: ring the clinic")
    String ringTheClinicForThis();

    @Message("Entered today")
    String enteredToday();

    @Message("The whole day")
    String wholeDay();

    @Message("Back to what is due")
    String back();

    @Message("Case {number}: {name}")
    String caseNamed(long number, String name);

    @Message("Incident {number}")
    String incident(long number);

    @Message("You are asked to go")
    String askedToGo();

    @Message("You go out")
    String goingOut();

    @Message("Read what to mind, then say whether you go")
    String lookThenAccept();

    @Message("Next: {step}")
    String next(String step);

    @Message("An animal is offered to you")
    String offeredToYou();

    @Message("{giver} answers for it until you say that you have it.")
    String giverHolds(String giver);

    @Message("Nobody is recorded as its holder until you say that you have it.")
    String nobodyHolds();

    @Message("somebody without an account")
    String outsider();

    @Message("I have the animal")
    String take();

    @Message("I do not take it")
    String refuse();

    @Message("Why not")
    String whyNot();

    @Message("Overdue.")
    String overdue();

    @Message("Was due on {day}")
    String wasDue(String day);

    @Message("missed {times} times in a row")
    String missed(int times);

    @Message("Once, by {day}")
    String onceBy(String day);

    @Message("Today")
    String today();

    @Message("Today, from {time}")
    String todayFrom(String time);

    @Message("The vet’s limits: {limits}")
    String vetsLimits(String limits);

    @Message("{low} to {high} {unit}")
    String between(String low, String high, String unit);

    @Message("not below {low} {unit}")
    String notBelow(String low, String unit);

    @Message("not above {high} {unit}")
    String notAbove(String high, String unit);

    @Message("Minutes")
    String minutes();

    @Message("Grams")
    String grams();

    @Message("Degrees Celsius")
    String degreesCelsius();

    @Message("Millimetres")
    String millimetres();

    @Message("Done")
    String done();

    @Message("Yes")
    String yes();

    @Message("No")
    String no();

    @Message("Not known")
    String notKnown();

    @Message("More to say, another time, or not done")
    String more();

    @Message("What you saw")
    String whatYouSaw();

    @Message("When, if not now")
    String whenIfNotNow();

    @Message("Why it was not done")
    String whyNotDone();

    @Message("Not done, for this reason")
    String skip();

    @Message("Entered as {who}, with the time at which you tap.")
    String signedBy(String who);

    @Message("Not entered.")
    String notEntered();

    @Message("Right would be: {wanted}.")
    String rightWouldBe(String wanted);

    @Message(
            "If it is worse than yesterday, ring the clinic. What is to be done is the vet’s; check your local code and your licensed vet.")
    String ringTheClinic();

    @Message("The weight falls faster than the vet’s limit: ring the clinic.")
    String fallsFast();

    @Message("At its discharge: {words}")
    String atDischarge(String words);

    @Message("With its plan: {words}")
    String withPlan(String words);

    @Message("No plan is in force for it. If you do not know what to do, ring the clinic.")
    String noPlan();

    @Message("Seen at the clinic again by {day}")
    String reviewBy(String day);

    @Message("It was to be seen again at the clinic by {day}. If it was not, ring the clinic.")
    String reviewOver(String day);

    @Message("Write down what you saw")
    String writeDown();

    @Message("About")
    String about();

    @Message("Something else")
    String aboutNote();

    @Message("Its weight")
    String aboutWeight();

    @Message("Food")
    String aboutFood();

    @Message("A wound")
    String aboutWound();

    @Message("Grams, of its weight only")
    String gramsOfWeight();

    @Message("In words")
    String inWords();

    @Message("The photograph that shows it")
    String whichPhotograph();

    @Message("none of these")
    String noneOfThese();

    @Message(
            "No photograph of the animal is kept that could be named here. Add one on its page first, or tick it without.")
    String noPhotographYet();

    @Message("Write it down")
    String add();

    @Message("Add a photograph")
    String photograph();

    @Message("Photograph (JPEG or PNG, up to 10 MB)")
    String photographFile();

    @Message("What it shows")
    String caption();

    @Message("Add the photograph")
    String sendPhotograph();

    @Message("Photographs so far: {count}")
    String photographsThere(int count);

    @Message("Hand it over")
    String handOver();

    @Message("You answer for it until whoever takes it says so.")
    String youHold();

    @Message("To which clinic or organisation")
    String toOrganisation();

    @Message("choose")
    String choose();

    @Message("Or to somebody of the network, by call sign; this needs a signal")
    String toCallSign();

    @Message("Call sign")
    String callSign();

    @Message("Offer it to them")
    String offerIt();

    @Message("It is offered to {taker} since {time}, and waits for their yes.")
    String offeredTo(String taker, String time);

    @Message("The network may not hold this kind: {why}")
    String referOut(String why);

    @Message("Before you go")
    String beforeYouGo();

    @Message("People may be hurt. They come first: has somebody rung the emergency number?")
    String peopleHurt();

    @Message("Nobody knows whether people are hurt. Take it that they may be, until you know.")
    String peopleNotKnown();

    @Message("The caller says that nobody is hurt.")
    String peopleUnhurt();

    @Message(
            "No caution is entered for what was reported. An animal that is not known may bite, scratch or carry a disease.")
    String noCautions();

    @Message("These are the usual cautions; what your local code and your licensed vet say goes before them.")
    String cautionsAre();

    @Message(
            "That a condition is met does not say that the verge is safe. Look at the traffic first, and turn back if in doubt.")
    String gateMeans();

    @Message("The gate was set aside by a named person: {why}")
    String gateSetAside(String why);

    @Message("stops")
    String gateStops();

    @Message("set aside")
    String gateAside();

    @Message("cannot tell")
    String gateCannotTell();

    @Message("met")
    String gatePassed();

    @Message("to mind")
    String gateAdvice();

    @Message("The speed of the road")
    String testSpeed();

    @Message("The light")
    String testLight();

    @Message("Vaccination")
    String testVaccination();

    @Message("People")
    String testPeople();

    @Message("Where")
    String where();

    @Message("No place is known. Ask the desk.")
    String noPlace();

    @Message("{road}, {kilometres} km along it")
    String onRoad(String road, String kilometres);

    @Message("{road}, how far along it is not known")
    String onRoadSomewhere(String road);

    @Message("{carriageway} carriageway")
    String carriageway(String carriageway);

    @Message("on the left, as its kilometres grow")
    String sideLeft();

    @Message("on the right, as its kilometres grow")
    String sideRight();

    @Message("on the road itself")
    String sideOn();

    @Message("It is not sure which road this is.")
    String roadInDoubt();

    @Message("Known to {metres} m.")
    String knownTo(String metres);

    @Message("As it was said: {words}")
    String asSaid(String words);

    @Message("Open in a map of this telephone")
    String openInMap();

    @Message("alive")
    String alive();

    @Message("dead")
    String dead();

    @Message("not known whether alive")
    String vitalityUnknown();

    @Message("an animal of which nobody knows the kind")
    String someAnimal();

    @Message("Your next step")
    String nextStep();

    @Message("I go")
    String stepAccept();

    @Message("I have set out")
    String stepDepart();

    @Message("I am there")
    String stepArrive();

    @Message("Say what you found")
    String stepOutcome();

    @Message("If you cannot go, ring the desk: nobody else is sent before they know.")
    String cannotGo();

    @Message("Said yes {time}")
    String acceptedAt(String time);

    @Message("Set out {time}")
    String departedAt(String time);

    @Message("There {time}")
    String arrivedAt(String time);

    @Message("Only rescuers who go out enter its steps.")
    String notYours();

    @Message("It has ended: {outcome}.")
    String ended(String outcome);

    @Message("What you found")
    String found();

    @Message("How it ended")
    String outcome();

    @Message("collected")
    String outcomeCollected();

    @Message("left well at the place")
    String outcomeLeftWell();

    @Message("dead, checked")
    String outcomeDeadChecked();

    @Message("not found")
    String outcomeNotFound();

    @Message("not attended: unsafe")
    String outcomeUnsafe();

    @Message("not attended: nobody could go")
    String outcomeNobody();

    @Message("advice only")
    String outcomeAdvice();

    @Message("passed to another body")
    String outcomePassedOn();

    @Message("To whom it was passed")
    String passedOnTo();

    @Message("Was the pouch checked?")
    String pouchChecked();

    @Message("How many young were found")
    String youngFound();

    @Message("Was the carcass signed, so that nobody stops for it again?")
    String carcassSigned();

    @Message("Was the carcass moved off the road?")
    String carcassMoved();

    @Message("nothing said")
    String nothingSaid();

    @Message("What you saw there, in your words")
    String sceneWords();

    @Message("Enter what you found, and end this outing")
    String endOuting();

    @Message("On this telephone")
    String onThisTelephone();

    @Message("One entry is kept on this telephone and not sent yet.")
    String keptOne();

    @Message("COUNT entries are kept on this telephone and not sent yet.")
    String keptSome();

    @Message("Everything was sent.")
    String allSent();

    @Message("One entry was refused. Mend it or drop it.")
    String refusedOne();

    @Message("COUNT entries were refused. Mend or drop them.")
    String refusedSome();

    @Message("One entry of somebody else waits on this telephone. It is sent when they sign in here again.")
    String othersOne();

    @Message(
            "COUNT entries of somebody else wait on this telephone. They are sent when their owner signs in here again.")
    String othersSome();

    @Message("kept")
    String stateKept();

    @Message("sending")
    String stateSending();

    @Message("sent")
    String stateSent();

    @Message("refused")
    String stateRefused();

    @Message("No signal. This page is as it was TIME; what you enter is kept here and sent later.")
    String noSignal();

    @Message("Your session has ended. What you enter is kept here, and sent when you have signed in again.")
    String signInAgain();

    @Message("Sign in")
    String signIn();

    @Message("There is news.")
    String news();

    @Message("Show this page anew")
    String showAnew();

    @Message("Still waiting for the server …")
    String stillWaiting();

    @Message("Mend")
    String mend();

    @Message("Drop")
    String drop();

    @Message("Drop it for good? What you typed is then gone.")
    String reallyDrop();

    @Message("Yes, drop it")
    String dropYes();

    @Message("Keep it")
    String dropNo();

    @Message("Somebody entered that before: TIME.")
    String enteredBefore();

    @Message("This is no number.")
    String noNumber();

    @Message("Say which.")
    String sayWhich();

    @Message("Say why.")
    String sayWhy();

    @Message("Say what you saw.")
    String sayWhat();

    @Message("This lies in the future.")
    String inTheFuture();

    @Message("Choose a JPEG or PNG of up to 10 MB.")
    String wrongFile();

    @Message("Only a weight has grams.")
    String onlyWeight();

    @Message("No signal")
    String offlineTitle();

    @Message(
            "This page was not opened here before, and there is no signal to fetch it. What you entered is kept on this telephone and is sent when the signal is back.")
    String offlineWords();

    @Message("If you were just sending a form, it was not sent. Go back: what you typed stands there still.")
    String offlineForm();

    @Message("Signed out on this telephone")
    String signedOutTitle();

    @Message(
            "The pages are gone from this telephone. The server hears of it as soon as there is a signal; until then give the telephone to nobody.")
    String signedOutWords();

    @Message("Open a case for the animal")
    String openCase();
}
