package org.culvert.exchange.records;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.DailyJob;
import org.culvert.platform.NotFoundException;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Shows the rows of old files that incidents came from, and erases their texts when the duty to keep them has passed. */
@ApplicationScoped
class OriginService implements DailyJob {
    private static final Logger LOG = Logger.getLogger(OriginService.class);

    /**
     * Where an incident came from.
     *
     * @param rows the rows of old files that its calls were, in the order of the file
     */
    public record IncidentOriginView(UUID incidentId, List<OriginalRowView> rows) {}

    /**
     * A row of a file.
     *
     * @param sha256 of the file's octets
     * @param rowNumber line of the table as a spreadsheet counts it
     * @param original its text as in the file; null once it was erased
     */
    public record OriginalRowView(
            UUID recordFileId,
            String fileName,
            String sha256,
            long rowNumber,
            @Nullable String original) {}

    private final EntityManager entities;
    private final Clock clock;

    OriginService(EntityManager entities, Clock clock) {
        this.entities = entities;
        this.clock = clock;
    }

    /** @throws NotFoundException where the incident came from no file */
    @Transactional
    public IncidentOriginView getOrigin(UUID incidentId) {
        List<?> found =
                entities.createNativeQuery("""
                        select f.id, f.file_name, encode(f.sha256, 'hex'), o.row_number, o.text
                        from incident_origins i
                        join personal.original_rows o on o.id = i.original_row_id
                        join record_files f on f.id = o.record_file_id
                        where i.incident_id = ?1 order by o.row_number
                        """).setParameter(1, incidentId).getResultList();
        if (found.isEmpty()) {
            throw new NotFoundException("origin of incident", incidentId);
        }
        return new IncidentOriginView(
                incidentId,
                found.stream()
                        .map(row -> (Object[]) row)
                        .map(row -> new OriginalRowView(
                                (UUID) row[0], (String) row[1], (String) row[2], ((Number) row[3]).longValue(), (String)
                                        row[4]))
                        .toList());
    }

    @Override
    public String name() {
        return "erase-original-rows";
    }

    @Override
    @Transactional
    public void run() {
        Object erased = entities.createNativeQuery("select personal.erase_original_rows(?1)")
                .setParameter(1, clock.instant())
                .getSingleResult();
        LOG.infof("%s original rows of old files erased", erased);
    }
}
