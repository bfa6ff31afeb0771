package org.culvert.exchange.records;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.JobQueue;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Takes decisions on to take rows in, and says how far that has come. */
@ApplicationScoped
public class TakingService {
    /** Which rows of a trial. */
    public enum Which {
        all,
        good
    }

    /** What a taking asks for. */
    record Order(UUID trialId, UUID recordFileId, UUID accountId, boolean doubtful, boolean oneIncident) {}

    @ApplicationScoped
    static class Takings implements PanacheRepositoryBase<RecordTaking, UUID> {}

    @ApplicationScoped
    static class Progresses implements PanacheRepositoryBase<TakingProgress, UUID> {}

    private final Takings takings;
    private final Progresses progresses;
    private final TrialService trials;
    private final TrialStanding standing;
    private final JobQueue queue;
    private final RecordViews records;
    private final Clock clock;

    TakingService(
            Takings takings,
            Progresses progresses,
            TrialService trials,
            TrialStanding standing,
            JobQueue queue,
            RecordViews records,
            Clock clock) {
        this.takings = takings;
        this.progresses = progresses;
        this.trials = trials;
        this.standing = standing;
        this.queue = queue;
        this.records = records;
        this.clock = clock;
    }

    /**
     * Takes a decision on.
     *
     * @throws ConflictException where the trial is not done or stale, or all rows are asked for and not all can be taken
     */
    @Transactional
    public RecordTakingView take(UUID trialId, RecordTakingEntry entry) {
        RecordTrial trial = trials.require(trialId);
        standing.lock(trial.recordFileId);
        TrialProgress progress = trials.findProgress(trialId);
        if (progress == null || progress.finishedAt == null) {
            throw new ConflictException("That trial is not done; look at its state.");
        }
        String stale = standing.findStale(trial, progress.networkNumber, null);
        if (stale != null) {
            throw new ConflictException(stale);
        }
        if (entry.which() == Which.all && progress.rowsRefused > 0) {
            throw new ConflictException(progress.rowsRefused
                    + " rows are refused. Mend them and send the file again, or take" + " the good ones.");
        }
        if (entry.which() == Which.all && progress.rowsDoubtful > 0 && !entry.doubtful()) {
            throw new ConflictException(progress.rowsDoubtful
                    + " rows are in doubt. Say that they are taken too, or take the" + " good ones.");
        }
        if (progress.rowsRight + (entry.doubtful() ? progress.rowsDoubtful : 0) == 0) {
            throw new ConflictException("None of its rows can be taken.");
        }
        var taking = new RecordTaking(trialId, entry.which(), entry.doubtful(), entry.oneIncident(), entry.reason());
        takings.persistAndFlush(taking);
        queue.enqueue(TakingJob.NAME, taking.id());
        return view(taking, null);
    }

    @Transactional
    public RecordTakingView getTaking(UUID id) {
        RecordTaking taking = takings.findByIdOptional(id).orElseThrow(() -> new NotFoundException("taking", id));
        return view(taking, progresses.findById(id));
    }

    /** What is asked for, or null where it is over. */
    @Nullable
    Order begin(UUID id) {
        return QuarkusTransaction.requiringNew().call(() -> {
            RecordTaking taking = takings.findById(id);
            TakingProgress before = progresses.findById(id);
            if (taking == null || (before != null && before.finishedAt != null)) {
                return null;
            }
            if (before == null) {
                progresses.persist(new TakingProgress(id, clock.instant()));
            } else {
                before.beginAgain(clock.instant());
            }
            return new Order(
                    taking.trialId,
                    trials.require(taking.trialId).recordFileId,
                    taking.recordedBy(),
                    taking.doubtful,
                    taking.oneIncident);
        });
    }

    /** Why rows of a trial can no longer be taken by one that was decided on; null while they can. */
    @Nullable
    String findStale(UUID trialId, UUID takingId) {
        return QuarkusTransaction.requiringNew().call(() -> {
            TrialProgress progress = trials.findProgress(trialId);
            return standing.findStale(
                    trials.require(trialId), progress == null ? null : progress.networkNumber, takingId);
        });
    }

    void note(UUID id, long rows) {
        QuarkusTransaction.requiringNew()
                .run(() -> progresses.update("rowsEntered = ?1 where takingId = ?2 and finishedAt is null", rows, id));
    }

    void fail(UUID id, String reason) {
        QuarkusTransaction.requiringNew().run(() -> {
            TakingProgress progress = progresses.findById(id);
            if (progress != null && progress.finishedAt == null) {
                progress.fail(clock.instant(), reason);
            }
        });
    }

    private RecordTakingView view(RecordTaking taking, @Nullable TakingProgress progress) {
        JobState state =
                progress == null ? JobState.waiting : JobState.of(true, progress.finishedAt, progress.failedAt);
        return new RecordTakingView(
                taking.id(),
                taking.trialId,
                taking.which,
                taking.doubtful,
                taking.oneIncident,
                taking.reason,
                state.name(),
                progress == null ? null : progress.begunAt,
                progress == null ? null : progress.finishedAt,
                progress == null ? 0 : progress.rowsEntered,
                progress == null ? null : progress.rowsTaken,
                progress == null ? null : progress.importId,
                progress == null ? null : progress.failure,
                records.of(taking));
    }
}
