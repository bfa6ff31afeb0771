package org.culvert.web.release;

import java.util.List;
import org.culvert.call.CallEntry.Answer;
import org.culvert.release.SightingService.KnownBy;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.words.FormsWords;
import org.culvert.web.words.ReleaseWords;

/** The forms of a release that was made. */
final class ReleaseForms {
    private ReleaseForms() {}

    static EntryForm sighting(EntryForm form, ReleaseWords words, FormsWords usual, List<Option> animals) {
        return form.choice("caseId", words.whichAnimal(), "", false, animals)
                .choice("knownBy", words.knownBy(), true, KnownBy.values(), words::knownByOf)
                .choice("alive", words.alive(), false, Answer.values(), words::aliveOf)
                .lines("words", usual.inWords(), "", false)
                .number("decimalLatitude", words.latitude(), words.placeTold(), false)
                .number("decimalLongitude", words.longitude(), "", false)
                .number("coordinateUncertaintyInMeters", words.within(), "", false)
                .moment("at", usual.whenIfNotNow(), "");
    }

    static EntryForm photograph(EntryForm form, ReleaseWords words) {
        return form.file("picture", words.photographFile(), "", true)
                .text("caption", words.caption(), "", false)
                .moment("takenAt", words.takenAt(), "");
    }

    /** What is wrong with the file is said beside it. */
    static String besidePhotograph(String field) {
        return field.equals("content") || field.equals("mediaType") ? "picture" : field;
    }

    static EntryForm feeding(EntryForm form, ReleaseWords words, FormsWords usual) {
        return form.text("endedBy", words.endedBy(), "", true).moment("at", usual.whenIfNotNow(), "");
    }

    static EntryForm withdrawal(EntryForm form, ReleaseWords words, FormsWords usual, List<Option> parts) {
        return form.choice("part", words.whichPart(), "", true, parts).text("reason", usual.why(), "", true);
    }
}
