package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** Kinds of records that are kept of something. */
@MessageBundle("kinds")
public interface KindWords {

    @Message("The case")
    String cases();

    @Message("The animal")
    String animals();

    @Message("Who answered for it")
    String custodyLinks();

    @Message("Where it was")
    String whereabouts();

    @Message("How it ended")
    String fates();

    @Message("The body")
    String bodies();

    @Message("Who was told in time")
    String clockNotices();

    @Message("Time limits made longer")
    String clockExtensions();

    @Message("Syndromes that were seen")
    String syndromeReports();

    @Message("Who is kept with it or away from it")
    String keepingTies();

    @Message("Photographs")
    String photographs();

    @Message("Visits to a clinic")
    String visits();

    @Message("What was found at the clinic")
    String findings();

    @Message("Films that were read")
    String readings();

    @Message("What was done at the clinic")
    String procedures();

    @Message("Sent on with")
    String discharges();

    @Message("What a vet ordered")
    String drugOrders();

    @Message("What was given")
    String drugUses();

    @Message("Aftercare plans")
    String aftercarePlans();

    @Message("Entries of care")
    String careEntries();

    @Message("Measures of the body")
    String bodyMeasurements();

    @Message("Placements")
    String placements();

    @Message("Suspected diseases")
    String diseaseSuspicions();

    @Message("What it is kept for")
    String holds();

    @Message("Agreed to its release, or not")
    String releaseApprovals();

    @Message("The clutch")
    String clutches();

    @Message("Eggs that were recovered")
    String eggs();

    @Message("Eggs that failed")
    String failedEggs();

    @Message("Hatchings")
    String hatchings();

    @Message("The release")
    String releases();

    @Message("The decision")
    String nonReleaseDecisions();

    @Message("Second opinions")
    String secondOpinions();

    @Message("The authority was told")
    String authorityNotices();

    @Message("Permits to keep it")
    String permitsToKeep();

    @Message("How it fares")
    String welfareReviews();

    @Message("What became of it")
    String outcomes();

    @Message("The incident")
    String incidents();

    @Message("Calls")
    String calls();

    @Message("Animals as the caller said")
    String callAnimals();

    @Message("Said to the caller")
    String toldWords();

    @Message("Goings-out")
    String attendances();

    @Message("Closed without going out")
    String closings();

    @Message("Joined incidents")
    String joins();

    @Message("The works")
    String works();

    @Message("Adopted by a vet")
    String adoptions();

    @Message("The release site")
    String releaseSites();

    @Message("The template")
    String planTemplates();

    @Message("The growth table")
    String growthTables();
}
