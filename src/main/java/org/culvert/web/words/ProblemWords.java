package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What stands around problems; their titles and details are English everywhere. */
@MessageBundle("problems")
public interface ProblemWords {
    @Message("Problems, and what to do about each")
    String title();

    @Message("When a request cannot be met the answer is a problem document (RFC 9457): its "
            + "<code>type</code> is the address of one of these pages, <code>errors</code> says which "
            + "field, what was wrong and what would be right, and nothing is half done.")
    String whatTheyAre();

    @Message("Problems")
    String shortly();

    @Message("What to do")
    String whatToDo();

    @Message("HTTP status {status}.")
    String status(Object status);

    @Message("All problems")
    String all();

    @Message("About problems of this kind")
    String aboutKind();

    @Message("Start page")
    String start();

    @Message("Name of this request, for whoever runs the server:")
    String requestName();
}
