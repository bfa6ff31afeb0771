package org.culvert.exchange.records;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.culvert.exchange.reading.Dates;
import org.culvert.exchange.reading.Headings;
import org.culvert.exchange.reading.Numbers;
import org.culvert.exchange.reading.ReadingSettings;
import org.culvert.exchange.records.RecordInspectionView.RecordChoice;
import org.culvert.exchange.records.RecordInspectionView.RecordQuestion;
import org.culvert.geo.CoordinateException;
import org.culvert.geo.Projections;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Rows;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Keeps how somebody decided that a file is to be read, once nothing is open any more. */
@ApplicationScoped
public class RecordReadingService {
    private static final Set<String> VITALITIES = Set.of("alive", "dead", "unknown");
    private static final Set<String> DIRECTIONS = Set.of(
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

    @ApplicationScoped
    static class Readings implements PanacheRepositoryBase<RecordReading, UUID> {}

    private final Readings readings;
    private final RecordFileService files;
    private final RecordInspector inspector;
    private final RecordViews records;
    private final EntityManager entities;

    RecordReadingService(
            Readings readings,
            RecordFileService files,
            RecordInspector inspector,
            RecordViews records,
            EntityManager entities) {
        this.readings = readings;
        this.files = files;
        this.inspector = inspector;
        this.records = records;
        this.entities = entities;
    }

    /**
     * Decides how a file is to be read. The file is looked through once more, so that nothing is decided that it contradicts.
     *
     * @throws InvalidException naming each field that is wrong, and each question that is still open
     */
    @Transactional
    public RecordReadingView decide(UUID fileId, RecordReadingEntry entry) {
        RecordFile file = files.requireWhole(fileId);
        RecordFileText.Inspected inspected =
                files.inspected(file, entry.encoding(), entry.separator(), entry.headingRow());
        List<FieldError> errors = new ArrayList<>();
        Map<Headings.Field, Integer> columns =
                columns(entry.columns(), inspected.table().headings().size(), errors);
        checkWords(entry, errors);
        if (errors.isEmpty() && entry.asAbove() != null && !columns.keySet().containsAll(entry.asAbove())) {
            errors.add(error("asAbove", "Of these one has no column.", "fields that have a column"));
        }
        checkGrid(entry.epsg(), errors);
        Double uncertainty = entry.uncertaintyMetres();
        if (uncertainty != null && !(uncertainty > 0)) {
            errors.add(error("uncertaintyMetres", "No coordinates are that sure.", "metres greater than zero"));
        }
        stop(errors);
        List<RecordQuestion> questions = inspector.questions(file.encodingIsSure, inspected, columns);
        for (RecordQuestion question : questions) {
            if (question.needed() && isOpen(question.key(), entry)) {
                errors.add(error(
                        question.key(),
                        "It is open: " + question.question() + " " + question.evidence(),
                        question.choices().isEmpty()
                                ? "an answer of somebody who knows the file"
                                : question.choices().stream()
                                        .map(RecordChoice::value)
                                        .collect(Collectors.joining(", ", "one of ", ""))));
            }
        }
        stop(errors);
        var reading = new RecordReading(
                fileId, entry.name(), inspected.table().headings(), settings(entry, inspected, columns, questions));
        readings.persistAndFlush(reading);
        return view(reading);
    }

    private static RecordReadingSettings settings(
            RecordReadingEntry entry,
            RecordFileText.Inspected inspected,
            Map<Headings.Field, Integer> columns,
            List<RecordQuestion> questions) {
        Integer day = columns.get(Headings.Field.day);
        Dates.Order order = entry.dayOrder() != null || day == null
                ? entry.dayOrder()
                : inspected.table().toldOrder(day);
        Numbers.Mark told = inspected.table().toldMark(columns);
        return new RecordReadingSettings(
                inspected.form().encoding(),
                inspected.form().separator(),
                inspected.form().headingRow(),
                columns,
                order,
                entry.decimalMark() != null ? entry.decimalMark() : told != null ? told : Numbers.Mark.point,
                isSo(entry.serialDays(), "serialDays", questions),
                isSo(entry.midnightIsNoHour(), "midnightIsNoHour", questions),
                Boolean.TRUE.equals(entry.axesSwapped()),
                Boolean.TRUE.equals(entry.latitudesWithoutSign()),
                Boolean.TRUE.equals(entry.longitudesWithoutSign()),
                entry.asAbove() == null ? List.of() : List.copyOf(new TreeSet<>(entry.asAbove())),
                entry.epsg(),
                entry.uncertaintyMetres(),
                unit(entry, inspected, columns),
                entry.cause(),
                byKey(entry.animals()),
                byKey(entry.vitalities()),
                byKey(entry.directions()),
                byKey(entry.causes()));
    }

    /** Numbers of a column whose heading names a unit are in it; where it has no numbers each cell names its own. */
    private static ReadingSettings.ChainageUnit unit(
            RecordReadingEntry entry, RecordFileText.Inspected inspected, Map<Headings.Field, Integer> columns) {
        Integer column = columns.get(Headings.Field.chainage);
        if (entry.chainageUnit() != null || column == null) {
            return entry.chainageUnit() != null ? entry.chainageUnit() : ReadingSettings.ChainageUnit.kilometres;
        }
        ReadingSettings.ChainageUnit told =
                Headings.unitOf(inspected.table().headings().get(column));
        return told != null ? told : ReadingSettings.ChainageUnit.kilometres;
    }

    private static boolean isSo(@Nullable Boolean decided, String key, List<RecordQuestion> questions) {
        return decided != null
                ? decided
                : questions.stream()
                        .anyMatch(question -> question.key().equals(key) && "true".equals(question.proposed()));
    }

    private static boolean isOpen(String key, RecordReadingEntry entry) {
        return switch (key) {
            case "dayOrder" -> entry.dayOrder() == null;
            case "decimalMark" -> entry.decimalMark() == null;
            case "axesSwapped" -> entry.axesSwapped() == null;
            case "latitudesWithoutSign" -> entry.latitudesWithoutSign() == null;
            case "longitudesWithoutSign" -> entry.longitudesWithoutSign() == null;
            case "epsg" -> entry.epsg() == null;
            case "chainageUnit" -> entry.chainageUnit() == null;
            case "cause" -> entry.cause() == null;
            default -> throw new IllegalStateException("no setting answers " + key);
        };
    }

    private static Map<Headings.Field, Integer> columns(
            Map<String, Integer> wanted, int many, List<FieldError> errors) {
        Map<Headings.Field, Integer> columns = new EnumMap<>(Headings.Field.class);
        Set<Integer> taken = new HashSet<>();
        wanted.forEach((name, column) -> {
            String at = "columns." + name;
            Headings.Field field = field(name);
            if (field == null) {
                errors.add(error(
                        at,
                        "No column holds that.",
                        java.util.Arrays.stream(Headings.Field.values())
                                .map(Enum::name)
                                .collect(Collectors.joining(", ", "one of ", ""))));
            } else if (isOutside(column, many)) {
                errors.add(error(at, "There is no such column.", "0 to " + (many - 1)));
            } else if (!taken.add(column)) {
                errors.add(error(at, "That column holds something else already.", "a column for each"));
            } else {
                columns.put(field, column);
            }
        });
        if (errors.isEmpty() && !columns.containsKey(Headings.Field.day) && !columns.containsKey(Headings.Field.year)) {
            errors.add(error("columns", "No column tells when it was.", "a column for day, or at least for year"));
        }
        return columns;
    }

    private static Headings.@Nullable Field field(String name) {
        for (Headings.Field field : Headings.Field.values()) {
            if (field.name().equals(name)) {
                return field;
            }
        }
        return null;
    }

    private static boolean isOutside(@Nullable Integer column, int many) {
        return column == null || column < 0 || column >= many;
    }

    private void checkWords(RecordReadingEntry entry, List<FieldError> errors) {
        Set<String> causes =
                inspector.causes().stream().map(RecordChoice::value).collect(Collectors.toSet());
        String cause = entry.cause();
        String wanted = "one of " + causes.stream().sorted().collect(Collectors.joining(", "));
        if (cause != null && !causes.contains(cause)) {
            errors.add(error("cause", "There is no such cause.", wanted));
        }
        check("causes", entry.causes(), causes::contains, wanted, errors);
        check("vitalities", entry.vitalities(), VITALITIES::contains, "alive, dead or unknown", errors);
        check(
                "directions",
                entry.directions(),
                DIRECTIONS::contains,
                "one of " + DIRECTIONS.stream().sorted().collect(Collectors.joining(", ")),
                errors);
        Set<String> animals = entry.animals() == null || entry.animals().isEmpty() ? Set.of() : animals();
        check(
                "animals",
                entry.animals(),
                animals::contains,
                "taxon: or group: and the identifier of one that is there, domestic or undecided",
                errors);
    }

    private static void check(
            String field,
            @Nullable Map<String, String> meanings,
            Predicate<String> known,
            String wanted,
            List<FieldError> errors) {
        if (meanings == null) {
            return;
        }
        meanings.forEach((word, meaning) -> {
            if (isUnknown(meaning, known)) {
                errors.add(error(field + "." + word, "A word cannot mean that.", wanted));
            }
        });
    }

    private static boolean isUnknown(@Nullable String meaning, Predicate<String> known) {
        return meaning == null || !known.test(meaning);
    }

    private Set<String> animals() {
        Set<String> animals = new HashSet<>(Rows.column(
                entities.createNativeQuery(
                        "select 'taxon:' || id from taxa union all select 'group:' || id from taxon_groups"),
                String.class));
        animals.add(ReadingSettings.DOMESTIC);
        animals.add(ReadingSettings.UNDECIDED);
        return animals;
    }

    private static void checkGrid(@Nullable Integer epsg, List<FieldError> errors) {
        if (epsg == null) {
            return;
        }
        try {
            if (Projections.grid(epsg).isGeographic()) {
                errors.add(error("epsg", "EPSG:" + epsg + " has degrees.", "the code of a grid of metres"));
            }
        } catch (CoordinateException unknown) {
            errors.add(error("epsg", unknown.whatIsWrong() + ".", unknown.whatWouldBeRight()));
        }
    }

    private static Map<String, String> byKey(@Nullable Map<String, String> decided) {
        Map<String, String> byKey = new HashMap<>();
        if (decided != null) {
            decided.forEach((word, meaning) -> byKey.put(ReadingSettings.wordKey(word), meaning));
        }
        return byKey;
    }

    private static FieldError error(String field, String detail, String wanted) {
        return new FieldError(field, detail, wanted, null);
    }

    private static void stop(List<FieldError> errors) {
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
    }

    /** How a file is to be read, as was decided last. */
    @Transactional
    public RecordReadingView getReading(UUID fileId) {
        files.require(fileId);
        return readings.find("recordFileId = ?1 order by recordedAt desc, id desc", fileId)
                .firstResultOptional()
                .map(this::view)
                .orElseThrow(() -> new NotFoundException("reading of the record file", fileId));
    }

    /** Headings of the columns of the file that a reading is of. */
    @Transactional
    public List<String> getHeadings(UUID id) {
        return List.copyOf(require(id).headings);
    }

    RecordReading require(UUID id) {
        return readings.findByIdOptional(id).orElseThrow(() -> new NotFoundException("reading", id));
    }

    private RecordReadingView view(RecordReading row) {
        return new RecordReadingView(row.id(), row.recordFileId, row.name, row.headings, row.settings, records.of(row));
    }
}
