package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What the pages of cases and of clinics say. */
@MessageBundle("cases")
public interface CaseWords {
    @Message("Cases that are open")
    String title();

    @Message("Cases that have ended")
    String endedTitle();

    @Message("All open cases")
    String allCases();

    @Message("Back to the case")
    String toCase();

    @Message("Look for")
    String look();

    @Message("number, temporary number, or words of its kind")
    String lookHint();

    @Message("Which")
    String which();

    @Message("Open")
    String openOnes();

    @Message("Ended")
    String endedOnes();

    @Message("Found")
    String foundOnes();

    @Message("Show")
    String show();

    @Message("Older ones")
    String older();

    @Message("No case that you may see fits that. Numbers are written in digits alone.")
    String nothingFound();

    @Message("No case is open that is yours to see. A case begins when somebody has found an animal: w"
            + "ith the end of a going-out, or at the clinic. It stands here, by what has to be decided "
            + "next, until it is told how it ended.")
    String noneOpen();

    @Message("No case that you may see has ended yet.")
    String noneEnded();

    @Message("Case {number}: {name}")
    String caseOf(Object number, Object name);

    @Message("Who could take case {number}: {name}")
    String carersFor(Object number, Object name);

    @Message("taken in as {number}")
    String takenInAs(Object number);

    @Message(
            "{#switch value}{#case 'limitOver'}A limit of time has run out{#case 'held'}Held: neither moved on nor let go nor"
                    + " disposed of{#case 'nobodyAnswers'}Nobody answers for it{#case 'offered'}A hand-over waits for its taker{#case"
                    + " 'limitSoon'}A limit of time runs out soon{#case 'taskMissed'}A task of its plan was missed{#case"
                    + " 'seeAgainOver'}Should have been seen again at the clinic{#case 'inCare'}In care, none of these"
                    + " presses{#else}{value}{/switch}")
    String need(String value);

    @Message("{#switch value}{#case 'found'}found, with nobody yet{#case 'inCare'}in care{#case 'handO"
            + "verPending'}in care, a hand-over waits{#case 'ended'}ended{#else}{value}{/switch}")
    String state(String value);

    @Message("Kept: {what}.")
    String keptNow(Object what);

    @Message("Not kept. Please look:")
    String notKept();

    @Message("to the form")
    String toTheForm();

    @Message("What has to be decided next")
    String decideNext();

    @Message("Nothing waits: no limit runs out, nothing is held, nothing was missed.")
    String nothingWaits();

    @Message("A limit of time has run out: {at}")
    String limitOver(Object at);

    @Message("A limit of time runs out: {at}")
    String limitSoon(Object at);

    @Message("A limit of time may run: it can't be told")
    String limitNotKnown();

    @Message("To the holds")
    String toHolds();

    @Message("{condition} is suspected, and no authority was told yet: ring now")
    String notTold(Object condition);

    @Message("To the suspicion")
    String toSuspicions();

    @Message("Offered to {who} {at}: the giver answers for it until that is accepted")
    String offeredTo(Object who, Object at);

    @Message("To who has it")
    String toCustody();

    @Message("Nobody is recorded as answering for it")
    String nobodyAnswers();

    @Message("The clinic has sent it on, and no plan is in force")
    String noPlanAfterDischarge();

    @Message("all day")
    String allDay();

    @Message("{number} may not hold it, as far as is entered, and why")
    String mayNot(int number);

    @Message("To the plan")
    String toPlan();

    @Message("Missed, due {day}{#if times > 1}, {times} in a row{/if}: {what}")
    String taskMissed(Object what, Object day, int times);

    @Message("At {clinic} since {at}, and not sent on yet")
    String atClinicSince(Object clinic, Object at);

    @Message("To its visit")
    String toClinic();

    @Message("To be seen again by the clinic: {day}")
    String seeAgain(Object day);

    @Message("Overdue: was to be seen again by {day}")
    String wasToBeSeen(Object day);

    @Message("How it fares in keeping is to be looked at: {day}")
    String welfareReview(Object day);

    @Message("Its body is with {who}, and nobody has said what became of it")
    String bodyWaits(Object who);

    @Message("It has, or may have, barbiturate in it: it is never left where scavengers can reach it.")
    String barbiturateMayBe();

    @Message("To its end")
    String toEnd();

    @Message("The network's own may not hold it, as far as is entered")
    String referOut();

    @Message("Who has it, and since when")
    String custody();

    @Message("Nobody is recorded as answering for it. Whoever has it is offered it below and accepts.")
    String noCustody();

    @Message("Who answered for it from being found to now; holders: {parts}, the same in words below")
    String chainWords(Object parts);

    @Message("Found")
    String found();

    @Message("Ended")
    String ended();

    @Message("Now")
    String now();

    @Message("Nobody is recorded")
    String gap();

    @Message("now")
    String untilNow();

    @Message("authorisation {number}")
    String authorisation(Object number);

    @Message("no authorisation was listed for that day")
    String noAuthorisation();

    @Message("under another licence, {number}")
    String otherLicence(Object number);

    @Message("Where it is:")
    String isAt();

    @Message("with {who}")
    String isWith(Object who);

    @Message("with {who}")
    String with(Object who);

    @Message("since")
    String since();

    @Message("Nobody has said where it is now.")
    String whereNotSaid();

    @Message("Who could take it, and why")
    String whoCouldTake();

    @Message("you")
    String you();

    @Message("The animal, and how it came")
    String animal();

    @Message("Kind")
    String kind();

    @Message("How surely")
    String howKnown();

    @Message("{#switch value}{#case 'unverified'}nobody has confirmed it{#case 'fromPhotograph'}from a"
            + " photograph{#case 'seenByMember'}seen by a member{#case 'seenByVet'}seen by a vet{#else}"
            + "{value}{/switch}")
    String verification(String value);

    @Message("Born or hatched")
    String born();

    @Message("Where")
    String place();

    @Message("which road is in doubt")
    String roadInDoubt();

    @Message("It is not known where it was found.")
    String placeNotKnown();

    @Message("The place of its mother.")
    String placeOfMother();

    @Message("What happened")
    String incident();

    @Message("incident {number}")
    String incidentNumber(Object number);

    @Message("The place of this kind of animal is kept rough for others. Do not tell it on, and do not"
            + " show it in pictures.")
    String sensitive();

    @Message("No caution is entered for its group: it counts as dangerous until somebody knows. Check "
            + "your local code and your licensed vet.")
    String noCautions();

    @Message("Where it may go back")
    String toReleaseArea();

    @Message("Care day")
    String toCareDay();

    @Message("All that is recorded of it, for an audit: why it is opened")
    String auditFile();

    @Message("needed, and kept")
    String auditWhy();

    @Message("Open the audit file")
    String openAudit();

    @Message("Photographs")
    String photographs();

    @Message("Photograph {number}, without words")
    String photographWithout(Object number);

    @Message("At clinics")
    String clinicHead();

    @Message("No clinic has seen it yet. What a clinic finds stands here from its first visit on.")
    String noVisits();

    @Message("{clinic}, of its body")
    String visitOfBody(Object clinic);

    @Message("On a film:")
    String film();

    @Message("none seen")
    String noneSeen();

    @Message("{#switch value}{#case 'low'}little sure{#case 'medium'}fairly sure{#case 'high'}sure{#el"
            + "se}{value}{/switch}")
    String sureness(String value);

    @Message("Ordered:")
    String ordered();

    @Message("given {times} times")
    String given(Object times);

    @Message("Sent on with:")
    String sentOnWith();

    @Message("Weight")
    String weight();

    @Message("A line stands here from the second weighing on.")
    String noWeights();

    @Message("Weighed {times} times: {first} g on {firstDay}, {last} g on {lastDay}; least {least} g, "
            + "most {most} g.")
    String weighed(Object times, Object first, Object firstDay, Object last, Object lastDay, Object least, Object most);

    @Message("All that was measured")
    String measurements();

    @Message("Plan and care")
    String planHead();

    @Message("No plan was made. A clinic makes one of a template that a vet has adopted.")
    String noPlan();

    @Message("In force")
    String planInForce();

    @Message("Ended plan")
    String planEnded();

    @Message("overdue")
    String overdue();

    @Message("due")
    String due();

    @Message("Its steps")
    String steps();

    @Message("days {first} to {last}")
    String stepDays(Object first, Object last);

    @Message("What was entered")
    String entries();

    @Message("{#switch value}{#case 'task'}a task{#case 'weight'}weight{#case 'food'}food{#case 'wound"
            + "'}wound{#case 'photograph'}photograph{#case 'note'}note{#else}{value}{/switch}")
    String about(String value);

    @Message("not done:")
    String skipped();

    @Message("a vet should hear of this")
    String forTheVet();

    @Message("There are older ones, on the care days.")
    String olderEntries();

    @Message("Placed with carers")
    String placements();

    @Message("What was tested")
    String tested();

    @Message("Held for people's and animals' health")
    String holds();

    @Message("Nothing holds it. A bat that bit or scratched, or a suspicion of disease, holds it at on" + "ce.")
    String noHolds();

    @Message("Cleared by {name} {at}.")
    String cleared(Object name, Object at);

    @Message("Suspected diseases")
    String suspicions();

    @Message("No disease that must be notified is suspected.")
    String noSuspicions();

    @Message("{to} was told {at}.")
    String authorityTold(Object to, Object at);

    @Message("Whether it may go back")
    String releaseHead();

    @Message("Nothing here says that it may. Check your local code and your licensed vet.")
    String releaseMind();

    @Message("No vet has signed yet how fit it is: not fit until somebody has looked.")
    String noChecks();

    @Message("Looked at")
    String checked();

    @Message("It was at a clinic since: it wants looking at anew.")
    String seenAgainSince();

    @Message("Sites that were held against the rules")
    String assessments();

    @Message("{#switch value}{#case 'pass'}nothing that is entered speaks against it{#case 'fail'}some"
            + "thing speaks against it{#case 'cantTell'}can't tell{#else}{value}{/switch}")
    String verdict(String value);

    @Message("Who was asked")
    String approvals();

    @Message("{#switch value}{#case 'landowner'}landowner{#case 'protectedArea'}park or reserve{#case "
            + "'border'}across a border{#case 'wildlifeOfficer'}wildlife officer{#else}{value}{/switch}")
    String approvalOf(String value);

    @Message("said yes")
    String saidYes();

    @Message("said no")
    String saidNo();

    @Message("until {day}")
    String untilDay(Object day);

    @Message("That it is not let go")
    String decisions();

    @Message("Eggs")
    String clutches();

    @Message("{recovered} eggs recovered, {left} incubating")
    String clutchOf(Object recovered, Object left);

    @Message("Eggs of hers: open a clutch")
    String openClutch();

    @Message("How it ended")
    String endHead();

    @Message("It has not ended. A release is recorded at its site.")
    String notEnded();

    @Message("Its body: {how}.")
    String bodyWent(Object how);

    @Message("More: what was found, films, what was done")
    String more();

    @Message("Another animal of it, such as young in a pouch")
    String anotherOfIt();

    @Message("Open a case")
    String newCase();

    @Message("One animal of incident {number}. What happened and where is known from the incident.")
    String newCaseOf(Object number);

    @Message("Callers said:")
    String callersSaid();

    @Message("Of this incident there are already:")
    String openedBefore();

    @Message("Open the case")
    String openIt();

    @Message("Those who can take it stand first, the least burdened before the others. Law is lifted b"
            + "y no reason; whether it suits the animal somebody decides. Check your local code.")
    String carersMind();

    @Message("It is offered to somebody already: let that be accepted or refused first.")
    String alreadyOffered();

    @Message("The network has no carers yet. They are entered with the members.")
    String noCarers();

    @Message("{#switch value}{#case 'canTake'}can take it{#case 'needsReason'}only with a reason{#case"
            + " 'canNotTake'}may not hold it, as far as is entered{#else}{value}{/switch}")
    String answer(String value);

    @Message("Has {count} animals now")
    String holdsNow(Object count);

    @Message("of {places} places")
    String ofPlaces(Object places);

    @Message("What waits for the clinic")
    String clinicTitle();

    @Message("Clinic")
    String whichClinic();

    @Message("This account is of no clinic, so that nothing waits here. An administrator says to which"
            + " clinic an account belongs.")
    String noClinic();

    @Message("On its way: offered to the clinic")
    String coming();

    @Message("Nothing is offered. Whoever brings an animal offers it on its case or on the telephone.")
    String noneComing();

    @Message("Take it, or say why not")
    String toTake();

    @Message("Here, and no visit kept")
    String notSeen();

    @Message("Every animal that is here has its visit.")
    String noneNotSeen();

    @Message("In care here")
    String inClinic();

    @Message("No visit is open. It opens with a visit on the page of a case.")
    String noneInClinic();

    @Message("Leaves, or has left, without the vet's words")
    String toSendOn();

    @Message("Nothing leaves without its discharge.")
    String noneToSendOn();

    @Message("The next holder has no plan and no limits from here yet.")
    String leavesWithoutWords();

    @Message("To be seen again")
    String again();

    @Message("Nothing is to be seen again in the next two days.")
    String noneAgain();

    @Message("Bodies to send or dispose of")
    String bodies();

    @Message("No body waits here.")
    String noBodies();

    @Message("Next: {what}, {day}")
    String next(Object what, Object day);

    @Message("No weight kept")
    String noWeight();

    @Message("No finding kept")
    String noFinding();

    @Message("No reading of a film kept")
    String noReading();

    @Message("What the clinic says of itself")
    String profile();

    @Message("Nothing is entered: nobody knows when it is open or what it treats, and it is rung first" + ".")
    String noProfile();

    @Message("not entered: ring first")
    String noHours();

    @Message("not entered: ring first")
    String noGroups();

    @Message("X-ray")
    String xRay();

    @Message("no X-ray entered")
    String noXRay();

    @Message("operates")
    String surgery();

    @Message("no surgery entered")
    String noSurgery();

    @Message("Change it")
    String changeProfile();

    @Message("A line a span, by its own clocks: Monday 08:00-18:30. A night is two spans; 00:00 is the"
            + " end of a day.")
    String openingHint();

    @Message("Keep it")
    String keepProfile();

    @Message("{#switch value}{#case 'visit'}A visit to a clinic{#case 'finding'}A finding{#case 'readi"
            + "ng'}What a film shows{#case 'procedure'}What a vet did{#case 'drugOrder'}A drug that a v"
            + "et orders{#case 'discharge'}Send it on, with the vet's words{#case 'plan'}A plan of an a"
            + "dopted template{#case 'measurement'}A weight or a measure{#case 'whereabouts'}It is some"
            + "where else{#case 'handOver'}Offer it to another holder{#case 'acceptance'}The taker has "
            + "it{#case 'refusal'}It is not taken{#case 'placement'}Place it here{#case 'hold'}Hold it{"
            + "#case 'clearing'}The hold is cleared{#case 'suspicion'}A disease is suspected{#case 'tel"
            + "ling'}An authority was told{#case 'fitness'}A vet signs how fit it is{#case 'fate'}How i"
            + "t ended{#case 'disposal'}What became of the body{#else}{value}{/switch}")
    String form(String value);

    @Message("{#switch value}{#case 'visit'}Keep the visit{#case 'finding'}Keep the finding{#case 'rea"
            + "ding'}Keep the reading{#case 'procedure'}Keep it{#case 'drugOrder'}Keep the order{#case "
            + "'discharge'}Send it on{#case 'plan'}Make the plan{#case 'measurement'}Keep the measure{#"
            + "case 'whereabouts'}Keep where it is{#case 'handOver'}Offer it{#case 'acceptance'}It is t"
            + "aken over{#case 'refusal'}Not taken, for this reason{#case 'placement'}Offer it to this "
            + "carer{#case 'hold'}Hold it{#case 'clearing'}Clear the hold{#case 'suspicion'}Keep the su"
            + "spicion: it is held at once{#case 'telling'}Keep that it was told{#case 'fitness'}Keep t"
            + "he check{#case 'fate'}End the case{#case 'disposal'}Keep it{#else}Keep it{/switch}")
    String send(String value);

    @Message("{#switch value}{#case 'visit'}Handle it as its group asks; bats only if vaccinated and w"
            + "ith gloves. Check your local code and your licensed vet.{#case 'drugOrder'}In the vet's "
            + "own words: no drug and no dose is proposed or checked here. Only a licensed vet orders i"
            + "t, under the law of the place.{#case 'plan'}The steps are the vet's who adopted the temp"
            + "late; whether they fit this animal a licensed vet decides.{#case 'handOver'}You answer f"
            + "or it until the taker accepts. A venomous animal or a bat goes only to those who are tra"
            + "ined and, where asked, vaccinated.{#case 'hold'}After a bite, scratch or lick of a bat: "
            + "wash at once and thoroughly, and ring the public health unit now. Name nobody here: whom"
            + " it concerns is kept elsewhere.{#case 'clearing'}What is held for an authority an author"
            + "ity clears. Enter only what they said.{#case 'suspicion'}One suspicion is enough: ring t"
            + "he authority now, keep it apart, and let nobody near it.{#case 'fitness'}What was not lo"
            + "oked at is not known. This does not say that it may be let go. Check your local code and"
            + " your licensed vet.{#case 'fate'}Whether an animal is put down a licensed vet or an auth"
            + "orised officer decides, under the law of the place; how is not said here. A body that ma"
            + "y have barbiturate in it is never left out.{#case 'disposal'}A body that has, or may hav"
            + "e, barbiturate in it is never left out: it kills what feeds on it. A body that is held s"
            + "tays. Check your local code.{/switch}")
    String caution(String value);

    @Message(
            "{#switch value}{#case 'clinicId'}Clinic{#case 'arrivedAt'}It came{#case 'weightGrams'}We"
                    + "ight in grams{#case 'bodyCondition'}Body condition{#case 'diagnosis'}Diagnosis{#case 'gr"
                    + "avid'}Carries eggs or young{#case 'causeOfDeath'}Cause of death{#case 'stabilisedAt'}Sta"
                    + "ble since{#case 'part'}Part of the body{#case 'bodyPart'}Where, in your own words{#case "
                    + "'side'}Side{#case 'findingKind'}What kind of finding{#case 'finding'}What was found{#cas"
                    + "e 'what'}What the film shows{#case 'counted'}How many were counted{#case 'reader'}Who re"
                    + "ad it{#case 'confidence'}How sure{#case 'procedure'}What was done{#case 'vetName'}Vet's "
                    + "name{#case 'vetRegistration'}Vet's registration{#case 'drug'}Drug{#case 'dose'}Dose, as "
                    + "the vet says{#case 'route'}How it is given{#case 'times'}When or how often{#case 'from'}"
                    + "First day{#case 'until'}Last day{#case 'controlled'}Each use is accounted for{#case 'pla"
                    + "n'}What is to be done from now on{#case 'limits'}What must not be{#case 'mayHold'}Who ma"
                    + "y hold it{#case 'reviewOn'}To be seen again by{#case 'at'}When{#case 'templateId'}Templa"
                    + "te{#case 'dayZero'}Day 0{#case 'words'}In words{#case 'measure'}What is measured{#case '"
                    + "value'}Value{#case 'organisationId'}Organisation{#case 'callSign'}Call sign of a member{"
                    + "#case 'reason'}Why{#case 'conditions'}On what conditions{#case 'despite'}Why in spite of"
                    + " the network's own rule{#case 'kind'}Why it is held{#case 'since'}Since{#case 'askedBy'}"
                    + "Who asked for it{#case 'reference'}Their reference{#case 'by'}Who clears it{#case 'rangB"
                    + "y'}Who rang{#case 'name'}Authority, or the vet's name{#case 'conditionId'}Disease{#case "
                    + "'signs'}What was seen{#case 'suspectedBy'}Who suspects it{#case 'to'}Who was told{#case "
                    + "'movement'}Movement{#case 'senses'}Senses{#case 'coat'}Coat, skin or shell{#case 'condit"
                    + "ion'}Condition{#case 'woundsHealed'}Wounds healed{#case 'feedsItself'}Feeds itself{#case"
                    + " 'knowsItsKind'}Knows its kind{#case 'fearsPeople'}Fears people{#case 'reproduction'}Can"
                    + " reproduce{#case 'housedWithPets'}Was kept with or near pets{#case 'fate'}How it ended{#"
                    + "case 'deathConfirmedBy'}Who confirmed that it is dead{#case 'deathConfirmedAt'}When that"
                    + " was confirmed{#case 'method'}How it was put down{#case 'authority'}Under what authority"
                    + "{#case 'approvedBy'}Who approved it{#case 'barbiturate'}Barbiturate was given{#case 'dis"
                    + "posal'}What became of it{#case 'scientificName'}What it is{#case 'firstHolder'}Who has i"
                    + "t first{#case 'foundAt'}When it was found{#case 'sex'}Sex{#case 'lifeStage'}Life stage{#"
                    + "case 'naturalMarks'}What tells it from others{#case 'dependentYoung'}Young that depends "
                    + "on its mother{#case 'originUnknown'}Nobody knows where it came from{#case 'phone'}Teleph"
                    + "one of the practice{#case 'whenClosed'}What to do when it is closed{#case 'treats'}What "
                    + "it says that it treats{#case 'opening'}When it is open{#case 'visitId'}After which visit{#else}{value}{/switch}")
    String label(String value);

    @Message("{#switch value}{#case 'at'}now, if left empty{#case 'arrivedAt'}now, if left empty{#case"
            + " 'since'}now, if left empty{#case 'foundAt'}now, if left empty{#case 'bodyCondition'}1 ("
            + "emaciated) to 5 (fat){#case 'side'}of parts of which there are two{#case 'bodyPart'}wher"
            + "e no part of the list fits{#case 'visitId'}whose discharge it follows, if any{#case 'weightGrams'}a number{#case 'callSign'}instead of an o"
            + "rganisation, exactly as it is written{#case 'dayZero'}the day that is counted as 0; toda"
            + "y, if left empty{#case 'askedBy'}the authority or the practice; never whom the matter co"
            + "ncerns{#case 'despite'}only where the network's own rule speaks against it; nothing lift"
            + "s law{#case 'limits'}such as no water until a day{#case 'mayHold'}by authorisation or sk"
            + "ill{#case 'scientificName'}as people call it, or its scientific name{#case 'value'}grams"
            + " for a weight, millimetres for the others{#case 'method'}for a euthanasia, as its vet or"
            + " officer says{#case 'authority'}for a euthanasia: registration, permit or order{#case 'a"
            + "pprovedBy'}for a euthanasia{#case 'deathConfirmedAt'}when it died, if left empty{#case '"
            + "naturalMarks'}natural marks alone; marking is unlawful in many places{#case 'what'}such "
            + "as eggs, or a fracture{#case 'until'}until further word, if left empty{/switch}")
    String hint(String value);

    @Message("Held: {#switch kind}{#case 'exposure'}a bite, scratch or lick{#case 'notifiableDisease'}"
            + "suspicion of a disease that must be notified{#else}a vet or an authority asked for it{/s"
            + "witch}, since {at}")
    String heldFor(String kind, Object at);

    @Message("{#switch value}{#case 'collisionWithVehicle'}collision with a vehicle{#case 'attackByDog"
            + "'}attack by a dog{#case 'attackByCat'}attack by a cat{#case 'entanglement'}entanglement{"
            + "#case 'orphaned'}orphaned{#case 'unsuitablePlace'}unsuitable place{#case 'disease'}disea"
            + "se{#case 'injuryOfUnknownCause'}injury of unknown cause{#case 'crossingUnhurt'}crossing "
            + "a road, not struck{#case 'spill'}spill of oil or another substance{#case 'unknown'}not known{#else}"
            + "{value}{/switch}")
    String cause(String value);

    @Message("The newest {shown} stand here; the older ones are with all that is recorded.")
    String morePhotographs(int shown);

    @Message("The latest {shown} stand here; the earlier ones are with all that is recorded.")
    String moreMeasurements(int shown);

    @Message("The newest {shown} stand here; the older ones are told by the API.")
    String moreAssessments(int shown);
}
