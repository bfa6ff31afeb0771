package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What pages of layers for GIS programs say around what those are told. */
@MessageBundle("layers")
public interface LayerWords {
    @Message("Layers")
    String layers();

    @Message("Above this")
    String above();

    @Message("From here")
    String fromHere();

    @Message("Holds")
    String holds();

    @Message("Keeps")
    String keeps();

    @Message("West, south, east, north")
    String box();

    @Message("Collections")
    String collections();

    @Message("Collection")
    String collection();

    @Message("What can be asked")
    String askable();

    @Message("Address")
    String address();

    @Message("Answers")
    String answers();

    @Message("Parameters")
    String parameters();

    @Message("Properties")
    String properties();

    @Message("Property")
    String property();

    @Message("Type")
    String type();

    @Message("Means")
    String means();

    @Message("Features")
    String features();

    @Message("Feature")
    String feature();

    @Message("Nothing of this is there, or nothing that you may see.")
    String nothing();
}
