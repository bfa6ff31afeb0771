package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What to type into fields of which people ask. */
@MessageBundle("hints")
public interface HintWords {
    @Message("ISO 3166: AU-QLD for Queensland; network for your own policy where that is taken")
    String jurisdiction();

    @Message("none: it is about all animals, where that is taken")
    String taxonGroup();

    @Message("genus and species")
    String scientificName();

    @Message("scientific names, one a line")
    String exceptScientificNames();

    @Message("one a line")
    String oneALine();

    @Message(
            "road and kilometre, two roads that meet, coordinates, Plus Code: as it is said; behind it, where it is told, how sure: ± 50 m")
    String saidPlace();

    @Message("one word such as threatened")
    String listedAs();

    @Message("such as EPSG:28356; empty: as the file says, or longitude and latitude on WGS 84")
    String crs();

    @Message("one a line, a group and a figure: macropods: 2")
    String placesByGroup();

    @Message("a Polygon or MultiPolygon of GeoJSON, longitude before latitude, WGS 84")
    String geometry();

    @Message("small letters, digits and hyphens")
    String key();

    @Message("as in Australia/Brisbane")
    String timeZone();

    @Message("two capital letters of ISO 3166")
    String countryCode();

    @Message("as RFC 5646 has it, such as en or de")
    String language();

    @Message("types of events, one a line; the API's contract lists them")
    String types();

    @Message("the table as published, with the heading ageDays,value")
    String csv();

    @Message("for what it may be extended, one a line; none: it may not")
    String extensionGrounds();

    @Message("from this day on it counts as to be looked at again")
    String reviewBy();

    @Message("the day on which somebody read the source")
    String readOn();

    @Message("name of the account that gets exact places")
    String recipient();

    @Message("what a layman sees")
    String signs();

    @Message("one a line, such as MONDAY | 08:00 | 18:00:")
    String opening();

    @Message("one a line, in the order of the form:")
    String columns();

    @Message("one a line, how a case ends and the authority's word:")
    String vocabulary();

    @Message("only where they are not the same every year; one a line:")
    String periods();

    @Message("one a line; what does not apply stays empty between the strokes:")
    String steps();

    @Message("one a line:")
    String rows();

    @Message("empty: as the rule for this vaccination says")
    String currentUntil();

    @Message("international units a millilitre below which a booster is wanted")
    String leastIuPerMl();

    @Message("month and day, such as 09-01")
    String monthDay();

    @Message("one a line:")
    String table();
}
