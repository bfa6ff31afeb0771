package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What the places are for. */
@MessageBundle("placesFor")
public interface PlaceForWords {
    @Message("Alerts, limits of time, missed tasks, free places, hand-overs, authorisations that lapse")
    String overview();

    @Message("A call as it is taken, where that is, who can go, and what is open")
    String desk();

    @Message("What waits for you now, on a telephone, also without a signal")
    String hand();

    @Message("What is due for the animals that one member holds, and the address of their calendar")
    String careDay();

    @Message("Animals that are here or on their way, examined, treated and sent on")
    String clinic();

    @Message("What a holder tells the authority each year: draft, doubts, signing, supplements")
    String returns();

    @Message("Limits, thresholds, species, land, roads: each with its source and when to look at it again")
    String settings();

    @Message("One animal's time with the network, from found to how it ended")
    String cases();

    @Message("Animals that go back, and what was seen of them afterwards")
    String releases();

    @Message("Eggs of one mother, their incubation and hatchlings")
    String clutches();

    @Message("The area that rules and maps do not rule out, and the known sites in order")
    String releaseArea();

    @Message("What each asks, with its source and the day it was read")
    String releaseRules();

    @Message("Stretches on which a season's collisions are denser than chance allows")
    String hotspots();

    @Message("What was built or done against collisions, and whether it worked")
    String works();

    @Message("Season, hour and light of a group of animals, and two groups compared")
    String seasons();

    @Message("Where more animals die than on roads of that class and traffic")
    String burden();

    @Message("What was counted or estimated where, a count that is typed, and a file that is tried first")
    String traffic();

    @Message("Any piece of road: how many, how many are expected, what a fence would be worth")
    String stretch();

    @Message("Who belongs to the network, what they may do, places free, what lapses")
    String roster();

    @Message("What is kept of a caller or member: given to them, hidden, erased")
    String people();

    @Message("Who may sign in, and in which roles")
    String accounts();

    @Message("A table that others kept, looked through, tried and taken in")
    String records();

    @Message("Password, where you are signed in, tokens for programs")
    String account();

    @Message("Road links, works, hotspots, collisions and incidents, as far as you see them")
    String layers();

    @Message("OpenAPI, for programs")
    String contract();

    @Message("What the server says when something is not right")
    String problems();
}
