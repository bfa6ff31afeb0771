package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What the pages of annual returns say. */
@MessageBundle("returns")
public interface ReturnWords {
    @Message("What a holder tells the authority for a year: what was there at the beginning, what came "
            + "in, what went out and how, what was left. A draft shows it as it stands now; what is signed "
            + "is kept to the letter.")
    String intro();

    @Message("A draft")
    String draft();

    @Message("Form and first day")
    String period();

    @Message("Whose return")
    String holder();

    @Message("Show the draft")
    String showDraft();

    @Message("No form of return is entered whose period has begun. A coordinator enters the authority's "
            + "form: its period, the day it is due, its columns and its words.")
    String noForms();

    @Message("Signed")
    String signed();

    @Message("Nothing is signed yet. A return is signed from its draft, once its doubts are cleared up.")
    String noneSigned();

    @Message("Signed by {name}, {capacity}, on {on}")
    String signedBy(Object name, Object capacity, String on);

    @Message("supplements: {count}")
    String supplementsCount(Object count);

    @Message("Older ones")
    String older();

    @Message("Due")
    String due();

    @Message("As known at")
    String asOf();

    @Message("To clear up first: {count}")
    String doubts(Object count);

    @Message("Nothing is in doubt: every animal of the period has a way in and a way out, or is still " + "there.")
    String noDoubts();

    @Message("Cases:")
    String cases();

    @Message("What is told")
    String lines();

    @Message("The holder had no animal in this period.")
    String noLines();

    @Message("Species")
    String species();

    @Message("As")
    String countedAs();

    @Message("{#switch what}{#case 'animal'}animal{#case 'hatchling'}hatchling{#case 'body'}dead on "
            + "arrival{#case}eggs{/switch}")
    String kind(Object what);

    @Message("At first")
    String opening();

    @Message("Came in")
    String cameIn();

    @Message("Went out")
    String wentOut();

    @Message("At last")
    String closing();

    @Message("From and to other holders")
    String transfers();

    @Message("{#switch what}{#case 'in'}from{#case}to{/switch}")
    String direction(Object what);

    @Message("Does not count under this form")
    String leftOut();

    @Message("Authorisations in the period")
    String licences();

    @Message("None is on record for this holder in this period.")
    String noLicence();

    @Message("Sign it")
    String sign();

    @Message("Nothing was signed.")
    String notSigned();

    @Message("Who signs answers for it to the authority. What is found out later goes into a supplement.")
    String signMeans();

    @Message("The period is not over yet.")
    String notOver();

    @Message("Name of whoever signs")
    String name();

    @Message("In which capacity")
    String capacity();

    @Message("Signed on")
    String signedOn();

    @Message("Sign the return")
    String signIt();

    @Message("What was signed")
    String files();

    @Message("These files are the octets that were signed. Whoever has one can check it against its " + "SHA-256.")
    String filesMean();

    @Message("Table (CSV)")
    String table();

    @Message("Document (JSON)")
    String document();

    @Message("Supplements")
    String supplements();

    @Message("None.")
    String noSupplements();

    @Message("Changed since: {count}")
    String changes(Object count);

    @Message("Nothing that was told has changed since it was signed.")
    String noChanges();

    @Message("Transfers changed: {transfers}; doubts: {doubts}; not counted: {leftOut}.")
    String otherChanges(Object transfers, Object doubts, Object leftOut);

    @Message("Why there is a supplement")
    String reason();

    @Message("Sign the supplement")
    String signSupplement();
}
