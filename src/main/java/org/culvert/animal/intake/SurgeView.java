package org.culvert.animal.intake;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A surge as kept.
 *
 * @param decimalLatitude of the tent, where its place was given; likewise the next two
 * @param endedBy the account that ended it
 */
public record SurgeView(
        UUID id,
        String name,
        SurgeEntries.SurgeKind kind,
        @Nullable String kindWords,
        Instant from,
        String tentWords,
        @Nullable Double decimalLatitude,
        @Nullable Double decimalLongitude,
        @Nullable Double coordinateUncertaintyInMeters,
        UUID holderMemberId,
        @Nullable Instant endedAt,
        @Nullable UUID endedBy,
        List<SectorView> sectors,
        RecordView record) {

    public record SectorView(
            UUID id,
            String code,
            String words,
            @Nullable String areaWords,
            @Nullable SectorArea area,
            RecordView record) {}
}
