package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What the pages of settings say around their matter. */
@MessageBundle("settings")
public interface SettingsWords {
    @Message("Rules and facts")
    String title();

    @Message("What the network goes by is data with a source and dates. Laws differ from place to place "
            + "and change: what stands here is as somebody read it, and the local code itself holds.")
    String intro();

    @Message("What it is for")
    String purposes();

    @Message("{#switch what}{#case 'time'}How long things may take{#case 'law'}What laws ask{#case "
            + "'health'}Diseases and vaccinations{#case 'care'}Care{#case 'release'}Where animals go "
            + "back{#case 'animals'}Animals and their names{#case 'roads'}Roads{#case 'network'}The "
            + "region, and what leaves the network{#case}People{/switch}")
    String purpose(String what);

    @Message("{count} to look at again")
    String due(Object count);

    @Message("{count} in force")
    String held(Object count);

    @Message("more than {count}")
    String heldMore(Object count);

    @Message("nothing entered")
    String heldNone();

    @Message("none in force now")
    String heldNoneNow();

    @Message("Release rules")
    String releaseRules();

    @Message("What must hold before an animal goes back, rule by rule with its source")
    String releaseRulesFor();

    @Message("Old records")
    String oldRecords();

    @Message("A table that others kept, looked through, tried and taken in")
    String oldRecordsFor();

    @Message("Who belongs to the network")
    String roster();

    @Message("Organisations, members, what they may do, what lapses")
    String rosterFor();

    @Message("What is kept of a person")
    String people();

    @Message("Finding a caller or member, giving them what is kept of them, hiding it, asking for erasure")
    String peopleFor();

    @Message("Who may sign in, and in which roles")
    String accountsFor();

    @Message("Your account")
    String ownAccount();

    @Message("Your password, where you are signed in, tokens for programs")
    String ownAccountFor();

    @Message("Nothing here says that something is lawful. Where the local code or a licensed vet says "
            + "otherwise, they are right; correct the entry.")
    String lawNote();

    @Message("Nothing here prescribes a treatment or a dose. What is done to an animal is for a licensed "
            + "vet to decide.")
    String vetNote();

    @Message("Bring a file")
    String bringFile();

    @Message("The file")
    String file();

    @Message("GeoJSON or GeoPackage; of roads also an extract of OpenStreetMap (.osm.pbf). One feature "
            + "that cannot be read, and nothing is entered.")
    String fileIntro();

    @Message("The file is sent:")
    String sending();

    @Message("The file is being kept.")
    String beingKept();

    @Message("This file is too large. At most 200 million octets can be sent at once.")
    String tooLarge();

    @Message("The file could not be sent. Try again; nothing was kept.")
    String sendingFailed();

    @Message("Files brought so far")
    String broughtSoFar();

    @Message("No file of this kind was brought yet. Each stands here with who brought it, when, and what came of it.")
    String nothingBrought();

    @Message("brought {when} by {who}")
    String broughtBy(String when, String who);

    @Message("{#switch state}{#case 'waiting'}○ waits{#case 'underway'}◐ is being read{#case 'tried'}◑ tried, nothing "
            + "entered yet{#case 'taken'}✓ taken{#case}✗ nothing taken{/switch}")
    String fileState(String state);

    @Message("Older files")
    String olderFiles();

    @Message("It waits until the server takes it up.")
    String waiting();

    @Message("{#switch step}{#case 'octets'}Read: {done}{#if whole} of {whole}{/if}{#case 'features'}Features "
            + "read: {done}{#case 'joining'}Lines are joined to a network of roads{#case}Links kept: {done}{#if whole} of "
            + "{whole}{/if}{/switch}")
    String step(String step, String done, String whole);

    @Message("You brought it, and nobody has begun to read it: it can still be called off. The file stays here.")
    String callOffMeans();

    @Message("Call it off")
    String callOff();

    @Message("Look how far it is")
    String lookHowFar();

    @Message("You can close this page. The file is kept, and is read whether somebody looks or not; nothing is "
            + "entered before all of it can be.")
    String mayLeave();

    @Message("Version {number} of the roads: {links} links, {kilometres} km, from {lines} lines.")
    String roadsTaken(String number, String links, String kilometres, String lines);

    @Message("{links} of the links were there before, and keep what is known of them.")
    String linksKept(String links);

    @Message("{entered} areas entered, of {features} features.")
    String landTaken(String entered, String features);

    @Message("{entered} release sites entered, of {features} features. Whether who owns the land agrees is unknown "
            + "until somebody enters it, and whether an animal may go back there is for rules, local codes and vets.")
    String sitesTaken(String entered, String features);

    @Message("Left out, and why")
    String leftOut();

    @Message("Not understood, and taken as unknown")
    String notUnderstood();

    @Message("Nothing was taken of this file.")
    String nothingTaken();

    @Message("The file is still here, and can be read again with other answers, without being sent.")
    String stillKept();

    @Message("The file is no longer kept here: choose it again, if it is wanted.")
    String keptNoLonger();

    @Message("Another file in its place, where the file itself was wrong")
    String otherFile();

    @Message("Have it read again")
    String readAgain();

    @Message("What holds:")
    String whatHolds();

    @Message("{#switch what}{#case 'due'}To look at again{#case 'holds'}Holds now{#case}Holds " + "later{/switch}")
    String state(Object what);

    @Message("Not any more: {count}")
    String ended(Object count);

    @Message("Nothing of this kind is entered yet. What is entered stands here with its source, and first "
            + "what is to be looked at again.")
    String nothingYet();

    @Message("within {metres} m of {middle}")
    String areaWithin(Object metres, Object middle);

    @Message("near it {road}")
    String areaNear(Object road);

    @Message("The first of them. The rest can be had through the API.")
    String firstOnes();

    @Message("Back:")
    String backTo();

    @Message("Nothing was changed.")
    String notKept();

    @Message("Leave it as it is")
    String leave();

    @Message("The secret by which the receiver checks signatures, shown this once. Copy it now.")
    String shownOnce();
}
