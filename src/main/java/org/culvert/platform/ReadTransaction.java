package org.culvert.platform;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.hibernate.FlushMode;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/**
 * Answers a request that only reads in one transaction. Without it each service that is asked has a transaction and a session
 * of its own; and a session that may have changes looks through all that it holds before each of its queries.
 */
@ApplicationScoped
public class ReadTransaction {
    /** A report may take long. */
    private static final int PATIENCE_SECONDS = 3600;

    /** What is read. */
    @FunctionalInterface
    public interface Reading<T extends @Nullable Object, E extends Exception> {
        T read() throws E;
    }

    private final EntityManager entities;
    private final TransactionSynchronizationRegistry transactions;

    ReadTransaction(EntityManager entities, TransactionSynchronizationRegistry transactions) {
        this.entities = entities;
        this.transactions = transactions;
    }

    /**
     * What the reading gives; within another one it is a part of that. Where a service refused, or failed, what it began to write
     * is not kept, as ever.
     */
    public <T extends @Nullable Object, E extends Exception> T read(Reading<T, E> reading) throws E {
        if (QuarkusTransaction.isActive()) {
            return reading.read();
        }
        QuarkusTransaction.begin(QuarkusTransaction.beginOptions().timeout(PATIENCE_SECONDS));
        try {
            transactions.putResource(KnownSoFar.class, new KnownSoFar(new HashMap<>()));
            entities.unwrap(Session.class).setHibernateFlushMode(FlushMode.COMMIT);
            return reading.read();
        } finally {
            if (QuarkusTransaction.isRollbackOnly()) {
                QuarkusTransaction.rollback();
            } else {
                QuarkusTransaction.commit();
            }
        }
    }

    /**
     * What many services ask for while one request is answered: read once in a transaction that only reads, and anew elsewhere.
     *
     * @param what the thing that is read, in all that is read by this
     */
    @SuppressWarnings("unchecked")
    public <T> T once(Object what, Supplier<T> reading) {
        KnownSoFar known =
                QuarkusTransaction.isActive() ? (KnownSoFar) transactions.getResource(KnownSoFar.class) : null;
        if (known == null) {
            return reading.get();
        }
        // Not computeIfAbsent: what is read may itself read something once
        Object found = known.things().get(what);
        if (found == null) {
            found = reading.get();
            known.things().put(what, found);
        }
        return (T) found;
    }

    private record KnownSoFar(Map<Object, Object> things) {}
}
