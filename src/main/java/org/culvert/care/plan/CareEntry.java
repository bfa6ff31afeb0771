package org.culvert.care.plan;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.care.schedule.Measure;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** What was done of a plan, skipped, or seen beside it. */
@Entity
@Table(name = "care_entries")
class CareEntry extends Recorded {
    UUID caseId;
    String kind;

    @Nullable
    UUID planId;

    @Nullable
    String stepKey;

    @Nullable
    Integer day;

    @Nullable
    Double figure;

    /** Of the figure; null where there is none. */
    @Nullable
    String measure;

    @Nullable
    Boolean answer;

    @Nullable
    String words;

    @Nullable
    String skippedBecause;

    @Nullable
    UUID photographId;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected CareEntry() {}

    CareEntry(
            UUID caseId,
            PlanEntries.CareEntryEntry entry,
            PlanEntries.CareKind kind,
            @Nullable UUID planId,
            Measure measure,
            Instant at) {
        happenedAt(at);
        this.caseId = caseId;
        this.kind = kind.name();
        this.planId = planId;
        this.stepKey = entry.stepKey();
        this.day = entry.day();
        this.figure = entry.value();
        this.measure = figure == null ? null : measure.name();
        this.answer = entry.answer();
        this.words = entry.words();
        this.skippedBecause = entry.skippedBecause();
        this.photographId = entry.photographId();
    }

    PlanEntries.CareKind kind() {
        return PlanEntries.CareKind.valueOf(kind);
    }

    Instant at() {
        return Objects.requireNonNull(happenedAt());
    }

    boolean stands() {
        return withdrawnAt == null;
    }

    boolean isSkipped() {
        return skippedBecause != null;
    }

    void correct(PlanEntries.CareEntryCorrection correction, Clock clock) {
        requireStands();
        figure = correction.value().over(figure);
        answer = correction.answer().over(answer);
        words = Corrections.text("words", correction.words(), words, 4000);
        skippedBecause = Corrections.text("skippedBecause", correction.skippedBecause(), skippedBecause, 2000);
        photographId = correction.photographId().over(photographId);
        happenedAt(Corrections.known("at", correction.at(), at(), clock));
        revisedBecause(correction.reason());
    }

    /** The measure of a figure that was told only now. */
    void measuredIn(Measure asked) {
        measure = figure == null ? null : measure == null ? asked.name() : measure;
    }

    void withdraw(Instant at, String reason) {
        requireStands();
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }

    private void requireStands() {
        if (withdrawnAt != null) {
            throw new ConflictException("That entry was taken back already: " + withdrawnBecause);
        }
    }
}
