package org.culvert.platform.ledger;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.net.URI;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Supplier;
import org.culvert.platform.Actor;
import org.culvert.platform.InvalidException;
import org.culvert.platform.LedgerException;
import org.jspecify.annotations.Nullable;

/**
 * Takes a form of a page once: a key stands in the form as the page was shown, and a form that is sent again with it, by a
 * second tap or a reload, is led where the first went. What was refused is not kept.
 */
@ApplicationScoped
public class FormOnce {
    private static final int SEE_OTHER = 303;

    /** A file may take long; what it enters and its answer are one transaction all the same. */
    private static final int PATIENCE_SECONDS = 3600;

    private final KeptAnswers answers;
    private final Actor actor;

    FormOnce(KeptAnswers answers, Actor actor) {
        this.answers = answers;
        this.actor = actor;
    }

    /**
     * Carries out a form, unless it was before; waits for a first try that is still running.
     *
     * @param path where the form is sent
     * @param key as the form carries it
     * @param told what was entered, by which a retry is told from another form
     * @param change carries it out and says which page to show next
     * @return the page to show next
     * @throws InvalidException when {@code key} is none
     * @throws LedgerException when something else came with the key before
     */
    public URI take(String path, @Nullable String key, Object told, Supplier<URI> change) {
        IdempotencyKey read = IdempotencyKey.ofForm(key);
        var digest = new RequestDigest("POST", path, null);
        digest.body(told);
        String hash = digest.hex();
        UUID account = actor.accountId();
        return QuarkusTransaction.requiringNew().timeout(PATIENCE_SECONDS).call(() -> {
            Answer before = answers.await(account, read, hash);
            if (before != null) {
                return URI.create(Objects.requireNonNull(before.location(), "a form leads to a page"));
            }
            URI next = change.get();
            answers.keep(account, read, hash, new Answer(SEE_OTHER, next.toString(), null, null, new byte[0]));
            return next;
        });
    }
}
