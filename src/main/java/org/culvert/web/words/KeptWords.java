package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What the pages of records that are kept say around them. */
@MessageBundle("kept")
public interface KeptWords {

    @Message("Back to its page")
    String backTo();

    @Message(
            "Everything entered of it, kind by kind. A correction keeps what stood before, with who changed it and why; what is taken back stays on record with the reason. Nothing is deleted.")
    String lead();

    @Message("The newest 100 stand here. Show older ones")
    String showOlder();

    @Message("All kinds, and the newest of each")
    String newest();

    @Message("None of these is for you to see.")
    String noneOlder();

    @Message("Case {number}: {name}, {sex}, found {when}")
    String animalOfCase(long number, String name, String sex, String when);

    @Message(
            "The list of animals that may be its mother ends after {most}: she herself where she is known, then those found "
                    + "with it, then the latest of its kind. One from longer ago is named through the API alone.")
    String listEnds(int most);

    @Message("Kinds of records")
    String kinds();

    @Message("As it stands now")
    String stands();

    @Message("Nothing is entered yet. What is entered on its page stands here, with what can be put right.")
    String nothing();

    @Message("taken back")
    String takenBack();

    @Message("Add a photograph")
    String addPicture();

    @Message("Photograph, JPEG or PNG up to 10 MB")
    String picture();

    @Message("What it shows")
    String caption();

    @Message("Keep it")
    String send();

    @Message("Correct, take back, add to the record")
    String putRight();

    @Message("Nothing here prescribes a treatment or a dose; a licensed vet decides, and local codes hold.")
    String vetNote();

    @Message("{#switch what}{#case 'cases'}Case{#case 'incidents'}Incident{#case 'clutches'}Clutch{#case "
            + "'releases'}Release{#case 'nonReleaseDecisions'}Decision not to release{#case 'works'}Works{#case "
            + "'releaseSites'}Release site{#case 'planTemplates'}Template of a plan{#case 'growthTables'}Growth "
            + "table{#case}Record{/switch}")
    String whole(Object what);

    @Message("Why the file as it came is opened; this is kept")
    String whyOpened();

    @Message("Open it as it came")
    String openOriginal();
}
