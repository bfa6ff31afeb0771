package org.culvert.call;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.geo.Position;
import org.culvert.platform.Actor;
import org.culvert.platform.ConflictException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.Rows;
import org.culvert.platform.sight.Sight;
import org.culvert.road.PlaceAsGiven;
import org.jspecify.annotations.Nullable;

/** Shows incidents, joins two that are one, undoes that, and hands road evidence what it may count. */
@ApplicationScoped
public class IncidentService {
    private static final String ALONE =
            "not exists (select 1 from incident_joins j where j.joined_incident_id = h.id and j.undone_at is null)";
    private static final String LATE = " and exists (select 1 from incidents i where i.id = h.id"
            + " and i.recorded_at > i.reported_at + interval '1 hour')";

    private final Ledger.Incidents incidents;
    private final Ledger.Places places;
    private final Ledger.Joins joins;
    private final CallService calls;
    private final IncidentReader reader;
    private final EntityManager entities;
    private final Actor actor;
    private final Sight sight;
    private final Clock clock;

    IncidentService(
            Ledger.Incidents incidents,
            Ledger.Places places,
            Ledger.Joins joins,
            CallService calls,
            IncidentReader reader,
            EntityManager entities,
            Actor actor,
            Sight sight,
            Clock clock) {
        this.incidents = incidents;
        this.places = places;
        this.joins = joins;
        this.calls = calls;
        this.reader = reader;
        this.entities = entities;
        this.actor = actor;
        this.sight = sight;
        this.clock = clock;
    }

    /**
     * @param showPeople whether the asker may see callers and their words
     */
    @Transactional
    public IncidentView getIncident(UUID id, boolean showPeople) {
        return reader.view(require(id), showPeople);
    }

    /**
     * Incidents that stand by themselves, newest first: for those who see only their own organisation's,
     * these.
     *
     * @param lateOnly only those entered more than an hour after they were reported
     */
    @Transactional
    public Page<IncidentView> listIncidents(int limit, @Nullable UUID before, boolean lateOnly, boolean showPeople) {
        List<Incident> rows = sight.seesOwnOnly("incident")
                ? incidents.list(
                        "id in ?1 order by id desc",
                        sight.listOwn("incident", before, limit + 1, lateOnly ? ALONE + LATE : ALONE))
                : incidents
                        .find(
                                "(?1 is null or id < ?1) and (?2 = false or recordedAt > reportedAt + 1 hour)"
                                        + " and id not in (select j.joinedIncidentId from IncidentJoin j where"
                                        + " j.undoneAt is null) order by id desc",
                                before,
                                lateOnly)
                        .page(0, limit + 1)
                        .list();
        return Page.of(
                rows, limit, reader.viewer(rows, showPeople), row -> row.id().toString());
    }

    /** Joins one incident to another, by someone's decision. */
    @Transactional
    public IncidentView join(UUID keptId, UUID joinedId, String reason, boolean showPeople) {
        Incident kept = require(keptId);
        require(joinedId);
        lockJoins();
        if (reader.tree(joinedId).contains(keptId)) {
            throw new ConflictException("Incident " + kept.number + " already stands under that one, or is that one.");
        }
        joins.persistAndFlush(new IncidentJoin(keptId, joinedId, reason, clock.instant()));
        return reader.view(kept, showPeople);
    }

    /** Takes a join back; both incidents are again what they were, with their own calls and animals. */
    @Transactional
    public IncidentView undoJoin(UUID joinId, String reason, boolean showPeople) {
        IncidentJoin join = requireJoin(joinId);
        if (join.undoneAt != null) {
            throw new ConflictException("That join is undone already.");
        }
        join.undo(clock.instant(), actor.accountId(), reason);
        joins.flush();
        return reader.view(require(join.joinedIncidentId), showPeople);
    }

    /** A decision that two incidents are one, undone ones too. */
    @Transactional
    public IncidentView.JoinView getJoin(UUID id) {
        return reader.view(requireJoin(id));
    }

    private IncidentJoin requireJoin(UUID id) {
        return joins.findByIdOptional(id).orElseThrow(() -> new NotFoundException("join", id));
    }

    /** One join at a time: several at once, each of them right, could make a circle together. */
    private void lockJoins() {
        entities.createNativeQuery("select pg_advisory_xact_lock(hashtext('incident_joins'))", Object.class)
                .getSingleResult();
    }

    /** Puts an incident at another place, because of what became known; the old one stays in its revisions. */
    @Transactional
    public IncidentView movePlace(UUID id, PlaceAsGiven place, String reason, boolean showPeople) {
        Incident incident = require(id);
        incident.moveTo(calls.keepPlace(place, null), reason);
        incidents.flush();
        return reader.view(incident, showPeople);
    }

    /** The place of an incident as understood now, or null where none is known. */
    @Transactional
    public @Nullable PlaceView placeOf(UUID incidentId) {
        UUID placeId = require(incidentId).placeId;
        return placeId == null ? null : places.findById(placeId).view();
    }

    /** Keys of the taxon groups that the calls of an incident, and of those joined to it, tell of. */
    @Transactional
    public Set<UUID> taxonGroupsOf(UUID incidentId) {
        List<?> found = entities.createNativeQuery("""
                        select distinct a.taxon_group_id from calls c join reported_animals a on a.call_id = c.id
                        where c.incident_id in (:ids) and a.taxon_group_id is not null
                        """)
                .setParameter("ids", reader.tree(incidentId))
                .getResultList();
        return found.stream().map(UUID.class::cast).collect(Collectors.toSet());
    }

    /**
     * Every incident reported in a period, as road evidence sees it: those that do not count are in it too, so that they
     * can be counted by reason.
     */
    @Transactional
    public List<CollisionReport> listCollisionReports(Instant from, Instant to) {
        List<?> rows = entities.createNativeQuery("""
                        select i.id, r.root_id is distinct from i.id, c.collision, i.happened_at, i.happened_not_before,
                               i.reported_at, i.place_id is not null, p.road_link_id, p.metres_along_link,
                               p.chainage_metres, p.chainage_precision_metres, p.coordinate_uncertainty_in_meters,
                               coalesce(p.road_is_in_doubt, false), g.groups,
                               case when p.road_is_in_doubt then
                                 (select string_agg(o ->> 'roadLinkId' || ' ' || (o ->> 'metresAlongLink'), ',')
                                  from jsonb_array_elements(p.other_roads) o) end,
                               p.decimal_latitude, p.decimal_longitude
                        from incidents i
                        join causes c on c.key = i.cause
                        join incident_roots r on r.incident_id = i.id
                        left join places p on p.id = i.place_id
                        left join (select r2.root_id, string_agg(distinct t.key, ',') as groups
                                   from incident_roots r2
                                   join calls k on k.incident_id = r2.incident_id
                                   join reported_animals a on a.call_id = k.id
                                   join taxon_groups t on t.id = a.taxon_group_id
                                   group by r2.root_id) g on g.root_id = i.id
                        where coalesce(i.happened_at, i.reported_at) >= :from
                          and coalesce(i.happened_at, i.reported_at) < :to
                        order by i.reported_at, i.number
                        """)
                .setParameter("from", from)
                .setParameter("to", to)
                .getResultList();
        List<CollisionReport> reports = new ArrayList<>(rows.size());
        for (Object row : rows) {
            reports.add(report((Object[]) row));
        }
        return reports;
    }

    private static CollisionReport report(Object[] row) {
        return new CollisionReport(
                (UUID) row[0],
                (Boolean) row[1],
                (Boolean) row[2],
                Rows.instant(row[3]),
                Rows.instant(row[4]),
                Objects.requireNonNull(Rows.instant(row[5])),
                (Boolean) row[6],
                (UUID) row[7],
                Rows.number(row[8]),
                Rows.number(row[9]),
                Rows.number(row[10]),
                Rows.number(row[11]),
                (Boolean) row[12],
                otherRoads((String) row[14]),
                row[13] == null ? Set.of() : new TreeSet<>(List.of(((String) row[13]).split(","))),
                row[15] == null ? null : new Position((Double) row[15], (Double) row[16]));
    }

    private static List<CollisionReport.OtherRoad> otherRoads(@Nullable String told) {
        List<CollisionReport.OtherRoad> roads = new ArrayList<>();
        for (String one : told == null ? new String[0] : told.split(",")) {
            int space = one.indexOf(' ');
            roads.add(new CollisionReport.OtherRoad(
                    UUID.fromString(one.substring(0, space)), Double.parseDouble(one.substring(space + 1))));
        }
        return roads;
    }

    private Incident require(UUID id) {
        return incidents.findByIdOptional(id).orElseThrow(() -> new NotFoundException("incident", id));
    }
}
