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

    @Message(
            "Where it was after all. The cases of it that have no other place of their own go with it; what stood before is kept with the reason.")
    String place();

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

    @Message(
            "Who was told within a time limit, how and when. The limit itself is data; look it up under rules and facts.")
    String notices();

    @Message("Only on a ground that the limit names, or by order. Give who granted it.")
    String clockExtensions();

    @Message("What was seen, not what it is. Enough reports alike in place and time make an alert.")
    String syndromeReports();

    @Message(
            "People first: wash the wound with soap for 15 minutes and see a doctor today, also after a small bite or scratch of a bat. Then enter it; health data are seen by very few. What the health unit says holds. The animal may be needed for a test.")
    String exposures();

    @Message("Kept together or alone, with the reason; whoever looks for a place is shown it.")
    String keepingTies();

    @Message("A holder whom nobody entered at the time. It stands as entered late.")
    String custodyLinks();

    @Message(
            "All steps that are to hold from then on, one a line. A licensed vet decides and is named; earlier steps stay on record.")
    String changes();

    @Message("What was given of what a vet ordered. It prescribes nothing.")
    String uses();

    @Message("Another animal that this caller tells of.")
    String animals();

    @Message("The two stand apart again, each with its own calls.")
    String undoing();

    @Message("The place that the photograph carries becomes that of the incident. The one before stays on record.")
    String foundPlace();

    @Message("A licensed vet of your clinic answers for it. Until then it holds for nobody.")
    String adoptions();

    @Message("What an owner, an authority or somebody else said to releases there, and until when.")
    String approvals();

    @Message("How it went on for the person. Only once the health unit was told.")
    String closing();

    @Message("Which health unit was told, by whom and when.")
    String telling();

    @Message("A part of the ground by which casualties are numbered.")
    String sectors();

    @Message(
            "Many animals at the tent, each on a line of its own with its parts in the order that stands over the lines. A part "
                    + "that is not known stays empty; what is not told, such as where one was found, is unknown, and is entered of it "
                    + "alone. All are taken in, or none.")
    String manyIntakes();

    @Message("One animal at the tent. It gets its number and a case; what is not known now is entered later.")
    String intakes();

    @Message(
            "Places that were read on older roads are looked at again, a few at a time. What stood before stays on record.")
    String placeMoves();

    @Message("Every move is offered as a placement and checked again; each animal can be left out.")
    String approval();

    @Message("Who has read it, and what follows from it.")
    String acknowledgements();

    @Message("Only on a ground that a rule about the animal allows. The rules decide, not this entry.")
    String foundPlaceUnsuitable();
}
