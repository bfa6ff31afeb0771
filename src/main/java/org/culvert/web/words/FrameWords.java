package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What stands around every page. */
@MessageBundle("frame")
public interface FrameWords {
    /** BCP 47 */
    @Message("en")
    String language();

    @Message("To the content")
    String skip();

    @Message("Demo.")
    String demo();

    @Message("The region and everything in it is invented: enter nothing that is real.")
    String demoMeans();

    @Message("Main")
    String main();

    @Message("More")
    String more();

    @Message("Accounts")
    String accounts();

    @Message("Sign in")
    String signIn();

    @Message("Sign out")
    String signOut();

    @Message("This form was sent before with something else in it, and that was entered.")
    String sentBefore();

    @Message("to look whether that is right, and to send this again if it is something more")
    String sentBeforeWanted();

    @Message("what the rule asks for")
    String whatTheRuleAsks();

    @Message("to look at the page as it is now")
    String lookAgain();

    @Message("Please look at:")
    String lookAt();

    @Message("Right would be:")
    String rightWouldBe();

    @Message("Not right:")
    String notRight();

    @Message("(needed)")
    String needed();

    @Message("choose")
    String choose();

    @Message("nothing said")
    String nothingSaid();
}
