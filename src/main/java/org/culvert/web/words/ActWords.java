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
}
