package org.culvert.platform.ledger;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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

    /** Learns in one question who wrote some records, for as long as the transaction lasts. */
    public void lookUp(Collection<? extends Recorded> rows) {
        if (transaction.getTransactionKey() == null) {
            return;
        }
        Map<UUID, String> names = names();
        Set<UUID> unknown = rows.stream()
                .flatMap(row -> Stream.concat(Stream.of(row.recordedBy()), Stream.ofNullable(row.revisedBy())))
                .filter(account -> !names.containsKey(account))
                .collect(Collectors.toSet());
        if (unknown.isEmpty()) {
            return;
        }
        List<?> found = entities.createNativeQuery("select id, username from accounts where id in (:ids)")
                .setParameter("ids", unknown)
                .getResultList();
        for (Object row : found) {
            Object[] columns = (Object[]) row;
            names.put((UUID) columns[0], (String) columns[1]);
        }
    }

    /** Once per account and transaction: a page of records is mostly written by few. */
    private String username(UUID accountId) {
        return transaction.getTransactionKey() == null
                ? readUsername(accountId)
                : names().computeIfAbsent(accountId, this::readUsername);
    }

    @SuppressWarnings("unchecked")
    private Map<UUID, String> names() {
        var names = (Map<UUID, String>) transaction.getResource(NAMES);
        if (names == null) {
            names = new HashMap<>();
            transaction.putResource(NAMES, names);
        }
        return names;
    }

    private String readUsername(UUID accountId) {
        return (String) entities.createNativeQuery("select username from accounts where id = ?1")
                .setParameter(1, accountId)
                .getSingleResult();
    }
}
