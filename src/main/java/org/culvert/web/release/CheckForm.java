package org.culvert.web.release;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** A fitness check, as a vet signed it. */
public class CheckForm {
    @FormParam("movement")
    @Nullable
    String movement;

    @FormParam("senses")
    @Nullable
    String senses;

    @FormParam("coat")
    @Nullable
    String coat;

    @FormParam("condition")
    @Nullable
    String condition;

    @FormParam("woundsHealed")
    @Nullable
    String woundsHealed;

    @FormParam("feedsItself")
    @Nullable
    String feedsItself;

    @FormParam("knowsItsKind")
    @Nullable
    String knowsItsKind;

    @FormParam("fearsPeople")
    @Nullable
    String fearsPeople;

    @FormParam("reproduction")
    @Nullable
    String reproduction;

    @FormParam("housedWithPets")
    @Nullable
    String housedWithPets;

    @FormParam("vetName")
    @Nullable
    String vetName;

    @FormParam("vetRegistration")
    @Nullable
    String vetRegistration;

    @FormParam("at")
    @Nullable
    String at;

    @FormParam("words")
    @Nullable
    String words;

    @FormParam("jurisdiction")
    @Nullable
    String jurisdiction;

    @FormParam("withinMetres")
    @Nullable
    String withinMetres;

    @FormParam("key")
    @Nullable
    String key;
}
