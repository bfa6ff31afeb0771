package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What the overview says. */
@MessageBundle("overview")
public interface OverviewWords {
    @Message("What waits")
    String title();

    @Message("Sick animals alike, not read yet")
    String alerts();

    @Message("{count} animals")
    String animals(Object count);

    @Message("I have read this")
    String iHaveRead();

    @Message("Your name")
    String yourName();

    @Message("What follows from it, whom you tell")
    String whatFollows();

    @Message("Keep that it was read")
    String keepReading();

    @Message("No alert waits. Where reports of one syndrome come close together, they stand here until "
            + "somebody has read them.")
    String noAlerts();

    @Message("Open at the desk: {count}")
    String open(Object count);

    @Message("To the desk")
    String toDesk();

    @Message("Limits of time")
    String clocks();

    @Message("Case {number}")
    String caseNumber(Object number);

    @Message("{#switch state}{#case 'overdue'}overdue{#case 'warned'}due soon{#case 'cantTell'}can't "
            + "tell{#else}{state}{/switch}")
    String state(String state);

    @Message("its source should be read again")
    String reviewDue();

    @Message("No limit is overdue, due soon or in doubt. Limits are data with their source, entered by the "
            + "network.")
    String noClocks();

    @Message("Tasks of care that were missed")
    String missed();

    @Message("Overdue by {hours} h.")
    String overdueBy(Object hours);

    @Message("Missed {times} times in a row.")
    String inARow(Object times);

    @Message("Ask {callSign}.")
    String askWhom(Object callSign);

    @Message("Nobody is on record as holding the animal.")
    String nobodyHolds();

    @Message("Nothing was missed that a rule asks to be told of.")
    String noMissed();

    @Message("Hand-overs that nobody has accepted")
    String handOvers();

    @Message("The case")
    String toCase();

    @Message("Offered {when}; the giver holds the animal until then.")
    String offeredSince(String when);

    @Message("Offered; the giver holds the animal until then.")
    String offered();

    @Message("No hand-over waits.")
    String noHandOvers();

    @Message("Authorisations that lapse within eight weeks")
    String lapsing();

    @Message("A way out is being looked for, for each animal …")
    String lapsingLoads();

    @Message("No holder's authorisation lapses while it is needed.")
    String noLapses();

    @Message("Spans in which nobody is recorded as holder")
    String gaps();

    @Message("now")
    String untilNow();

    @Message("There is none.")
    String noGaps();

    @Message("There are more of them.")
    String more();

    @Message("Free places with carers: {count}")
    String free(Object count);

    @Message("{free} of {all} free")
    String freeOf(Object free, Object all);

    @Message("No carer has told of a free place. What carers can take is entered on the roster.")
    String noFree();

    @Message("To the roster")
    String toRoster();
}
