package org.culvert.exchange.records;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** How far files have come on their way into the register: their last trial, and their last taking. */
@ApplicationScoped
public class RecordStandings {
    /**
     * How far a file has come.
     *
     * @param trialState {@code waiting}, {@code underway}, {@code done} or {@code failed}; null where it was never tried
     * @param takingTrialId the trial of which rows were taken, or are being taken
     * @param rowsTaken of its last taking, once that is done
     */
    public record RecordFileStanding(
            @Nullable UUID trialId,
            @Nullable String trialState,
            @Nullable UUID takingId,
            @Nullable UUID takingTrialId,
            @Nullable String takingState,
            @Nullable Long rowsTaken) {
        /** Whether rows of it were taken, or are being taken. */
        public boolean isTaken() {
            return takingState != null && !takingState.equals(JobState.failed.name());
        }

        public boolean isBeingTried() {
            return isRunning(trialState);
        }

        public boolean isBeingTaken() {
            return isRunning(takingState);
        }

        private static boolean isRunning(@Nullable String state) {
            return JobState.waiting.name().equals(state)
                    || JobState.underway.name().equals(state);
        }
    }

    /** Of a file that was neither tried nor taken. */
    public static final RecordFileStanding NOWHERE = new RecordFileStanding(null, null, null, null, null, null);

    private final EntityManager entities;

    RecordStandings(EntityManager entities) {
        this.entities = entities;
    }

    @Transactional
    public RecordFileStanding of(UUID fileId) {
        return of(List.of(fileId)).getOrDefault(fileId, NOWHERE);
    }

    /** How far each has come, by the identifier of the file. */
    @Transactional
    public Map<UUID, RecordFileStanding> of(Collection<UUID> fileIds) {
        Map<UUID, RecordFileStanding> standings = new HashMap<>();
        if (fileIds.isEmpty()) {
            return standings;
        }
        List<?> rows = entities.createNativeQuery("""
                        select f.id, t.id as trial_id,
                               p.trial_id is not null as begun, p.finished_at is not null as finished,
                               p.failed_at is not null as failed,
                               k.id as taking_id, k.trial_id as taking_trial_id, q.taking_id is not null as taking_begun,
                               q.finished_at is not null as taking_finished, q.failed_at is not null as taking_failed,
                               q.rows_taken
                        from record_files f
                        left join lateral (
                            select id from record_trials where record_file_id = f.id order by id desc limit 1) t on true
                        left join record_trial_progress p on p.trial_id = t.id
                        left join lateral (
                            select k.id, k.trial_id from record_takings k join record_trials o on o.id = k.trial_id
                            where o.record_file_id = f.id order by k.id desc limit 1) k on true
                        left join record_taking_progress q on q.taking_id = k.id
                        where f.id in (:ids)
                        """, Object[].class)
                .setParameter("ids", List.copyOf(fileIds))
                .getResultList();
        for (Object row : rows) {
            Object[] cells = (Object[]) row;
            standings.put(
                    (UUID) cells[0],
                    new RecordFileStanding(
                            (UUID) cells[1],
                            cells[1] == null ? null : state(cells, 2),
                            (UUID) cells[5],
                            (UUID) cells[6],
                            cells[5] == null ? null : state(cells, 7),
                            cells[10] == null ? null : ((Number) cells[10]).longValue()));
        }
        return standings;
    }

    private static String state(Object[] cells, int begun) {
        JobState state = Boolean.TRUE.equals(cells[begun + 1])
                ? JobState.done
                : Boolean.TRUE.equals(cells[begun + 2])
                        ? JobState.failed
                        : Boolean.TRUE.equals(cells[begun]) ? JobState.underway : JobState.waiting;
        return state.name();
    }
}
