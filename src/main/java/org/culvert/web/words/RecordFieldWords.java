package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** Labels of fields of records: {@link FieldWords} continued, since a bundle takes some hundred messages. */
@MessageBundle("recordFields")
public interface RecordFieldWords {
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

    @Message("Alive or dead")
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

    @Message("Reported at")
    String reportedAt();

    @Message("Entered late by hours")
    String lateByHours();

    @Message("Leads")
    String leadMemberId();

    @Message("With")
    String carerMemberId();

    @Message("Place known from")
    String origin();

    @Message("Road in doubt")
    String roadIsInDoubt();

    @Message("Day 0")
    String dayZero();

    @Message("In force")
    String inForce();

    @Message("Done late")
    String doneLate();

    @Message("Placed in spite of")
    String despite();

    @Message("Revision of the template")
    String templateRevision();

    @Message("Of a body")
    String ofBody();

    @Message("Caller hidden")
    String callerHidden();

    @Message("Visit at a clinic")
    String visitId();

    @Message("Photograph that shows it")
    String photographId();

    @Message("Going-out that collected it")
    String attendanceId();

    @Message("Mother")
    String motherId();
}
