package org.culvert.dispatch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.Rows;
import org.jspecify.annotations.Nullable;

/** Incidents that are not closed, in the order in which they need somebody. */
@ApplicationScoped
public class OpenIncidentService {
    /**
     * An incident that is not closed.
     *
     * @param progress {@code logged}, {@code offered} or {@code underway}
     * @param since the last call about it: how long it waits
     * @param callCount with those of the incidents joined to it
     * @param animals what callers called them, or the name of the taxon
     * @param placeKnown whether anybody has said where it is
     */
    public record OpenIncidentView(
            UUID incidentId,
            long incidentNumber,
            Need need,
            String progress,
            Instant since,
            int callCount,
            List<String> animals,
            boolean placeKnown,
            @Nullable String roadName,
            @Nullable Double chainageMetres,
            boolean roadIsInDoubt,
            @Nullable Double decimalLatitude,
            @Nullable Double decimalLongitude) {}

    private final EntityManager entities;
    private final Clock clock;

    OpenIncidentService(EntityManager entities, Clock clock) {
        this.entities = entities;
        this.clock = clock;
    }

    /**
     * All of them: most needy first, and of those with the same need the one that waits longest.
     *
     * <p>A family of joined incidents is open where somebody is on the way, or called after all that ended it. Then its last
     * caller called after all that ended the incident of that call: so only such incidents, and those joined to them, are
     * looked at, and not all that ever were.
     */
    @Transactional
    public List<OpenIncidentView> listOpen() {
        Instant now = clock.instant();
        List<?> rows = entities.createNativeQuery("""
                        with recursive candidates as (
                            select k.incident_id as id from calls k
                            where not exists (
                                select from closings c where c.incident_id = k.incident_id and c.happened_at
                                    >= case when k.import_id is null then k.recorded_at else k.happened_at end)
                            and not exists (
                                select from attendances a where a.incident_id = k.incident_id and a.ended_at
                                    >= case when k.import_id is null then k.recorded_at else k.happened_at end)
                            union
                            select a.incident_id from attendances a where a.ended_at is null),
                        kept as (
                            select id from candidates
                            union
                            select j.kept_incident_id from kept
                            join incident_joins j on j.joined_incident_id = kept.id and j.undone_at is null),
                        family as (
                            select k.id as root_id, k.id as incident_id from kept k
                            where not exists (
                                select from incident_joins j where j.joined_incident_id = k.id and j.undone_at is null)
                            union
                            select f.root_id, j.joined_incident_id from family f
                            join incident_joins j on j.kept_incident_id = f.incident_id and j.undone_at is null),
                        open_roots as (
                            select r.root_id as id,
                                   max(case when k.import_id is null then k.recorded_at else k.happened_at end) as called,
                                   max(k.happened_at) as rang,
                                   count(*) as calls,
                                   bool_or(k.anyone_hurt = 'yes') as hurt
                            from family r join calls k on k.incident_id = r.incident_id
                            group by r.root_id),
                        outings as (
                            select r.root_id as id,
                                   bool_or(a.ended_at is null) as going,
                                   bool_or(a.ended_at is null and (p.accepted_at is not null or a.departed_at is not null
                                           or a.arrived_at is not null)) as underway,
                                   max(a.ended_at) as ended,
                                   max(greatest(a.happened_at, p.accepted_at, a.departed_at, a.arrived_at)) as step
                            from family r join attendances a on a.incident_id = r.incident_id
                            join attendance_people p on p.attendance_id = a.id and p.leads
                            group by r.root_id),
                        closed as (
                            select r.root_id as id, max(c.happened_at) as closed
                            from family r join closings c on c.incident_id = r.incident_id
                            group by r.root_id),
                        named as (
                            select r.root_id as id,
                                   bool_or(a.vitality = 'alive') as alive,
                                   bool_or(a.vitality = 'unknown') as perhaps,
                                   bool_or(a.vitality = 'dead' and g.pouch and a.pouch_checked <> 'yes') as pouch,
                                   string_agg(distinct coalesce(t.vernacular_name, a.verbatim_identification, g.name), chr(31))
                                       as names
                            from family r join calls k on k.incident_id = r.incident_id
                            join reported_animals a on a.call_id = k.id
                            left join taxa t on t.id = a.taxon_id
                            left join taxon_groups g on g.id = a.taxon_group_id
                            group by r.root_id)
                        select i.id, i.number,
                               case when o.underway then 'underway' when o.going then 'offered' else 'logged' end,
                               f.rang, greatest(f.rang, o.step), f.calls, f.hurt,
                               coalesce(n.alive, false), coalesce(n.perhaps, n.names is null), coalesce(n.pouch, false),
                               n.names, i.place_id is not null, p.road_name, p.chainage_metres, p.road_is_in_doubt,
                               p.decimal_latitude, p.decimal_longitude
                        from open_roots f join incidents i on i.id = f.id
                        left join outings o on o.id = f.id
                        left join closed c on c.id = f.id
                        left join places p on p.id = i.place_id
                        left join named n on n.id = f.id
                        where coalesce(o.going, false)
                           or greatest(o.ended, c.closed) is null or greatest(o.ended, c.closed) < f.called
                        """).getResultList();
        List<OpenIncidentView> views = new ArrayList<>(rows.size());
        for (Object row : rows) {
            views.add(view((Object[]) row, now));
        }
        views.sort(Comparator.comparing(OpenIncidentView::need)
                .thenComparing(OpenIncidentView::since)
                .thenComparing(OpenIncidentView::incidentNumber));
        return views;
    }

    private static OpenIncidentView view(Object[] row, Instant now) {
        String progress = (String) row[2];
        String names = (String) row[10];
        Need need = Need.of(
                new Need.Facts(
                        progress,
                        (Boolean) row[6],
                        (Boolean) row[7],
                        (Boolean) row[8],
                        (Boolean) row[9],
                        Objects.requireNonNull(Rows.instant(row[4]))),
                now);
        return new OpenIncidentView(
                (UUID) row[0],
                ((Number) row[1]).longValue(),
                need,
                progress,
                Objects.requireNonNull(Rows.instant(row[3])),
                ((Number) row[5]).intValue(),
                names == null ? List.of() : List.of(names.split("\u001f")),
                (Boolean) row[11],
                (String) row[12],
                Rows.number(row[13]),
                Boolean.TRUE.equals(row[14]),
                Rows.number(row[15]),
                Rows.number(row[16]));
    }
}
