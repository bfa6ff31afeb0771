package org.culvert.call;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.platform.Rows;

/**
 * Finds incidents that may be the same: near in space and time (see {@link Nearness}) and in kind: the same taxon group, or one
 * of the two does not say. It offers; it never joins.
 */
@ApplicationScoped
class SameIncidentFinder {
    private static final int OFFERED_AT_MOST = 5;
    private static final long MINUTES_TOLD = 120;

    private final EntityManager entities;

    SameIncidentFinder(EntityManager entities) {
        this.entities = entities;
    }

    private record Seen(
            UUID id, long number, Position position, double uncertaintyMetres, Instant reportedAt, Set<UUID> groups) {}

    @Transactional
    List<CallReceipt.Candidate> find(UUID incidentId) {
        List<Seen> self =
                seen("i.id = :id", incidentId, Instant.EPOCH, Instant.EPOCH.plus(Duration.ofDays(365 * 400L)));
        if (self.isEmpty()) {
            return List.of();
        }
        return find(self.get(0));
    }

    /** Incidents that a call may be about that is not kept yet. */
    @Transactional
    List<CallReceipt.Candidate> find(Position position, double uncertaintyMetres, Instant at, Set<UUID> groups) {
        return find(new Seen(new UUID(0, 0), 0, position, uncertaintyMetres, at, groups));
    }

    private List<CallReceipt.Candidate> find(Seen asked) {
        List<CallReceipt.Candidate> found = new ArrayList<>();
        for (Seen other : seen(
                "i.id <> :id",
                asked.id(),
                asked.reportedAt().minus(Nearness.WINDOW),
                asked.reportedAt().plus(Nearness.WINDOW))) {
            double metres = Geodesy.metresBetween(asked.position(), other.position());
            boolean near = metres <= Nearness.reachMetres(asked.uncertaintyMetres(), other.uncertaintyMetres());
            if (near && alike(asked.groups(), other.groups())) {
                long minutes = Math.abs(
                        Duration.between(asked.reportedAt(), other.reportedAt()).toMinutes());
                double hours = minutes / 60.0;
                String why = String.format(
                        java.util.Locale.ROOT,
                        "%.0f m away, reported %s apart%s",
                        metres,
                        minutes < MINUTES_TOLD ? minutes + " min" : Math.round(hours) + " hours",
                        asked.groups().isEmpty() || other.groups().isEmpty() ? ", kind not known" : ", same kind");
                found.add(new CallReceipt.Candidate(other.id(), other.number(), metres, hours, why));
            }
        }
        found.sort(Comparator.comparingDouble(candidate ->
                candidate.metresApart() / Nearness.MARGIN_METRES + candidate.hoursApart() / Nearness.WINDOW.toHours()));
        return found.subList(0, Math.min(OFFERED_AT_MOST, found.size()));
    }

    private static boolean alike(Set<UUID> a, Set<UUID> b) {
        return a.isEmpty() || b.isEmpty() || a.stream().anyMatch(b::contains);
    }

    private List<Seen> seen(String which, UUID incidentId, Instant from, Instant to) {
        List<?> rows = entities.createNativeQuery("""
                        select i.id, i.number, p.decimal_latitude, p.decimal_longitude,
                               p.coordinate_uncertainty_in_meters, i.reported_at,
                               coalesce((select string_agg(distinct a.taxon_group_id::text, ',')
                                  from calls c join reported_animals a on a.call_id = c.id
                                  where c.incident_id = i.id), '')
                        from incidents i join places p on p.id = i.place_id
                        where %s and i.reported_at between :from and :to
                          and not exists (select 1 from incident_joins j
                                          where j.joined_incident_id = i.id and j.undone_at is null)
                        """.formatted(which))
                .setParameter("id", incidentId)
                .setParameter("from", from)
                .setParameter("to", to)
                .getResultList();
        return rows.stream().map(row -> seen((Object[]) row)).toList();
    }

    private static Seen seen(Object[] row) {
        Set<UUID> groups = new HashSet<>();
        for (String group : ((String) row[6]).split(",", -1)) {
            if (!group.isEmpty()) {
                groups.add(UUID.fromString(group));
            }
        }
        return new Seen(
                (UUID) row[0],
                ((Number) row[1]).longValue(),
                new Position(((Number) row[2]).doubleValue(), ((Number) row[3]).doubleValue()),
                ((Number) row[4]).doubleValue(),
                java.util.Objects.requireNonNull(Rows.instant(row[5])),
                groups);
    }
}
