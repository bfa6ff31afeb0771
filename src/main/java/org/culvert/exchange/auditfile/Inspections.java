package org.culvert.exchange.auditfile;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** The log of who read which audit file, when and why. It is added to, and never changed. */
@ApplicationScoped
public class Inspections {
    /** One reading; by whom is told by its record. */
    public record InspectionView(UUID id, UUID caseId, long caseNumber, String reason, Instant at, RecordView record) {}

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<Inspection, UUID> {}

    private final Rows rows;
    private final CaseService cases;
    private final RecordViews records;
    private final Clock clock;

    Inspections(Rows rows, CaseService cases, RecordViews records, Clock clock) {
        this.rows = rows;
        this.cases = cases;
        this.records = records;
        this.clock = clock;
    }

    /** Keeps that somebody reads it, also where what is read is the past, in which nothing can be written. */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    void keep(UUID caseId, String reason) {
        rows.persistAndFlush(new Inspection(caseId, reason, clock.instant()));
    }

    /** Those of a case, the latest first. */
    @Transactional
    public List<InspectionView> listOfCase(UUID caseId) {
        cases.getCase(caseId);
        return views(rows.list("caseId = ?1 order by id desc", caseId));
    }

    /** All, the latest first. */
    @Transactional
    public Page<InspectionView> listInspections(int limit, @Nullable UUID before) {
        List<Inspection> found = rows.find("?1 is null or id < ?1 order by id desc", before)
                .page(0, limit + 1)
                .list();
        Map<UUID, CaseView> caseById = casesOf(found);
        records.lookUp(found);
        return Page.of(found, limit, row -> view(row, caseById), row -> row.id().toString());
    }

    private List<InspectionView> views(List<Inspection> found) {
        Map<UUID, CaseView> caseById = casesOf(found);
        records.lookUp(found);
        return found.stream().map(row -> view(row, caseById)).toList();
    }

    private Map<UUID, CaseView> casesOf(Collection<Inspection> found) {
        return cases.casesById(found.stream().map(row -> row.caseId).distinct().toList());
    }

    private InspectionView view(Inspection row, Map<UUID, CaseView> caseById) {
        CaseView of = caseById.get(row.caseId);
        if (of == null) {
            throw new NotFoundException("case", row.caseId);
        }
        return new InspectionView(
                row.id(),
                row.caseId,
                of.number(),
                row.reason,
                Objects.requireNonNull(row.happenedAt()),
                records.of(row));
    }
}
