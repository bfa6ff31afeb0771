package org.culvert.animal.photograph;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.photograph.PhotographView.OpeningView;
import org.culvert.platform.file.KeptFiles;
import org.culvert.platform.ledger.RecordViews;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** Opens sealed originals, and keeps who did so and why. */
@ApplicationScoped
public class OriginalService {
    /**
     * An original, as it came.
     *
     * @param content the file in base64
     */
    public record OpenedOriginal(
            OpeningView opening,
            @Nullable String mediaType,

            @Schema(type = SchemaType.STRING, format = "byte")
            byte @Nullable [] content) {}

    private final PhotographRepositories.Openings openings;
    private final PhotographService photographs;
    private final KeptFiles files;
    private final RecordViews records;
    private final Clock clock;

    OriginalService(
            PhotographRepositories.Openings openings,
            PhotographService photographs,
            KeptFiles files,
            RecordViews records,
            Clock clock) {
        this.openings = openings;
        this.photographs = photographs;
        this.files = files;
        this.records = records;
        this.clock = clock;
    }

    /** Opens an original. What was opened is kept in either case; the content is there only if the seal holds. */
    @Transactional
    public OpenedOriginal open(UUID photographId, String reason) {
        Photograph photograph = photographs.require(photographId);
        KeptFiles.Content content = files.getContent(photograph.originalFileId);
        var opening = new PhotographOpening(
                photographId, reason, photograph.originalSha256, KeptFiles.sha256(content.octets()), clock.instant());
        openings.persistAndFlush(opening);
        return opening.sealHolds()
                ? new OpenedOriginal(view(opening), content.mediaType(), content.octets())
                : new OpenedOriginal(view(opening), null, null);
    }

    /** Who opened it, the last first. */
    @Transactional
    public List<OpeningView> listOpenings(UUID photographId) {
        photographs.require(photographId);
        List<PhotographOpening> rows = openings.list("photographId = ?1 order by id desc", photographId);
        records.lookUp(rows);
        return rows.stream().map(this::view).toList();
    }

    private OpeningView view(PhotographOpening row) {
        return new OpeningView(
                row.id(),
                row.photographId,
                row.reason,
                row.happenedAt(),
                HexFormat.of().formatHex(row.sealedSha256),
                HexFormat.of().formatHex(row.foundSha256),
                row.sealHolds(),
                records.of(row));
    }
}
