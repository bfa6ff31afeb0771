package org.culvert.release;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.LargestBody;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.file.KeptFiles;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.Sight;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * Photographs of releases. A photograph often says where it was taken, and that stays in it: only who sees the exact place of
 * the release gets the file.
 */
@ApplicationScoped
public class PhotographService {
    private static final int LARGEST_BYTES = 10_000_000;

    /**
     * A photograph.
     *
     * @param content the file, in base64, of at most 10 MB
     * @param takenAt when it was taken; null where nobody knows
     */
    @LargestBody(bytes = 14_000_000)
    public record PhotographEntry(
            @NotNull @Pattern(regexp = "image/png|image/jpeg", message = "must be image/png or image/jpeg")
            String mediaType,

            @Schema(type = SchemaType.STRING, format = "byte") @NotEmpty @Size(max = LARGEST_BYTES)
            byte[] content,

            @Nullable @Size(max = 2000) String caption,
            @Nullable Instant takenAt) {}

    /** What is said of a photograph. */
    public record ReleasePhotographView(
            UUID id,
            @Nullable String caption,
            @Nullable Instant takenAt,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<ReleasePhotograph, UUID> {}

    private final Rows rows;
    private final ReleaseRepositories.Releases releases;
    private final KeptFiles files;
    private final RecordViews records;
    private final Sight sight;
    private final Clock clock;

    PhotographService(
            Rows rows,
            ReleaseRepositories.Releases releases,
            KeptFiles files,
            RecordViews records,
            Sight sight,
            Clock clock) {
        this.rows = rows;
        this.releases = releases;
        this.files = files;
        this.records = records;
        this.sight = sight;
        this.clock = clock;
    }

    @Transactional
    public ReleasePhotographView add(UUID releaseId, PhotographEntry entry) {
        if (releases.findByIdOptional(releaseId).isEmpty()) {
            throw new NotFoundException("release", releaseId);
        }
        if (entry.takenAt() != null && entry.takenAt().isAfter(clock.instant())) {
            throw InvalidException.of("takenAt", "That has not happened yet.", "an instant that has passed");
        }
        UUID file = files.keep("content", entry.mediaType(), entry.content());
        var row = new ReleasePhotograph(releaseId, file, entry.caption(), entry.takenAt());
        rows.persistAndFlush(row);
        return view(row);
    }

    List<ReleasePhotographView> list(UUID releaseId) {
        return rows.list("releaseId = ?1 order by id", releaseId).stream()
                .map(this::view)
                .toList();
    }

    /** The file. One that was taken back is there only for who sees every release. */
    @Transactional
    public KeptFiles.Content getContent(UUID releaseId, UUID id) {
        ReleasePhotograph row = require(releaseId, id);
        if (row.withdrawnAt != null && sight.seesOwnOnly("release")) {
            throw new NotFoundException("photograph", id);
        }
        return files.getContent(row.fileId);
    }

    @Transactional
    public void withdraw(UUID releaseId, UUID id, String reason) {
        require(releaseId, id).withdraw(clock.instant(), reason);
        rows.flush();
    }

    private ReleasePhotograph require(UUID releaseId, UUID id) {
        return rows.find("id = ?1 and releaseId = ?2", id, releaseId)
                .firstResultOptional()
                .orElseThrow(() -> new NotFoundException("photograph", id));
    }

    private ReleasePhotographView view(ReleasePhotograph row) {
        return new ReleasePhotographView(
                row.id(), row.caption, row.happenedAt(), row.withdrawnAt, row.withdrawnBecause, records.of(row));
    }
}
