package org.culvert.web.records;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.culvert.call.CallService;
import org.culvert.exchange.reading.Headings;
import org.culvert.exchange.reading.Separator;
import org.culvert.exchange.records.RecordFileLook;
import org.culvert.exchange.records.RecordFileLook.RecordLook;
import org.culvert.exchange.records.RecordFileLook.RecordLookForm;
import org.culvert.exchange.records.RecordFileService;
import org.culvert.exchange.records.RecordFileView;
import org.culvert.exchange.records.RecordInspectionView;
import org.culvert.exchange.records.RecordInspectionView.RecordColumn;
import org.culvert.exchange.records.RecordInspectionView.RecordFormerReading;
import org.culvert.exchange.records.RecordInspectionView.RecordProposal;
import org.culvert.exchange.records.RecordInspectionView.RecordQuestion;
import org.culvert.exchange.records.RecordInspectionView.RecordWord;
import org.culvert.exchange.records.RecordReadingService;
import org.culvert.exchange.records.RecordReadingView;
import org.culvert.exchange.records.RecordStandings;
import org.culvert.exchange.records.RecordStandings.RecordFileStanding;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.web.records.RecordFilePage.Choice;
import org.culvert.web.records.RecordFilePage.Column;
import org.culvert.web.records.RecordFilePage.Problems;
import org.culvert.web.records.RecordFilePage.Question;
import org.culvert.web.records.RecordFilePage.Reading;
import org.culvert.web.records.RecordFilePage.Word;

/** Lays out what there is to decide of a file. */
@ApplicationScoped
class RecordFilePages {
    /** So many fields stand in a form at most, which holds fewer than the server takes. */
    private static final int MOST_COLUMNS = 300;

    private static final int MOST_WORDS = 150;

    /** Longer words are shortened where they are counted, and so cannot be decided here. */
    private static final int LONGEST_WORD = 100;

    private static final RecordLookForm AS_FOUND = new RecordLookForm(null, null, null);

    private static final List<String> VITALITIES = List.of("alive", "dead", "unknown");
    private static final List<String> DIRECTIONS = List.of(
            "north",
            "northEast",
            "east",
            "southEast",
            "south",
            "southWest",
            "west",
            "northWest",
            "both",
            "ramp",
            "increasing",
            "decreasing");

    /** Settings of words, by what their column holds. */
    private static final Map<String, String> SETTINGS = Map.of(
            "scientificName", "animals",
            "vernacularName", "animals",
            "vitality", "vitalities",
            "direction", "directions",
            "cause", "causes");

    private final RecordFileService files;
    private final RecordFileLook looks;
    private final RecordReadingService readings;
    private final RecordStandings standings;
    private final RegisterNames register;
    private final CallService calls;

    RecordFilePages(
            RecordFileService files,
            RecordFileLook looks,
            RecordReadingService readings,
            RecordStandings standings,
            RegisterNames register,
            CallService calls) {
        this.files = files;
        this.looks = looks;
        this.readings = readings;
        this.standings = standings;
        this.register = register;
        this.calls = calls;
    }

    /**
     * The page of a file.
     *
     * @param former whether it is filled in as another file with the same headings was decided
     */
    RecordFilePage page(UUID id, boolean former) {
        RecordFileView file = files.getFile(id);
        RecordFileStanding standing = standings.of(id);
        if (isOver(file, standing)) {
            return new RecordFilePage(file, standing, null);
        }
        RecordLook look = looks.look(id, AS_FOUND, null);
        RecordFormerReading before = look.inspection().former();
        if (former && before != null) {
            return shown(file, standing, ReadingChoice.of(before.name(), before.settings()), false, List.of());
        }
        if (file.readingId() != null) {
            RecordReadingView decided = readings.getReading(id);
            return shown(file, standing, ReadingChoice.of(decided.name(), decided.settings()), true, List.of());
        }
        ReadingChoice proposed = ReadingChoice.asProposed(look.inspection());
        return new RecordFilePage(file, standing, reading(look, proposed, false, List.of()));
    }

    /**
     * The page of a file as somebody has filled it in.
     *
     * @param anew whether the columns are as proposed, since the text is taken apart otherwise
     */
    RecordFilePage page(UUID id, ReadingChoice typed, boolean anew, List<FieldError> errors) {
        RecordFileView file = files.getFile(id);
        RecordFileStanding standing = standings.of(id);
        if (isOver(file, standing)) {
            return new RecordFilePage(file, standing, null);
        }
        return anew ? shownAnew(file, standing, typed, errors) : shown(file, standing, typed, false, errors);
    }

    private RecordFilePage shownAnew(
            RecordFileView file, RecordFileStanding standing, ReadingChoice typed, List<FieldError> errors) {
        try {
            RecordLook look = looks.look(file.id(), typed.lookForm(), null);
            return new RecordFilePage(
                    file, standing, reading(look, typed.withProposed(look.inspection()), false, errors));
        } catch (InvalidException notThatWay) {
            return shown(file, standing, typed, false, errors);
        }
    }

    private static boolean isOver(RecordFileView file, RecordFileStanding standing) {
        return file.calledOffAt() != null || file.erasedAt() != null || standing.isTaken();
    }

    private RecordFilePage shown(
            RecordFileView file,
            RecordFileStanding standing,
            ReadingChoice choice,
            boolean isDecided,
            List<FieldError> errors) {
        List<FieldError> all = new ArrayList<>(errors);
        RecordLook look;
        try {
            look = looks.look(file.id(), choice.lookForm(), choice.columns());
        } catch (InvalidException notThatWay) {
            notThatWay.errors().stream().filter(error -> !all.contains(error)).forEach(all::add);
            look = looks.look(file.id(), AS_FOUND, choice.columns());
        }
        return new RecordFilePage(file, standing, reading(look, choice, isDecided, all));
    }

    private Reading reading(RecordLook look, ReadingChoice choice, boolean isDecided, List<FieldError> errors) {
        RecordInspectionView found = look.inspection();
        RegisterNames.Names names = register.now();
        Map<String, String> causes = calls.listCauses();
        List<Word> open = new ArrayList<>();
        List<Word> understood = new ArrayList<>();
        int left = 0;
        for (RecordWord word : sorted(found.words())) {
            if (!SETTINGS.containsKey(word.field()) || word.word().length() > LONGEST_WORD) {
                continue;
            }
            if (open.size() + understood.size() == MOST_WORDS) {
                left++;
                continue;
            }
            (word.meaning() == null ? open : understood).add(word(word, choice, names, causes, errors));
        }
        int columns = Math.min(MOST_COLUMNS, found.columns().size());
        return new Reading(
                found,
                isDecided,
                choice.name(),
                found.encoding() + "|" + found.separator().name() + "|" + found.headingRow(),
                choice.uncertaintyMetres(),
                choices(RecordFileLook.encodings(), choice.encoding()),
                choices(Arrays.stream(Separator.values()).map(Enum::name).toList(), choice.separator()),
                choice.headingRow(),
                look.firstRows(),
                found.columns().subList(0, columns).stream()
                        .map(column -> column(column, found.proposals(), choice, errors))
                        .toList(),
                found.columns().size() - columns,
                found.questions().stream()
                        .filter(question ->
                                !List.of("encoding", "separator", "headingRow").contains(question.key()))
                        .map(question -> question(question, choice, errors))
                        .toList(),
                open,
                understood,
                left,
                names.all(),
                new Problems(
                        of(errors, "encoding"),
                        of(errors, "separator"),
                        of(errors, "headingRow"),
                        of(errors, "columns"),
                        of(errors, "uncertaintyMetres"),
                        of(errors, "name")),
                errors);
    }

    /** Those that mean nothing first, since somebody has to decide on them. */
    private static List<RecordWord> sorted(List<RecordWord> words) {
        List<RecordWord> sorted = new ArrayList<>();
        words.stream().filter(word -> word.meaning() == null).forEach(sorted::add);
        words.stream().filter(word -> word.meaning() != null).forEach(sorted::add);
        return sorted;
    }

    private static List<FieldError> of(List<FieldError> errors, String field) {
        return errors.stream().filter(error -> error.field().equals(field)).toList();
    }

    private static List<Choice> choices(List<String> values, String chosen) {
        return values.stream()
                .map(value -> new Choice(value, value, value.equals(chosen)))
                .toList();
    }

    private static Column column(
            RecordColumn column, List<RecordProposal> proposals, ReadingChoice choice, List<FieldError> errors) {
        String holds = choice.holds().getOrDefault(column.index(), "");
        return new Column(
                column,
                choices(Arrays.stream(Headings.Field.values()).map(Enum::name).toList(), holds),
                proposals.stream()
                        .filter(proposal -> proposal.column() == column.index())
                        .findFirst()
                        .map(RecordProposal::because)
                        .orElse(""),
                holds.isEmpty() ? List.of() : of(errors, "columns." + holds));
    }

    private static Question question(RecordQuestion asked, ReadingChoice choice, List<FieldError> errors) {
        String answer = choice.answers().getOrDefault(asked.key(), "");
        List<Choice> choices = new ArrayList<>();
        asked.choices()
                .forEach(one -> choices.add(
                        new Choice(one.value(), one.words(), one.value().equals(answer))));
        if (!choices.isEmpty() && !answer.isEmpty() && choices.stream().noneMatch(Choice::chosen)) {
            // As somebody decided it who said more than is asked here
            choices.add(new Choice(answer, answer, true));
        }
        return new Question(
                asked.key(),
                asked.question(),
                asked.evidence(),
                asked.needed(),
                asked.choices().isEmpty(),
                asked.choices().stream().noneMatch(one -> one.value().isEmpty()),
                answer,
                choices,
                of(errors, asked.key()));
    }

    private static Word word(
            RecordWord told,
            ReadingChoice choice,
            RegisterNames.Names names,
            Map<String, String> causes,
            List<FieldError> errors) {
        String setting = Objects.requireNonNull(SETTINGS.get(told.field()), "its words are decided");
        boolean ofAnimals = setting.equals("animals");
        String place = ReadingChoice.place(setting, told.word());
        String chosen = choice.meanings().getOrDefault(place, "");
        Map<String, String> offered = new LinkedHashMap<>();
        if (ofAnimals) {
            told.perhaps().forEach(offered::put);
            if (chosen.contains(":")) {
                offered.putIfAbsent(chosen, names.words(chosen));
            }
        } else if (setting.equals("causes")) {
            offered.putAll(causes);
        } else {
            (setting.equals("vitalities") ? VITALITIES : DIRECTIONS).forEach(value -> offered.put(value, value));
        }
        String meaning = told.meaning();
        return new Word(
                setting + ":" + told.word(),
                told.word(),
                told.field(),
                told.rows(),
                meaning == null ? "" : ofAnimals ? names.words(meaning) : causes.getOrDefault(meaning, meaning),
                ofAnimals,
                choicesOf(offered, chosen, ofAnimals),
                choice.others().getOrDefault(place, ""),
                errors.stream()
                        .filter(error -> error.field().startsWith(setting + ".")
                                && place.equals(ReadingChoice.place(
                                        setting, error.field().substring(setting.length() + 1))))
                        .toList());
    }

    private static List<Choice> choicesOf(Map<String, String> offered, String chosen, boolean ofAnimals) {
        List<Choice> choices = new ArrayList<>();
        offered.forEach((value, words) -> choices.add(new Choice(value, words, value.equals(chosen))));
        if (ofAnimals) {
            for (String value : List.of("domestic", "undecided")) {
                choices.add(new Choice(value, value, value.equals(chosen)));
            }
        }
        return choices;
    }
}
