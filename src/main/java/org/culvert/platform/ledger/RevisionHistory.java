package org.culvert.platform.ledger;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Rows;
import org.culvert.platform.sight.Resources;
import org.culvert.platform.sight.Sight;
import org.jspecify.annotations.Nullable;

/** Tells who changed a record when and why, to whoever sees the record. */
@ApplicationScoped
class RevisionHistory {
    /**
     * One revision.
     *
     * @param revision 1 for the record as it was entered
     * @param reason why it was made; null for an entry, and for a step that is its own reason
     */
    record RevisionView(
            int revision,
            Instant madeAt,
            String madeBy,
            @Nullable String reason) {}

    private final EntityManager entities;
    private final Instance<TagSource> sources;
    private final Sight sight;

    RevisionHistory(EntityManager entities, Instance<TagSource> sources, Sight sight) {
        this.entities = entities;
        this.sources = sources;
        this.sight = sight;
    }

    @Transactional
    List<RevisionView> listRevisions(UUID id) {
        requireSeen(id);
        List<?> rows = entities.createNativeQuery("""
                        select v.version, coalesce(v.revised_at, v.recorded_at), a.username, v.revision_reason
                        from (select version, recorded_at, recorded_by, revised_at, revised_by, revision_reason
                              from as_it_was.records where id = ?1
                              union all
                              select row_version, cast(row_before ->> 'recorded_at' as timestamptz),
                                     cast(row_before ->> 'recorded_by' as uuid),
                                     cast(row_before ->> 'revised_at' as timestamptz),
                                     cast(row_before ->> 'revised_by' as uuid), row_before ->> 'revision_reason'
                              from revisions where row_id = ?1) v
                        join accounts a on a.id = coalesce(v.revised_by, v.recorded_by)
                        order by v.version
                        """).setParameter(1, id).getResultList();
        return rows.stream()
                .map(row -> (Object[]) row)
                .map(row -> new RevisionView(
                        ((Number) row[0]).intValue() + 1,
                        java.util.Objects.requireNonNull(Rows.instant(row[1])),
                        (String) row[2],
                        (String) row[3]))
                .toList();
    }

    /** The record, or what it is a part of, must be one that the asker may read. */
    private void requireSeen(UUID id) {
        List<?> tables = entities.createNativeQuery("select table_name from as_it_was.records where id = ?1")
                .setParameter(1, id)
                .getResultList();
        for (Object table : tables) {
            for (TagSource source : sources) {
                String column = source.columnByTable().get(table.toString());
                if (column != null && isSeen(source, table.toString(), column, id)) {
                    return;
                }
            }
        }
        throw new NotFoundException("record", id);
    }

    private boolean isSeen(TagSource source, String table, String column, UUID id) {
        // Both names are constants of the rooms.
        Object whole = entities.createNativeQuery("select " + column + " from " + table + " where id = ?1")
                .setParameter(1, id)
                .getSingleResult();
        return source.show(whole.toString())
                .filter(record -> sight.sees(Resources.name(record.getClass()), "id"))
                .isPresent();
    }
}
