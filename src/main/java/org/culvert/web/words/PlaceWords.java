package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** Names of the places where people go. */
@MessageBundle("places")
public interface PlaceWords {
    @Message("What waits")
    String overview();

    @Message("Desk")
    String desk();

    @Message("To do")
    String hand();

    @Message("A member's day")
    String careDay();

    @Message("Clinic")
    String clinic();

    @Message("Returns")
    String returns();

    @Message("Rules and facts")
    String settings();

    @Message("Cases")
    String cases();

    @Message("Releases")
    String releases();

    @Message("Clutches")
    String clutches();

    @Message("Where an animal may go back")
    String releaseArea();

    @Message("Release rules")
    String releaseRules();

    @Message("Road evidence")
    String hotspots();

    @Message("Works")
    String works();

    @Message("When collisions happen")
    String seasons();

    @Message("Roads beside roads like them")
    String burden();

    @Message("Traffic counts")
    String traffic();

    @Message("Ask about a stretch")
    String stretch();

    @Message("Roster")
    String roster();

    @Message("People")
    String people();

    @Message("Accounts")
    String accounts();

    @Message("Old records")
    String records();

    @Message("Your account")
    String account();

    @Message("Layers for GIS programs")
    String layers();

    @Message("The API's contract")
    String contract();

    @Message("Problems")
    String problems();
}
