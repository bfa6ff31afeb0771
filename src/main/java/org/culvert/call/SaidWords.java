package org.culvert.call;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.NotFoundException;
import org.jspecify.annotations.Nullable;

/** What people say, word for word, for the rooms above; it is kept and erased as callers' words are. */
@ApplicationScoped
public class SaidWords {
    private final Ledger.Said rows;

    SaidWords(Ledger.Said rows) {
        this.rows = rows;
    }

    /** @param at when it was said or seen */
    @Transactional
    public UUID keep(String said, Instant at) {
        var row = new Words(said, at);
        rows.persistAndFlush(row);
        return row.id();
    }

    /** @throws NotFoundException when there are none of that name */
    @Transactional
    public void correct(UUID id, @Nullable String said, String reason) {
        rows.findByIdOptional(id)
                .orElseThrow(() -> new NotFoundException("words", id))
                .correct(said, reason);
        rows.flush();
    }

    /** The words, or null where they were erased. */
    @Transactional
    public @Nullable String find(UUID id) {
        return rows.findByIdOptional(id).map(row -> row.said).orElse(null);
    }
}
