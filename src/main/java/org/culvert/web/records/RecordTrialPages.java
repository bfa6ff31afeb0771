package org.culvert.web.records;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.culvert.call.CallService;
import org.culvert.exchange.records.RecordFileService;
import org.culvert.exchange.records.RecordFileView;
import org.culvert.exchange.records.RecordFindingView;
import org.culvert.exchange.records.RecordInspectionView;
import org.culvert.exchange.records.RecordReadingService;
import org.culvert.exchange.records.RecordStandings;
import org.culvert.exchange.records.RecordStandings.RecordFileStanding;
import org.culvert.exchange.records.RecordTakingView;
import org.culvert.exchange.records.RecordTrialRowView;
import org.culvert.exchange.records.RecordTrialSigns;
import org.culvert.exchange.records.RecordTrialSummary;
import org.culvert.exchange.records.RecordTrialView;
import org.culvert.exchange.records.TakingService;
import org.culvert.exchange.records.TrialRows;
import org.culvert.exchange.records.TrialService;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Page;
import org.culvert.web.records.RecordTrialPage.Finding;
import org.culvert.web.records.RecordTrialPage.Part;
import org.culvert.web.records.RecordTrialPage.Row;
import org.culvert.web.records.RecordTrialPage.Rows;
import org.jspecify.annotations.Nullable;

/** Lays out what a trial found. */
@ApplicationScoped
class RecordTrialPages {
    private static final int SHOWN = 25;
    private static final long WHOLE_BAR = 1000;

    /**
     * Which rows are to be seen.
     *
     * @param after behind which row
     */
    record Asked(
            @Nullable String verdict,
            @Nullable String finding,
            @Nullable Long after) {}

    private final TrialService trials;
    private final TrialRows rows;
    private final TakingService takings;
    private final RecordFileService files;
    private final RecordReadingService readings;
    private final RecordStandings standings;
    private final RegisterNames register;
    private final CallService calls;

    RecordTrialPages(
            TrialService trials,
            TrialRows rows,
            TakingService takings,
            RecordFileService files,
            RecordReadingService readings,
            RecordStandings standings,
            RegisterNames register,
            CallService calls) {
        this.trials = trials;
        this.rows = rows;
        this.takings = takings;
        this.files = files;
        this.readings = readings;
        this.standings = standings;
        this.register = register;
        this.calls = calls;
    }

    RecordTrialPage page(UUID id, Asked asked, TakingForm form) {
        RecordTrialView trial = trials.getTrial(id);
        RecordFileView file = files.getFile(trial.recordFileId());
        RecordInspectionView found = file.inspection();
        RecordTakingView taking = findTaking(trial);
        List<String> headings = readings.getHeadings(trial.readingId());
        RecordTrialSummary summary = trial.summary();
        RecordTrialSigns signs = trial.signs();
        boolean allCanBe = trial.rowsRefused() == 0 && trial.rowsDoubtful() == 0;
        return new RecordTrialPage(
                trial,
                file,
                found == null ? null : found.rows(),
                taking,
                rowsToTake(trial, taking),
                verdicts(trial),
                summary == null ? List.of() : summary.findings(),
                summary == null ? List.of() : summary.unknownAnimals(),
                signs == null ? List.of() : findings(signs.findings(), headings),
                trial.state().equals("done") ? findRows(id, asked, headings) : null,
                form.shown(allCanBe));
    }

    /** How far a trial and the taking of its rows have come, without its rows. */
    RecordTrialPage progress(UUID id) {
        RecordTrialView trial = trials.getTrial(id);
        RecordFileView file = files.getFile(trial.recordFileId());
        RecordInspectionView found = file.inspection();
        RecordTakingView taking = findTaking(trial);
        return new RecordTrialPage(
                trial,
                file,
                found == null ? null : found.rows(),
                taking,
                rowsToTake(trial, taking),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                null,
                new TakingForm().shown(false));
    }

    private @Nullable RecordTakingView findTaking(RecordTrialView trial) {
        RecordFileStanding standing = standings.of(trial.recordFileId());
        UUID taking = standing.takingId();
        return taking != null && trial.id().equals(standing.takingTrialId()) ? takings.getTaking(taking) : null;
    }

    private static long rowsToTake(RecordTrialView trial, @Nullable RecordTakingView taking) {
        return taking == null ? 0 : trial.rowsRight() + (taking.doubtful() ? trial.rowsDoubtful() : 0);
    }

    /** Parts of the bar, side by side. */
    private static List<Part> verdicts(RecordTrialView trial) {
        String[] names = {"right", "doubtful", "apart", "refused"};
        long[] counts = {trial.rowsRight(), trial.rowsDoubtful(), trial.rowsApart(), trial.rowsRefused()};
        long all = Math.max(1, counts[0] + counts[1] + counts[2] + counts[3]);
        List<Part> parts = new ArrayList<>();
        long before = 0;
        for (int i = 0; i < names.length; i++) {
            long from = before * WHOLE_BAR / all;
            before += counts[i];
            parts.add(new Part(names[i], sign(names[i]), counts[i], from, before * WHOLE_BAR / all - from));
        }
        return parts;
    }

    private static String sign(String verdict) {
        return switch (verdict) {
            case "right" -> "✓";
            case "doubtful" -> "?";
            case "apart" -> "–";
            default -> "✗";
        };
    }

    private @Nullable Rows findRows(UUID id, Asked asked, List<String> headings) {
        Page<RecordTrialRowView> found;
        try {
            found = rows.list(id, asked.verdict(), asked.finding(), SHOWN, asked.after());
        } catch (ConflictException noLongerKept) {
            return null;
        }
        RegisterNames.Names names = register.now();
        Map<String, String> causes = calls.listCauses();
        return new Rows(
                Objects.requireNonNullElse(asked.verdict(), ""),
                Objects.requireNonNullElse(asked.finding(), ""),
                found.items().stream()
                        .map(row -> new Row(
                                row,
                                sign(row.verdict()),
                                findings(row.findings(), headings),
                                animal(row, names),
                                row.cause() == null ? "" : causes.getOrDefault(row.cause(), row.cause())))
                        .toList(),
                found.next(),
                asked.after() == null);
    }

    private static String animal(RecordTrialRowView row, RegisterNames.Names names) {
        UUID taxon = row.taxonId();
        UUID group = row.taxonGroupId();
        if (taxon != null) {
            return names.words("taxon:" + taxon);
        }
        return group == null
                ? Objects.requireNonNullElse(row.verbatimIdentification(), "")
                : names.words("group:" + group);
    }

    private static List<Finding> findings(List<RecordFindingView> told, List<String> headings) {
        return told.stream()
                .map(finding -> {
                    Integer column = finding.column();
                    return new Finding(
                            finding,
                            column == null || column < 0 || column >= headings.size() ? "" : headings.get(column));
                })
                .toList();
    }
}
