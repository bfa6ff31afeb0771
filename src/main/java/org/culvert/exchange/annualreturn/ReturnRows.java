package org.culvert.exchange.annualreturn;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Keeps the rows of returns as they were signed; the database holds their sums. */
@ApplicationScoped
class ReturnRows {
    private final EntityManager entities;

    ReturnRows(EntityManager entities) {
        this.entities = entities;
    }

    /** @param supplementId with which they are kept, or null for the return itself */
    void keep(UUID returnId, @Nullable UUID supplementId, ReturnChanges.Counted counted) {
        for (ReturnDraft.ReturnLine line : counted.lines()) {
            insert(returnId, supplementId, "line", line, line.opening(), line.cameIn(), line.wentOut(), line.closing());
        }
        counted.transfers().forEach(row -> insert(returnId, supplementId, "transfer", row, null, null, null, null));
        counted.doubts().forEach(row -> insert(returnId, supplementId, "doubt", row, null, null, null, null));
        counted.leftOut().forEach(row -> insert(returnId, supplementId, "leftOut", row, null, null, null, null));
    }

    private void insert(
            UUID returnId,
            @Nullable UUID supplementId,
            String sort,
            Object row,
            @Nullable Integer opening,
            @Nullable Integer cameIn,
            @Nullable Integer wentOut,
            @Nullable Integer closing) {
        entities.createNativeQuery("""
                        insert into return_lines (return_id, supplement_id, sort, line, opening, came_in, went_out, closing)
                        values (:returnId, cast(:supplementId as uuid), :sort, cast(:line as jsonb), cast(:opening as integer),
                                cast(:cameIn as integer), cast(:wentOut as integer), cast(:closing as integer))
                        """)
                .setParameter("returnId", returnId)
                .setParameter("supplementId", supplementId == null ? null : supplementId.toString())
                .setParameter("sort", sort)
                .setParameter("line", FrozenText.json(row))
                .setParameter("opening", opening)
                .setParameter("cameIn", cameIn)
                .setParameter("wentOut", wentOut)
                .setParameter("closing", closing)
                .executeUpdate();
    }

    /** The rows that were kept with a supplement, or null for those of the return itself. */
    ReturnChanges.Counted read(UUID returnId, @Nullable UUID supplementId) {
        List<ReturnDraft.ReturnLine> lines = new ArrayList<>();
        List<ReturnDraft.ReturnTransfer> transfers = new ArrayList<>();
        List<ReturnDraft.ReturnDoubt> doubts = new ArrayList<>();
        List<ReturnDraft.ReturnLeftOut> leftOut = new ArrayList<>();
        List<?> rows = entities.createNativeQuery("""
                        select sort, cast(line as text) from return_lines
                        where return_id = :returnId and supplement_id is not distinct from cast(:supplementId as uuid)
                        order by number
                        """)
                .setParameter("returnId", returnId)
                .setParameter("supplementId", supplementId == null ? null : supplementId.toString())
                .getResultList();
        for (Object told : rows) {
            Object[] row = (Object[]) told;
            String text = (String) row[1];
            switch ((String) row[0]) {
                case "line" -> lines.add(FrozenText.read(text, ReturnDraft.ReturnLine.class));
                case "transfer" -> transfers.add(FrozenText.read(text, ReturnDraft.ReturnTransfer.class));
                case "doubt" -> doubts.add(FrozenText.read(text, ReturnDraft.ReturnDoubt.class));
                default -> leftOut.add(FrozenText.read(text, ReturnDraft.ReturnLeftOut.class));
            }
        }
        return new ReturnChanges.Counted(lines, transfers, doubts, leftOut);
    }
}
