package org.culvert.platform.ledger;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.LedgerException;
import org.jspecify.annotations.Nullable;

/** The answers to keyed requests of the last day. All of it runs inside the transaction of the request. */
@ApplicationScoped
class KeptAnswers {
    private final EntityManager entities;
    private final Clock clock;

    KeptAnswers(EntityManager entities, Clock clock) {
        this.entities = entities;
        this.clock = clock;
    }

    /**
     * Takes a key for the rest of the transaction.
     *
     * @return what was answered to the same request before, or null when it is new
     * @throws LedgerException when another request holds the key now, or came with it before
     */
    @Nullable
    Answer claim(UUID accountId, IdempotencyKey key, String requestHash) {
        Object got = entities.createNativeQuery("select pg_try_advisory_xact_lock(hashtextextended(?1, 0))")
                .setParameter(1, accountId + " " + key.text())
                .getSingleResult();
        if (!Boolean.TRUE.equals(got)) {
            throw LedgerException.stillRunning();
        }
        return find(accountId, key, requestHash);
    }

    /**
     * Takes a key for the rest of the transaction, once whoever holds it now lets go of it.
     *
     * @return as {@link #claim}
     * @throws LedgerException when another request came with it before
     */
    @Nullable
    Answer await(UUID accountId, IdempotencyKey key, String requestHash) {
        entities.createNativeQuery("select cast(pg_advisory_xact_lock(hashtextextended(?1, 0)) as text)")
                .setParameter(1, accountId + " " + key.text())
                .getSingleResult();
        return find(accountId, key, requestHash);
    }

    private @Nullable Answer find(UUID accountId, IdempotencyKey key, String requestHash) {
        List<?> rows = entities.createNativeQuery("""
                        select request_hash, status, location, tag, media_type, body from personal.idempotency_keys
                        where account_id = ?1 and key = ?2
                        """)
                .setParameter(1, accountId)
                .setParameter(2, key.text())
                .getResultList();
        if (rows.isEmpty()) {
            return null;
        }
        Object[] row = (Object[]) rows.get(0);
        if (!requestHash.equals(row[0])) {
            throw LedgerException.keyUsedOtherwise();
        }
        return new Answer(
                ((Number) row[1]).intValue(), (String) row[2], (String) row[3], (String) row[4], (byte[]) row[5]);
    }

    void keep(UUID accountId, IdempotencyKey key, String requestHash, Answer answer) {
        entities.createNativeQuery("""
                        insert into personal.idempotency_keys
                            (account_id, key, request_hash, status, location, tag, media_type, body, recorded_at)
                        values (?1, ?2, ?3, ?4, cast(?5 as text), cast(?6 as text), cast(?7 as text), ?8, ?9)
                        """)
                .setParameter(1, accountId)
                .setParameter(2, key.text())
                .setParameter(3, requestHash)
                .setParameter(4, answer.status())
                .setParameter(5, answer.location())
                .setParameter(6, answer.tag())
                .setParameter(7, answer.mediaType())
                .setParameter(8, answer.body())
                .setParameter(9, clock.instant())
                .executeUpdate();
    }

    /** Forgets what is older than a day, and says how much that was. */
    int forget() {
        Number gone = (Number) entities.createNativeQuery("select personal.forget_idempotency_keys()")
                .getSingleResult();
        return gone.intValue();
    }
}
