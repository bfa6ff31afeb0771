package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What kinds of settings are for. */
@MessageBundle("purposes")
public interface PurposeWords {
    @Message("From which moment a clock runs for a case, for whom, and what ends it")
    String timeLimits();

    @Message("How many hours or misses it takes before a missed task is told")
    String missedTaskRules();

    @Message("Animals that the network may not hold, and who takes them")
    String referrals();

    @Message("Threatened or not, by which law: limits of time can hang on it")
    String speciesListings();

    @Message("Period, day due, columns and words of the authority")
    String returnForms();

    @Message("How many years a duty keeps callers and members on record")
    String retentionRules();

    @Message("Signs of which one suspicion holds an animal, and the number to ring")
    String notifiableConditions();

    @Message("What looks alike is reported under one name")
    String syndromes();

    @Message("How many alike, how near and how soon")
    String alertThresholds();

    @Message("Months to the booster, and antibodies below which one is wanted")
    String vaccinationRules();

    @Message("Groups that are kept apart, and animals that are not kept alone")
    String keepingRules();

    @Message("Steps with days and measures; inert until a named vet adopts one")
    String planTemplates();

    @Message("Published tables that measurements are held against once a vet has adopted them")
    String growthTables();

    @Message("Measures that mislead about age, by species")
    String ageCautions();

    @Message("How long eggs take, and what makes the sex of the young")
    String incubationFacts();

    @Message("How far a species moves, and when it is active")
    String speciesFacts();

    @Message("Catchments, reserves, properties and land that is ruled out")
    String landAreas();

    @Message("Known places to go back to, with the owner's consent")
    String releaseSites();

    @Message("What animals are called together at the desk, and which vaccination they need")
    String taxonGroups();

    @Message("Scientific and common names; which places are shown coarsely")
    String taxa();

    @Message("Names that people or old records use")
    String taxonSynonyms();

    @Message("What callers and rescuers hear about a group of animals")
    String cautions();

    @Message("From which day to which, by group and hemisphere")
    String seasonWindows();

    @Message("Versions of the roads; places go over to a new one")
    String roadNetworks();

    @Message("Vehicles a day, as counted")
    String trafficCounts();

    @Message("Drives and walks on which somebody looked, and how far")
    String roadSurveys();

    @Message("Name, time zone, jurisdiction and box")
    String region();

    @Message("From which count figures are told, and how late")
    String disclosureSettings();

    @Message("Who gets exact places, of what, and until when")
    String agreements();

    @Message("Programs that hear of what happens")
    String eventSubscriptions();

    @Message("People who were erased once no duty kept them")
    String erasures();

    @Message("A group, clinic, police station or authority that has a part in it")
    String organisations();

    @Message("Somebody of the network. Name, telephone, address and home go in and are not shown again")
    String members();

    @Message("Which animals somebody may hold, by whose paper, until when")
    String authorisations();

    @Message("What an authority allows many members at once, by one order")
    String orderedAuthorisations();

    @Message("No record is no vaccination: whoever has none is not sent to bats")
    String vaccinations();

    @Message("Days on which a carer takes no animal")
    String absences();

    @Message("Places in all and by group, premises and supervisor")
    String carerProfiles();

    @Message("Groups that it treats, hours, and what to do when it is closed")
    String clinicProfiles();

    @Message("Somebody of whom the network keeps personal data")
    String people();

    @Message(
            "Whether the health unit was told, and how it went on. Entered where the animal is: of its case or its incident. Health data, seen by very few.")
    String exposures();

    @Message(
            "A fire, a flood, a heat: a tent where casualties are taken in one after the other, each with its number and case")
    String surges();

    @Message(
            "When a carer must give up their animals: who else could take which; nothing moves before somebody approves")
    String placementProposals();

    @Message("The same question each year, declared before anybody looks, so that its error rate holds")
    String annualRuns();

    @Message("Reports alike in place and time, and who has read that. A sign, no diagnosis.")
    String healthAlerts();

    @Message("One order for the cases of a group that were found in a span of days")
    String clockExtensions();
}
