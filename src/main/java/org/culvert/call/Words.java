package org.culvert.call;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** What was said, word for word. */
@Entity
@Table(name = "words", schema = "personal")
class Words extends Recorded {
    @Nullable
    String said;

    @Nullable
    Instant erasedAt;

    protected Words() {}

    Words(String said, Instant at) {
        happenedAt(at);
        this.said = said;
    }

    void correct(@Nullable String said, String reason) {
        this.said = said;
        revisedBecause(reason);
    }
}
