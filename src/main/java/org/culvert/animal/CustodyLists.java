package org.culvert.animal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import jakarta.persistence.Tuple;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Rows;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.Sight;
import org.jspecify.annotations.Nullable;

/** Lists of all cases' custody: hand-overs that wait, and spans in which nobody answers. */
@ApplicationScoped
public class CustodyLists {
    private static final int MOST_OWN = 100_000;

    /**
     * A span in which nobody is recorded as holder.
     *
     * @param ended whether the case has ended
     * @param to null while it lasts
     * @param linkBeforeId the link of custody before it
     * @param linkAfterId the one after it, if there is one
     */
    public record CustodyGapView(
            UUID caseId,
            long caseNumber,
            boolean ended,
            Instant from,
            @Nullable Instant to,
            UUID linkBeforeId,
            @Nullable UUID linkAfterId) {}

    private final CaseRepositories.HandOvers handOvers;
    private final CaseReader reader;
    private final RecordViews records;
    private final EntityManager entities;
    private final Sight sight;

    CustodyLists(
            CaseRepositories.HandOvers handOvers,
            CaseReader reader,
            RecordViews records,
            EntityManager entities,
            Sight sight) {
        this.handOvers = handOvers;
        this.reader = reader;
        this.records = records;
        this.entities = entities;
        this.sight = sight;
    }

    /**
     * Hand-overs, the oldest offer first: of those who see only their own organisation's, these.
     *
     * @param pending whether those that wait, or those that were accepted or refused
     */
    @Transactional
    public Page<CaseView.HandOverView> listHandOvers(boolean pending, int limit, @Nullable String cursor) {
        Instant after = Instant.EPOCH;
        UUID afterId = new UUID(0, 0);
        if (cursor != null) {
            String[] parts = cursor.split("~", -1);
            if (parts.length != 2) {
                throw noCursor();
            }
            try {
                after = Instant.parse(parts[0]);
            } catch (DateTimeParseException e) {
                throw noCursor();
            }
            afterId = Paging.uuid("cursor", parts[1]);
        }
        String settled = pending
                ? "acceptedAt is null and refusedAt is null"
                : "(acceptedAt is not null or refusedAt is not null)";
        String later = " and (?1 = false or happenedAt > ?2 or happenedAt = ?2 and id > ?3)";
        String order = " order by happenedAt, id";
        List<HandOver> rows = sight.seesOwnOnly("case.hand-over")
                ? handOvers
                        .find(
                                settled + later + " and id in ?4" + order,
                                cursor != null,
                                after,
                                afterId,
                                sight.listOwn("case.hand-over", null, MOST_OWN, ownCondition(pending)))
                        .page(0, limit + 1)
                        .list()
                : handOvers
                        .find(settled + later + order, cursor != null, after, afterId)
                        .page(0, limit + 1)
                        .list();
        records.lookUp(rows);
        return Page.of(rows, limit, reader::view, row -> row.happenedAt() + "~" + row.id());
    }

    private static String ownCondition(boolean pending) {
        return "exists (select 1 from hand_overs o where o.id = h.id and " + (pending ? "" : "not ")
                + "(o.accepted_at is null and o.refused_at is null))";
    }

    private static InvalidException noCursor() {
        return InvalidException.of("cursor", "This is no cursor.", "next of the page before, as this server gave it");
    }

    /**
     * Spans in which nobody answers, of open and of ended cases: between two links, and after the last one until the case
     * ended or until now. Those before which the link was entered last come first.
     */
    @Transactional
    @SuppressWarnings("unchecked")
    public Page<CustodyGapView> listGaps(int limit, @Nullable UUID before) {
        Query query = entities.createNativeQuery(
                        """
                        select g.id, g.next_id, c.id as case_id, c.number, f.id is not null as ended, g.begins,
                               coalesce(g.until, f.happened_at) as until
                        from (select l.id, l.case_id, upper(l.held) as begins, lead(lower(l.held)) over chain as until,
                                     lead(l.id) over chain as next_id
                              from custody_links l window chain as (partition by l.case_id order by lower(l.held))) g
                        join cases c on c.id = g.case_id
                        left join fates f on f.case_id = c.id and f.withdrawn_at is null
                        where (coalesce(g.until, f.happened_at) > g.begins or g.until is null and f.id is null)
                          and g.begins is not null
                        """ + (before == null ? "" : " and g.id < :before") + " order by g.id desc limit :most",
                        Tuple.class)
                .setParameter("most", limit + 1);
        if (before != null) {
            query.setParameter("before", before);
        }
        List<Tuple> rows = query.getResultList();
        return Page.of(
                rows,
                limit,
                row -> new CustodyGapView(
                        row.get("case_id", UUID.class),
                        row.get("number", Number.class).longValue(),
                        row.get("ended", Boolean.class),
                        Objects.requireNonNull(Rows.instant(row.get("begins"))),
                        Rows.instant(row.get("until")),
                        row.get("id", UUID.class),
                        row.get("next_id", UUID.class)),
                row -> row.get("id", UUID.class).toString());
    }
}
