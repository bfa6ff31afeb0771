package org.culvert.release;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One animal of a release.
 *
 * @param withdrawnAt when it was taken back that it was let go; null while it stands
 * @param withdrawnBecause why
 */
public record ReleasedAnimalView(
        UUID caseId,
        UUID assessmentId,
        @Nullable Instant withdrawnAt,
        @Nullable String withdrawnBecause) {}
