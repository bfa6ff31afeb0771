package org.culvert.web.clutch;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.culvert.care.clutch.ClutchEntries.CandlingEntry;
import org.culvert.care.clutch.ClutchEntries.ClutchHandOverEntry;
import org.culvert.care.clutch.ClutchEntries.EggsCame;
import org.culvert.care.clutch.ClutchEntries.EggsEntry;
import org.culvert.care.clutch.ClutchEntries.EggsInsideEntry;
import org.culvert.care.clutch.ClutchEntries.FailedEggsEntry;
import org.culvert.care.clutch.ClutchEntries.FailureGrounds;
import org.culvert.care.clutch.ClutchEntries.HatchingEntry;
import org.culvert.care.clutch.ClutchEntries.SetUpEntry;
import org.culvert.care.clutch.ClutchEntries.TemperatureEntry;
import org.culvert.care.clutch.ClutchLog;
import org.culvert.care.clutch.ClutchService;
import org.culvert.care.clutch.TemperatureService;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Paging;
import org.culvert.platform.RegionService;
import org.culvert.web.HolderNames;
import org.culvert.web.Languages;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.SentFields;
import org.culvert.web.words.ClutchWords;
import org.culvert.web.words.FormsWords;

/** The forms of a clutch, and what each does. */
@ApplicationScoped
class ClutchForms {
    /** Which form it is. */
    enum What {
        temperature,
        candling,
        hatching,
        failedEggs,
        setUp,
        eggs,
        eggsInside,
        handOver,
        withdrawal
    }

    private static final int LONGEST_REASON = 2000;

    private final ClutchService clutches;
    private final ClutchLog log;
    private final TemperatureService temperatures;
    private final HolderNames holders;
    private final FormBodies bodies;
    private final RegionService region;
    private final Languages languages;

    ClutchForms(
            ClutchService clutches,
            ClutchLog log,
            TemperatureService temperatures,
            HolderNames holders,
            FormBodies bodies,
            RegionService region,
            Languages languages) {
        this.clutches = clutches;
        this.log = log;
        this.temperatures = temperatures;
        this.holders = holders;
        this.bodies = bodies;
        this.region = region;
        this.languages = languages;
    }

    static Optional<What> what(SentFields sent) {
        return Arrays.stream(What.values())
                .filter(one -> one.name().equals(sent.text("what")))
                .findFirst();
    }

    /** All forms of a clutch by what they are; the one that was sent stands as it was typed. */
    Map<String, EntryForm> all(List<Option> entries, SentFields sent, List<FieldError> wrong) {
        Map<String, EntryForm> forms = new LinkedHashMap<>();
        What again = what(sent).orElse(null);
        for (What what : What.values()) {
            forms.put(
                    what.name(),
                    what == again
                            ? form(what, entries, sent, wrong)
                            : form(what, entries, SentFields.NOTHING, List.of()));
        }
        forms.put("file", file(SentFields.NOTHING, List.of()));
        return forms;
    }

    private EntryForm form(What what, List<Option> entries, SentFields sent, List<FieldError> wrong) {
        ClutchWords words = languages.words(ClutchWords.class);
        FormsWords usual = languages.words(FormsWords.class);
        var form = new EntryForm(what.name(), sent, wrong);
        switch (what) {
            case temperature ->
                form.number("celsius", words.celsius(), words.temperatureHint(), true)
                        .text("source", words.thermometer(), "", true);
            case candling ->
                form.count("developing", words.developing(), "", true)
                        .count("notDeveloping", words.notDeveloping(), "", true)
                        .count("cannotTell", words.cannotTell(), "", true)
                        .text("candledBy", words.candledBy(), "", true)
                        .lines("words", usual.inWords(), "", false);
            case hatching -> form.count("hatched", words.hatchedCount(), "", true);
            case failedEggs ->
                form.count("failed", words.failedCount(), "", true)
                        .choice("grounds", words.groundsOf(), true, FailureGrounds.values(), words::grounds)
                        .text("saidBy", words.saidBy(), "", true)
                        .lines("words", usual.inWords(), "", false);
            case setUp ->
                form.text("medium", words.medium(), words.mediumHint(), true)
                        .number("waterParts", words.waterParts(), "", false)
                        .number("mediumParts", words.mediumParts(), "", false)
                        .text("box", words.box(), "", true)
                        .choice(
                                "topMarked",
                                words.topMarked(),
                                "",
                                true,
                                List.of(
                                        new Option("yes", usual.yes()),
                                        new Option("no", usual.no()),
                                        new Option("unknown", usual.notKnown())))
                        .text("setUpBy", words.setUpBy(), "", true)
                        .lines("words", usual.inWords(), "", false);
            case eggs ->
                form.count("recovered", words.recoveredCount(), "", true)
                        .count("setToIncubate", words.setCount(), "", true)
                        .count("broken", words.brokenCount(), "", true)
                        .count("discarded", words.discardedCount(), "", true)
                        .choice("how", words.howTheyCame(), true, EggsCame.values(), words::came);
            case eggsInside ->
                form.count("counted", words.counted(), "", true)
                        .text("reader", words.reader(), "", true)
                        .lines("words", usual.inWords(), "", false);
            case handOver ->
                form.text("callSign", usual.callSign(), "", false)
                        .choice("organisationId", usual.orOrganisation(), "", false, organisations());
            case withdrawal ->
                form.choice("entryId", words.whichEntry(), "", true, entries).text("reason", usual.why(), "", true);
        }
        return what == What.withdrawal ? form : form.moment("at", usual.whenIfNotNow(), "");
    }

    private List<Option> organisations() {
        return holders.organisations().stream()
                .map(one -> new Option(one.id().toString(), one.name()))
                .toList();
    }

    /** Carries out what was sent. */
    void act(UUID clutch, SentFields sent) {
        What what = what(sent)
                .orElseThrow(() -> InvalidException.of("what", "It is not said what this is.", "a form of the page"));
        ObjectNode body = form(what, List.of(), sent, List.of()).body(region.zone());
        switch (what) {
            case temperature -> temperatures.add(clutch, bodies.read(body, TemperatureEntry.class));
            case candling -> log.candle(clutch, bodies.read(body, CandlingEntry.class));
            case hatching -> clutches.hatch(clutch, bodies.read(body, HatchingEntry.class));
            case failedEggs -> log.fail(clutch, bodies.read(body, FailedEggsEntry.class));
            case setUp -> log.setUp(clutch, bodies.read(body, SetUpEntry.class));
            case eggs -> clutches.addEggs(clutch, bodies.read(body, EggsEntry.class));
            case eggsInside -> log.readInside(clutch, bodies.read(body, EggsInsideEntry.class));
            case handOver -> clutches.handOver(clutch, bodies.read(withHolder(body, sent), ClutchHandOverEntry.class));
            case withdrawal ->
                log.withdraw(
                        clutch,
                        Paging.uuid("entryId", sent.text("entryId").strip()),
                        shortEnough("reason", Objects.requireNonNull(sent.given("reason"))));
        }
    }

    private ObjectNode withHolder(ObjectNode body, SentFields sent) {
        var holder = holders.read(sent.given("callSign"), sent.given("organisationId"));
        body.remove(List.of("callSign", "organisationId"));
        var told = body.putObject("holder");
        if (holder.memberId() != null) {
            told.put("memberId", holder.memberId().toString());
        } else {
            told.put("organisationId", String.valueOf(holder.organisationId()));
        }
        return body;
    }

    private static String shortEnough(String field, String text) {
        if (text.length() > LONGEST_REASON) {
            throw InvalidException.of(field, "This is too long.", "at most " + LONGEST_REASON + " characters");
        }
        return text;
    }

    /** The form with the file of a logger; the file itself is chosen anew each time. */
    EntryForm file(SentFields sent, List<FieldError> wrong) {
        ClutchWords words = languages.words(ClutchWords.class);
        List<FieldError> beside = new ArrayList<>();
        for (FieldError error : wrong) {
            beside.add(
                    error.field().equals("csv") ? new FieldError("file", error.detail(), error.wanted(), null) : error);
        }
        return new EntryForm("file", sent, beside)
                .file("file", words.csvFile(), "", true)
                .text("source", words.whichLogger(), "", true)
                .text("timeColumn", words.timeColumn(), "", false)
                .text("temperatureColumn", words.temperatureColumn(), "", false)
                .text("utcOffset", words.utcOffset(), "+10:00", false);
    }

    /** The form that opens a clutch. */
    EntryForm opening(SentFields sent, List<FieldError> wrong) {
        ClutchWords words = languages.words(ClutchWords.class);
        FormsWords usual = languages.words(FormsWords.class);
        return new EntryForm("new", sent, wrong)
                .count("motherCase", words.motherCase(), "", true)
                .count("eggs.recovered", words.recoveredCount(), words.moreEggsLead(), true)
                .count("eggs.setToIncubate", words.setCount(), "", true)
                .count("eggs.broken", words.brokenCount(), "", true)
                .count("eggs.discarded", words.discardedCount(), "", true)
                .choice("eggs.how", words.howTheyCame(), true, EggsCame.values(), words::came)
                .text("callSign", usual.callSign(), "", false)
                .choice("organisationId", usual.orOrganisation(), "", false, organisations())
                .moment("eggs.at", usual.whenIfNotNow(), "");
    }

    /** The body of a new clutch. */
    ObjectNode opened(SentFields sent, UUID motherCase) {
        ObjectNode body = withHolder(opening(sent, List.of()).body(region.zone()), sent);
        body.remove("motherCase");
        return body.put("motherCaseId", motherCase.toString());
    }

    /** Entries that can be taken back, the latest first, in words. */
    static List<Option> entries(List<ClutchPage.EventRow> events) {
        return events.stream()
                .filter(event -> event.entryId() != null && event.withdrawn() == null)
                .map(event -> new Option(String.valueOf(event.entryId()), event.at() + ": " + shortened(event.words())))
                .toList();
    }

    private static String shortened(String words) {
        return words.length() <= 80 ? words : words.substring(0, 78).strip() + " …";
    }
}
