package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** The form that enters a release rule. */
public class RuleForm {
    @FormParam("jurisdiction")
    @Nullable
    String jurisdiction;

    @FormParam("kind")
    @Nullable
    String kind;

    @FormParam("taxonGroup")
    @Nullable
    String taxonGroup;

    @FormParam("scientificName")
    @Nullable
    String scientificName;

    @FormParam("exceptScientificNames")
    @Nullable
    String exceptScientificNames;

    @FormParam("appliesTo")
    @Nullable
    String appliesTo;

    @FormParam("appliesDefinition")
    @Nullable
    String appliesDefinition;

    @FormParam("test")
    @Nullable
    String test;

    @FormParam("greatestDistanceMetres")
    @Nullable
    String greatestDistanceMetres;

    @FormParam("greatestDays")
    @Nullable
    String greatestDays;

    @FormParam("originKnownWithinMetres")
    @Nullable
    String originKnownWithinMetres;

    @FormParam("orderOfPreference")
    @Nullable
    String orderOfPreference;

    @FormParam("asksSecondPerson")
    @Nullable
    String asksSecondPerson;

    @FormParam("allowedGrounds")
    @Nullable
    String allowedGrounds;

    @FormParam("unknownOrigin")
    @Nullable
    String unknownOrigin;

    @FormParam("consents")
    @Nullable
    String consents;

    @FormParam("words")
    @Nullable
    String words;

    @FormParam("source")
    @Nullable
    String source;

    @FormParam("readOn")
    @Nullable
    String readOn;

    @FormParam("reviewBy")
    @Nullable
    String reviewBy;

    @FormParam("validFrom")
    @Nullable
    String validFrom;

    @FormParam("validTo")
    @Nullable
    String validTo;

    @FormParam("key")
    @Nullable
    String key;
}
