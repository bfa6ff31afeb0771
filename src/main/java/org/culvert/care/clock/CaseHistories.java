package org.culvert.care.clock;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import jakarta.persistence.Tuple;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.culvert.animal.CaseEntries.FateKind;
import org.culvert.care.clock.limit.Held;
import org.culvert.care.clock.limit.History;
import org.culvert.platform.Rows;
import org.jspecify.annotations.Nullable;

/** Reads what limits ask about cases: a few questions for any number of cases, and none for one case each. */
@ApplicationScoped
class CaseHistories {
    /** One case, with when the authority was told and until when it was extended, by limit. */
    record CaseHistory(
            UUID id,
            long number,
            UUID taxonGroupId,
            String scientificName,
            History history,
            Map<UUID, List<Instant>> toldByLimit,
            Map<UUID, Instant> extendedByLimit) {}

    /** Which cases are read: a condition on case {@code c}, its animal {@code a}, taxon {@code t} and end {@code f}. */
    record Chosen(String condition, Map<String, Object> values) {
        static Chosen of(Collection<UUID> ids) {
            return new Chosen("c.id in (:ids)", Map.of("ids", ids));
        }

        static Chosen open() {
            return new Chosen("f.id is null", Map.of());
        }

        /** Open cases of a group, or of any, that were found in a span. */
        static Chosen openAndFound(@Nullable UUID groupId, Instant from, Instant before) {
            String span = "f.id is null and c.happened_at >= :from and c.happened_at < :before";
            return groupId == null
                    ? new Chosen(span, Map.of("from", from, "before", before))
                    : new Chosen(
                            span + " and t.taxon_group_id = :group",
                            Map.of("from", from, "before", before, "group", groupId));
        }

        /**
         * Open cases, and those ended since an instant after which something may still have to be told.
         *
         * @param taxa of which kinds; null: of all
         */
        static Chosen openOrToBeTold(Instant since, @Nullable Set<UUID> taxa) {
            if (taxa == null) {
                return new Chosen("(f.id is null or f.happened_at >= :since)", Map.of("since", since));
            }
            return taxa.isEmpty()
                    ? open()
                    : new Chosen(
                            "(f.id is null or f.happened_at >= :since and t.id in (:taxa))",
                            Map.of("since", since, "taxa", taxa));
        }

        private String from() {
            return " from cases c join animals a on a.id = c.animal_id join taxa t on t.id = a.taxon_id"
                    + " left join fates f on f.case_id = c.id and f.withdrawn_at is null where " + condition;
        }
    }

    private final EntityManager entities;

    CaseHistories(EntityManager entities) {
        this.entities = entities;
    }

    /** In the order of their opening. */
    List<CaseHistory> read(Chosen chosen) {
        String chosenIds = "(select c.id" + chosen.from() + ")";
        Map<UUID, List<Held>> custody = new HashMap<>();
        for (Tuple row : rows("""
                select l.id, l.case_id, lower(l.held) as begins, upper(l.held) as until,
                       (l.authorisation is not null or l.licence_number is not null or coalesce(o.kind = 'wildlifeAuthority', false)) as authorised,
                       coalesce(o.kind = 'clinic', false) as clinic
                from custody_links l left join members m on m.id = l.holder_member_id
                left join organisations o on o.id = coalesce(l.holder_organisation_id, m.organisation_id)
                where l.case_id in\s""" + chosenIds + " order by lower(l.held)", chosen)) {
            custody.computeIfAbsent(id(row, "case_id"), any -> new ArrayList<>())
                    .add(new Held(
                            id(row, "id"),
                            row.get("authorised", Boolean.class),
                            row.get("clinic", Boolean.class),
                            when(row, "begins"),
                            Rows.instant(row.get("until"))));
        }
        Map<UUID, List<History.Seen>> visits = new HashMap<>();
        for (Tuple row : rows(
                "select v.case_id, v.happened_at as arrived, v.stabilised_at as stable from visits v"
                        + " where not v.of_body and v.case_id in " + chosenIds + " order by v.happened_at, v.id",
                chosen)) {
            visits.computeIfAbsent(id(row, "case_id"), any -> new ArrayList<>())
                    .add(new History.Seen(when(row, "arrived"), Rows.instant(row.get("stable"))));
        }
        Map<UUID, Map<UUID, List<Instant>>> told = new HashMap<>();
        for (Tuple row : rows(
                "select n.case_id, n.limit_id, n.happened_at as at from clock_notices n"
                        + " where n.withdrawn_at is null and n.case_id in " + chosenIds,
                chosen)) {
            told.computeIfAbsent(id(row, "case_id"), any -> new HashMap<>())
                    .computeIfAbsent(id(row, "limit_id"), any -> new ArrayList<>())
                    .add(when(row, "at"));
        }
        Map<UUID, Map<UUID, Instant>> extended = new HashMap<>();
        for (Tuple row : rows(
                "select e.case_id, e.limit_id, max(e.until_at) as until from clock_extensions e"
                        + " where e.withdrawn_at is null and e.case_id in " + chosenIds
                        + " group by e.case_id, e.limit_id",
                chosen)) {
            extended.computeIfAbsent(id(row, "case_id"), any -> new HashMap<>())
                    .put(id(row, "limit_id"), when(row, "until"));
        }
        List<CaseHistory> cases = new ArrayList<>();
        for (Tuple row : rows(
                "select c.id, c.number, c.happened_at as found, t.taxon_group_id, t.scientific_name, f.fate,"
                        + " f.happened_at as ended" + chosen.from() + " order by c.id",
                chosen)) {
            UUID id = id(row, "id");
            String fate = row.get("fate", String.class);
            cases.add(new CaseHistory(
                    id,
                    row.get("number", Number.class).longValue(),
                    id(row, "taxon_group_id"),
                    row.get("scientific_name", String.class),
                    new History(
                            when(row, "found"),
                            custody.getOrDefault(id, List.of()),
                            visits.getOrDefault(id, List.of()),
                            Rows.instant(row.get("ended")),
                            fate != null && FateKind.valueOf(fate).dead()),
                    told.getOrDefault(id, Map.of()),
                    extended.getOrDefault(id, Map.of())));
        }
        return cases;
    }

    @SuppressWarnings("unchecked")
    private List<Tuple> rows(String sql, Chosen chosen) {
        Query query = entities.createNativeQuery(sql, Tuple.class);
        chosen.values().forEach(query::setParameter);
        return query.getResultList();
    }

    private static UUID id(Tuple row, String column) {
        return row.get(column, UUID.class);
    }

    private static Instant when(Tuple row, String column) {
        return Objects.requireNonNull(Rows.instant(row.get(column)), column);
    }
}
