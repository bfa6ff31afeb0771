package org.culvert.exchange.records;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.json.JsonMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.Writer;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.apache.commons.csv.CSVPrinter;
import org.culvert.exchange.reading.Finding;
import org.culvert.platform.CsvText;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Page;
import org.jspecify.annotations.Nullable;

/** The report of a trial, row by row: as a list, as a table, and as a file of the rows to mend. */
@ApplicationScoped
public class TrialRows {
    private static final int FETCHED_AT_ONCE = 1000;
    private static final String LINE_END = "\r\n";

    /** So that programs that open tables know the encoding. */
    private static final char BYTE_ORDER_MARK = '\ufeff';

    private static final String WHAT_IS_WRONG = "what is wrong";

    private final TrialService trials;
    private final RecordRows files;
    private final DataSource database;
    private final JsonMapper mapper = JsonMapper.builder().build();

    TrialRows(TrialService trials, RecordRows files, DataSource database) {
        this.trials = trials;
        this.files = files;
        this.database = database;
    }

    /**
     * Rows in the order of the file.
     *
     * @param verdict rows of that verdict alone, or null
     * @param finding rows that have a finding of that kind, or null
     * @param after rows behind that one
     */
    public Page<RecordTrialRowView> list(
            UUID trialId, @Nullable String verdict, @Nullable String finding, int limit, @Nullable Long after) {
        trials.requireDone(trialId);
        if (verdict != null) {
            requireOneOf("verdict", verdict, names(Verdict.values()));
        }
        if (finding != null) {
            requireOneOf("finding", finding, names(Finding.Kind.values()));
        }
        try (Connection connection = database.getConnection();
                PreparedStatement query = connection.prepareStatement("""
                        select * from personal.record_trial_rows
                        where trial_id = ? and number > ? and (?::text is null or verdict = ?)
                          and (?::text is null or findings @> jsonb_build_array(jsonb_build_object('kind', ?::text)))
                        order by number limit ?
                        """)) {
            query.setObject(1, trialId);
            query.setLong(2, after == null ? 0 : after);
            query.setString(3, verdict);
            query.setString(4, verdict);
            query.setString(5, finding);
            query.setString(6, finding);
            query.setInt(7, limit + 1);
            List<RecordTrialRowView> found = new ArrayList<>();
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    found.add(row(rows));
                }
            }
            return Page.of(found, limit, row -> row, row -> Long.toString(row.number()));
        } catch (SQLException e) {
            throw new IllegalStateException("rows of a trial cannot be read", e);
        }
    }

    private static List<String> names(Enum<?>[] values) {
        return Arrays.stream(values).map(Enum::name).toList();
    }

    private static void requireOneOf(String field, String told, List<String> known) {
        if (!known.contains(told)) {
            throw InvalidException.of(field, "There is none of that name.", String.join(", ", known));
        }
    }

    private RecordTrialRowView row(ResultSet rows) throws SQLException {
        return new RecordTrialRowView(
                rows.getLong("number"),
                rows.getString("verdict"),
                findings(rows.getString("findings")),
                rows.getString("original"),
                instant(rows, "happened_at"),
                instant(rows, "happened_not_before"),
                instant(rows, "happened_before"),
                rows.getString("given_as"),
                rows.getObject("decimal_latitude", Double.class),
                rows.getObject("decimal_longitude", Double.class),
                rows.getObject("coordinate_uncertainty_in_meters", Double.class),
                rows.getString("road_name"),
                rows.getObject("chainage_metres", Double.class),
                rows.getString("verbatim_identification"),
                rows.getObject("taxon_id", UUID.class),
                rows.getObject("taxon_group_id", UUID.class),
                rows.getObject("individual_count", Integer.class),
                rows.getString("cause"),
                rows.getObject("one_with", Long.class));
    }

    private static @Nullable Instant instant(ResultSet rows, String column) throws SQLException {
        OffsetDateTime time = rows.getObject(column, OffsetDateTime.class);
        return time == null ? null : time.toInstant();
    }

    private List<RecordFindingView> findings(String json) {
        try {
            return mapper.readValue(json, new TypeReference<List<RecordFindingView>>() {});
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("findings that were kept cannot be read", e);
        }
    }

    private interface RowWriter {
        void write(ResultSet row) throws SQLException, IOException;
    }

    /** Streams rows; memory holds a thousand. */
    private void each(UUID trialId, String condition, RowWriter writer) throws IOException {
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            try (PreparedStatement query =
                    connection.prepareStatement("select r.* from personal.record_trial_rows r where r.trial_id = ? and "
                            + condition + " order by r.number")) {
                query.setFetchSize(FETCHED_AT_ONCE);
                query.setObject(1, trialId);
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        writer.write(rows);
                    }
                }
            } finally {
                connection.rollback();
                connection.setAutoCommit(true);
            }
        } catch (SQLException e) {
            throw new IllegalStateException("rows of a trial cannot be read", e);
        }
    }

    /** Makes sure that a table of a trial can be written. */
    void requireRows(UUID trialId) {
        trials.requireDone(trialId);
    }

    /** The report as a table; cells of the file that a program would take for a formula get an apostrophe. */
    void writeReport(UUID trialId, Writer out) throws IOException {
        CSVPrinter table = CsvText.printer(
                out,
                List.of(
                        "row",
                        "verdict",
                        "findings",
                        "what is wrong",
                        "what would be right",
                        "one with row",
                        "original"));
        each(trialId, "true", row -> {
            List<RecordFindingView> findings = findings(row.getString("findings"));
            table.printRecord(
                    row.getLong("number"),
                    row.getString("verdict"),
                    findings.stream().map(RecordFindingView::kind).distinct().collect(Collectors.joining(" ")),
                    CsvText.harmless(details(findings)),
                    CsvText.harmless(findings.stream()
                            .map(RecordFindingView::wanted)
                            .filter(wanted -> wanted != null)
                            .distinct()
                            .collect(Collectors.joining("; "))),
                    row.getObject("one_with", Long.class),
                    CsvText.harmless(row.getString("original")));
        });
        table.flush();
    }

    private static String details(List<RecordFindingView> findings) {
        return findings.stream().map(RecordFindingView::detail).distinct().collect(Collectors.joining(" "));
    }

    /**
     * Rows that were not taken, as they stand in the file, with what is wrong in a column behind them: mended, it can be sent as
     * a file of its own.
     *
     * @param apart whether rows that are kept apart are in it too
     */
    void writeRest(UUID trialId, boolean apart, Writer out) throws IOException {
        RecordTrial trial = trials.requireDone(trialId);
        RecordRows.RowForm form = files.form(trial.readingId);
        out.append(BYTE_ORDER_MARK)
                .append(form.heading())
                .append(form.separator())
                .append(WHAT_IS_WRONG)
                .append(LINE_END);
        String condition = """
                r.verdict in ('refused', 'doubtful'%s) and not exists (
                    select 1 from personal.original_rows o
                    join record_trials t on t.record_file_id = o.record_file_id
                    where t.id = r.trial_id and o.row_number = r.number)
                """.formatted(apart ? ", 'apart'" : "");
        each(trialId, condition, row -> {
            String original = row.getString("original");
            out.append(original);
            for (int cells = cells(original, form.separator()); cells < form.columns(); cells++) {
                out.append(form.separator());
            }
            out.append(form.separator())
                    .append('"')
                    .append(details(findings(row.getString("findings"))).replace("\"", "\"\""))
                    .append('"')
                    .append(LINE_END);
        });
        out.flush();
    }

    /** How many cells a row has; a separator within quotes is none. */
    static int cells(String row, char separator) {
        int cells = 1;
        boolean quoted = false;
        for (int i = 0; i < row.length(); i++) {
            char c = row.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (c == separator && !quoted) {
                cells++;
            }
        }
        return cells;
    }
}
