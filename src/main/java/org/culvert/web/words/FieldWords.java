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

    @Message("Groups in a part of the year (months such as 10, 11, 12)")
    String seasons();

    @Message("Season")
    String seasonWindow();

    @Message("Animals")
    String animals();

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

    @Message("Where it was")
    String place();

    @Message("Case")
    String caseNumber();

    @Message("Where it was found")
    String foundPlace();

    @Message("Where the tent is, as a place")
    String tent();

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

    @Message("Attribute with vehicles a day")
    String vehiclesPerDayAttribute();

    @Message("Attribute with the year")
    String yearAttribute();

    @Message("Attribute with the first day")
    String fromAttribute();

    @Message("Attribute with the last day")
    String toAttribute();

    @Message("Attribute with the counting station")
    String stationAttribute();

    @Message("Attribute with the road")
    String roadAttribute();

    @Message("Attribute with the direction")
    String directionAttribute();

    @Message("Attribute that says how it was counted")
    String kindAttribute();

    @Message("Attribute with the days counted")
    String daysCountedAttribute();

    @Message("Attribute with the standard error")
    String standardErrorAttribute();

    @Message("Attribute with heavy vehicles")
    String heavyVehicleAttribute();

    @Message("Heavy vehicles are told as")
    String heavyVehicleUnit();

    @Message("What all figures are an average of")
    String measureOfAll();

    @Message("How all were counted, where no attribute says it")
    String kindOfAll();

    @Message("Directions of all, where no attribute says them")
    String directionsOfAll();

    @Message("Year of all, where no attribute says it")
    String yearOfAll();

    @Message("Known to within metres; left empty: 25")
    String uncertaintyOfAll();

    @Message("Where a row is refused")
    String refusedRows();

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
}
