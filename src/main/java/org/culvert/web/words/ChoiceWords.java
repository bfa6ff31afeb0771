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

    @Message("pes (hind foot)")
    String pes();

    @Message("wing")
    String wing();

    @Message("tarsus")
    String tarsus();

    @Message("carapace, length")
    String carapaceLength();

    @Message("carapace, width")
    String carapaceWidth();

    @Message("plastron, length")
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

    @Message("share, 0 to 1")
    String share();

    @Message("per cent")
    String percent();

    @Message("nothing is entered")
    String stop();

    @Message("it is left out")
    String leaveOut();

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

    @Message("other")
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

    @Message("not checked")
    String unverified();

    @Message("from a photograph")
    String fromPhotograph();

    @Message("seen by a member")
    String seenByMember();

    @Message("seen by a vet")
    String seenByVet();

    @Message("alive")
    String alive();

    @Message("dead")
    String dead();

    @Message("released")
    String released();

    @Message("died")
    String died();

    @Message("euthanased")
    String euthanased();

    @Message("dead when found")
    String deadWhenFound();

    @Message("died on the way")
    String diedOnTheWay();

    @Message("dead on reaching the clinic")
    String deadOnReachingClinic();

    @Message("left well at the place")
    String leftWell();

    @Message("escaped")
    String escaped();

    @Message("left in place")
    String leftInPlace();

    @Message("moved off the road")
    String movedOffRoad();

    @Message("buried deep")
    String buriedDeep();

    @Message("incinerated")
    String incinerated();

    @Message("clinic's waste")
    String clinicWaste();

    @Message("museum")
    String museum();

    @Message("kept for pathology")
    String keptForPathology();

    @Message("left")
    String left();

    @Message("right")
    String right();

    @Message("closed")
    String closed();

    @Message("underway")
    String underway();

    @Message("offered")
    String offered();

    @Message("logged")
    String logged();

    @Message("on the road")
    String on();

    @Message("grid")
    String grid();

    @Message("Plus Code")
    String plusCode();

    @Message("two roads that meet")
    String crossingRoads();

    @Message("road and chainage")
    String roadAndChainage();

    @Message("degrees, minutes and seconds")
    String degreesMinutesSeconds();

    @Message("decimal degrees")
    String decimalDegrees();

    @Message("ended")
    String ended();

    @Message("in care")
    String inCare();

    @Message("in care, a hand-over waits")
    String handOverPending();

    @Message("in the middle")
    String middle();

    @Message("has no side")
    String notApplicable();

    @Message("fracture")
    String fracture();

    @Message("luxation")
    String luxation();

    @Message("wound")
    String wound();

    @Message("burn")
    String burn();

    @Message("abrasion")
    String abrasion();

    @Message("bruise")
    String bruise();

    @Message("swelling")
    String swelling();

    @Message("missing")
    String missing();

    @Message("deformity")
    String deformity();

    @Message("bleeding")
    String bleeding();

    @Message("discharge")
    String discharge();

    @Message("infection")
    String infection();

    @Message("parasites")
    String parasites();

    @Message("foreign body")
    String foreignBody();

    @Message("little sure")
    String low();

    @Message("fairly sure")
    String medium();

    @Message("sure")
    String high();

    @Message("surgery")
    String surgery();

    @Message("after the death of the mother")
    String afterDeath();

    @Message("laying was induced")
    String induced();

    @Message("laid in care")
    String laidInCare();

    @Message("laid on the way")
    String laidInTransit();

    @Message("collapsed")
    String collapsed();

    @Message("mouldy")
    String mouldy();

    @Message("no development on candling")
    String noDevelopmentOnCandling();

    @Message("opened, dead")
    String openedDead();

    @Message("broken")
    String broken();

    @Message("collected")
    String collected();

    @Message("dead, checked")
    String deadChecked();

    @Message("not found")
    String notFound();

    @Message("not attended, unsafe")
    String notAttendedUnsafe();

    @Message("not attended, nobody")
    String notAttendedNobody();

    @Message("advice only")
    String adviceOnly();

    @Message("passed to another body")
    String passedOn();

    @Message("by telephone")
    String phone();

    @Message("by email")
    String email();

    @Message("by letter")
    String letter();

    @Message("by a form")
    String form();

    @Message("in person")
    String inPerson();

    @Message("together")
    String together();

    @Message("alone")
    String alone();

    @Message("bite")
    String bite();

    @Message("scratch")
    String scratch();

    @Message("lick on a wound or mucous skin")
    String lick();

    @Message("needle")
    String needle();

    @Message("venom")
    String venom();

    @Message("without support")
    String hard();

    @Message("with support")
    String soft();

    @Message("injury")
    String injury();

    @Message("cannot breed safely")
    String cannotBreedSafely();

    @Message("origin not known")
    String unknownOrigin();

    @Message("imprinted on people")
    String imprinted();

    @Message("disease")
    String disease();

    @Message("housed with pets")
    String housedWithPets();

    @Message("no fit place")
    String noFitPlace();

    @Message("fire")
    String fire();

    @Message("flood")
    String flood();

    @Message("heat")
    String heat();

    @Message("storm")
    String storm();

    @Message("spill")
    String spill();

    @Message("at once")
    String immediate();

    @Message("with little hope")
    String expectant();

    @Message("can wait")
    String delayed();

    @Message("slight")
    String minimal();

    @Message("fence")
    String fence();

    @Message("crossing")
    String crossing();

    @Message("fence and crossing")
    String fenceAndCrossing();

    @Message("animal detection")
    String animalDetection();

    @Message("signs")
    String signs();

    @Message("reflectors")
    String reflectors();

    @Message("lower speed")
    String lowerSpeed();

    @Message("owner of the land")
    String landowner();

    @Message("the authority")
    String authority();

    @Message("border of a state")
    String border();

    @Message("officer for wildlife")
    String wildlifeOfficer();

    @Message("a bite, scratch or lick")
    String exposure();

    @Message("suspicion of a disease that must be notified")
    String notifiableDisease();

    @Message("a vet or an authority asked for it")
    String asked();

    @Message("a licensed vet")
    String licensedVet();

    @Message("as it should be")
    String fit();

    @Message("not as it should be")
    String notFit();

    @Message("not looked at")
    String notLookedAt();

    @Message("does not apply")
    String doesNotApply();

    @Message("as it stands now")
    String asItStands();

    @Message("above what is expected")
    String aboveHigh();

    @Message("agrees")
    String agrees();

    @Message("below what is expected")
    String belowLow();

    @Message("can't be told")
    String cannotTell();

    @Message("to come")
    String coming();

    @Message("daily")
    String daily();

    @Message("degrees Celsius")
    String degreesCelsius();

    @Message("differs")
    String differs();

    @Message("done")
    String done();

    @Message("done late")
    String doneLate();

    @Message("due")
    String due();

    @Message("every so many days")
    String everyDays();

    @Message("falls fast")
    String fallsFast();

    @Message("an answer for the vet")
    String flaggedAnswer();

    @Message("food")
    String food();

    @Message("grams")
    String grams();

    @Message("lapsed")
    String lapsed();

    @Message("millimetres")
    String millimetres();

    @Message("minutes")
    String minutes();

    @Message("missed")
    String missed();

    @Message("mother")
    String mother();

    @Message("nothing is measured")
    String none();

    @Message("note")
    String note();

    @Message("once")
    String once();

    @Message("overdue")
    String overdue();

    @Message("photograph")
    String photograph();

    @Message("of the same mother")
    String sibling();

    @Message("skipped")
    String skipped();

    @Message("a task of the plan")
    String task();

    @Message("as somebody said")
    String told();

    @Message("weekly")
    String weekly();

    @Message("yes or no")
    String yesNo();

    @Message("young")
    String young();

    @Message("kind of animal")
    String kind();

    @Message("held at the start")
    String opening();

    @Message("came in")
    String cameIn();

    @Message("came in: found")
    String cameInFound();

    @Message("came in: young of a mother")
    String cameInOfMother();

    @Message("came in: hatched")
    String cameInHatched();

    @Message("came in: eggs set to incubate")
    String cameInSet();

    @Message("came in: handed over")
    String cameInTransferred();

    @Message("came in: after a gap in custody")
    String cameInAfterGap();

    @Message("went out")
    String wentOut();

    @Message("went out: handed over")
    String wentOutTransferred();

    @Message("went out: into a gap in custody")
    String wentOutIntoGap();

    @Message("went out, by how it ended")
    String wentOutByWord();

    @Message("held at the end")
    String closing();
}
