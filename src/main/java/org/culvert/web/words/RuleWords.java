package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What the page of release rules says. */
@MessageBundle("rules")
public interface RuleWords {
    @Message("Release rules")
    String title();

    @Message("Where an animal may go back")
    String toPlanner();

    @Message("These are rules as somebody read and entered them here, with what was read and when. They are not "
            + "the law itself, and what nobody entered is not here. Check your local code and your licensed vet.")
    String caution();

    @Message("Enter a rule")
    String enterOne();

    @Message("None have been entered yet.")
    String none();

    @Message("None have been entered of {code} yet.")
    String noneOf(String code);

    @Message("the network's own policy")
    String ownPolicy();

    @Message("The network's own policy")
    String ownPolicyHead();

    @Message("Show")
    String show();

    @Message("Kind")
    String kindHead();

    @Message("About")
    String aboutHead();

    @Message("Order of preference")
    String order();

    @Message("Set aside")
    String setAside();

    @Message("only once a second person agrees")
    String setAsideSecond();

    @Message("The found place may be left because")
    String mayBeLeft();

    @Message("A found place counts")
    String foundCounts();

    @Message("Of unknown origin")
    String unknownOrigin();

    @Message("Consent needed besides")
    String consents();

    @Message("Source")
    String source();

    @Message("Read on")
    String readOn();

    @Message("Review by")
    String reviewBy();

    @Message("Valid")
    String valid();

    @Message("Its source was read again")
    String readAgain();

    @Message("Enter the review")
    String enterReview();

    @Message("As its source says it, and no more. A rule is not changed afterwards: what holds instead is a new "
            + "one, and the review of the old one says until when it held.")
    String enterLead();

    @Message("Enter")
    String enter();

    @Message("{#switch test}{#case 'noRelease'}Its kind is let go nowhere.{#case 'foundPlaceFirst'}It goes back "
            + "where it was found, unless that place is unsuitable on a ground that the rule allows.{#case "
            + "'greatestDistance'}It goes no farther than {metres} from where it was found.{#case "
            + "'landownerConsent'}Who owns the land consents.{#case 'parkApproval'}Who keeps a park or reserve has "
            + "approved, where the place is in one.{#case 'borderApproval'}Who may allow it across a border has "
            + "approved.{#case 'officerApproval'}The wildlife officer of the place has approved.{#case "
            + "'sameCatchment'}An animal of the water goes to water of the catchment that it comes from.{#case "
            + "'waterWithin'}Water is no farther than {metres}.{#case 'activePeriod'}It is let go at a time of the "
            + "day when its kind is about.{#case 'fairWeather'}It is not let go in weather that is likely to be "
            + "hard on it.{#case 'daysInCare'}It has been in care no longer than {days}.{#case 'fitness'}A vet has "
            + "signed that it is fit.{#case 'notWithPets'}It was not kept with pets.{#case 'matesGoToo'}Animals "
            + "that were raised with it go with it.{#else}{test}{/switch}")
    String asks(String test, String metres, String days);

    @Message("{count} days")
    String days(Object count);

    @Message("some metres")
    String someMetres();

    @Message("some days")
    String someDays();

    @Message("{#switch kind}{#case 'statute'}statute{#case 'code'}code{#case 'guidance'}guidance{#case "
            + "'policy'}policy{#else}{kind}{/switch}")
    String kind(String kind);

    @Message("{#switch lifting}{#case 'byPermit'}: only a permit with its number and document lifts it{#case "
            + "'byOverride'}: a named person lifts it, with a reason{#case 'byNothing'}: nothing lifts it{#else}: "
            + "advice, which is shown and in nobody's way{/switch}")
    String lifts(String lifting);

    @Message("all animals")
    String allAnimals();

    @Message("{about}, but not {names}")
    String butNot(String about, String names);

    @Message("{#switch means}{#case 'any'}any age{#case 'adult'}adults{#case 'orphan'}orphans{#case "
            + "'hatchling'}hatchlings{#else}{means}{/switch}")
    String means(String means);

    @Message("{means}, and calls them: {words}")
    String andCalls(String means, String words);

    @Message("{#switch unknown}{#case 'notReleasable'}it is not released{#case 'withinRange'}it goes somewhere "
            + "within its kind's range{#case 'withinRangeWithApproval'}it goes somewhere within its kind's range, "
            + "once that is approved{#else}{unknown}{/switch}")
    String ofUnknown(String unknown);

    @Message("only when it is known within {metres}")
    String knownWithin(String metres);

    @Message("Due for review since {day}. Until somebody has read its source again, it passes nothing without "
            + "asking.")
    String dueSince(Object day);

    @Message("From {day}, no end is known.")
    String fromNoEnd(Object day);

    @Message("From {day} until the day before {end}.")
    String fromTo(Object day, Object end);

    @Message("It does not hold yet.")
    String notYet();

    @Message("It no longer holds.")
    String noLonger();

    @Message("Whose rule")
    String whose();

    @Message("an ISO 3166 code such as AU-QLD, or network for the network's own policy")
    String whoseHint();

    @Message("What kind of rule")
    String kindField();

    @Message("A group of animals")
    String group();

    @Message("a group or one kind, not both; empty: all animals")
    String groupHint();

    @Message("One kind, by its scientific name")
    String scientificName();

    @Message("But not these")
    String except();

    @Message("scientific names, one a line")
    String exceptHint();

    @Message("Which of them")
    String appliesTo();

    @Message("How the rule defines that")
    String appliesDefinition();

    @Message("in its own words")
    String appliesHint();

    @Message("What it asks")
    String test();

    @Message("The metres it asks for")
    String metresField();

    @Message("for the two questions that ask for metres")
    String metresHint();

    @Message("The days it asks for")
    String daysField();

    @Message("for the question that asks for days")
    String daysHint();

    @Message("A found place counts as known within, metres")
    String knownField();

    @Message("empty: however well it is known")
    String knownHint();

    @Message("Where an animal should rather go")
    String orderField();

    @Message("the best first, one a line, in the rule's own words")
    String orderHint();

    @Message("Must a second person agree before it is set aside? Of policy alone.")
    String secondField();

    @Message("Grounds on which the found place may be left")
    String groundsField();

    @Message("one a line, a key and its words: burnt: the place was burnt")
    String groundsHint();

    @Message("What it says of animals whose origin nobody knows")
    String unknownField();

    @Message("Whose consent is needed besides")
    String consentsField();

    @Message("What it says")
    String wordsField();

    @Message("in plain words")
    String wordsHint();

    @Message("what was read, and what was not")
    String sourceHint();

    @Message("from that day it asks before it passes")
    String reviewHint();

    @Message("Valid from")
    String validFrom();

    @Message("No longer valid from")
    String validTo();

    @Message("empty: no end is known")
    String validToHint();

    @Message("Source, where it is another edition")
    String editionField();

    @Message("empty: the same")
    String editionHint();

    @Message("where the source says so")
    String endHint();

    @Message("What came of the reading")
    String reasonField();

    @Message("Which rules")
    String which();

    @Message("Where it would go back")
    String holdsIn();

    @Message("with what holds there from its country and of the network")
    String holdsInHint();

    @Message("everywhere")
    String everywhere();

    @Message("Which animals")
    String forWhom();

    @Message("with what holds for all animals")
    String forWhomHint();

    @Message("Which of them")
    String whenField();

    @Message("{#switch when}{#case 'toCome'}In force today or to come{#case 'now'}In force "
            + "today{#case 'due'}Due for review{#case 'ended'}No longer in force{#else}All{/switch}")
    String whenOf(String when);

    @Message("{#switch state}{#case 'due'}due for review{#case 'notYet'}not yet in force{#case "
            + "'ended'}no longer in force{#else}in force{/switch}")
    String stateOf(String state);

    @Message("Words in it")
    String wordsIn();

    @Message("Show all of it, to print")
    String showWhole();

    @Message("What waits and what changes")
    String changes();

    @Message("Of these no source is due to be read again, and none begins or ends, within 90 days.")
    String noChanges();

    @Message("{#switch what}{#case 'due'}since then its source is to be read again, and it asks "
            + "before it passes:{#case 'review'}its source is to be read again by then:{#case "
            + "'begins'}it begins to hold:{#else}it no longer holds from then on:{/switch}")
    String coming(String what);

    @Message("{count} more")
    String moreChanges(Object count);

    @Message("No rule that is entered here is like that. That says what was entered, and not what "
            + "may be done: check your local code and your licensed vet.")
    String noneFound();

    @Message("Not shown, since they no longer hold: {count}.")
    String endedToo(Object count);

    @Message("To the rule, and to the review of its source")
    String toReview();

    @Message("To the rule")
    String toRule();

    @Message("What holds in {code}")
    String backTo(String code);

    @Message("The network’s own policy")
    String backToOwn();

    @Message("All rules")
    String backToAll();

    @Message("The rule stays as it is. If its source says something else now, say here until when "
            + "this one held, and enter the other as a new rule.")
    String reviewLead();

    @Message("It stands here as it is now.")
    String changed();
}
