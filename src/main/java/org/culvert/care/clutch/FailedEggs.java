package org.culvert.care.clutch;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** Eggs that somebody gave up. */
@Entity
@Table(name = "failed_eggs")
class FailedEggs extends ClutchPart {
    int failed;
    String grounds;
    String saidBy;

    @Nullable
    String words;

    protected FailedEggs() {}

    FailedEggs(UUID clutchId, ClutchEntries.FailedEggsEntry entry, Instant at) {
        super(clutchId, at);
        this.failed = entry.failed();
        this.grounds = entry.grounds().name();
        this.saidBy = entry.saidBy();
        this.words = entry.words();
        requireWords();
    }

    void correct(ClutchCorrections.FailedEggsCorrection correction, Clock clock) {
        requireStanding();
        failed = correction.failed().over("failed", failed);
        if (failed < 1) {
            throw InvalidException.of("failed", "This is no number of eggs.", "1 or more, or take the entry back");
        }
        grounds = Corrections.name("grounds", correction.grounds(), grounds);
        saidBy = Corrections.words("saidBy", correction.saidBy(), saidBy, 200);
        words = Corrections.text("words", correction.words(), words, 2000);
        requireWords();
        happenedAt(Corrections.known("at", correction.at(), at(), clock));
        revisedBecause(correction.reason());
    }

    private void requireWords() {
        if (grounds.equals(ClutchEntries.FailureGrounds.other.name()) && (words == null || words.isBlank())) {
            throw InvalidException.of("words", "Other grounds are told in words.", "what was seen");
        }
    }
}
