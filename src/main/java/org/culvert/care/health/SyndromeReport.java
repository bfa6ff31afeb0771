package org.culvert.care.health;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** One animal seen with a syndrome; where is its case's found place. */
@Entity
@Table(name = "syndrome_reports")
class SyndromeReport extends Recorded {
    UUID caseId;
    UUID animalId;
    UUID syndromeId;
    LocalDate day;

    @Nullable
    String words;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected SyndromeReport() {}

    SyndromeReport(UUID caseId, UUID animalId, SyndromeEntries.ReportEntry entry, Instant at, ZoneId zone) {
        this.caseId = caseId;
        this.animalId = animalId;
        this.syndromeId = entry.syndromeId();
        this.words = entry.words();
        seen(at, zone);
    }

    void correct(SyndromeEntries.ReportCorrection correction, @Nullable Instant at, ZoneId zone) {
        requireStanding();
        words = Corrections.text("words", correction.words(), words, SyndromeEntries.LONGEST_WORDS);
        if (at != null) {
            seen(at, zone);
        }
        revisedBecause(correction.reason());
    }

    void withdraw(Instant at, String reason) {
        requireStanding();
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }

    private void seen(Instant at, ZoneId zone) {
        happenedAt(at);
        day = at.atZone(zone).toLocalDate();
    }

    private void requireStanding() {
        if (withdrawnAt != null) {
            throw new ConflictException("That report was withdrawn: " + withdrawnBecause);
        }
    }
}
