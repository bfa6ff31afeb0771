package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What pages of releases say. */
@MessageBundle("release")
public interface ReleaseWords {
    @Message("Where an animal may go back")
    String planTitle();

    @Message("Where may it go back?")
    String where();

    @Message("Where may case {number} go back?")
    String whereCase(Object number);

    @Message("Not answered. Please look at:")
    String notAnswered();

    @Message("by the rules of {jurisdiction} on {day}")
    String byRules(String jurisdiction, String day);

    @Message("Culvert says what the rules and maps entered here rule out. Whether this animal goes, and where, "
            + "somebody who knows both decides.")
    String whoDecides();

    @Message("First:")
    String first();

    @Message("Release rules")
    String rules();

    @Message("Releases")
    String releases();

    @Message("What is still open")
    String open();

    @Message("Of what is entered here nothing stands in the way at every known site alike; what stands against "
            + "each of them is said with it. What nobody entered is not known.")
    String openNothing();

    @Message("In the way wherever it goes:")
    String everywhere();

    @Message("Held ({kind}) since {since}. Nothing overrides a hold; it ends when it is cleared.")
    String holdStands(String kind, String since);

    @Message("{#switch kind}{#case 'exposure'}somebody was bitten, scratched or licked{#case "
            + "'notifiableDisease'}suspicion of a disease that must be notified{#else}asked for by an authority or "
            + "a vet{/switch}")
    String holdKind(String kind);

    @Message("No vet has signed that it is fit.")
    String noCheck();

    @Message("A vet signed on {when}: {who}.")
    String checkSigned(String who, String when);

    @Message("It was at a clinic after that, so that the signature no longer says how it is.")
    String checkOld();

    @Message("{of}: {answer} on {when}")
    String approvalSaid(String of, String answer, String when);

    @Message("said yes")
    String approvalYes();

    @Message("said no")
    String approvalNo();

    @Message(", until {day}")
    String approvalUntil(Object day);

    @Message("{#switch of}{#case 'landowner'}Owner of the land{#case 'protectedArea'}Keeper of the park or "
            + "reserve{#case 'border'}Who may allow it across a border{#case 'wildlifeOfficer'}Wildlife "
            + "officer{#else}{of}{/switch}")
    String approvalOf(String of);

    @Message("A vet decided that it does not go back: {words}")
    String decisionStands(String words);

    @Message("A second opinion does not agree.")
    String decisionDisputed();

    @Message("To the decision")
    String toDecision();

    @Message("The found place is recorded as unsuitable: {words} ({when})")
    String unsuitable(String words, String when);

    @Message("Assessments kept")
    String assessments();

    @Message("Each is one run of the rules for one place, kept as it was.")
    String assessmentsLead();

    @Message("None yet. Assess a place above: a release is recorded by its assessment.")
    String noAssessments();

    @Message("{place}, assessed {when}")
    String assessedAt(String place, String when);

    @Message("a place without a name")
    String aPosition();

    @Message("Record a release by it")
    String recordBy();

    @Message("{#switch verdict}{#case 'pass'}passed{#case 'fail'}not passed{#else}can't tell{/switch}")
    String verdict(String verdict);

    @Message("{#switch lifting}{#case 'byPermit'}only a permit with its number and document lifts it{#case "
            + "'byOverride'}a named person lifts it, with a reason{#case 'byNothing'}nothing lifts "
            + "it{#else}advice, in nobody's way{/switch}")
    String lifting(String lifting);

    @Message("{#switch kind}{#case 'statute'}statute{#case 'code'}code{#case 'guidance'}guidance{#case "
            + "'policy'}policy{#else}{kind}{/switch}")
    String kind(String kind);

    @Message("read on {day}")
    String read(Object day);

    @Message("review by {day}")
    String reviewBy(Object day);

    @Message("Enter what was decided or found out")
    String decide();

    @Message("A vet's fitness check")
    String fitness();

    @Message("As a vet signed it. What is left out was not looked at, and counts as not known.")
    String fitnessLead();

    @Message("{#switch aspect}{#case 'movement'}Movement{#case 'senses'}Senses{#case 'coat'}Coat, feathers or "
            + "shell{#case 'condition'}Body condition{#case 'woundsHealed'}Wounds healed{#case 'feedsItself'}Feeds "
            + "itself{#case 'knowsItsKind'}Knows its kind{#case 'fearsPeople'}Fears people{#case "
            + "'reproduction'}Can breed{#else}{aspect}{/switch}")
    String aspect(String aspect);

    @Message("{#switch answer}{#case 'fit'}as it should be{#case 'notFit'}not as it should be{#case "
            + "'notLookedAt'}not looked at{#case 'doesNotApply'}does not apply{#else}{answer}{/switch}")
    String answer(String answer);

    @Message("Was it kept with pets or near them?")
    String withPets();

    @Message("Name of the vet")
    String vetName();

    @Message("Registration of the vet")
    String vetRegistration();

    @Message("When it was looked at, if not now")
    String lookedAt();

    @Message("An answer about this animal, or about a site")
    String approval();

    @Message("What was answered, and what proves it. Whose approval is needed, your local code says.")
    String approvalLead();

    @Message("About")
    String about();

    @Message("this animal")
    String thisAnimal();

    @Message("Who was asked")
    String whoAnswered();

    @Message("What they said")
    String theySaid();

    @Message("Its last day, if one was named")
    String until();

    @Message("What proves it: number of a letter, name of a document")
    String reference();

    @Message("Which body or office; no person's name")
    String askedOf();

    @Message("When they answered, if not now")
    String answeredAt();

    @Message("Assess a place")
    String assess();

    @Message("Runs all rules for this animal and that place, with the hour and the weather as you say, and keeps "
            + "the run.")
    String assessLead();

    @Message("Place")
    String site();

    @Message("where it was found")
    String foundPlace();

    @Message("Light")
    String light();

    @Message("{#switch light}{#case 'day'}day{#case 'twilight'}twilight{#case 'night'}night{#else}{light}{/switch}")
    String lightOf(String light);

    @Message("Weather")
    String weather();

    @Message("{#switch weather}{#case 'fair'}fair{#else}hard on it: heat, cold, storm, flood{/switch}")
    String weatherOf(String weather);

    @Message("Do those that it was raised with go too? Yes too where it was raised alone.")
    String mates();

    @Message("The found place is unsuitable")
    String unsuitableForm();

    @Message("Where a rule puts the found place first, another site is considered once somebody has recorded why "
            + "not there, on a ground that the rule allows.")
    String unsuitableLead();

    @Message("Key of the ground")
    String ground();

    @Message("as the rule names it; a wrong one is answered with those that are allowed")
    String groundHint();

    @Message("What was seen there")
    String seen();

    @Message("When, if not now")
    String seenAt();

    @Message("Clear a hold")
    String clearing();

    @Message("By the authority's word, with its reference; a licensed vet clears only what a vet asked for.")
    String clearingLead();

    @Message("Which hold")
    String whichHold();

    @Message("By whom")
    String clearedBy();

    @Message("the authority")
    String byAuthority();

    @Message("a licensed vet")
    String byVet();

    @Message("Which authority, or the vet's name")
    String clearedName();

    @Message("Number of the letter or call, or the vet's registration")
    String clearedReference();

    @Message("A vet's decision that it does not go back")
    String decision();

    @Message("By a licensed vet, named. It stands in the way of every release until it is withdrawn with a reason.")
    String decisionLead();

    @Message("Grounds")
    String grounds();

    @Message("{#switch ground}{#case 'injury'}injury{#case 'cannotBreedSafely'}cannot breed without danger to "
            + "it{#case 'unknownOrigin'}unknown origin{#case 'imprinted'}imprinted{#case 'disease'}disease{#case "
            + "'housedWithPets'}kept with pets{#case 'noFitPlace'}no fit place{#else}{ground}{/switch}")
    String groundOf(String ground);

    @Message("When it was decided, if not now")
    String decidedAt();

    @Message("By which day somebody looks again at how it is kept")
    String reviewDueOn();

    @Message("Enter")
    String enter();

    @Message("The area")
    String area();

    @Message("Map")
    String map();

    @Message("Move and zoom the map; a site chosen in it or in the list is marked in both.")
    String mapTold();

    @Message("The map could not be drawn; the picture and the lists below are whole.")
    String mapFailed();

    @Message("not ruled out by what is entered here")
    String mapArea();

    @Message("{#switch cut}{#case 'catchment'}another catchment{#case 'excluded'}taken out{#case "
            + "'burnt'}burnt{#case 'flooded'}flooded{#else}{cut}{/switch}")
    String mapCut(String cut);

    @Message("whom to ask first")
    String mapAsk();

    @Message("where it was found")
    String mapFound();

    @Message("where to look first")
    String mapLook();

    @Message("known sites, numbered as in the list")
    String mapSite();

    @Message("Roads are taken out of the area with a strip on both sides. What lies beyond its outer edge, the "
            + "distance rules below rule out.")
    String mapNote();

    @Message("The area where case {number} may go back")
    String areaTitle(Object number);

    @Message("Hatched: the area. + where it was found, in the dashed circle as well as that is known. ▲ the "
            + "nearest point of the area. ★ where to look first; a line leads from each of the two to its place. ◆ "
            + "known sites, numbered as in the list")
    String hatched();

    @Message("; {count} lie outside the picture")
    String outside(Object count);

    @Message("Dotted, with a letter: whom to ask first.")
    String dotted();

    @Message("Roads are taken out even where the picture is too small to show it.")
    String roadsOut();

    @Message("There is nothing to draw.")
    String nothingToDraw();

    @Message("The same as GeoJSON")
    String geoJson();

    @Message(", for QGIS and other GIS programs.")
    String geoJsonFor();

    @Message("In words")
    String inWords();

    @Message("Nothing is left.")
    String nothingLeft();

    @Message("What leaves nothing:")
    String whatEmpties();

    @Message("What would open it:")
    String whatOpens();

    @Message("The place where it was found lies in it.")
    String nearestInside();

    @Message("Its nearest point is {way}.")
    String nearestAt(String way);

    @Message("Look first {way}")
    String lookFirst(String way);

    @Message(", at the water {water}")
    String atWater(String water);

    @Message(". It is on the side of the road on which the animal was.")
    String onSide();

    @Message(". On which side of the road the animal was is not known, or nothing is left there.")
    String notOnSide();

    @Message("It is a place on a map: nobody has looked there yet.")
    String nobodyLooked();

    @Message("where it was found ({degrees})")
    String wayHere(String degrees);

    @Message("{distance} to the {compass} of where it was found ({degrees})")
    String way(String distance, String compass, String degrees);

    @Message("{#switch eighth}{#case 0}north{#case 1}north-east{#case 2}east{#case 3}south-east{#case "
            + "4}south{#case 5}south-west{#case 6}west{#else}north-west{/switch}")
    String compass(Object eighth);

    @Message("Whom to ask first")
    String askFirst();

    @Message("{#switch kind}{#case 'protectedArea'}Park or reserve{#case 'property'}Property{#case "
            + "'jurisdiction'}Across a border{#else}{kind}{/switch}")
    String askKind(String kind);

    @Message("{kind}: {name} ({source}), {size} of the area.")
    String askOf(String kind, String name, String source, String size);

    @Message("nothing")
    String nothing();

    @Message("What was taken into account")
    String steps();

    @Message("In this order")
    String inThisOrder();

    @Message("Left after it")
    String leftAfter();

    @Message("Known sites, the most promising first")
    String sites();

    @Message("What the tests say is of today and of what is entered here, with nothing said of the hour or the "
            + "weather.")
    String sitesLead();

    @Message("Whether a site is right for this animal, somebody who knows both decides.")
    String sitesDecide();

    @Message("No site is known here. Sites are entered one by one or from a file, by whoever knows the places.")
    String noSites();

    @Message("Show site {rank}, {name}, on the map")
    String showOnMap(Object rank, String name);

    @Message("What the tests say")
    String testsSay();

    @Message("In the area")
    String inArea();

    @Message("How far")
    String howFar();

    @Message("Roads between")
    String roadsBetween();

    @Message("entered as fit for its kind")
    String fit();

    @Message("not entered as fit for its kind")
    String notFit();

    @Message("{#switch verdict}{#case 'pass'}yes, all of it{#case 'fail'}no{#else}can't tell{/switch}")
    String inAreaOf(String verdict);

    @Message("{distance}, give or take {doubt}")
    String giveOrTake(String distance, String doubt);

    @Message("none known")
    String noRoads();

    @Message("{name} ({speed}, {traffic})")
    String road(String name, String speed, String traffic);

    @Message("{kmh} km/h")
    String speed(Object kmh);

    @Message("speed limit not known")
    String speedUnknown();

    @Message("{aadt} vehicles a day")
    String traffic(Object aadt);

    @Message("traffic not known")
    String trafficUnknown();

    @Message("; and {more} more")
    String andMore(Object more);

    @Message("What stands against it")
    String standsThere();

    @Message("Nothing of what is entered here stands against it.")
    String nothingThere();

    @Message("{count} more, of no better rank, are in the GeoJSON.")
    String sitesMore(Object count);

    @Message("Ask")
    String ask();

    @Message("Case")
    String askCase();

    @Message("its number or its identifier")
    String askCaseHint();

    @Message("Whose rules")
    String askWhose();

    @Message("an ISO 3166 code such as AU-QLD; empty: those of the known site that is nearest")
    String askWhoseHint();

    @Message("Within, metres")
    String askWithin();

    @Message("empty: what the rules say, or how far its kind moves")
    String askWithinHint();

    @Message("Type the number of a case. You get the area that rules and maps do not rule out, the known sites in "
            + "order with what stands against each, and what is still open before a release.")
    String emptyPlan();

    @Message("What was let go, where and how, and what is known since.")
    String listLead();

    @Message("No release is recorded that you may see. A release begins with an animal, at the planner: where may "
            + "it go back, and what stands against it?")
    String noReleases();

    @Message("Where an animal may go back")
    String toPlanner();

    @Message("When")
    String whenHead();

    @Message("Animals")
    String whoHead();

    @Message("Where")
    String whereHead();

    @Message("Known since")
    String sinceHead();

    @Message("To be fed there until {day}.")
    String feeding(Object day);

    @Message("To be fed there until {day}: that has passed, and nobody has said that it ended.")
    String feedingOver(Object day);

    @Message("an animal of others")
    String someOther();

    @Message("case {number}, {kind}")
    String caseNamed(Object number, String kind);

    @Message("Decisions that an animal does not go back")
    String decisions();

    @Message("Where a review of how the animal is kept is due, its line says so. A decision is entered at the "
            + "planner, from the case.")
    String decisionsLead();

    @Message("None is recorded.")
    String noDecisions();

    @Message("{#switch standing}{#case 'stands'}stands{#case 'inDispute'}in dispute{#else}withdrawn{/switch}")
    String standing(String standing);

    @Message("review due {day}")
    String reviewDue(Object day);

    @Message("Release of {when}")
    String releaseOf(String when);

    @Message("Approved by")
    String approvedBy();

    @Message("Let go by")
    String releasedBy();

    @Message("Weather, as it was seen")
    String weatherSeen();

    @Message("Light")
    String lightSeen();

    @Message("Manner")
    String manner();

    @Message("{#switch manner}{#case 'hard'}hard: without support feeding{#case 'soft'}soft: fed at the "
            + "place{#else}{manner}{/switch}")
    String mannerOf(String manner);

    @Message("Who else was there")
    String othersPresent();

    @Message("Raised together")
    String raisedTogether();

    @Message("Support feeding until")
    String feedingUntil();

    @Message("Support feeding ended {when}, said {by}.")
    String feedingEnded(String when, String by);

    @Message("What was lifted")
    String lifted();

    @Message("Permit {number} of {by}")
    String liftedPermit(String number, String by);

    @Message("Set aside: {reason}")
    String liftedOverride(String reason);

    @Message("Warnings that were read")
    String warnings();

    @Message("Document")
    String document();

    @Message("Photographs")
    String photographs();

    @Message("None. A photograph often tells where it was taken: only who sees the exact place sees it.")
    String noPhotographs();

    @Message("Photograph {index}")
    String photographOf(Object index);

    @Message("Seen and heard since")
    String sightings();

    @Message("Nobody has told of them yet. Who is not seen is not known to be dead, nor to be alive.")
    String noSightings();

    @Message("Something was seen or heard")
    String sighting();

    @Message("Dead or alive, tracked or guessed. A guess is kept as one and counts as no sighting.")
    String sightingLead();

    @Message("Which of them; empty: nobody knows which")
    String whichAnimal();

    @Message("How it is known")
    String knownBy();

    @Message("{#switch how}{#case 'photographOrNaturalMarks'}photograph or natural marks{#case "
            + "'foundByPerson'}found by a person who knew it{#case 'tracked'}tracked{#case "
            + "'guessed'}guessed{#else}{how}{/switch}")
    String knownByOf(String how);

    @Message("Alive?")
    String alive();

    @Message("{#switch alive}{#case 'yes'}alive{#case 'no'}dead{#else}not known whether alive{/switch}")
    String aliveOf(String alive);

    @Message("Latitude, decimal degrees")
    String latitude();

    @Message("Longitude, decimal degrees")
    String longitude();

    @Message("Within how many metres of it")
    String within();

    @Message("The place, if it is known: all three or none.")
    String placeTold();

    @Message("The support feeding ended")
    String endFeeding();

    @Message("Who says so")
    String endedBy();

    @Message("A photograph")
    String photograph();

    @Message("JPEG or PNG of up to 10 MB")
    String photographFile();

    @Message("Caption")
    String caption();

    @Message("When it was taken")
    String takenAt();

    @Message("Send")
    String sendIt();

    @Message("Take something back")
    String withdrawal();

    @Message("That an animal was let go, a photograph or a sighting. It stays readable with the reason; the case "
            + "of an animal goes on.")
    String withdrawalLead();

    @Message("What")
    String whichPart();

    @Message("let go: {who}")
    String partAnimal(String who);

    @Message("photograph {index}")
    String partPhotograph(Object index);

    @Message("seen {when}: {words}")
    String partSighting(String when, String words);

    @Message("Record a release")
    String newTitle();

    @Message(
            "Who was let go, by which assessment, and how. It is refused while a test of statute or code stands "
                    + "in the way without its permit, while a hold stands, or while what is known has changed since the "
                    + "assessment. That it is taken does not say that it may go: check your local code, and ask your licensed vet.")
    String newLead();

    @Message("Choose an assessment first: at the planner, by the case.")
    String newNone();

    @Message("Let go with it")
    String withIt();

    @Message("assessments of other animals at the same place")
    String withItHint();

    @Message("Tests of {who}")
    String testsOf(String who);

    @Message("At {place}")
    String atPlace(String place);

    @Message("Whoever lets them go has read these warnings")
    String warningsRead();

    @Message("When they were let go, if not now")
    String letGoAt();

    @Message("name and office of who approved it")
    String approvedByHint();

    @Message("call sign of who let them go")
    String releasedByHint();

    @Message("Set one of the network's own tests aside")
    String override();

    @Message("Which test")
    String overrideKey();

    @Message("Why you set it aside; your account is its author")
    String overrideReason();

    @Message("Call sign of a second person who agrees, where the rule asks for one")
    String overrideAgreed();

    @Message("Permit for one test of statute or code")
    String permit();

    @Message("Which test")
    String permitKey();

    @Message("Number of the permit")
    String permitNumber();

    @Message("Issued by")
    String permitIssuedBy();

    @Message("The permit itself: PDF, JPEG or PNG")
    String permitFile();

    @Message("More than one permit, or more than one test set aside at once, is recorded over the API.")
    String onlyOne();

    @Message("Record the release")
    String yesReleased();

    @Message("Case {number} does not go back")
    String decisionTitle(Object number);

    @Message("Decided by {vet}, {registration}, on {when}")
    String decidedBy(String vet, String registration, String when);

    @Message("Second opinions")
    String opinions();

    @Message("agrees")
    String agrees();

    @Message("does not agree")
    String agreesNot();

    @Message("Authorities told")
    String notices();

    @Message("Permits to keep it")
    String permits();

    @Message("Reviews of how it is kept")
    String welfare();

    @Message("next by {day}")
    String nextDue(Object day);

    @Message("What is to become of it")
    String outcomes();

    @Message("{#switch outcome}{#case 'placement'}placed with somebody{#else}put down{/switch}")
    String outcomeOf(String outcome);

    @Message("Telling of one asks nobody to look for it, come near or catch it. One that is hurt is "
            + "a call: report it to the desk. Check your local code, and ask your licensed vet.")
    String afterCaution();

    @Message("None is recorded. Another vet may say whether they agree.")
    String noOpinion();

    @Message("None is recorded. Whether an authority is to be told, and by when, your local code " + "says.")
    String noNotice();

    @Message("None is recorded. Whoever keeps it holds protected wildlife: under which permit, your "
            + "local code says.")
    String noPermit();

    @Message("None is recorded. The first one says by which day somebody looks again.")
    String noReview();

    @Message("Nothing is decided. Its case goes on, and whoever holds it answers for it.")
    String noOutcome();

    @Message("A second opinion")
    String secondOpinion();

    @Message("Does this vet agree?")
    String doesAgree();

    @Message("An authority was told")
    String notice();

    @Message("Which authority")
    String authority();

    @Message("Its reference, if it gave one")
    String authorityReference();

    @Message("How it is kept was reviewed")
    String welfareReview();

    @Message("Who reviewed it")
    String reviewedBy();

    @Message("By which day somebody looks again")
    String nextDueOn();

    @Message("What is to become of it is decided")
    String outcome();

    @Message("Its case goes on until its fate is recorded there. Euthanasia is a licensed vet's, by the rules of "
            + "your place; nothing here prescribes how.")
    String outcomeLead();

    @Message("What")
    String outcomeWhat();

    @Message("Of a placement: with whom")
    String placedWith();

    @Message("Of a placement: the permit under which it is kept")
    String permitToKeep();

    @Message("Of euthanasia: who approved it")
    String outcomeApprovedBy();

    @Message("A permit to keep it")
    String addPermit();

    @Message("Valid from")
    String validFrom();

    @Message("Its last day, if one is named")
    String validTo();

    @Message("Withdraw the decision: it may go back after all")
    String withdrawDecision();

    @Message("Take one of these back")
    String withdrawPart();

    @Message("taken back: {why}")
    String takenBack(String why);

    @Message("Where it may go back")
    String plan();

    @Message("A map, north up, {width} wide and {height} high. The area is hatched: {size} {parts}. It was found "
            + "at the cross, known to {within}. {drawn}.")
    String pictureWords(String width, String height, String size, String parts, String within, String drawn);

    @Message("in one part")
    String onePart();

    @Message("in {count} parts")
    String parts(Object count);

    @Message("No known site lies in the picture")
    String noSiteDrawn();

    @Message("One known site lies in the picture, number {rank}")
    String oneSiteDrawn(Object rank);

    @Message("{count} known sites are drawn, numbered as in the table")
    String sitesDrawn(Object count);

    @Message("Advice that was not passed, or that cannot be told, in nobody's way: {count}")
    String adviceCount(Object count);

    @Message("How it was made")
    String made();

    @Message("State")
    String state();

    @Message("The case")
    String toCase();
}
