package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What can be done with things of a kind. */
@MessageBundle("acts")
public interface ActWords {
    @Message("Enter one")
    String entry();

    @Message("Read again")
    String reviews();

    @Message("End it")
    String ending();

    @Message("Take it back")
    String withdrawal();

    @Message("Correct it")
    String correction();

    @Message("It was somewhere else")
    String place();

    @Message("Say whom to ring")
    String hotline();

    @Message("How coarsely its places show")
    String sensitivity();

    @Message("Change it")
    String settling();

    @Message("Erase who is due now")
    String erasing();

    @Message("Enter an absence")
    String absences();

    @Message("Hide it")
    String hiding();

    @Message("Show it again")
    String showing();

    @Message("Ask for erasure")
    String erasureRequest();

    @Message("Tell whom it was reported")
    String notices();

    @Message("Make a time limit longer")
    String clockExtensions();

    @Message("Report a syndrome")
    String syndromeReports();

    @Message("Somebody was bitten, scratched or pricked")
    String exposures();

    @Message("Say who is kept with it or away from it")
    String keepingTies();

    @Message("Enter a holder who was forgotten")
    String custodyLinks();

    @Message("Change the plan")
    String changes();

    @Message("Enter what was given")
    String uses();

    @Message("Add an animal")
    String animals();

    @Message("Take the joining back")
    String undoing();

    @Message("Take its place for the incident")
    String foundPlace();

    @Message("Adopt it")
    String adoptions();

    @Message("Enter what was agreed")
    String approvals();

    @Message("Close it")
    String closing();

    @Message("Enter who was told")
    String telling();

    @Message("Add a part of the ground")
    String sectors();

    @Message("Take an animal in")
    String intakes();

    @Message("Take many in, a line each")
    String manyIntakes();

    @Message("Place old records on these roads")
    String placeMoves();

    @Message("Approve it")
    String approval();

    @Message("I have read it")
    String acknowledgements();

    @Message("Say why it cannot go back where it was found")
    String foundPlaceUnsuitable();
}
