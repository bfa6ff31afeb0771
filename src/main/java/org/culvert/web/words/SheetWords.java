package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** Names of kinds of settings. */
@MessageBundle("sheets")
public interface SheetWords {
    @Message("Limits of time")
    String timeLimits();

    @Message("Missed tasks of which a coordinator hears")
    String missedTaskRules();

    @Message("Kinds that go to others")
    String referrals();

    @Message("How laws list species")
    String speciesListings();

    @Message("Forms of annual returns")
    String returnForms();

    @Message("How long people are kept")
    String retentionRules();

    @Message("Notifiable diseases and whom to ring")
    String notifiableConditions();

    @Message("Syndromes")
    String syndromes();

    @Message("From when sick animals are an alert")
    String alertThresholds();

    @Message("How long vaccinations count")
    String vaccinationRules();

    @Message("Who is kept apart or in company")
    String keepingRules();

    @Message("Templates of aftercare plans")
    String planTemplates();

    @Message("Growth tables")
    String growthTables();

    @Message("Measures that tell no age")
    String ageCautions();

    @Message("Incubation as published")
    String incubationFacts();

    @Message("Facts of species for release")
    String speciesFacts();

    @Message("Land areas")
    String landAreas();

    @Message("Release sites")
    String releaseSites();

    @Message("Groups of animals")
    String taxonGroups();

    @Message("Species")
    String taxa();

    @Message("Other names")
    String taxonSynonyms();

    @Message("Cautions")
    String cautions();

    @Message("Seasons")
    String seasonWindows();

    @Message("Road networks")
    String roadNetworks();

    @Message("Traffic counts")
    String trafficCounts();

    @Message("Road surveys")
    String roadSurveys();

    @Message("The region")
    String region();

    @Message("What the public sees")
    String disclosureSettings();

    @Message("Agreements with recipients")
    String agreements();

    @Message("Addresses told of events")
    String eventSubscriptions();

    @Message("Erasures")
    String erasures();

    @Message("Organisation")
    String organisations();

    @Message("Member")
    String members();

    @Message("Authorisation")
    String authorisations();

    @Message("Authorisations by order")
    String orderedAuthorisations();

    @Message("Vaccination or antibody test")
    String vaccinations();

    @Message("Absence")
    String absences();

    @Message("What a carer can take")
    String carerProfiles();

    @Message("What a clinic takes, and when")
    String clinicProfiles();

    @Message("Person")
    String people();

    @Message("People who were bitten, scratched or pricked")
    String exposures();

    @Message("Many casualties at once")
    String surges();

    @Message("Places shared out anew")
    String placementProposals();

    @Message("Hotspots year by year")
    String annualRuns();

    @Message("Animals sick alike")
    String healthAlerts();

    @Message("Time limits made longer by one order")
    String clockExtensions();
}
