package org.culvert.care.health;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An exposure of whoever asks.
 *
 * @param toldAt when the public health unit was told; null: not yet, as far as is recorded
 * @param closedAt null while it is open
 */
public record MyExposureView(
        UUID id,
        String kind,
        Instant happenedAt,
        @Nullable UUID caseId,
        @Nullable String bodyPart,
        String washed,
        @Nullable Integer washedMinutes,
        @Nullable String protectiveKit,
        @Nullable String words,
        List<String> vaccinations,
        @Nullable Instant toldAt,
        @Nullable String toldUnit,
        @Nullable String toldReference,
        @Nullable Instant closedAt,
        @Nullable String outcome,
        @Nullable String withdrawnBecause,
        List<HealthAdvice> advice) {
    static MyExposureView of(ExposureView whole) {
        ExposureView.UnitTold told = whole.told();
        ExposureView.ClosedBy closing = whole.closing();
        return new MyExposureView(
                whole.id(),
                whole.kind(),
                java.util.Objects.requireNonNull(whole.record().happenedAt()),
                whole.caseId(),
                whole.bodyPart(),
                whole.washed(),
                whole.washedMinutes(),
                whole.protectiveKit(),
                whole.words(),
                whole.vaccinations().stream()
                        .map(ExposureView.Vaccinated::sentence)
                        .toList(),
                told == null ? null : told.at(),
                told == null ? null : told.unit(),
                told == null ? null : told.reference(),
                closing == null ? null : closing.at(),
                closing == null ? null : closing.outcome(),
                whole.withdrawnBecause(),
                whole.advice());
    }
}
