package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What each act does. */
@MessageBundle("explained")
public interface ActExplainedWords {
    @Message("What is entered stays on record with your account and the time; what turns out wrong is "
            + "corrected or ended, not deleted.")
    String entry();

    @Message("Somebody has read the source again and it still says this. If it says something else, end "
            + "this one and enter another.")
    String reviews();

    @Message("It stays on record; from then on it does not hold any more.")
    String ending();

    @Message("It should not have been entered. It stays on record with the reason.")
    String withdrawal();

    @Message("What is left as it stands stays. What stood before is kept with the reason.")
    String correction();

    @Message("Ring the number yourself before you enter it. The one before stays on record.")
    String hotline();

    @Message("Places of the species are shown to others on a grid of so many degrees.")
    String sensitivity();

    @Message("It holds for everybody from now on.")
    String settling();

    @Message("People whom no duty keeps any more are erased for good, a few at a time. This cannot be " + "undone.")
    String erasing();

    @Message("Nothing is offered to them on these days.")
    String absences();

    @Message("Nobody sees name, number and address any more; they stay on record while a duty keeps them.")
    String hiding();

    @Message("Name, number and address are seen again.")
    String showing();

    @Message("They are erased once no duty keeps them any more.")
    String erasureRequest();
}
