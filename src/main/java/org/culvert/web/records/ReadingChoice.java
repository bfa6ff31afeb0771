package org.culvert.web.records;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.culvert.exchange.reading.ReadingSettings;
import org.culvert.exchange.reading.Separator;
import org.culvert.exchange.records.RecordFileLook.RecordLookForm;
import org.culvert.exchange.records.RecordInspectionView;
import org.culvert.exchange.records.RecordReadingSettings;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/**
 * How a file is to be read, as a page shows it chosen: as proposed, as decided before, or as somebody has just typed it.
 *
 * @param holds what a column holds, by its index
 * @param answers by the key of the question
 * @param words in which the words of a setting came, by setting, a colon and the word in small letters
 * @param meanings what they mean, by the same
 * @param others kinds of the register by name, by the same
 */
record ReadingChoice(
        String name,
        String encoding,
        String separator,
        String headingRow,
        String uncertaintyMetres,
        Map<Integer, String> holds,
        Map<String, String> answers,
        Map<String, String> words,
        Map<String, String> meanings,
        Map<String, String> others) {
    private static final List<String> NUMBERS = List.of("epsg");
    private static final List<String> TRUTHS =
            List.of("serialDays", "midnightIsNoHour", "axesSwapped", "latitudesWithoutSign", "longitudesWithoutSign");
    private static final List<String> OF_WORDS = List.of("animals", "vitalities", "directions", "causes");
    private static final List<String> OF_TEXT = List.of("encoding", "separator", "headingRow");

    static ReadingChoice asProposed(RecordInspectionView found) {
        Map<Integer, String> holds = new TreeMap<>();
        found.proposals().forEach(proposal -> holds.put(proposal.column(), proposal.field()));
        Map<String, String> answers = new HashMap<>();
        found.questions().forEach(question -> answers.put(question.key(), text(question.proposed())));
        return new ReadingChoice(
                "",
                found.encoding(),
                found.separator().name(),
                Long.toString(found.headingRow()),
                "",
                holds,
                answers,
                Map.of(),
                Map.of(),
                Map.of());
    }

    static ReadingChoice of(@Nullable String name, RecordReadingSettings settings) {
        Map<Integer, String> holds = new TreeMap<>();
        settings.columns().forEach((field, column) -> holds.put(column, field.name()));
        Map<String, String> answers = new HashMap<>();
        answers.put("dayOrder", text(settings.dayOrder()));
        answers.put("decimalMark", settings.decimalMark().name());
        answers.put("serialDays", Boolean.toString(settings.serialDays()));
        answers.put("midnightIsNoHour", Boolean.toString(settings.midnightIsNoHour()));
        answers.put("axesSwapped", Boolean.toString(settings.axesSwapped()));
        answers.put("latitudesWithoutSign", Boolean.toString(settings.latitudesWithoutSign()));
        answers.put("longitudesWithoutSign", Boolean.toString(settings.longitudesWithoutSign()));
        List<?> above = settings.asAbove();
        answers.put(
                "asAbove",
                above == null ? "" : above.stream().map(Object::toString).collect(Collectors.joining(",")));
        answers.put("epsg", text(settings.epsg()));
        answers.put("chainageUnit", settings.chainageUnit().name());
        answers.put("cause", text(settings.cause()));
        Map<String, String> words = new LinkedHashMap<>();
        Map<String, String> meanings = new HashMap<>();
        Map.of(
                        "animals", settings.animals(),
                        "vitalities", settings.vitalities(),
                        "directions", settings.directions(),
                        "causes", settings.causes())
                .forEach((setting, decided) -> decided.forEach((word, meaning) -> {
                    words.put(place(setting, word), word);
                    meanings.put(place(setting, word), meaning);
                }));
        return new ReadingChoice(
                text(name),
                settings.encoding(),
                settings.separator().name(),
                Long.toString(settings.headingRow()),
                text(settings.uncertaintyMetres()),
                holds,
                answers,
                words,
                meanings,
                Map.of());
    }

    /**
     * As it is typed.
     *
     * @throws InvalidException if the form is none of ours
     */
    static ReadingChoice of(ReadingForm form) {
        Map<Integer, String> holds = new TreeMap<>();
        for (String one : list(form.holds)) {
            String[] parts = one.split(":", 2);
            if (parts.length != 2 || !parts[0].matches("\\d{1,5}")) {
                throw notOurs("holds");
            }
            if (!parts[1].isEmpty()) {
                holds.put(Integer.valueOf(parts[0]), parts[1]);
            }
        }
        List<String> asked = list(form.questions);
        List<String> told = list(form.answers);
        List<String> words = list(form.words);
        List<String> meanings = list(form.meanings);
        List<String> others = list(form.others);
        if (asked.size() != told.size()) {
            throw notOurs("answer");
        }
        if (words.size() != meanings.size() || words.size() != others.size()) {
            throw notOurs("word");
        }
        Map<String, String> answers = new HashMap<>();
        for (int i = 0; i < asked.size(); i++) {
            answers.put(asked.get(i), told.get(i).strip());
        }
        Map<String, String> byPlace = new LinkedHashMap<>();
        Map<String, String> meant = new HashMap<>();
        Map<String, String> typed = new HashMap<>();
        for (int i = 0; i < words.size(); i++) {
            String[] parts = words.get(i).split(":", 2);
            if (parts.length != 2 || !OF_WORDS.contains(parts[0])) {
                throw notOurs("word");
            }
            String place = place(parts[0], parts[1]);
            byPlace.put(place, parts[1]);
            // A word that comes in large and in small letters is one
            meant.merge(place, meanings.get(i).strip(), ReadingChoice::said);
            typed.merge(place, others.get(i).strip(), ReadingChoice::said);
        }
        return new ReadingChoice(
                text(form.name).strip(),
                answerOr(answers, "encoding", form.encoding),
                answerOr(answers, "separator", form.separator),
                answerOr(answers, "headingRow", form.headingRow),
                text(form.uncertaintyMetres).strip(),
                holds,
                answers,
                byPlace,
                meant,
                typed);
    }

    private static String said(String before, String now) {
        return now.isEmpty() ? before : now;
    }

    private static String answerOr(Map<String, String> answers, String key, @Nullable String field) {
        return text(field).strip().isEmpty()
                ? text(answers.get(key))
                : text(field).strip();
    }

    private static InvalidException notOurs(String field) {
        return InvalidException.of(field, "This is not what the form has there.", "the form as the page has it");
    }

    /** Under which a word of a setting is found, however it is written. */
    static String place(String setting, String word) {
        return setting + ":" + ReadingSettings.wordKey(word);
    }

    /** How its text is taken apart, to be told from another way. */
    String seen() {
        return encoding + "|" + separator + "|" + headingRow;
    }

    /** The same, with the columns as proposed. */
    ReadingChoice withProposed(RecordInspectionView found) {
        ReadingChoice proposed = asProposed(found);
        Map<String, String> answered = new HashMap<>(proposed.answers);
        answers.forEach((key, answer) -> {
            if (!answer.isEmpty()) {
                answered.put(key, answer);
            }
        });
        return new ReadingChoice(
                name,
                proposed.encoding,
                proposed.separator,
                proposed.headingRow,
                uncertaintyMetres,
                proposed.holds,
                answered,
                words,
                meanings,
                others);
    }

    /** @throws InvalidException if there is no such separator, or no such row */
    RecordLookForm lookForm() {
        Separator between = Arrays.stream(Separator.values())
                .filter(one -> one.name().equals(separator))
                .findFirst()
                .orElse(null);
        if (between == null && !separator.isEmpty()) {
            throw InvalidException.of(
                    "separator",
                    "No such sign separates cells.",
                    Arrays.stream(Separator.values()).map(Enum::name).collect(Collectors.joining(", ", "one of ", "")));
        }
        if (!headingRow.matches("|[0-3]?\\d|40")) {
            throw InvalidException.of("headingRow", "No headings stand there.", "0 to 40");
        }
        return new RecordLookForm(
                encoding.isEmpty() ? null : encoding, between, headingRow.isEmpty() ? null : Long.valueOf(headingRow));
    }

    /** Index of the column by what it holds. */
    Map<String, Integer> columns() {
        Map<String, Integer> columns = new TreeMap<>();
        holds.forEach((column, field) -> columns.putIfAbsent(field, column));
        return columns;
    }

    /**
     * The body of a request that decides it so.
     *
     * @param names finds what a name of the register stands for, or null
     * @throws InvalidException if two columns hold the same, or a name is none of the register
     */
    ObjectNode body(Kinds names) {
        List<FieldError> errors = new ArrayList<>();
        ObjectNode body = JsonNodeFactory.instance.objectNode();
        put(body, "name", name);
        put(body, "encoding", encoding);
        put(body, "separator", separator);
        putNumber(body, "headingRow", headingRow);
        putNumber(body, "uncertaintyMetres", uncertaintyMetres);
        ObjectNode columns = body.putObject("columns");
        holds.forEach((column, field) -> {
            if (columns.has(field)) {
                errors.add(new FieldError("columns." + field, "Two columns hold that.", "one column for each", null));
            }
            columns.put(field, column);
        });
        answers.forEach((key, answer) -> {
            if (!answer.isEmpty() && !OF_TEXT.contains(key)) {
                putAnswer(body, key, answer);
            }
        });
        words.forEach((place, word) -> {
            String setting = place.substring(0, place.indexOf(':'));
            String other = others.getOrDefault(place, "");
            String meaning = other.isEmpty() ? meanings.getOrDefault(place, "") : names.find(other);
            if (meaning == null) {
                errors.add(new FieldError(
                        setting + "." + word,
                        "No kind of the register is called so.",
                        "a name as the list beside it has it",
                        null));
            } else if (!meaning.isEmpty()) {
                body.withObjectProperty(setting).put(word, meaning);
            }
        });
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
        return body;
    }

    /** Finds kinds of the register. */
    interface Kinds {
        /** The key of the taxon or the group that is called exactly so, or null. */
        @Nullable
        String find(String name);
    }

    private static void putAnswer(ObjectNode body, String key, String answer) {
        if (key.equals("asAbove")) {
            var above = body.putArray(key);
            Arrays.stream(answer.split(",")).forEach(above::add);
        } else if (NUMBERS.contains(key)) {
            putNumber(body, key, answer);
        } else if (TRUTHS.contains(key) && (answer.equals("true") || answer.equals("false"))) {
            body.put(key, answer.equals("true"));
        } else {
            body.put(key, answer);
        }
    }

    private static void put(ObjectNode body, String field, String typed) {
        if (!typed.isEmpty()) {
            body.put(field, typed);
        }
    }

    /** A text that is no number stays one, and is refused as such. */
    private static void putNumber(ObjectNode body, String field, String typed) {
        if (typed.matches("-?\\d{1,15}")) {
            body.put(field, Long.parseLong(typed));
        } else if (typed.matches("-?\\d{1,15}[.,]\\d{1,15}")) {
            body.put(field, Double.parseDouble(typed.replace(',', '.')));
        } else {
            put(body, field, typed);
        }
    }

    private static List<String> list(@Nullable List<String> sent) {
        return sent == null ? List.of() : sent;
    }

    private static String text(@Nullable Object value) {
        return value == null ? "" : value.toString();
    }
}
