package org.culvert.exchange.records;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import org.culvert.exchange.reading.Axes;
import org.culvert.exchange.reading.FileSigns;
import org.culvert.exchange.reading.ReadRow;
import org.culvert.exchange.reading.RowReader;
import org.culvert.exchange.reading.TextRows;
import org.culvert.platform.RegionService;
import org.jspecify.annotations.Nullable;

/** Reads the rows of files that are kept in parts. */
@ApplicationScoped
class RecordFileRows implements RecordRows {
    private final RecordReadingService readings;
    private final RecordFileService files;
    private final RecordFileText text;
    private final RegionService regions;

    RecordFileRows(RecordReadingService readings, RecordFileService files, RecordFileText text, RegionService regions) {
        this.readings = readings;
        this.files = files;
        this.text = text;
        this.regions = regions;
    }

    /** What was decided, and where the file is. */
    private record Decided(
            RecordReadingSettings settings,
            List<String> headings,
            UUID contentId,
            String fileName,
            ZoneId zone,
            Axes.@Nullable Box region) {}

    private Decided decided(UUID readingId) {
        return QuarkusTransaction.joiningExisting().call(() -> {
            RecordReading reading = readings.require(readingId);
            RecordFile file = files.requireWhole(reading.recordFileId);
            return new Decided(
                    reading.settings, reading.headings, file.contentId, file.fileName, regions.zone(), files.box());
        });
    }

    @Override
    public FileSigns read(UUID readingId, LocalDate latest, Consumer<ReadRow> taker) {
        Decided decided = decided(readingId);
        RecordFileText.Form form = decided.settings().ofText();
        List<String> titles =
                new ArrayList<>(text.start(decided.contentId(), form, latest).titles());
        titles.add(decided.fileName());
        var signs = new FileSigns(decided.region(), titles);
        var reader = new RowReader(decided.settings().ofCells(), decided.headings(), latest, decided.zone());
        try (RecordFileText.Rows open =
                text.open(decided.contentId(), form, decided.headings().size())) {
            TextRows rows = open.text();
            while (rows.next()) {
                if (rows.number() > form.headingRow() && !rows.isEmpty()) {
                    ReadRow row = reader.read(rows.number(), rows.original(), rows.cells(), rows.isQuoteBroken());
                    signs.take(row);
                    taker.accept(row);
                }
            }
        }
        return signs;
    }

    @Override
    public RowForm form(UUID readingId) {
        Decided decided = decided(readingId);
        RecordFileText.Form form = decided.settings().ofText();
        char separator = form.separator().sign();
        String heading = String.join(String.valueOf(separator), decided.headings());
        if (form.headingRow() > 0) {
            try (RecordFileText.Rows open = text.open(decided.contentId(), form, 0)) {
                TextRows rows = open.text();
                while (rows.next()) {
                    if (rows.number() == form.headingRow()) {
                        heading = rows.original();
                        break;
                    }
                }
            }
        }
        return new RowForm(heading, separator, decided.headings().size());
    }
}
