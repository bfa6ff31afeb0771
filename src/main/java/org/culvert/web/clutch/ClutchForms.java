package org.culvert.web.clutch;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayInputStream;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.culvert.animal.CaseCorrections.Withdrawal;
import org.culvert.animal.CaseService;
import org.culvert.care.clutch.ClutchEntries.CandlingEntry;
import org.culvert.care.clutch.ClutchEntries.ClutchEntry;
import org.culvert.care.clutch.ClutchEntries.ClutchHandOverEntry;
import org.culvert.care.clutch.ClutchEntries.EggsCame;
import org.culvert.care.clutch.ClutchEntries.EggsEntry;
import org.culvert.care.clutch.ClutchEntries.EggsInsideEntry;
import org.culvert.care.clutch.ClutchEntries.FailedEggsEntry;
import org.culvert.care.clutch.ClutchEntries.FailureGrounds;
import org.culvert.care.clutch.ClutchEntries.HatchingEntry;
import org.culvert.care.clutch.ClutchEntries.LoggerFileEntry;
import org.culvert.care.clutch.ClutchEntries.SetUpEntry;
import org.culvert.care.clutch.ClutchEntries.TemperatureEntry;
import org.culvert.care.clutch.ClutchLog;
import org.culvert.care.clutch.ClutchService;
import org.culvert.care.clutch.TemperatureService;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.RegionService;
import org.culvert.roster.Holder;
import org.culvert.web.HolderNames;
import org.culvert.web.Languages;
import org.culvert.web.forms.EntryBody;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentFile;
import org.culvert.web.kept.NamedRecords;
import org.culvert.web.words.ClutchWords;
import org.culvert.web.words.FormsWords;
import org.jspecify.annotations.Nullable;

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

    private static final String CALL_SIGN = "callSign";
    private static final String MOTHER = "motherCase";
    private static final SentFile.Taken LOGGED =
            new SentFile.Taken(List.of(), 8_000_000, "the file of a logger, as CSV, of up to 8 MB");

    private final ClutchService clutches;
    private final ClutchLog log;
    private final TemperatureService temperatures;
    private final CaseService cases;
    private final HolderNames holders;
    private final NamedRecords named;
    private final FormBodies bodies;
    private final RegionService region;
    private final Languages languages;

    ClutchForms(
            ClutchService clutches,
            ClutchLog log,
            TemperatureService temperatures,
            CaseService cases,
            HolderNames holders,
            NamedRecords named,
            FormBodies bodies,
            RegionService region,
            Languages languages) {
        this.clutches = clutches;
        this.log = log;
        this.temperatures = temperatures;
        this.cases = cases;
        this.holders = holders;
        this.named = named;
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
        var form = new EntryForm(what.name(), sent, wrong, ClutchForms::beside);
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
                form.text(CALL_SIGN, usual.callSign(), "", false)
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
        EntryBody body = form(what, List.of(), sent, List.of()).read(region.zone());
        switch (what) {
            case temperature -> temperatures.add(clutch, body.read(bodies, TemperatureEntry.class));
            case candling -> log.candle(clutch, body.read(bodies, CandlingEntry.class));
            case hatching -> clutches.hatch(clutch, body.read(bodies, HatchingEntry.class));
            case failedEggs -> log.fail(clutch, body.read(bodies, FailedEggsEntry.class));
            case setUp -> log.setUp(clutch, body.read(bodies, SetUpEntry.class));
            case eggs -> clutches.addEggs(clutch, body.read(bodies, EggsEntry.class));
            case eggsInside -> log.readInside(clutch, body.read(bodies, EggsInsideEntry.class));
            case handOver -> {
                tellHolder(body);
                clutches.handOver(clutch, body.read(bodies, ClutchHandOverEntry.class));
            }
            case withdrawal -> {
                UUID entry = body.takeId("entryId");
                Withdrawal why = body.read(bodies, Withdrawal.class);
                log.withdraw(clutch, Objects.requireNonNull(entry), why.reason());
            }
        }
    }

    /** Who holds it is typed as a call sign, or chosen among organisations. */
    private void tellHolder(EntryBody body) {
        String callSign = body.take(CALL_SIGN);
        String organisation = body.take("organisationId");
        Holder holder = body.tried(() -> holders.read(callSign, organisation));
        if (holder != null) {
            ObjectNode told = body.told().putObject("holder");
            if (holder.memberId() != null) {
                told.put("memberId", holder.memberId().toString());
            } else {
                told.put("organisationId", String.valueOf(holder.organisationId()));
            }
        }
    }

    /** Where the form tells what the body calls otherwise. */
    private static String beside(String field) {
        return field.equals("holder") || field.startsWith("holder.")
                ? CALL_SIGN
                : field.equals("motherCaseId") ? MOTHER : field.equals("csv") ? "file" : field;
    }

    /** The form with the file of a logger; the file itself is chosen anew each time. */
    EntryForm file(SentFields sent, List<FieldError> wrong) {
        ClutchWords words = languages.words(ClutchWords.class);
        return new EntryForm("file", sent, wrong, ClutchForms::beside)
                .file("file", words.csvFile(), "", true)
                .text("source", words.whichLogger(), "", true)
                .text("timeColumn", words.timeColumn(), "", false)
                .text("temperatureColumn", words.temperatureColumn(), "", false)
                .text("utcOffset", words.utcOffset(), "+10:00", false);
    }

    /** Takes the file of a logger. */
    void takeFile(UUID clutch, SentFields sent, @Nullable SentFile file) {
        EntryBody body = file(sent, List.of()).read(region.zone());
        byte[] octets = body.tried(() -> SentFile.content("file", file, LOGGED));
        LoggerFileEntry entry = body.read(bodies, LoggerFileEntry.class);
        temperatures.addFile(clutch, entry, new ByteArrayInputStream(Objects.requireNonNull(octets)));
    }

    /** The form that opens a clutch. */
    EntryForm opening(SentFields sent, List<FieldError> wrong) {
        ClutchWords words = languages.words(ClutchWords.class);
        FormsWords usual = languages.words(FormsWords.class);
        var form = new EntryForm("new", sent, wrong, ClutchForms::beside).count(MOTHER, words.motherCase(), "", true);
        List<Option> visits = visitsOf(sent.given(MOTHER));
        if (!visits.isEmpty()) {
            form.choice("visitId", words.visit(), "", false, visits);
        }
        return form.count("eggs.recovered", words.recoveredCount(), words.moreEggsLead(), true)
                .count("eggs.setToIncubate", words.setCount(), "", true)
                .count("eggs.broken", words.brokenCount(), "", true)
                .count("eggs.discarded", words.discardedCount(), "", true)
                .choice("eggs.how", words.howTheyCame(), true, EggsCame.values(), words::came)
                .text(CALL_SIGN, usual.callSign(), "", false)
                .choice("organisationId", usual.orOrganisation(), "", false, organisations())
                .moment("eggs.at", usual.whenIfNotNow(), "");
    }

    /** Visits of a mother, once somebody has said who she is. */
    private List<Option> visitsOf(@Nullable String number) {
        if (number == null || !number.matches("\\d{1,9}")) {
            return List.of();
        }
        return cases.findByNumber(Long.parseLong(number)).map(named::visits).orElse(Map.of()).entrySet().stream()
                .map(visit -> new Option(visit.getKey(), visit.getValue()))
                .toList();
    }

    /** Opens a clutch from the case of its mother. */
    UUID open(SentFields sent) {
        EntryBody body = opening(sent, List.of()).read(region.zone());
        String number = body.take(MOTHER);
        if (number != null) {
            cases.findByNumber(Long.parseLong(number))
                    .ifPresentOrElse(
                            mother -> body.told().put("motherCaseId", mother.toString()),
                            () -> body.refuse(
                                    MOTHER,
                                    "There is no case of that number, or it is not one of yours.",
                                    "the number of her case"));
        }
        tellHolder(body);
        return clutches.createClutch(body.read(bodies, ClutchEntry.class)).id();
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
