package org.culvert.exchange.features;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.culvert.geo.Bounds;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.culvert.platform.Rows;
import org.culvert.platform.sight.Sight;
import org.jspecify.annotations.Nullable;

/** Incidents that stand by themselves, in the order in which they were recorded; for many askers their organisation's alone. */
@ApplicationScoped
class IncidentSource implements FeatureSource {
    private static final String ROWS = """
             from incidents i
            join causes c on c.key = i.cause
            left join places p on p.id = i.place_id
            where not exists (select 1 from incident_joins j where j.joined_incident_id = i.id and j.undone_at is null)
            """;

    private static final String GROUPS = """
            select s.root_id, string_agg(distinct g.key, ', ' order by g.key)
            from standing_incidents s
            join calls k on k.incident_id = s.incident_id
            join reported_animals a on a.call_id = k.id
            left join taxa t on t.id = a.taxon_id
            join taxon_groups g on g.id = coalesce(t.taxon_group_id, a.taxon_group_id)
            where s.root_id = any(cast(:ids as uuid[]))
            group by s.root_id
            """;

    private final EntityManager entities;
    private final RegionService region;
    private final Sight sight;

    IncidentSource(EntityManager entities, RegionService region, Sight sight) {
        this.entities = entities;
        this.region = region;
        this.sight = sight;
    }

    @Override
    public String id() {
        return "incidents";
    }

    @Override
    public String title() {
        return "Incidents";
    }

    @Override
    public String description() {
        return "What happened at one place and time, of any cause, each with what is joined to it counted once. Unless you"
                + " see all incidents, those that your organisation went to or has animals of.";
    }

    @Override
    public ShapeType shapeType() {
        return ShapeType.POINT;
    }

    @Override
    public Class<? extends MapFeature> feature() {
        return IncidentFeature.class;
    }

    @Override
    public Class<? extends Record> properties() {
        return IncidentProperties.class;
    }

    @Override
    public Map<String, String> words() {
        return Map.ofEntries(
                Map.entry("number", "Number of the incident"),
                Map.entry("cause", "Cause, by its key"),
                Map.entry("collision", "Whether the cause is a collision"),
                Map.entry("reportedAt", "When it was first reported"),
                Map.entry("happenedYear", "Year in which it happened; null where nobody knows when"),
                Map.entry("happenedDayOfYear", "Day of that year, counted from 1 for 1 January"),
                Map.entry("happenedHour", "Hour of that day, in the region's time, 0 to 23"),
                Map.entry("taxonGroups", "Keys of the groups of animals that were told of, with commas between"),
                Map.entry("coordinateUncertaintyInMeters", "Within how many metres the place is"),
                Map.entry("roadName", "Name of the road"),
                Map.entry("chainageMetres", "Chainage on the road, in metres"),
                Map.entry("side", "Side of the road, relative to increasing chainage"));
    }

    @Override
    public Set<String> filters() {
        return Set.of("number", "cause", "collision", "roadName");
    }

    @Override
    public String time() {
        return "reportedAt";
    }

    /** Conditions, and the values in them. */
    private record Asked(List<String> wanted, Map<String, Object> values) {
        void want(String condition, String name, Object value) {
            wanted.add(condition);
            values.put(name, value);
        }

        String where() {
            return wanted.isEmpty() ? "" : " and " + String.join(" and ", wanted);
        }
    }

    @Override
    @Transactional
    public Slice page(FeatureQuery query, int limit, @Nullable String after) {
        Asked asked = asked(query);
        if (after != null) {
            UUID last = Identifiers.find(after);
            if (last == null) {
                throw InvalidException.of("cursor", "This is no cursor.", "that of a next link");
            }
            asked.want("i.id > :after", "after", last);
        }
        List<MapFeature> found = read(asked, limit + 1);
        return found.size() > limit
                ? new Slice(found.subList(0, limit), found.get(limit - 1).id().toString())
                : new Slice(found, null);
    }

    @Override
    @Transactional
    public long count(FeatureQuery query) {
        Asked asked = asked(query);
        Query counted = entities.createNativeQuery("select count(*) " + ROWS + asked.where());
        asked.values().forEach(counted::setParameter);
        return ((Number) counted.getSingleResult()).longValue();
    }

    @Override
    @Transactional
    public Optional<MapFeature> find(String id) {
        UUID wanted = Identifiers.find(id);
        if (wanted == null) {
            return Optional.empty();
        }
        Asked asked = asked(FeatureQuery.ALL);
        asked.want("i.id = :id", "id", wanted);
        return read(asked, 1).stream().findFirst();
    }

    private Asked asked(FeatureQuery query) {
        var asked = new Asked(new ArrayList<>(), new LinkedHashMap<>());
        if (sight.seesOwnOnly("incident-feature")) {
            UUID organisation = sight.viewer().organisationId();
            if (organisation == null) {
                asked.wanted().add("false");
            } else {
                asked.want(
                        "i.id in (select h.id from incident_holders h where h.organisation_id = :organisation)",
                        "organisation",
                        organisation);
            }
        }
        Instant from = query.time().from();
        if (from != null) {
            asked.want("i.reported_at >= :from", "from", from);
        }
        Instant to = query.time().to();
        if (to != null) {
            asked.want("i.reported_at <= :to", "to", to);
        }
        query.equal().forEach((property, value) -> asked.want(column(property) + " = :" + property, property, value));
        Bounds box = query.box();
        if (box != null) {
            String between = box.west() <= box.east()
                    ? "p.decimal_longitude between :west and :east"
                    : "(p.decimal_longitude >= :west or p.decimal_longitude <= :east)";
            asked.wanted().add("(p.id is null or (p.decimal_latitude between :south and :north and " + between + "))");
            asked.values().put("west", box.west());
            asked.values().put("east", box.east());
            asked.values().put("south", box.south());
            asked.values().put("north", box.north());
        }
        return asked;
    }

    private static String column(String property) {
        return switch (property) {
            case "number" -> "i.number";
            case "cause" -> "i.cause";
            case "collision" -> "c.collision";
            case "roadName" -> "p.road_name";
            default -> throw new IllegalArgumentException("nothing is asked for by " + property);
        };
    }

    private List<MapFeature> read(Asked asked, int limit) {
        Query query = entities.createNativeQuery("""
                select i.id, i.number, i.cause, c.collision, i.reported_at, i.happened_at, p.decimal_latitude,
                       p.decimal_longitude, p.coordinate_uncertainty_in_meters, p.road_name, p.chainage_metres, p.side
                """ + ROWS + asked.where() + " order by i.id limit " + limit);
        asked.values().forEach(query::setParameter);
        ZoneId zone = region.zone();
        List<Object[]> rows = new ArrayList<>();
        for (Object row : query.getResultList()) {
            rows.add((Object[]) row);
        }
        Map<UUID, String> groups =
                groups(rows.stream().map(row -> (UUID) row[0]).toList());
        List<MapFeature> features = new ArrayList<>();
        for (Object[] row : rows) {
            features.add(feature(row, groups.get((UUID) row[0]), zone));
        }
        return features;
    }

    /** Keys of the groups that each incident tells of, and those that are joined to it; in one question. */
    private Map<UUID, String> groups(List<UUID> incidentIds) {
        Map<UUID, String> groups = new HashMap<>();
        for (Object row : entities.createNativeQuery(GROUPS)
                .setParameter("ids", incidentIds.toArray(UUID[]::new))
                .getResultList()) {
            Object[] columns = (Object[]) row;
            groups.put((UUID) columns[0], (String) columns[1]);
        }
        return groups;
    }

    private static MapFeature feature(Object[] row, @Nullable String groups, ZoneId zone) {
        Instant happened = Rows.instant(row[5]);
        ZonedDateTime local = happened == null ? null : happened.atZone(zone);
        return new IncidentFeature(
                "Feature",
                (UUID) row[0],
                Shape.pointOf(Rows.number(row[7]), Rows.number(row[6])),
                new IncidentProperties(
                        ((Number) row[1]).intValue(),
                        (String) row[2],
                        (Boolean) row[3],
                        Objects.requireNonNull(Rows.instant(row[4])),
                        local == null ? null : local.getYear(),
                        local == null ? null : local.getDayOfYear(),
                        local == null ? null : local.getHour(),
                        groups,
                        Rows.number(row[8]),
                        (String) row[9],
                        Rows.number(row[10]),
                        (String) row[11]),
                null);
    }
}
