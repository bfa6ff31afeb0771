package org.culvert.exchange.records;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.exchange.reading.Finding;
import org.culvert.exchange.reading.ReadRow;
import org.culvert.road.PlaceUnderstood;
import org.jspecify.annotations.Nullable;

/**
 * A row with all that was looked up for it.
 *
 * @param happenedAt null where no hour is told: then it happened between the two that follow
 * @param happenedNotBefore beginning of the day or the year; null where an hour is told, or nothing is
 * @param happenedBefore end of the day or the year
 * @param place null where none is told that could be understood
 * @param chainagePrecisionMetres the step in which its chainage was told, or null
 */
record JudgedRow(
        ReadRow row,
        Verdict verdict,
        @Nullable Instant happenedAt,
        @Nullable Instant happenedNotBefore,
        @Nullable Instant happenedBefore,
        @Nullable PlaceUnderstood place,
        @Nullable Double chainagePrecisionMetres,
        @Nullable UUID taxonId,
        @Nullable UUID groupId,
        List<Finding> findings) {}
