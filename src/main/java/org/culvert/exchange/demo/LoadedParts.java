package org.culvert.exchange.demo;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.culvert.platform.Actor;
import org.culvert.platform.Rows;
import org.culvert.platform.account.AccountService;

/**
 * Which parts of the region are in the database. A part and the note that it is there come in one transaction, so that a
 * load that was cut off goes on where it stopped.
 */
@ApplicationScoped
class LoadedParts {
    private static final String KIND = "demo";
    private static final int PATIENCE_SECONDS = 600;

    private final EntityManager entities;
    private final AccountService accounts;
    private final Clock clock;

    LoadedParts(EntityManager entities, AccountService accounts, Clock clock) {
        this.entities = entities;
        this.accounts = accounts;
        this.clock = clock;
    }

    Set<String> all() {
        return QuarkusTransaction.joiningExisting()
                .call(() -> new HashSet<>(Rows.column(
                        entities.createNativeQuery("select file_name from imports where kind = ?1")
                                .setParameter(1, KIND),
                        String.class)));
    }

    /**
     * Loads a part in the name of the server's own account, unless it is there already.
     *
     * @param source what it is loaded from, for its digest
     * @param work is given the identifier of the import that its rows shall carry
     */
    void once(String part, String source, Consumer<UUID> work) {
        once(part, () -> digest(source), work);
    }

    /** The same of one of many parts of a source, whose digest is made once for all of them. */
    void once(String part, Supplier<String> digest, Consumer<UUID> work) {
        if (all().contains(part)) {
            return;
        }
        QuarkusTransaction.requiringNew()
                .timeout(PATIENCE_SECONDS)
                .run(() -> Actor.actFor(accounts.systemAccount(), () -> {
                    UUID importId = UUID.randomUUID();
                    entities.createNativeQuery("insert into imports (id, kind, file_name, sha256, recorded_at,"
                                    + " recorded_by) values (?1, ?2, ?3, ?4, ?5, ?6)")
                            .setParameter(1, importId)
                            .setParameter(2, KIND)
                            .setParameter(3, part)
                            .setParameter(4, digest.get())
                            .setParameter(5, clock.instant())
                            .setParameter(6, accounts.systemAccount())
                            .executeUpdate();
                    work.accept(importId);
                    return importId;
                }));
    }

    static String digest(String source) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(source.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every JDK has SHA-256", impossible);
        }
    }
}
