package org.culvert.exchange.records;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import org.culvert.exchange.reading.Finding;
import org.culvert.exchange.reading.ReadRow;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyIn;

/**
 * Judges rows and copies them in, on two threads: one reads, copies, and lends a hand where the other falls behind. In memory are a
 * few batches, whatever the file has.
 */
final class TrialRun implements Consumer<ReadRow>, AutoCloseable {
    private static final int BATCH = 1000;

    /** More would only lie in memory. */
    private static final int MOST_WAITING = 3;

    /** One copy is one transaction; what it has copied is seen from outside when it ends. */
    private static final long ROWS_OF_A_COPY = 100_000;

    /** How many rows have a finding of a kind and weight. */
    record FindingCount(Finding.Kind kind, Finding.Weight weight) implements Comparable<FindingCount> {
        @Override
        public int compareTo(FindingCount other) {
            int byKind = kind.compareTo(other.kind);
            return byKind != 0 ? byKind : weight.compareTo(other.weight);
        }
    }

    /** What a batch came to. */
    private record Judged(byte[] octets, Map<Verdict, Long> verdicts, Map<FindingCount, Long> findings, int rows) {}

    private final RowJudge judge;
    private final TrialRowFormat format;
    private final Connection connection;
    private final Consumer<TrialRun> notes;
    private final ExecutorService other = Executors.newSingleThreadExecutor(work -> {
        Thread thread = new Thread(work, "record-trial");
        thread.setDaemon(true);
        return thread;
    });
    private final ArrayDeque<Future<Judged>> waiting = new ArrayDeque<>();
    private final Map<Verdict, Long> verdicts = new EnumMap<>(Verdict.class);
    private final Map<FindingCount, Long> findings = new TreeMap<>();
    private List<ReadRow> batch = new ArrayList<>(BATCH);
    private CopyIn copy;
    private long inThisCopy;
    private long rows;

    /**
     * @param connection on which nothing else happens meanwhile, committing by itself
     * @param notes hears of each batch that was copied
     */
    TrialRun(UUID trialId, RowJudge judge, Connection connection, Consumer<TrialRun> notes) throws SQLException {
        this.judge = judge;
        this.format = new TrialRowFormat(trialId);
        this.connection = connection;
        this.notes = notes;
        this.copy = begin();
    }

    private CopyIn begin() throws SQLException {
        CopyIn begun = connection.unwrap(PGConnection.class).getCopyAPI().copyIn(TrialRowFormat.COPY);
        begun.writeToCopy(TrialRowFormat.HEADER, 0, TrialRowFormat.HEADER.length);
        return begun;
    }

    @Override
    public void accept(ReadRow row) {
        batch.add(row);
        if (batch.size() == BATCH) {
            passOn();
        }
    }

    /** @throws CancellationException where the server is being stopped */
    private void passOn() {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("the trial was interrupted");
        }
        List<ReadRow> full = batch;
        batch = new ArrayList<>(BATCH);
        while (!waiting.isEmpty() && waiting.peek().isDone()) {
            take(waited(waiting.remove()));
        }
        if (waiting.size() < MOST_WAITING) {
            waiting.add(other.submit(() -> judged(full)));
        } else {
            take(judged(full));
        }
    }

    private Judged judged(List<ReadRow> read) {
        List<JudgedRow> judged = new ArrayList<>(read.size());
        Map<Verdict, Long> verdictsHere = new EnumMap<>(Verdict.class);
        Map<FindingCount, Long> findingsHere = new TreeMap<>();
        for (ReadRow row : read) {
            JudgedRow one = judge.judge(row);
            judged.add(one);
            verdictsHere.merge(one.verdict(), 1L, Long::sum);
            one.findings().stream()
                    .map(finding -> new FindingCount(finding.kind(), finding.weight()))
                    .distinct()
                    .forEach(finding -> findingsHere.merge(finding, 1L, Long::sum));
        }
        return new Judged(format.write(judged), verdictsHere, findingsHere, read.size());
    }

    private static Judged waited(Future<Judged> future) {
        try {
            return future.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException("the trial was interrupted");
        } catch (ExecutionException e) {
            throw new IllegalStateException("rows cannot be judged", e.getCause());
        }
    }

    private void take(Judged judged) {
        try {
            copy.writeToCopy(judged.octets, 0, judged.octets.length);
            inThisCopy += judged.rows;
            if (inThisCopy >= ROWS_OF_A_COPY) {
                end();
                copy = begin();
            }
        } catch (SQLException e) {
            throw new IllegalStateException("rows cannot be copied", e);
        }
        rows += judged.rows;
        judged.verdicts.forEach((verdict, count) -> verdicts.merge(verdict, count, Long::sum));
        judged.findings.forEach((finding, count) -> findings.merge(finding, count, Long::sum));
        notes.accept(this);
    }

    private void end() throws SQLException {
        copy.writeToCopy(TrialRowFormat.TRAILER, 0, TrialRowFormat.TRAILER.length);
        copy.endCopy();
        inThisCopy = 0;
    }

    /** Copies what is left. */
    void finish() throws SQLException {
        if (!batch.isEmpty()) {
            passOn();
        }
        while (!waiting.isEmpty()) {
            take(waited(waiting.remove()));
        }
        end();
    }

    /** Rows copied so far. */
    long rows() {
        return rows;
    }

    long rows(Verdict verdict) {
        return verdicts.getOrDefault(verdict, 0L);
    }

    /** How many rows have each finding. */
    Map<FindingCount, Long> findings() {
        return findings;
    }

    @Override
    public void close() throws SQLException {
        other.shutdownNow();
        if (copy.isActive()) {
            copy.cancelCopy();
        }
    }
}
