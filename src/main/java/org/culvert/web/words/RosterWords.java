package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What the roster says. */
@MessageBundle("roster")
public interface RosterWords {
    @Message("New member")
    String newMember();

    @Message("New organisation")
    String newOrganisation();

    @Message("Authorisations by order")
    String byOrder();

    @Message("What lapses first")
    String lapses();

    @Message("Nothing lapses within eight weeks.")
    String nothingLapses();

    @Message("{#switch what}{#case 'authorisation'}authorisation{#case}vaccination{/switch}")
    String kind(Object what);

    @Message("over since")
    String over();

    @Message("until")
    String soon();

    @Message("A paper that has lapsed binds at once: whoever holds an animal without one gives it to "
            + "somebody who has. What counts as a vaccination is for a doctor and the local health service "
            + "to say.")
    String whoDecides();

    @Message("Members: {count}")
    String members(Object count);

    @Message("{count} places free")
    String free(Object count);

    @Message("Nobody yet. Enter an organisation first, then its members.")
    String noMembers();

    @Message("Call sign")
    String callSign();

    @Message("What they do")
    String may();

    @Message("Authorisations")
    String papers();

    @Message("Vaccinations")
    String vaccinations();

    @Message("Places")
    String places();

    @Message("goes out")
    String attends();

    @Message("holds animals")
    String cares();

    @Message("vet")
    String vet();

    @Message("none")
    String none();

    @Message("none on record: counts as not vaccinated")
    String notVaccinated();

    @Message("away until")
    String away();

    @Message("{free} of {all} free")
    String freeOf(Object free, Object all);

    @Message("not told, holds {held}")
    String notTold(Object held);

    @Message("Left: {count}")
    String gone(Object count);

    @Message("Organisations")
    String organisations();

    @Message("{count} members")
    String membersOf(Object count);

    @Message("X-rays")
    String xRay();

    @Message("operates")
    String surgery();

    @Message("None yet. A network has at least one organisation to which its members belong.")
    String noOrganisations();

    @Message("Name, telephone and home are personal data and are not shown here. What is kept of somebody "
            + "is looked up under")
    String personal();

    @Message("Enter an authorisation")
    String newPaper();

    @Message("None on record: they may not hold protected wildlife under a paper of their own.")
    String noPapers();

    @Message("Enter a vaccination or antibody test")
    String newShot();

    @Message("None on record, which counts as not vaccinated: nobody without protection handles bats.")
    String noShots();

    @Message("They have not said how many animals they can take.")
    String noProfile();

    @Message("Enter it")
    String newProfile();

    @Message("Nobody has entered what the clinic treats and when it is open.")
    String noClinicProfile();

    @Message("A caller, finder or member who asks what is kept of them. Nobody is listed: give a name, a "
            + "telephone number or an e-mail address. Ask them for proof of who they are before you give "
            + "anything away.")
    String peopleIntro();

    @Message("Nobody was looked for.")
    String notSought();

    @Message("Name")
    String name();

    @Message("Telephone")
    String phone();

    @Message("E-mail address")
    String email();

    @Message("Find")
    String find();

    @Message("Found: {count}")
    String found(Object count);

    @Message("Nobody is kept under this. Try another spelling, or the number alone.")
    String nobodyFound();

    @Message("What is kept of them")
    String whatIsKept();

    @Message("Everything that the network keeps of this person, to be given to them and to nobody else.")
    String giveIt();
}
