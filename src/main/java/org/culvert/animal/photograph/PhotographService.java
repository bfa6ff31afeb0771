package org.culvert.animal.photograph;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Semaphore;
import org.culvert.animal.CaseService;
import org.culvert.animal.photograph.picture.ExifTelling;
import org.culvert.animal.photograph.picture.PictureCopies;
import org.culvert.animal.photograph.picture.PictureTold;
import org.culvert.call.IncidentService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.LargestBody;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.Role;
import org.culvert.platform.Rows;
import org.culvert.platform.SignInException;
import org.culvert.platform.file.KeptFiles;
import org.culvert.platform.sight.Sight;
import org.culvert.platform.sight.Viewer;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** Seals photographs, and gives copies of them. */
@ApplicationScoped
public class PhotographService {
    private static final int LARGEST_BYTES = 10_000_000;

    /** Of large pictures, so that a few that come together do not fill the memory. */
    private static final int DECODED_AT_ONCE = 2;

    /**
     * A photograph as it is sent.
     *
     * @param content the file as the camera wrote it, in base64, of at most 10 MB
     * @param takenAt when it was taken; null where nobody knows
     * @param takenWhereFound whether it was taken where the animal was found, so that the place it tells may be read; left out,
     *     yes of an incident, and no of a case, since it may be a carer's home
     */
    @LargestBody(bytes = 14_000_000)
    public record SentPhotograph(
            @NotNull @Pattern(regexp = "image/png|image/jpeg", message = "must be image/png or image/jpeg")
            String mediaType,

            @Schema(type = SchemaType.STRING, format = "byte") @NotEmpty @Size(max = LARGEST_BYTES)
            byte[] content,

            @Nullable @Size(max = 2000) String caption,
            @Nullable Instant takenAt,
            @Nullable Boolean takenWhereFound) {}

    private final PhotographRepositories.Photographs rows;
    private final PhotographReader reader;
    private final KeptFiles files;
    private final IncidentService incidents;
    private final CaseService cases;
    private final EntityManager entities;
    private final Sight sight;
    private final Clock clock;
    private final long mostPixels;
    private final Semaphore decoding = new Semaphore(DECODED_AT_ONCE);

    PhotographService(
            PhotographRepositories.Photographs rows,
            PhotographReader reader,
            KeptFiles files,
            IncidentService incidents,
            CaseService cases,
            EntityManager entities,
            Sight sight,
            Clock clock,
            @ConfigProperty(name = "culvert.photograph.largest-megapixels", defaultValue = "50")
                    long largestMegapixels) {
        this.rows = rows;
        this.reader = reader;
        this.files = files;
        this.incidents = incidents;
        this.cases = cases;
        this.entities = entities;
        this.sight = sight;
        this.clock = clock;
        this.mostPixels = largestMegapixels * 1_000_000;
    }

    @Transactional
    public PhotographView addToIncident(UUID incidentId, SentPhotograph sent) {
        incidents.placeOf(incidentId);
        return add(new Photograph.Subject(incidentId, null), sent, !Boolean.FALSE.equals(sent.takenWhereFound()));
    }

    @Transactional
    public PhotographView addToCase(UUID caseId, SentPhotograph sent) {
        cases.getCase(caseId);
        return add(new Photograph.Subject(null, caseId), sent, Boolean.TRUE.equals(sent.takenWhereFound()));
    }

    private PhotographView add(Photograph.Subject of, SentPhotograph sent, boolean takenWhereFound) {
        if (sent.takenAt() != null && sent.takenAt().isAfter(clock.instant())) {
            throw InvalidException.of("takenAt", "That has not happened yet.", "an instant that has passed");
        }
        KeptFiles.requireOf("content", sent.mediaType(), sent.content());
        PictureTold told = ExifTelling.read(sent.mediaType(), sent.content());
        PictureCopies copies = copies(sent, told.orientation());
        var kept = new Photograph.Files(
                files.seal("content", sent.mediaType(), sent.content()),
                files.keep("content", KeptFiles.JPEG, copies.copy()),
                files.keep("content", KeptFiles.JPEG, copies.small()));
        var row = new Photograph(of, kept, copies, sent.caption(), sent.takenAt(), takenWhereFound);
        row.telling(told);
        rows.persistAndFlush(row);
        return reader.view(row);
    }

    private PictureCopies copies(SentPhotograph sent, int orientation) {
        decoding.acquireUninterruptibly();
        try {
            return PictureCopies.of(sent.mediaType(), sent.content(), orientation, mostPixels);
        } finally {
            decoding.release();
        }
    }

    @Transactional
    public PhotographView getPhotograph(UUID id) {
        return reader.view(require(id));
    }

    /** Photographs of an incident and of those that stand joined with it, newest first. */
    @Transactional
    public Page<PhotographView> listOfIncident(UUID incidentId, int limit, @Nullable UUID before) {
        incidents.placeOf(incidentId);
        return list("p.incident_id in (" + JOINED + ")", incidentId, incidentId, limit, before);
    }

    /** Photographs of a case and of its incident, newest first. */
    @Transactional
    public Page<PhotographView> listOfCase(UUID caseId, int limit, @Nullable UUID before) {
        UUID incidentId = cases.getCase(caseId).incidentId();
        return list("(p.case_id = :id or p.incident_id in (" + JOINED + "))", caseId, incidentId, limit, before);
    }

    private static final String JOINED =
            "select cast(:incident as uuid) union select other_id from joined_incidents where incident_id = :incident";

    private Page<PhotographView> list(String which, UUID id, UUID incidentId, int limit, @Nullable UUID before) {
        var query = entities.createNativeQuery("select p.id from photographs p where " + which
                        + " and (cast(:before as uuid) is null or p.id < :before) order by p.id desc")
                .setParameter("incident", incidentId)
                .setParameter("before", before)
                .setMaxResults(limit + 1);
        if (which.contains(":id")) {
            query.setParameter("id", id);
        }
        List<?> ids = query.getResultList();
        List<Photograph> found = ids.isEmpty() ? List.of() : rows.list("id in ?1 order by id desc", ids);
        return Page.of(found, limit, reader.viewer(found), row -> row.id().toString());
    }

    /** The newest of each case itself that were not taken back. */
    @Transactional
    public List<PhotographView> listNewestOf(Collection<UUID> caseIds, int mostOfEach) {
        if (caseIds.isEmpty()) {
            return List.of();
        }
        List<UUID> ids = Rows.column(
                entities.createNativeQuery("""
                                select id from (
                                    select p.id, row_number() over (partition by p.case_id order by p.id desc) as place
                                    from photographs p where p.case_id in (:cases) and p.withdrawn_at is null) newest
                                where place <= :most
                                """).setParameter("cases", caseIds).setParameter("most", mostOfEach),
                UUID.class);
        List<Photograph> found = ids.isEmpty() ? List.of() : rows.list("id in ?1 order by id desc", ids);
        return found.stream().map(reader.viewer(found)).toList();
    }

    /** The copy to be looked at, or the small one for lists. One that was taken back is there only for who sees them all. */
    @Transactional
    public KeptFiles.Content getCopy(UUID id, boolean small) {
        Photograph row = require(id);
        if (row.withdrawnAt != null && sight.seesOwnOnly("photograph")) {
            throw new NotFoundException("photograph", id);
        }
        return files.getContent(small ? row.smallFileId : row.copyFileId);
    }

    /**
     * Takes a photograph back; nothing of it is deleted.
     *
     * @throws SignInException when somebody else sent it, for all but dispatchers and coordinators
     */
    @Transactional
    public PhotographView withdraw(UUID id, String reason) {
        Photograph row = require(id);
        Viewer asker = sight.viewer();
        if (!asker.hasAny(Role.DISPATCHER, Role.COORDINATOR)
                && !row.recordedBy().equals(asker.accountId())) {
            throw SignInException.notTheirs(
                    "Somebody else sent that photograph: whoever sent it takes it back, or a dispatcher or a"
                            + " coordinator does.");
        }
        row.withdraw(clock.instant(), reason);
        rows.flush();
        return reader.view(row);
    }

    /**
     * For the rooms above: that a photograph is of a case and was not taken back.
     *
     * @throws InvalidException naming {@code field} where it is not so
     */
    @Transactional
    public void requireOfCase(String field, UUID id, UUID caseId) {
        if (rows.count("id = ?1 and caseId = ?2 and withdrawnAt is null", id, caseId) == 0) {
            throw InvalidException.of(
                    field, "That case has no such photograph.", "the identifier of a photograph of this case");
        }
    }

    Photograph require(UUID id) {
        return rows.findByIdOptional(id).orElseThrow(() -> new NotFoundException("photograph", id));
    }
}
