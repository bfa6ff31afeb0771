package org.culvert.exchange.records;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.JobQueue;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Takes trials of files on, and says how far they have come. */
@ApplicationScoped
public class TrialService {
    @ApplicationScoped
    static class Trials implements PanacheRepositoryBase<RecordTrial, UUID> {}

    @ApplicationScoped
    static class Progresses implements PanacheRepositoryBase<TrialProgress, UUID> {}

    private final Trials trials;
    private final Progresses progresses;
    private final TrialStanding standing;
    private final JobQueue queue;
    private final RecordViews records;

    TrialService(Trials trials, Progresses progresses, TrialStanding standing, JobQueue queue, RecordViews records) {
        this.trials = trials;
        this.progresses = progresses;
        this.standing = standing;
        this.queue = queue;
        this.records = records;
    }

    /** Takes a trial on, of a file as it was decided last that it is to be read. */
    @Transactional
    public RecordTrialView start(UUID recordFileId) {
        var trial = new RecordTrial(recordFileId, standing.requireReading(recordFileId));
        trials.persistAndFlush(trial);
        queue.enqueue(TrialJob.NAME, trial.id());
        return view(trial, null);
    }

    @Transactional
    public RecordTrialView getTrial(UUID id) {
        return view(require(id), progresses.findById(id));
    }

    /**
     * A trial whose rows can be read.
     *
     * @throws ConflictException while it is not done, and where its rows are kept no longer
     */
    @Transactional
    RecordTrial requireDone(UUID id) {
        RecordTrial trial = require(id);
        TrialProgress progress = progresses.findById(id);
        if (progress == null || progress.finishedAt == null) {
            throw new ConflictException("That trial is not done; look at its state.");
        }
        if (standing.isCalledOff(trial.recordFileId)) {
            throw new ConflictException("The file was called off, or is kept no longer, and its rows with it.");
        }
        if (standing.hasLater(trial)) {
            throw new ConflictException("There is a later trial of that file; its rows stand there.");
        }
        return trial;
    }

    RecordTrial require(UUID id) {
        return trials.findByIdOptional(id).orElseThrow(() -> new NotFoundException("trial", id));
    }

    @Nullable
    TrialProgress findProgress(UUID id) {
        return progresses.findById(id);
    }

    private RecordTrialView view(RecordTrial trial, @Nullable TrialProgress progress) {
        JobState state =
                progress == null ? JobState.waiting : JobState.of(true, progress.finishedAt, progress.failedAt);
        return new RecordTrialView(
                trial.id(),
                trial.recordFileId,
                trial.readingId,
                state.name(),
                progress == null ? null : progress.begunAt,
                progress == null ? null : progress.finishedAt,
                progress == null ? 0 : progress.rowsRead,
                progress == null ? 0 : progress.rowsRight,
                progress == null ? 0 : progress.rowsDoubtful,
                progress == null ? 0 : progress.rowsApart,
                progress == null ? 0 : progress.rowsRefused,
                progress == null ? null : progress.networkNumber,
                progress == null || progress.finishedAt == null
                        ? null
                        : standing.findStale(trial, progress.networkNumber, null),
                progress == null ? null : progress.signs,
                progress == null ? null : progress.summary,
                progress == null ? null : progress.failure,
                records.of(trial));
    }
}
