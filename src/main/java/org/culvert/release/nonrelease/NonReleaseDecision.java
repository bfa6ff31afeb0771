package org.culvert.release.nonrelease;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** A vet decided that an animal may not go back; it happened when it was decided. */
@Entity
@Table(name = "non_release_decisions")
class NonReleaseDecision extends Recorded {
    UUID caseId;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> grounds;

    String words;
    String vetName;
    String vetRegistration;

    @Nullable
    LocalDate reviewDueOn;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected NonReleaseDecision() {}

    NonReleaseDecision(UUID caseId, NonReleaseEntries.NonReleaseEntry entry, Instant at) {
        happenedAt(at);
        this.caseId = caseId;
        this.grounds = names(entry.grounds());
        this.words = entry.words();
        this.vetName = entry.vetName();
        this.vetRegistration = entry.vetRegistration();
        this.reviewDueOn = entry.reviewDueOn();
    }

    private static List<String> names(List<NonReleaseEntries.NonReleaseGround> grounds) {
        return grounds.stream().distinct().sorted().map(Enum::name).toList();
    }

    Instant decidedAt() {
        return Objects.requireNonNull(happenedAt());
    }

    void correct(NonReleaseEntries.NonReleaseCorrection correction) {
        List<NonReleaseEntries.NonReleaseGround> told = correction.grounds().value();
        if (correction.grounds().isMade()) {
            if (told == null || told.isEmpty()) {
                throw InvalidException.of("grounds", "A decision has its grounds.", "one ground or more");
            }
            grounds = names(told);
        }
        words = Corrections.words("words", correction.words(), words, 4000);
        reviewDueOn = correction.reviewDueOn().over(reviewDueOn);
        revisedBecause(correction.reason());
    }

    void reviewed(LocalDate nextDueOn) {
        reviewDueOn = nextDueOn;
        revisedBecause("a welfare review was held");
    }

    void withdraw(Instant at, String reason) {
        requireStanding();
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }

    void requireStanding() {
        if (withdrawnAt != null) {
            throw new ConflictException("This decision was withdrawn: " + withdrawnBecause);
        }
    }
}
