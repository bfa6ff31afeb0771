package org.culvert.call;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Shows incidents with what is joined to them, a page of them in as many questions as one. */
@ApplicationScoped
class IncidentReader {
    private final Ledger.Joins joins;
    private final PlaceReader places;
    private final CallReader calls;
    private final Instance<IncidentProgress> progress;
    private final EntityManager entities;
    private final RecordViews records;

    IncidentReader(
            Ledger.Joins joins,
            PlaceReader places,
            CallReader calls,
            Instance<IncidentProgress> progress,
            EntityManager entities,
            RecordViews records) {
        this.joins = joins;
        this.places = places;
        this.calls = calls;
        this.progress = progress;
        this.entities = entities;
        this.records = records;
    }

    IncidentView view(Incident row, boolean showPeople) {
        return viewer(List.of(row), showPeople).apply(row);
    }

    /** Reads at once what the views of some incidents need. */
    Function<Incident, IncidentView> viewer(List<Incident> rows, boolean showPeople) {
        if (rows.isEmpty()) {
            return row -> view(row, showPeople);
        }
        List<UUID> ids = rows.stream().map(Incident::id).toList();
        Map<UUID, Set<UUID>> trees = trees(ids);
        Map<UUID, List<UUID>> roots = new HashMap<>();
        trees.forEach((root, tree) -> tree.forEach(
                id -> roots.computeIfAbsent(id, any -> new ArrayList<>()).add(root)));
        Map<UUID, String> told = new HashMap<>();
        progress.forEach(room -> told.putAll(room.progressOf(roots.keySet())));
        List<IncidentJoin> holding =
                joins.list("keptIncidentId in ?1 and undoneAt is null order by id", roots.keySet());
        records.lookUp(rows);
        records.lookUp(holding);
        Map<UUID, List<IncidentView.JoinView>> held = new HashMap<>();
        holding.forEach(join -> share(held, roots, join.keptIncidentId, view(join)));
        Map<UUID, UUID> under = joins.list("joinedIncidentId in ?1 and undoneAt is null", ids).stream()
                .collect(Collectors.toMap(
                        join -> join.joinedIncidentId, join -> join.keptIncidentId, (one, other) -> one));
        Map<UUID, List<CallView>> made = new HashMap<>();
        calls.callsOf(roots.keySet(), showPeople).forEach(call -> share(made, roots, call.incidentId(), call));
        Map<UUID, PlaceView> where = places.placesById(
                rows.stream().map(row -> row.placeId).filter(Objects::nonNull).toList());
        Map<String, Boolean> collisions = collisions();
        return row -> new IncidentView(
                row.id(),
                row.number,
                row.cause,
                Objects.requireNonNull(collisions.get(row.cause)),
                row.happenedAt(),
                row.happenedNotBefore,
                row.reportedAt,
                row.placeId == null ? null : where.get(row.placeId),
                furthest(trees.getOrDefault(row.id(), Set.of()), told),
                under.get(row.id()),
                List.copyOf(held.getOrDefault(row.id(), List.of())),
                List.copyOf(made.getOrDefault(row.id(), List.of())),
                records.of(row, row.reportedAt));
    }

    IncidentView.JoinView view(IncidentJoin join) {
        return new IncidentView.JoinView(
                join.id(),
                join.keptIncidentId,
                join.joinedIncidentId,
                join.reason,
                join.recordedAt(),
                join.undoneAt,
                join.undoneReason,
                records.of(join));
    }

    /** An incident and all that are joined to it, however deep. */
    Set<UUID> tree(UUID incidentId) {
        return trees(List.of(incidentId)).getOrDefault(incidentId, Set.of());
    }

    private Map<UUID, Set<UUID>> trees(Collection<UUID> incidentIds) {
        List<?> found = entities.createNativeQuery("""
                        with recursive down (root, id) as (
                            select i, i from unnest(cast(:ids as uuid[])) i
                            union
                            select down.root, j.joined_incident_id from down
                            join incident_joins j on j.kept_incident_id = down.id and j.undone_at is null)
                        select root, id from down
                        """)
                .setParameter("ids", incidentIds.toArray(UUID[]::new))
                .getResultList();
        Map<UUID, Set<UUID>> trees = new HashMap<>();
        for (Object row : found) {
            Object[] columns = (Object[]) row;
            trees.computeIfAbsent((UUID) columns[0], root -> new LinkedHashSet<>())
                    .add((UUID) columns[1]);
        }
        return trees;
    }

    /** Gives what belongs to an incident to all under whom that one stands, and leaves the order as it is. */
    private static <T> void share(Map<UUID, List<T>> among, Map<UUID, List<UUID>> roots, UUID incidentId, T part) {
        roots.getOrDefault(incidentId, List.of())
                .forEach(root ->
                        among.computeIfAbsent(root, any -> new ArrayList<>()).add(part));
    }

    /** An incident with joined ones is as far as the one that still needs someone. */
    private static String furthest(Set<UUID> tree, Map<UUID, String> told) {
        Set<@Nullable String> steps = tree.stream().map(told::get).collect(Collectors.toSet());
        for (String step : List.of("underway", "offered", "closed")) {
            if (steps.contains(step)) {
                return step;
            }
        }
        return "logged";
    }

    /** Whether each cause is a collision. */
    private Map<String, Boolean> collisions() {
        List<?> rows =
                entities.createNativeQuery("select key, collision from causes").getResultList();
        return rows.stream().map(row -> (Object[]) row).collect(Collectors.toMap(row -> (String) row[0], row ->
                (Boolean) row[1]));
    }
}
