package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** Labels of fields of settings. */
@MessageBundle("fields")
public interface FieldWords {
    @Message("Whose law or rule")
    String jurisdiction();

    @Message("Kind")
    String kind();

    @Message("Group of animals")
    String taxonGroup();

    @Message("The other group")
    String otherGroup();

    @Message("Groups of animals")
    String taxonGroups();

    @Message("Scientific name")
    String scientificName();

    @Message("Scientific names")
    String scientificNames();

    @Message("Species it is not about")
    String exceptScientificNames();

    @Message("Listed as")
    String listedAs();

    @Message("Whom it binds")
    String binds();

    @Message("Runs from")
    String starts();

    @Message("Ends when")
    String ends();

    @Message("How long")
    String length();

    @Message("Unit")
    String lengthUnit();

    @Message("Hours of warning before")
    String warnBeforeHours();

    @Message("Grounds to extend it")
    String extensionGrounds();

    @Message("What it says")
    String words();

    @Message("Source")
    String source();

    @Message("Read on")
    String readOn();

    @Message("Look at it again by")
    String reviewBy();

    @Message("Valid from")
    String validFrom();

    @Message("No longer valid from")
    String validTo();

    @Message("Last day")
    String lastDay();

    @Message("Reason")
    String reason();

    @Message("Syndrome")
    String syndromeId();

    @Message("How many, at least")
    String smallestCount();

    @Message("Within kilometres")
    String withinKilometres();

    @Message("Within days")
    String withinDays();

    @Message("Hours overdue")
    String hoursOverdue();

    @Message("Missed in a row")
    String missesInARow();

    @Message("Years")
    String years();

    @Message("Against")
    String against();

    @Message("First booster after months")
    String firstBoosterMonths();

    @Message("Then every so many months")
    String intervalMonths();

    @Message("Least antibodies, IU/mL")
    String leastIuPerMl();

    @Message("Name")
    String name();

    @Message("Signs")
    String signs();

    @Message("Number")
    String number();

    @Message("Who takes it")
    String referTo();

    @Message("Metres")
    String metres();

    @Message("Active")
    String activePeriod();

    @Message("From")
    String from();

    @Message("To")
    String to();

    @Message("Hemisphere")
    String hemisphere();

    @Message("Days before the public sees it")
    String publicDelayDays();

    @Message("Hotspots are public")
    String publicHotspots();

    @Message("Licence of the archive")
    String archiveLicence();

    @Message("Address for questions about the archive")
    String archiveContact();

    @Message("Account of the recipient")
    String recipient();

    @Message("Account of the recipient")
    String recipientAccountId();

    @Message("What for")
    String purpose();

    @Message("The document")
    String documentReference();

    @Message("South, degrees")
    String south();

    @Message("West, degrees")
    String west();

    @Message("North, degrees")
    String north();

    @Message("East, degrees")
    String east();

    @Message("Title")
    String title();

    @Message("Period begins in month")
    String startMonth();

    @Message("Period begins on day")
    String startDay();

    @Message("Due in month")
    String dueMonth();

    @Message("Due on day")
    String dueDay();

    @Message("Periods")
    String periods();

    @Message("Columns")
    String columns();

    @Message("Words for how a case ends")
    String vocabulary();

    @Message("Eggs count")
    String countsEggs();

    @Message("Hatchlings count")
    String countsHatchlings();

    @Message("Bodies count")
    String countsBodies();

    @Message("What members of an organisation hold counts")
    String countsMembers();

    @Message("Key")
    String key();

    @Message("Steps")
    String steps();

    @Message("Adopted by a vet")
    String adopted();

    @Message("Species, scientific name")
    String taxon();

    @Message("Sex")
    String sex();

    @Message("Measure")
    String measure();

    @Message("How it is measured")
    String measureWords();

    @Message("Age may be told from it")
    String estimatesAge();

    @Message("Rows")
    String rows();

    @Message("The table")
    String csv();

    @Message("Licence")
    String licence();

    @Message("Unit")
    String unit();

    @Message("Common name")
    String vernacularName();

    @Message("Rank")
    String taxonRank();

    @Message("Group")
    String taxonGroupId();

    @Message("Others see its places on a grid of degrees")
    String sensitivityGridDegrees();

    @Message("Why")
    String sensitivityReason();

    @Message("Look at that again by")
    String sensitivityReviewBy();

    @Message("Grid, degrees; empty: not sensitive")
    String gridDegrees();

    @Message("Vaccination needed to handle them")
    String vaccinationNeeded();

    @Message("Has a pouch")
    String pouch();

    @Message("Lays eggs")
    String clutches();

    @Message("Introduced")
    String introduced();

    @Message("Shape of its body")
    String bodyPlan();

    @Message("Species")
    String taxonId();

    @Message("Language")
    String language();

    @Message("Ended")
    String endedAt();

    @Message("Ended because")
    String endedBecause();

    @Message("Ended because")
    String endedReason();

    @Message("For whom")
    String audience();

    @Message("Address")
    String address();

    @Message("Types of events")
    String types();

    @Message("Time zone")
    String timeZone();

    @Message("Country")
    String countryCode();

    @Message("Everything in it is invented")
    String demo();

    @Message("Until")
    String until();

    @Message("Outline")
    String geometry();

    @Message("Box: west, south, east, north")
    String bbox();

    @Message("Latitude, degrees")
    String decimalLatitude();

    @Message("Longitude, degrees")
    String decimalLongitude();

    @Message("Known to within metres")
    String coordinateUncertaintyInMeters();

    @Message("Habitat")
    String habitat();

    @Message("Catchment")
    String catchment();

    @Message("Protected area")
    String protectedArea();

    @Message("The owner consents")
    String landownerConsent();

    @Message("Consent until")
    String landownerConsentUntil();

    @Message("How they are kept")
    String keep();

    @Message("Weight")
    String strength();

    @Message("Taken back")
    String withdrawnAt();

    @Message("Taken back because")
    String withdrawnBecause();

    @Message("What it rests on")
    String basis();

    @Message("Where")
    String setting();

    @Message("From degrees Celsius")
    String celsiusLow();

    @Message("To degrees Celsius")
    String celsiusHigh();

    @Message("Fewest days")
    String daysLow();

    @Message("Most days")
    String daysHigh();

    @Message("Develops above degrees Celsius")
    String thresholdCelsius();

    @Message("Degree-days")
    String degreeDays();

    @Message("Stated error, as a share")
    String statedError();

    @Message("Waits in the egg afterwards")
    String waitsAfterwards();

    @Message("What makes the sex")
    String sexBy();

    @Message("Road")
    String road();

    @Message("Kilometre of the road")
    String chainageKilometres();

    @Message("Carriageway")
    String carriageway();

    @Message("Known to within metres")
    String uncertaintyMetres();

    @Message("Coordinate system")
    String crs();

    @Message("Layer of a GeoPackage")
    String layer();

    @Message("Attribute with the name")
    String nameAttribute();

    @Message("Attribute with the habitat")
    String habitatAttribute();

    @Message("Attribute with the catchment")
    String catchmentAttribute();

    @Message("Attribute with the protected area")
    String protectedAreaAttribute();

    @Message("Attribute with the name of the road")
    String roadName();

    @Message("Attribute with the road number")
    String ref();

    @Message("Attribute with the class")
    String roadClass();

    @Message("Attribute with the speed limit")
    String speedLimit();

    @Message("Unit of the speed limit: km/h or mph")
    String speedUnit();

    @Message("Attribute with vehicles a day")
    String aadt();

    @Message("Attribute with the owner")
    String owner();

    @Message("Attribute with the level")
    String level();

    @Message("Attribute that marks bridges")
    String bridge();

    @Message("Attribute that marks tunnels")
    String tunnel();

    @Message("Attribute with the chainage at the start")
    String startMeasure();

    @Message("Unit of that chainage: m or km")
    String startMeasureUnit();

    @Message("Attribute that marks one-way roads")
    String oneWay();

    @Message("Attribute with the lanes")
    String lanes();

    @Message("Counting station")
    String station();

    @Message("Vehicles a day")
    String vehiclesPerDay();

    @Message("Standard error")
    String standardError();

    @Message("Days counted")
    String daysCounted();

    @Message("Directions")
    String directions();

    @Message("Direction")
    String direction();

    @Message("Share of heavy vehicles, 0 to 1")
    String heavyVehicleShare();

    @Message("Year")
    String year();

    @Message("From chainage, metres")
    String fromChainageMetres();

    @Message("To chainage, metres")
    String toChainageMetres();

    @Message("Version of the roads")
    String networkNumber();

    @Message("Beside the road, metres")
    String offsetMetres();

    @Message("As it was given")
    String verbatimPlace();

    @Message("Organisation")
    String organisationId();

    @Message("Began")
    String startedAt();

    @Message("Ended on")
    String endedOn();

    @Message("Travelled by")
    String travelledBy();

    @Message("Speed, km/h")
    String speedKmh();

    @Message("Observers")
    String observers();

    @Message("Entered")
    String recordedAt();

    @Message("Coordinates of the file")
    String sourceCrs();

    @Message("SHA-256 of the file")
    String sha256();

    @Message("Attributes")
    String attributeNames();

    @Message("Lines of the file")
    String lines();

    @Message("Lines used")
    String linesUsed();

    @Message("Road links")
    String links();

    @Message("Junctions")
    String nodes();

    @Message("Ends joined")
    String joinedNodes();

    @Message("Lines without a name")
    String unnamedLines();

    @Message("Links as before")
    String keptLinks();

    @Message("Kilometres")
    String kilometres();

    @Message("Left out")
    String leftOut();

    @Message("Not understood")
    String notUnderstood();

    @Message("Person")
    String personId();

    @Message("Asked for")
    String requestedAt();

    @Message("Erased")
    String erasedAt();

    @Message("Under the duty")
    String ruleId();

    @Message("Latitude, degrees")
    String latitude();

    @Message("Longitude, degrees")
    String longitude();

    @Message("X-rays")
    String xRay();

    @Message("Operates")
    String surgery();

    @Message("Call sign")
    String callSign();

    @Message("Telephone")
    String phone();

    @Message("E-mail address")
    String email();

    @Message("Home: latitude, degrees")
    String homeLatitude();

    @Message("Home: longitude, degrees")
    String homeLongitude();

    @Message("Goes out to animals")
    String attends();

    @Message("Holds animals")
    String cares();

    @Message("Registration as a vet")
    String vetRegistration();

    @Message("Left on")
    String leftOn();

    @Message("Member")
    String memberId();

    @Message("Members")
    String memberIds();

    @Message("Class")
    String authorisationClass();

    @Message("Premises")
    String premises();

    @Message("Under supervision")
    String supervised();

    @Message("By order")
    String byOrder();

    @Message("The order")
    String order();

    @Message("Given or taken on")
    String givenOn();

    @Message("Current until")
    String currentUntil();

    @Message("What it was")
    String event();

    @Message("Antibodies, IU/mL")
    String antibodyIuPerMl();

    @Message("Supervisor")
    String supervisorId();

    @Message("Supervised from")
    String supervisedFrom();

    @Message("Supervised until")
    String supervisedUntil();

    @Message("Places in all")
    String places();

    @Message("Places by group")
    String placesByGroup();

    @Message("Clinic")
    String clinicId();

    @Message("When it is closed")
    String whenClosed();

    @Message("Treats")
    String treats();

    @Message("Open")
    String opening();

    @Message("Asked at")
    String askedAt();

    @Message("Calls")
    String calls();

    @Message("Last dealing")
    String lastDealingAt();

    @Message("Hidden")
    String hiddenAt();

    @Message("Erasure asked for")
    String erasureRequestedAt();

    @Message("To be erased on")
    String dueOn();

    @Message("Why")
    String why();

    @Message("Opens")
    String opens();

    @Message("Closes")
    String closes();

    @Message("Day")
    String day();

    @Message("How its kind is known")
    String identificationVerificationStatus();

    @Message("Life stage")
    String lifeStage();

    @Message("Natural marks")
    String naturalMarks();

    @Message("Born on")
    String bornOn();

    @Message("Doubt, days either way")
    String bornDoubtDays();

    @Message("Found at")
    String foundAt();

    @Message("Found not before")
    String foundNotBefore();

    @Message("Cause")
    String cause();

    @Message("Young that depends on its mother")
    String dependentYoung();

    @Message("Fits between two others")
    String between();

    @Message("Organisation")
    String organisation();

    @Message("Since")
    String since();

    @Message("How it ended")
    String fate();

    @Message("When")
    String at();

    @Message("Method")
    String method();

    @Message("Authority")
    String authority();

    @Message("Approved by")
    String approvedBy();

    @Message("Barbiturate in the body")
    String barbiturate();

    @Message("Death confirmed by")
    String deathConfirmedBy();

    @Message("Death confirmed at")
    String deathConfirmedAt();

    @Message("Where the body went")
    String disposal();

    @Message("Disposed of at")
    String disposedAt();

    @Message("Arrived at")
    String arrivedAt();

    @Message("Left at")
    String leftAt();

    @Message("Stabilised at")
    String stabilisedAt();

    @Message("Weight, grams")
    String weightGrams();

    @Message("Body condition, 1 to 5")
    String bodyCondition();

    @Message("With eggs or young")
    String gravid();

    @Message("Diagnosis")
    String diagnosis();

    @Message("Cause of death")
    String causeOfDeath();

    @Message("Part of the body")
    String bodyPart();

    @Message("Side")
    String side();

    @Message("What was found")
    String finding();

    @Message("Which part of it")
    String part();

    @Message("What")
    String what();

    @Message("Counted")
    String counted();

    @Message("Read by")
    String reader();

    @Message("How sure")
    String confidence();

    @Message("What was done")
    String procedure();

    @Message("Name of the vet")
    String vetName();

    @Message("Plan")
    String plan();

    @Message("Limits")
    String limits();

    @Message("Who may hold it")
    String mayHold();

    @Message("To be seen again on")
    String reviewOn();

    @Message("How much")
    String amount();

    @Message("Given by")
    String givenBy();

    @Message("Batch")
    String batch();

    @Message("Use by")
    String expiresOn();

    @Message("Recovered")
    String recovered();

    @Message("Set to incubate")
    String setToIncubate();

    @Message("Broken")
    String broken();

    @Message("Discarded")
    String discarded();

    @Message("How")
    String how();

    @Message("Failed")
    String failed();

    @Message("Grounds")
    String grounds();

    @Message("Said by")
    String saidBy();

    @Message("Happened at")
    String happenedAt();

    @Message("Happened not before")
    String happenedNotBefore();

    @Message("Call came at")
    String receivedAt();

    @Message("Is anyone hurt")
    String anyoneHurt();

    @Message("Off the road")
    String offTheRoad();

    @Message("Reference of the police")
    String policeReference();

    @Message("Animal as it was said")
    String verbatimIdentification();

    @Message("How many")
    String individualCount();

    @Message("Alive")
    String vitality();

    @Message("Condition")
    String condition();

    @Message("Pouch checked")
    String pouchChecked();

    @Message("Carcass signed")
    String carcassSigned();

    @Message("Carcass moved")
    String carcassMoved();

    @Message("Offered at")
    String offeredAt();

    @Message("Accepted at")
    String acceptedAt();

    @Message("Set out at")
    String departedAt();

    @Message("Outcome")
    String outcome();

    @Message("Passed on to")
    String passedOnTo();

    @Message("Young found")
    String youngFound();

    @Message("Their reference")
    String theirReference();

    @Message("Why")
    String because();

    @Message("Value")
    String value();

    @Message("Answer")
    String answer();

    @Message("Why it was left out")
    String skippedBecause();

    @Message("Time limit")
    String limitId();

    @Message("On which ground")
    String ground();

    @Message("Granted by")
    String grantedBy();

    @Message("Granted at")
    String grantedAt();

    @Message("Date")
    String date();

    @Message("Who was told")
    String told();

    @Message("Reference")
    String reference();

    @Message("Disease")
    String conditionId();

    @Message("Suspected by")
    String suspectedBy();

    @Message("Reference of whoever was told")
    String toldReference();

    @Message("Name of the guardian, of a child")
    String guardianName();

    @Message("Telephone of the guardian")
    String guardianPhone();

    @Message("Wound washed")
    String washed();

    @Message("For how many minutes")
    String washedMinutes();

    @Message("What was worn")
    String protectiveKit();

    @Message("The needle was used on an animal")
    String needleUsedOnAnimal();

    @Message("By whom")
    String by();

    @Message("Number of the other case")
    String otherCase();

    @Message("Asked for by")
    String askedBy();

    @Message("Conditions")
    String conditions();

    @Message("Weather")
    String weather();

    @Message("Light")
    String light();

    @Message("Manner")
    String manner();

    @Message("Released by")
    String releasedByMemberId();

    @Message("Fed until")
    String supportFeedingUntil();

    @Message("Feeding ended at")
    String supportFeedingEndedAt();

    @Message("Feeding ended by")
    String supportFeedingEndedBy();

    @Message("Others of its kind there")
    String othersPresent();

    @Message("Raised together")
    String raisedTogether();

    @Message("To be looked at again on")
    String reviewDueOn();

    @Message("Ends, metres")
    String endsMetres();

    @Message("Built from")
    String builtFrom();

    @Message("Built until")
    String builtUntil();

    @Message("What else changed in looking")
    String effortChange();

    @Message("What was made known")
    String publicityChange();

    @Message("What it shows")
    String caption();

    @Message("Taken at")
    String takenAt();

    @Message("Taken where it was found")
    String takenWhereFound();

    @Message("Authorisation")
    String authorisation();

    @Message("Place as it was said")
    String verbatim();

    @Message("Progress")
    String progress();

    @Message("State")
    String state();

    @Message("Number at the tent")
    String temporaryNumber();

    @Message("Drug")
    String drug();

    @Message("Dose as ordered")
    String dose();

    @Message("Route")
    String route();

    @Message("How often")
    String times();

    @Message("Controlled")
    String controlled();

    @Message("Step")
    String stepWords();

    @Message("How the place was given")
    String givenAs();

    @Message("Chainage, metres")
    String chainageMetres();

    @Message("Joined at")
    String joinedAt();

    @Message("Taken back at")
    String undoneAt();

    @Message("From the day")
    String periodFrom();

    @Message("To the day")
    String periodTo();

    @Message("Reach, metres")
    String reachMetres();

    @Message("Spread, metres")
    String sigmaMetres();

    @Message("Greatest error rate")
    String alpha();

    @Message("What kind, in words")
    String kindWords();

    @Message("Where the tent is")
    String tentWords();

    @Message("Who answers for the animals there")
    String holderMemberId();

    @Message("Code")
    String code();

    @Message("What ground it is")
    String areaWords();

    @Message("Code of the part of the ground")
    String sector();

    @Message("How urgent")
    String triage();

    @Message("Number of its mother")
    String motherTemporaryNumber();

    @Message("Whose animals")
    String fromMemberId();

    @Message("Numbers of cases to leave out")
    String leaveOutCases();

    @Message("Whose word")
    String of();

    @Message("Agreed")
    String given();

    @Message("Who was asked")
    String askedOf();

    @Message("Seen at")
    String seenAt();

    @Message("Found from")
    String foundFrom();

    @Message("Found before")
    String foundBefore();
}
