package org.culvert.web.records;

import java.util.List;
import java.util.UUID;
import org.culvert.exchange.records.RecordFileView;
import org.culvert.exchange.records.RecordFindingView;
import org.culvert.exchange.records.RecordTakingView;
import org.culvert.exchange.records.RecordTrialRowView;
import org.culvert.exchange.records.RecordTrialSummary.FindingCountView;
import org.culvert.exchange.records.RecordTrialSummary.UnknownAnimalView;
import org.culvert.exchange.records.RecordTrialView;
import org.jspecify.annotations.Nullable;

/**
 * A trial of a file, and what became of its rows.
 *
 * @param rowsInFile how many rows there are to be read, or null where that is no longer known
 * @param taking the last taking of its rows, or null
 * @param verdicts how many rows got which, each with its part of the bar
 * @param rows null where they are no longer kept, or the trial is not done
 * @param rowsToTake how many rows its taking is of
 */
public record RecordTrialPage(
        RecordTrialView trial,
        RecordFileView file,
        @Nullable Long rowsInFile,
        @Nullable RecordTakingView taking,
        long rowsToTake,
        List<Part> verdicts,
        List<FindingCountView> findings,
        List<UnknownAnimalView> unknownAnimals,
        List<Finding> signs,
        @Nullable Rows rows,
        Taking chosen) {
    public boolean isBeingTried() {
        return isRunning(trial.state());
    }

    public boolean isBeingTaken() {
        return taking != null && isRunning(taking.state());
    }

    public boolean isRunning() {
        return isBeingTried() || isBeingTaken();
    }

    public boolean isDone() {
        return trial.state().equals("done");
    }

    public boolean isFailed() {
        return trial.state().equals("failed");
    }

    public boolean isTaken() {
        return taking != null && taking.state().equals("done");
    }

    public boolean isTakingFailed() {
        return taking != null && taking.state().equals("failed");
    }

    /** Whether its rows can be taken now. */
    public boolean isToTake() {
        return isDone() && trial.stale() == null && !isBeingTaken();
    }

    /** How many rows its taking left that could be mended. */
    public long rowsLeft() {
        return trial.rowsRefused() + (taking != null && taking.doubtful() ? 0 : trial.rowsDoubtful());
    }

    private static boolean isRunning(String state) {
        return state.equals("waiting") || state.equals("underway");
    }

    /**
     * Rows of one verdict.
     *
     * @param from where its part of the bar begins, in thousandths
     * @param width of its part, in thousandths
     */
    public record Part(String verdict, String sign, long rows, long from, long width) {}

    /** @param heading of the column that it is of; empty where it is of the whole row */
    public record Finding(RecordFindingView told, String heading) {}

    /**
     * Some rows, in the order of the file.
     *
     * @param verdict which are asked for; empty: all
     * @param finding which are asked for; empty: all
     * @param next behind which row the next ones are; null where there are none
     */
    public record Rows(
            String verdict,
            String finding,
            List<Row> some,
            @Nullable String next,
            boolean isFirst) {}

    /**
     * A row.
     *
     * @param animal what it is taken for; else as told; empty where nothing is told
     * @param cause in words
     */
    public record Row(RecordTrialRowView told, String sign, List<Finding> findings, String animal, String cause) {}

    /** Which rows are to be taken. */
    public record Taking(boolean all, boolean doubtful, boolean oneIncident, String reason) {}

    /** Whose identifier pages of it have in their address. */
    public UUID id() {
        return trial.id();
    }
}
