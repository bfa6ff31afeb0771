package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What forms say, of whatever they are. */
@MessageBundle("forms")
public interface FormsWords {
    /** BCP 47 */
    @Message("en")
    String language();

    @Message("needed")
    String needed();

    @Message("choose")
    String choose();

    @Message("nothing said")
    String notSaid();

    @Message("Not right:")
    String notRight();

    @Message("Right would be:")
    String rightWouldBe();

    @Message("Not entered. Please look at:")
    String notEntered();

    @Message("yes")
    String yes();

    @Message("no")
    String no();

    @Message("not known")
    String notKnown();

    @Message("When, if not now")
    String whenIfNotNow();

    @Message("Why")
    String why();

    @Message("In words")
    String inWords();

    @Message("Call sign of a member")
    String callSign();

    @Message("or an organisation")
    String orOrganisation();

    @Message("a member of the network")
    String aMember();

    @Message("member {callSign}")
    String member(String callSign);

    @Message("somebody without an account")
    String somebody();

    @Message("nobody")
    String nobody();

    @Message("you")
    String you();

    @Message("There is nothing to choose from yet.")
    String nothingToChoose();

    @Message("Older")
    String older();
}
