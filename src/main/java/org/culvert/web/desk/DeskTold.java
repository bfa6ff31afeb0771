package org.culvert.web.desk;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What was typed into a call, as a page shows it again; nothing is null. */
public record DeskTold(
        String anyoneHurt,
        String offTheRoad,
        String place,
        String phone,
        String animal,
        String vitality,
        String condition,
        String count,
        String pouchChecked,
        String name,
        String cause,
        String since,
        String words,
        String policeReference) {
    static DeskTold of(DeskCall typed) {
        return new DeskTold(
                text(typed.anyoneHurt),
                text(typed.offTheRoad),
                text(typed.place),
                text(typed.phone),
                text(typed.animal),
                text(typed.vitality),
                text(typed.condition),
                text(typed.count),
                text(typed.pouchChecked),
                text(typed.name),
                text(typed.cause),
                text(typed.since),
                text(typed.words),
                text(typed.policeReference));
    }

    private static String text(@Nullable String typed) {
        return Objects.requireNonNullElse(typed, "");
    }
}
