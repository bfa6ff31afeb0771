package org.culvert.call;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** A sentence that a caller was told; it happened when it was said. */
@Entity
@Table(name = "told_words")
class ToldWords extends Recorded {
    UUID callId;
    String words;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected ToldWords() {}

    ToldWords(UUID callId, String words, Instant at) {
        happenedAt(at);
        this.callId = callId;
        this.words = words;
    }

    Instant at() {
        return Objects.requireNonNull(happenedAt());
    }

    void withdraw(Instant at, String reason) {
        if (withdrawnAt != null) {
            throw new ConflictException("That was withdrawn already: " + withdrawnBecause);
        }
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }
}
