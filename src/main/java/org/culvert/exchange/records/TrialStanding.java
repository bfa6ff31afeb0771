package org.culvert.exchange.records;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.NotFoundException;
import org.jspecify.annotations.Nullable;

/** Whether a file can still be tried, and what a trial found still be taken. */
@ApplicationScoped
class TrialStanding {
    private static final String TRY_AGAIN = " Make another trial of the file, and take what that finds.";

    private final EntityManager entities;

    TrialStanding(EntityManager entities) {
        this.entities = entities;
    }

    /**
     * The reading that was decided on last.
     *
     * @throws ConflictException where the file cannot be tried
     */
    @Transactional
    UUID requireReading(UUID recordFileId) {
        lock(recordFileId);
        if (isCalledOff(recordFileId)) {
            throw new ConflictException("That file was called off, or is kept no longer. Send it again to take it in.");
        }
        if (isTaken(recordFileId, null)) {
            throw new ConflictException(
                    "Rows of that file were taken in, or are being taken in. Mend those that were not, and"
                            + " send them as a file of their own.");
        }
        if (exists("""
                select 1 from record_trials t left join record_trial_progress p on p.trial_id = t.id
                where t.record_file_id = ?1 and p.finished_at is null and p.failed_at is null
                """, recordFileId)) {
            throw new ConflictException("A trial of that file is under way; wait until it is done.");
        }
        return findReading(recordFileId)
                .orElseThrow(() -> new ConflictException(
                        "Nobody has decided yet how that file is to be read: send that as its reading first."));
    }

    /** One trial or taking of a file is asked for at a time. */
    @Transactional
    void lock(UUID recordFileId) {
        if (entities.createNativeQuery("select id from record_files where id = ?1 for update")
                .setParameter(1, recordFileId)
                .getResultList()
                .isEmpty()) {
            throw new NotFoundException("record file", recordFileId);
        }
    }

    private Optional<UUID> findReading(UUID recordFileId) {
        List<?> found = entities.createNativeQuery(
                        "select id from record_readings where record_file_id = ?1 order by recorded_at desc, id desc limit 1")
                .setParameter(1, recordFileId)
                .getResultList();
        return found.stream().map(UUID.class::cast).findFirst();
    }

    @Transactional
    boolean isCalledOff(UUID recordFileId) {
        return exists(
                "select 1 from record_files where id = ?1 and (called_off_at is not null or erased_at is not null)",
                recordFileId);
    }

    /** Whether rows of a file were taken in, or are to be, by another taking than one. */
    private boolean isTaken(UUID recordFileId, @Nullable UUID butFor) {
        return !entities.createNativeQuery("""
                        select 1 from record_takings k join record_trials t on t.id = k.trial_id
                        left join record_taking_progress p on p.taking_id = k.id
                        where t.record_file_id = ?1 and p.failed_at is null and k.id is distinct from ?2
                        limit 1
                        """)
                .setParameter(1, recordFileId)
                .setParameter(2, butFor)
                .getResultList()
                .isEmpty();
    }

    /**
     * Why what a trial found can no longer be taken, and what to do; null while it can.
     *
     * @param networkNumber of the roads on which its places were looked up
     * @param butFor the taking that asks
     */
    @Transactional
    @Nullable
    String findStale(RecordTrial trial, @Nullable Integer networkNumber, @Nullable UUID butFor) {
        if (isCalledOff(trial.recordFileId)) {
            return "The file was called off, or is kept no longer. Send it again to take it in.";
        }
        if (isTaken(trial.recordFileId, butFor)) {
            return "Rows of that file were taken in, or are being taken in, since this trial. Mend those that were not, and"
                    + " send them as a file of their own.";
        }
        if (hasLater(trial)) {
            return "There is a later trial of that file. Take what that one finds.";
        }
        if (!findReading(trial.recordFileId).equals(Optional.of(trial.readingId))) {
            return "Somebody has decided since that the file is to be read otherwise." + TRY_AGAIN;
        }
        Object newest = entities.createNativeQuery("select max(number) from road_networks")
                .getSingleResult();
        if (!Objects.equals(newest, networkNumber)) {
            return "Other roads were imported since." + TRY_AGAIN;
        }
        return null;
    }

    @Transactional
    boolean hasLater(RecordTrial trial) {
        return exists(
                "select 1 from record_trials where record_file_id = ?1 and id > ?2", trial.recordFileId, trial.id());
    }

    private boolean exists(String query, Object... parameters) {
        var asked = entities.createNativeQuery(query + " limit 1");
        for (int i = 0; i < parameters.length; i++) {
            asked.setParameter(i + 1, parameters[i]);
        }
        return !asked.getResultList().isEmpty();
    }
}
