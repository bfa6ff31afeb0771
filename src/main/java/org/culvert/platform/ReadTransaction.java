package org.culvert.platform;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
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

    ReadTransaction(EntityManager entities) {
        this.entities = entities;
    }

    /** What the reading gives; within another one it is a part of that. Where a service refused, or failed, what it began to write is not kept, as ever. */
    public <T extends @Nullable Object, E extends Exception> T read(Reading<T, E> reading) throws E {
        if (QuarkusTransaction.isActive()) {
            return reading.read();
        }
        QuarkusTransaction.begin(QuarkusTransaction.beginOptions().timeout(PATIENCE_SECONDS));
        try {
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
}
