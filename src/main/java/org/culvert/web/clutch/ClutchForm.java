package org.culvert.web.clutch;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** One of the forms of a clutch; which one, {@code what} says. */
public class ClutchForm {
    @FormParam("what")
    @Nullable
    String what;

    @FormParam("at")
    @Nullable
    String at;

    @FormParam("recovered")
    @Nullable
    String recovered;

    @FormParam("setToIncubate")
    @Nullable
    String setToIncubate;

    @FormParam("broken")
    @Nullable
    String broken;

    @FormParam("discarded")
    @Nullable
    String discarded;

    @FormParam("how")
    @Nullable
    String how;

    @FormParam("callSign")
    @Nullable
    String callSign;

    @FormParam("organisationId")
    @Nullable
    String organisationId;

    @FormParam("hatched")
    @Nullable
    String hatched;

    @FormParam("failed")
    @Nullable
    String failed;

    @FormParam("grounds")
    @Nullable
    String grounds;

    @FormParam("saidBy")
    @Nullable
    String saidBy;

    @FormParam("words")
    @Nullable
    String words;

    @FormParam("counted")
    @Nullable
    String counted;

    @FormParam("reader")
    @Nullable
    String reader;

    @FormParam("medium")
    @Nullable
    String medium;

    @FormParam("waterParts")
    @Nullable
    String waterParts;

    @FormParam("mediumParts")
    @Nullable
    String mediumParts;

    @FormParam("box")
    @Nullable
    String box;

    @FormParam("topMarked")
    @Nullable
    String topMarked;

    @FormParam("setUpBy")
    @Nullable
    String setUpBy;

    @FormParam("developing")
    @Nullable
    String developing;

    @FormParam("notDeveloping")
    @Nullable
    String notDeveloping;

    @FormParam("cannotTell")
    @Nullable
    String cannotTell;

    @FormParam("candledBy")
    @Nullable
    String candledBy;

    @FormParam("source")
    @Nullable
    String source;

    @FormParam("celsius")
    @Nullable
    String celsius;

    @FormParam("entryId")
    @Nullable
    String entryId;

    @FormParam("reason")
    @Nullable
    String reason;

    @FormParam("key")
    @Nullable
    String key;
}
