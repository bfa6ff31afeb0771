package org.culvert.platform.ledger;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** Shows the clocks of records, with the names of the accounts that wrote them. */
@ApplicationScoped
public class RecordViews {
    /** From how much on an entry is called late. */
    public static final Duration LATE = Duration.ofHours(1);

    private static final Object NAMES = new Object();

    private final EntityManager entities;
    private final TransactionSynchronizationRegistry transaction;

    RecordViews(EntityManager entities, TransactionSynchronizationRegistry transaction) {
        this.entities = entities;
        this.transaction = transaction;
    }

    public RecordView of(Recorded row) {
        return of(row, row.happenedAt());
    }

    /**
     * The same for a record that could be entered only from an instant on, such as an incident from its report.
     *
     * @param possibleFrom null where nobody knows
     */
    public RecordView of(Recorded row, @Nullable Instant possibleFrom) {
        UUID revisedBy = row.revisedBy();
        return new RecordView(
                row.happenedAt(),
                row.recordedAt(),
                username(row.recordedBy()),
                possibleFrom == null ? null : lateByHours(possibleFrom, row.recordedAt()),
                row.version() + 1,
                row.revisedAt(),
                revisedBy == null ? null : username(revisedBy),
                row.revisionReason());
    }

    /** Whole hours by which an entry is late, or null when it is not. */
    public static @Nullable Long lateByHours(Instant possibleFrom, Instant recordedAt) {
        Duration gap = Duration.between(possibleFrom, recordedAt);
        return gap.compareTo(LATE) > 0 ? gap.toHours() : null;
    }

    /** Once per account and transaction: a page of records is mostly written by few. */
    @SuppressWarnings("unchecked")
    private String username(UUID accountId) {
        if (transaction.getTransactionKey() == null) {
            return readUsername(accountId);
        }
        var names = (Map<UUID, String>) transaction.getResource(NAMES);
        if (names == null) {
            names = new HashMap<>();
            transaction.putResource(NAMES, names);
        }
        return names.computeIfAbsent(accountId, this::readUsername);
    }

    private String readUsername(UUID accountId) {
        return (String) entities.createNativeQuery("select username from accounts where id = ?1", String.class)
                .setParameter(1, accountId)
                .getSingleResult();
    }
}
