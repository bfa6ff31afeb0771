package org.culvert.web.desk;

import jakarta.ws.rs.FormParam;
import org.culvert.call.CallEntry;
import org.culvert.call.CallView;
import org.culvert.call.PlaceView;
import org.jspecify.annotations.Nullable;

/** What a dispatcher types while somebody tells it, as texts. */
public class DeskCall {
    @FormParam("anyoneHurt")
    @Nullable
    String anyoneHurt;

    @FormParam("offTheRoad")
    @Nullable
    String offTheRoad;

    @FormParam("place")
    @Nullable
    String place;

    @FormParam("phone")
    @Nullable
    String phone;

    @FormParam("animal")
    @Nullable
    String animal;

    @FormParam("vitality")
    @Nullable
    String vitality;

    @FormParam("condition")
    @Nullable
    String condition;

    @FormParam("count")
    @Nullable
    String count;

    @FormParam("pouchChecked")
    @Nullable
    String pouchChecked;

    @FormParam("name")
    @Nullable
    String name;

    @FormParam("cause")
    @Nullable
    String cause;

    @FormParam("since")
    @Nullable
    String since;

    @FormParam("words")
    @Nullable
    String words;

    @FormParam("policeReference")
    @Nullable
    String policeReference;

    /** When the first letter was typed, as a browser tells it; the page without scripts leaves it empty. */
    @FormParam("begunAt")
    @Nullable
    String begunAt;

    @FormParam("key")
    @Nullable
    String key;

    /** A call that is kept, as it would be typed. */
    static DeskCall of(CallView call, @Nullable PlaceView place) {
        var typed = new DeskCall();
        typed.anyoneHurt = call.anyoneHurt();
        typed.offTheRoad = call.offTheRoad();
        typed.place = place == null ? null : place.verbatim();
        CallEntry.Caller caller = call.caller();
        typed.phone = caller == null ? null : caller.phone();
        typed.name = caller == null ? null : caller.name();
        if (!call.animals().isEmpty()) {
            CallView.AnimalView animal = call.animals().get(0);
            typed.animal = AnimalNames.shown(animal);
            typed.vitality = animal.vitality();
            typed.condition = animal.condition();
            typed.count = Integer.toString(animal.individualCount());
            typed.pouchChecked = animal.pouchChecked();
        }
        typed.cause = call.cause();
        typed.words = call.words();
        typed.policeReference = call.policeReference();
        return typed;
    }
}
