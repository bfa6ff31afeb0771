package org.culvert.exchange.records;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.exchange.reading.Headings;
import org.culvert.exchange.reading.Separator;
import org.jspecify.annotations.Nullable;

/** What a file shows to somebody who is to decide how it is read: what was found, and its first rows as they are taken apart. */
@ApplicationScoped
public class RecordFileLook {
    private static final int FIRST_ROWS = 6;
    private static final int LONGEST_CELL = 100;

    /**
     * A look at a file.
     *
     * @param firstRows cells of the first rows below the headings that are not empty
     */
    public record RecordLook(RecordInspectionView inspection, List<List<String>> firstRows) {}

    /** How a text is taken apart, as far as somebody says it. */
    public record RecordLookForm(
            @Nullable String encoding,
            @Nullable Separator separator,
            @Nullable Long headingRow) {
        boolean isThatOf(RecordInspectionView found) {
            return (encoding == null || encoding.equals(found.encoding()))
                    && (separator == null || separator == found.separator())
                    && (headingRow == null || headingRow == found.headingRow());
        }
    }

    private final RecordFileService files;
    private final RecordFileText text;
    private final RecordInspector inspector;

    RecordFileLook(RecordFileService files, RecordFileText text, RecordInspector inspector) {
        this.files = files;
        this.text = text;
        this.inspector = inspector;
    }

    /**
     * Looks at a file. Where nothing is said that differs from what was found when it came, it is not read again.
     *
     * @param columns index of the column by what it holds; null: as is proposed. Those that are not there are left out
     * @throws org.culvert.platform.InvalidException if its text cannot be taken apart in that way
     */
    @Transactional
    public RecordLook look(UUID id, RecordLookForm said, @Nullable Map<String, Integer> columns) {
        RecordFile row = files.requireWhole(id);
        RecordInspectionView kept = files.getFile(id).inspection();
        boolean isKept = kept != null && said.isThatOf(kept) && (columns == null || columns.equals(proposed(kept)));
        RecordInspectionView found = kept != null && isKept ? kept : inspect(row, said, columns);
        return new RecordLook(found, firstRows(row, found));
    }

    private static Map<String, Integer> proposed(RecordInspectionView found) {
        Map<String, Integer> proposed = new HashMap<>();
        found.proposals().forEach(proposal -> proposed.put(proposal.field(), proposal.column()));
        return proposed;
    }

    private RecordInspectionView inspect(RecordFile row, RecordLookForm said, @Nullable Map<String, Integer> columns) {
        RecordFileText.Inspected inspected = files.inspected(row, said.encoding(), said.separator(), said.headingRow());
        return inspector.view(
                row.encodingIsSure,
                inspected,
                files.findFormer(row.id(), inspected.start().headings()),
                columns == null
                        ? inspected.table().proposedColumns()
                        : known(columns, inspected.start().headings().size()));
    }

    private static Map<Headings.Field, Integer> known(Map<String, Integer> columns, int many) {
        Map<Headings.Field, Integer> known = new EnumMap<>(Headings.Field.class);
        for (Headings.Field field : Headings.Field.values()) {
            Integer column = columns.get(field.name());
            if (column != null && column >= 0 && column < many) {
                known.put(field, column);
            }
        }
        return known;
    }

    private List<List<String>> firstRows(RecordFile row, RecordInspectionView found) {
        var form = new RecordFileText.Form(found.encoding(), found.separator(), found.headingRow());
        int columns = found.columns().size();
        List<List<String>> first = new ArrayList<>();
        try (RecordFileText.Rows rows = text.open(row.contentId, form, columns)) {
            while (first.size() < FIRST_ROWS && rows.text().next()) {
                if (rows.text().number() > form.headingRow() && !rows.text().isEmpty()) {
                    first.add(cells(rows.text().cells(), columns));
                }
            }
        }
        return first;
    }

    private static List<String> cells(List<String> row, int columns) {
        List<String> cells = new ArrayList<>();
        for (int i = 0; i < columns; i++) {
            String cell = i < row.size() ? row.get(i).replace('\0', '␀') : "";
            cells.add(cell.length() > LONGEST_CELL ? cell.substring(0, LONGEST_CELL) + "…" : cell);
        }
        return cells;
    }

    /** Encodings in which a file can be read. */
    public static List<String> encodings() {
        return RecordFileText.encodings();
    }
}
