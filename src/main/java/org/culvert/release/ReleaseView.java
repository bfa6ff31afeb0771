package org.culvert.release;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/** A release as recorded. */
public record ReleaseView(
        UUID id,
        @Nullable UUID siteId,
        double decimalLatitude,
        double decimalLongitude,
        double coordinateUncertaintyInMeters,
        @Nullable Instant at,
        String approvedBy,
        @Nullable UUID releasedByMemberId,
        List<String> warningsRead,
        @Nullable String weather,
        @Nullable String light,
        @Nullable String manner,
        @Nullable LocalDate supportFeedingUntil,
        @Nullable Instant supportFeedingEndedAt,
        @Nullable String supportFeedingEndedBy,
        @Nullable String othersPresent,
        @Nullable Boolean raisedTogether,
        List<ReleasedAnimalView> animals,
        List<LiftedView> lifted,
        List<PhotographService.ReleasePhotographView> photographs,
        SightingService.AfterRelease afterRelease,
        Instant recordedAt,
        UUID recordedBy,
        RecordView record) {}
