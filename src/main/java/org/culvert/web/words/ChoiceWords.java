package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** Values to choose from in settings. */
@MessageBundle("choices")
public interface ChoiceWords {
    @Message("yes")
    String yes();

    @Message("no")
    String no();

    @Message("not known")
    String unknown();

    @Message("law")
    String statute();

    @Message("code or guidance")
    String code();

    @Message("the network's own")
    String policy();

    @Message("advice")
    String advice();

    @Message("anyone")
    String anyone();

    @Message("a holder without authorisation")
    String unauthorisedHolder();

    @Message("a clinic without authorisation")
    String unauthorisedClinic();

    @Message("a clinic")
    String clinic();

    @Message("an authorised holder")
    String authorisedHolder();

    @Message("it was found")
    String found();

    @Message("it was received")
    String received();

    @Message("this holder took it")
    String takenIntoThisCustody();

    @Message("it was stabilised")
    String stabilised();

    @Message("it died in care")
    String deathInCare();

    @Message("it is handed to an authorised holder")
    String handedToAuthorisedHolder();

    @Message("it is handed to a clinic")
    String handedToClinic();

    @Message("this holder no longer has it")
    String custodyEnded();

    @Message("the case ends")
    String caseEnded();

    @Message("the authority is told")
    String toldAuthority();

    @Message("hours")
    String hours();

    @Message("days")
    String days();

    @Message("weeks")
    String weeks();

    @Message("months")
    String months();

    @Message("years")
    String years();

    @Message("callers and finders")
    String people();

    @Message("members")
    String members();

    @Message("how far it moves")
    String movementRange();

    @Message("nest to water")
    String nestToWater();

    @Message("lives in water")
    String aquatic();

    @Message("when it is active")
    String activePeriod();

    @Message("by day")
    String day();

    @Message("at night")
    String night();

    @Message("at twilight")
    String twilight();

    @Message("at any time")
    String anyTime();

    @Message("scientific name")
    String scientificName();

    @Message("common name")
    String vernacularName();

    @Message("turtle")
    String turtle();

    @Message("lizard")
    String lizard();

    @Message("snake")
    String snake();

    @Message("frog")
    String frog();

    @Message("bird")
    String bird();

    @Message("bat")
    String bat();

    @Message("mammal")
    String mammal();

    @Message("female")
    String female();

    @Message("male")
    String male();

    @Message("both")
    String both();

    @Message("one")
    String one();

    @Message("weight")
    String weight();

    @Message("head")
    String head();

    @Message("body")
    String body();

    @Message("tail")
    String tail();

    @Message("ear")
    String ear();

    @Message("forearm")
    String forearm();

    @Message("arm")
    String arm();

    @Message("leg")
    String leg();

    @Message("hind foot")
    String pes();

    @Message("wing")
    String wing();

    @Message("tarsus")
    String tarsus();

    @Message("carapace length")
    String carapaceLength();

    @Message("carapace width")
    String carapaceWidth();

    @Message("plastron length")
    String plastronLength();

    @Message("how long it takes")
    String period();

    @Message("how fast it develops")
    String rateModel();

    @Message("what makes the sex")
    String sex();

    @Message("published")
    String published();

    @Message("a page that cites it")
    String secondaryPage();

    @Message("common practice")
    String commonPractice();

    @Message("from memory")
    String fromMemory();

    @Message("derived")
    String derived();

    @Message("in an incubator")
    String incubator();

    @Message("in the nest")
    String nest();

    @Message("genes")
    String genes();

    @Message("temperature")
    String temperature();

    @Message("apart")
    String apart();

    @Message("in company")
    String inCompany();

    @Message("annual average")
    String annualAverage();

    @Message("average of the days counted")
    String averageOfDaysCounted();

    @Message("all the year")
    String continuous();

    @Message("some days")
    String shortTerm();

    @Message("estimated")
    String estimated();

    @Message("motor vehicle")
    String motorVehicle();

    @Message("bicycle")
    String bicycle();

    @Message("on foot")
    String foot();

    @Message("otherwise")
    String other();

    @Message("course")
    String course();

    @Message("booster")
    String booster();

    @Message("antibody test")
    String antibodyTest();

    @Message("callers")
    String caller();

    @Message("rescuers")
    String rescuer();

    @Message("northern")
    String northern();

    @Message("southern")
    String southern();

    @Message("jurisdiction")
    String jurisdiction();

    @Message("catchment")
    String catchment();

    @Message("water")
    String water();

    @Message("nesting ground")
    String nestingGround();

    @Message("protected area")
    String protectedArea();

    @Message("property")
    String property();

    @Message("ruled out")
    String excluded();

    @Message("network")
    String network();

    @Message("shelter")
    String shelter();

    @Message("council")
    String council();

    @Message("roads authority")
    String roadsAuthority();

    @Message("police")
    String police();

    @Message("wildlife authority")
    String wildlifeAuthority();

    @Message("burnt")
    String burnt();

    @Message("flooded")
    String flooded();

    @Message("council area")
    String councilArea();

    @Message("not at all")
    String notAtAll();
}
