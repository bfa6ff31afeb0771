package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.culvert.dispatch.Need;

/** What the desk says. */
@MessageBundle("desk")
public interface DeskWords {
    @Message("A call")
    String title();

    @Message("Where it is")
    String where();

    @Message("Open now, most pressing first")
    String openNow();

    @Message("“Is anyone hurt?”")
    String askHurt();

    @Message("“Are you off the road, out of the traffic?”")
    String askRoad();

    @Message("The emergency number first. The animal waits.")
    String ifHurt();

    @Message("“Please get well off the road first, hazard lights on. I stay on the line.”")
    String ifOnRoad();

    @Message("“Where is it?”")
    String askPlace();

    @Message("Road and kilometre, two roads that meet, coordinates, Plus Code: as it is said.")
    String placeHint();

    @Message("“On which number can I ring you back?”")
    String askPhone();

    @Message("“What animal is it, and does it live?”")
    String askAnimal();

    @Message("Animal, in the caller's words")
    String whichAnimal();

    @Message("“How is it? What do you see?”")
    String askCondition();

    @Message("Alive")
    String alive();

    @Message("Dead")
    String dead();

    @Message("Yes")
    String yes();

    @Message("No")
    String no();

    @Message("Can't tell")
    String cantTell();

    @Message("Keep the call")
    String keep();

    @Message("Keep what was added")
    String keepChanges();

    @Message("As the conversation goes on")
    String further();

    @Message("How many")
    String askCount();

    @Message("What happened")
    String askCause();

    @Message("not said")
    String notSaid();

    @Message("At what time it happened")
    String askSince();

    @Message("Has anyone looked into the pouch?")
    String askPouch();

    @Message("Name of the caller")
    String askName();

    @Message("Reference of the police or the roads authority")
    String askPolice();

    @Message("What the caller says, word for word")
    String askWords();

    @Message("Not kept yet.")
    String notKept();

    @Message("Right would be:")
    String rightWouldBe();

    @Message("The roads around the place, north up; the dashed ring is where it may be. The words below say "
            + "the same.")
    String pictureOf();

    @Message("No road is near.")
    String noRoad();

    @Message("Within {metres} m.")
    String within(Object metres);

    @Message("Limit {kmh} km/h.")
    String limit(Object kmh);

    @Message("Limit not known: it counts as fast.")
    String limitUnknown();

    @Message("Perhaps on another road:")
    String inDoubt();

    @Message("May be the same")
    String mayBeSame();

    @Message("Incident {number}")
    String incident(Object number);

    @Message("The call can be kept like this: what is not understood stays in the words.")
    String keptAnyway();

    @Message("Begin to say where, and the roads around it are drawn here.")
    String whereEmpty();

    @Message("Nothing is open. What is called in stands here, and whatever needs somebody most stands first.")
    String nothingOpen();

    @Message("animal not known")
    String animalUnknown();

    @Message("{count} calls")
    String callsAboutIt(Object count);

    @Message("off the roads")
    String offRoad();

    @Message("place not known")
    String placeUnknown();

    @Message("{count} more are open.")
    String moreOpen(Object count);

    @Message("{#switch need}{#case peopleMayBeHurt}People are hurt{#case aliveNobodySent}Alive, nobody "
            + "sent{#case perhapsAliveNobodySent}Perhaps alive, nobody sent{#case offerNotAnswered}Offered, "
            + "not answered{#case deadPouchNotChecked}Dead, pouch not checked{#case deadNobodySent}Dead, "
            + "nobody sent{#case underway}Somebody is on it{#case forgotten}Not heard of for days: end "
            + "it?{/switch}")
    String need(Need need);

    @Message("This is one with another incident.")
    String standsUnder();

    @Message("To that one")
    String theOther();

    @Message("{#switch progress}{#case 'logged'}Nobody is on the way.{#case 'offered'}Somebody was asked and "
            + "has not answered.{#case 'underway'}Somebody is on it.{#case 'closed'}Ended.{/switch}")
    String progress(String progress);

    @Message("{count} can go.")
    String canGo(Object count);

    @Message("Say to the caller")
    String sayToCaller();

    @Message("“Your number is {number}.”")
    String yourNumber(Object number);

    @Message("No caution is on record for what was told. Nobody should come near an animal unasked, nor onto "
            + "the road.")
    String nothingToSay();

    @Message("said {ago} ago:")
    String said(Object ago);

    @Message("Said")
    String saidIt();

    @Message("Said: {words}")
    String tick(Object words);

    @Message("What the caller tells")
    String toldFurther();

    @Message("This caller asked to be hidden: name, number and words are not shown.")
    String callerHidden();

    @Message("Another call, {ago} ago")
    String otherCall(Object ago);

    @Message("Ask which road it is:")
    String whichRoad();

    @Message("It is on {road}")
    String onRoad(Object road);

    @Message("May be the same animal")
    String joinIt();

    @Message("Why they are one:")
    String whyOne();

    @Message("It is incident {number}")
    String joinTo(Object number);

    @Message("Going out")
    String goingOut();

    @Message("Who can go, nearest first")
    String whoCanGo();

    @Message("Who")
    String who();

    @Message("Leads")
    String lead();

    @Message("Goes along")
    String helps();

    @Message("{callSign} leads")
    String leads(Object callSign);

    @Message("{callSign} goes along")
    String helpsToo(Object callSign);

    @Message("{count} further away, or not to be sent")
    String furtherAway(Object count);

    @Message("Nobody on the roster attends. Members who go out, with their homes, are entered in the roster.")
    String nobodyAttends();

    @Message("The gate lets them go")
    String gateOpen();

    @Message("The gate stops them")
    String gateShut();

    @Message("{#switch test}{#case 'people'}People{#case 'speed'}Speed of the road{#case 'light'}Light{#case "
            + "'vaccination'}Vaccination{#else}{test}{/switch}")
    String gateTest(String test);

    @Message("{#switch kind}{#case 'protection'}nobody lifts it{#case 'policy'}rule of the network{#case "
            + "'advice'}advice{/switch}")
    String gateKind(String kind);

    @Message("Why they go all the same")
    String overrideReason();

    @Message("Kept under your name. Where nobody lifts it, it does not help.")
    String overrideHint();

    @Message("Ask the gate")
    String askGate();

    @Message("Send them")
    String send();

    @Message("{#switch next}{#case 'accept'}Asked, not answered yet{#case 'depart'}Accepted, not set out "
            + "yet{#case 'arrive'}On the way{#case 'end'}At the place{/switch}")
    String step(String next);

    @Message("{#switch next}{#case 'accept'}They accept{#case 'depart'}They set out{#case 'arrive'}They are "
            + "there{/switch}")
    String nextStep(String next);

    @Message("How it ended")
    String howItEnded();

    @Message("{#switch outcome}{#case 'collected'}Collected{#case 'leftWell'}Left well{#case 'deadChecked'}"
            + "Dead, checked{#case 'notFound'}Not found{#case 'notAttendedUnsafe'}Not attended: unsafe{#case "
            + "'notAttendedNobody'}Not attended: nobody{#case 'adviceOnly'}Advice only{#case 'passedOn'}"
            + "Passed to another body{#else}{outcome}{/switch}")
    String outcome(String outcome);

    @Message("To whom it was passed")
    String passedOnTo();

    @Message("Their reference")
    String theirReference();

    @Message("Young found")
    String youngFound();

    @Message("Carcass signed")
    String carcassSigned();

    @Message("Carcass moved")
    String carcassMoved();

    @Message("Keep how it ended")
    String keepEnd();

    @Message("Nobody goes")
    String nobodyGoes();

    @Message("Why nobody goes")
    String whyNobody();

    @Message("End it")
    String close();

    @Message("Map, north up. Arrow keys move it, plus and minus bring it closer or further.")
    String map();

    @Message("A tap on the map is the place; numbers are open incidents, ≈ may be the same.")
    String mapHint();

    @Message("Closer")
    String closer();

    @Message("Wider")
    String wider();

    @Message("The middle of the map is the place")
    String takeMiddle();

    @Message("The place is now {text}.")
    String placeTaken(String text);

    @Message("Take back: {text}")
    String placeBack(String text);

    @Message("Some of the roads could not be drawn. What is said beside the map is whole.")
    String noRoadsDrawn();

    @Message("Open nearby")
    String openAround();

    @Message("{#switch name}{#case 'asked'}Asked{#case 'accepted'}Accepted{#case 'departed'}Set out{#case "
            + "'arrived'}There{#case 'ended'}Ended{/switch}")
    String stepTaken(String name);
}
