package org.culvert.exchange.records;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A row of a file as a trial read and understood it.
 *
 * @param number line of the table as a spreadsheet counts it
 * @param verdict {@code right}, {@code doubtful}, {@code apart} or {@code refused}
 * @param original its text as in the file
 * @param happenedAt null where no hour is told: then it happened between the two that follow
 * @param happenedBefore end of the day or the year
 * @param givenAs how its place was told
 * @param roadName the road that its place was put on
 * @param verbatimIdentification the animal as told
 * @param taxonId the taxon of the register that it is taken for
 * @param oneWith the first row that perhaps tells of the same animal, or that it repeats word for word
 */
public record RecordTrialRowView(
        long number,
        String verdict,
        List<RecordFindingView> findings,
        String original,
        @Nullable Instant happenedAt,
        @Nullable Instant happenedNotBefore,
        @Nullable Instant happenedBefore,
        @Nullable String givenAs,
        @Nullable Double decimalLatitude,
        @Nullable Double decimalLongitude,
        @Nullable Double coordinateUncertaintyInMeters,
        @Nullable String roadName,
        @Nullable Double chainageMetres,
        @Nullable String verbatimIdentification,
        @Nullable UUID taxonId,
        @Nullable UUID taxonGroupId,
        @Nullable Integer individualCount,
        @Nullable String cause,
        @Nullable Long oneWith) {}
