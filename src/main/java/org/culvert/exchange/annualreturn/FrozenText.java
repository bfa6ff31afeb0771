package org.culvert.exchange.annualreturn;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVPrinter;
import org.culvert.exchange.annualreturn.ReturnForms.ReturnColumn;
import org.culvert.exchange.annualreturn.ReturnForms.Shows;
import org.culvert.exchange.annualreturn.tally.Tally;
import org.culvert.platform.CsvText;
import org.jspecify.annotations.Nullable;

/**
 * Writes a return the same way in every process: JSON with keys in order and no spaces between (as RFC 8785 has it for texts,
 * whole numbers and lists), and a table.
 */
final class FrozenText {
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .addModule(new JavaTimeModule())
            .enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
            .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .build();

    /** Columns that stand behind those of the form, for what is no line of counts. */
    private static final List<String> MORE =
            List.of("direction", "count", "on", "other", "otherLicence", "why", "cases");

    private FrozenText() {}

    static String json(Object document) {
        try {
            return MAPPER.writeValueAsString(document);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a return cannot be written", e);
        }
    }

    static <T> T read(String json, Class<T> type) {
        try {
            return MAPPER.readValue(json, type);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a line of a return cannot be read", e);
        }
    }

    static byte[] octets(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** The table of a return: its lines in the columns of the form, then transfers, doubts and what is left out. */
    static String table(ReturnForm form, ReturnDraft draft) {
        return write(form, List.of(), printer -> {
            for (ReturnDraft.ReturnLine line : draft.lines()) {
                printer.print(List.of(), line);
            }
            for (ReturnDraft.ReturnTransfer transfer : draft.transfers()) {
                printer.print(List.of(), transfer);
            }
            for (ReturnDraft.ReturnDoubt doubt : draft.doubts()) {
                printer.print(List.of(), doubt);
            }
            for (ReturnDraft.ReturnLeftOut left : draft.leftOut()) {
                printer.print(List.of(), left);
            }
        });
    }

    /** The table of a supplement: what changed, before and after. */
    static String table(ReturnForm form, ReturnChanges changes) {
        return write(form, List.of("change", "state"), printer -> {
            int number = 0;
            for (ReturnChanges.ChangedLine changed : changes.lines()) {
                printer.print(++number, changed.before(), changed.after());
            }
            for (ReturnChanges.ChangedTransfer changed : changes.transfers()) {
                printer.print(++number, changed.before(), changed.after());
            }
            for (ReturnChanges.ChangedDoubt changed : changes.doubts()) {
                printer.print(++number, changed.before(), changed.after());
            }
            for (ReturnChanges.ChangedLeftOut changed : changes.leftOut()) {
                printer.print(++number, changed.before(), changed.after());
            }
        });
    }

    private interface Writing {
        void write(Table table) throws IOException;
    }

    private static String write(ReturnForm form, List<String> before, Writing writing) {
        var text = new StringBuilder();
        List<String> words = words(form);
        List<String> header = new ArrayList<>(before);
        header.add("row");
        for (ReturnColumn column : form.columns()) {
            if (column.shows() == Shows.wentOutByWord) {
                words.forEach(word -> header.add(column.heading() + ": " + word));
            } else {
                header.add(column.heading());
            }
        }
        header.addAll(MORE);
        try (CSVPrinter printer = CsvText.printer(text, header)) {
            writing.write(new Table(form, words, printer));
        } catch (IOException impossible) {
            throw new IllegalStateException("text is written to memory", impossible);
        }
        return text.toString();
    }

    /** The words of the authority, each once, in the order of what they stand for. */
    private static List<String> words(ReturnForm form) {
        Set<String> words = new LinkedHashSet<>();
        for (ReturnForms.End end : ReturnForms.End.values()) {
            String word = form.vocabulary.get(end.name());
            if (word != null) {
                words.add(word);
            }
        }
        return List.copyOf(words);
    }

    private record Table(ReturnForm form, List<String> words, CSVPrinter printer) {
        void print(int number, @Nullable Object before, @Nullable Object after) throws IOException {
            if (before != null) {
                print(List.of(Integer.toString(number), "before"), before);
            }
            if (after != null) {
                print(List.of(Integer.toString(number), "after"), after);
            }
        }

        void print(List<String> first, Object row) throws IOException {
            List<@Nullable Object> cells = new ArrayList<>(first);
            if (row instanceof ReturnDraft.ReturnLine line) {
                cells.add("line");
                form.columns().forEach(column -> add(cells, column.shows(), line));
                MORE.forEach(none -> cells.add(null));
            } else if (row instanceof ReturnDraft.ReturnTransfer transfer) {
                cells.add("transfer");
                named(cells, transfer.scientificName(), transfer.kind().name());
                cells.addAll(Arrays.asList(
                        transfer.direction(),
                        transfer.count(),
                        transfer.on(),
                        transfer.other(),
                        licence(transfer),
                        null,
                        transfer.caseNumber()));
            } else if (row instanceof ReturnDraft.ReturnDoubt doubt) {
                cells.add("doubt");
                named(cells, doubt.scientificName(), doubt.kind().name());
                cells.addAll(Arrays.asList(
                        doubt.direction(), doubt.count(), null, null, null, doubt.words(), cases(doubt.cases())));
            } else if (row instanceof ReturnDraft.ReturnLeftOut left) {
                cells.add("leftOut");
                named(cells, left.scientificName(), left.kind().name());
                cells.addAll(Arrays.asList(
                        null, left.count(), null, null, null, "does not count by the form", cases(left.cases())));
            } else {
                throw new IllegalArgumentException("no row of a return: " + row.getClass());
            }
            printer.printRecord(cells.stream().map(CsvText::harmless).toList());
        }

        /** The columns of the form that say of what it is; counts stand in lines alone, so that a column can be added up. */
        private void named(List<@Nullable Object> cells, String scientificName, String kind) {
            for (ReturnColumn column : form.columns()) {
                switch (column.shows()) {
                    case scientificName -> cells.add(scientificName);
                    case kind -> cells.add(kind);
                    case wentOutByWord -> words.forEach(none -> cells.add(null));
                    default -> cells.add(null);
                }
            }
        }

        private void add(List<@Nullable Object> cells, Shows shows, ReturnDraft.ReturnLine line) {
            switch (shows) {
                case scientificName -> cells.add(line.scientificName());
                case vernacularName -> cells.add(line.vernacularName());
                case kind -> cells.add(line.kind().name());
                case opening -> cells.add(line.opening());
                case cameIn -> cells.add(line.cameIn());
                case cameInFound -> cells.add(count(line.cameInBy(), "found"));
                case cameInOfMother -> cells.add(count(line.cameInBy(), "ofMother"));
                case cameInHatched -> cells.add(count(line.cameInBy(), "hatched"));
                case cameInSet -> cells.add(count(line.cameInBy(), "set"));
                case cameInTransferred -> cells.add(count(line.cameInBy(), Tally.TRANSFERRED));
                case cameInAfterGap -> cells.add(count(line.cameInBy(), Tally.GAP));
                case wentOut -> cells.add(line.wentOut());
                case wentOutTransferred -> cells.add(count(line.wentOutBy(), Tally.TRANSFERRED));
                case wentOutIntoGap -> cells.add(count(line.wentOutBy(), Tally.GAP));
                case wentOutByWord ->
                    words.forEach(word -> cells.add(line.wentOutBy().stream()
                            .filter(way -> way.word().equals(word)
                                    && !way.how().equals(Tally.TRANSFERRED)
                                    && !way.how().equals(Tally.GAP))
                            .mapToInt(ReturnDraft.ReturnCount::count)
                            .sum()));
                case closing -> cells.add(line.closing());
            }
        }

        private static int count(List<ReturnDraft.ReturnCount> by, String how) {
            return by.stream()
                    .filter(way -> way.how().equals(how))
                    .mapToInt(ReturnDraft.ReturnCount::count)
                    .sum();
        }

        private static @Nullable String licence(ReturnDraft.ReturnTransfer transfer) {
            String number = transfer.otherLicence();
            if (number == null) {
                return null;
            }
            String of = transfer.otherLicenceOf();
            String where = transfer.otherLicenceJurisdiction();
            return number + (of == null ? "" : ", " + of) + (where == null ? "" : ", " + where);
        }

        private static String cases(List<Long> numbers) {
            return numbers.stream().map(String::valueOf).collect(Collectors.joining(" "));
        }
    }
}
