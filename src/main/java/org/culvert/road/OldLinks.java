package org.culvert.road;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.geo.Shapes;
import org.locationtech.jts.geom.LineString;

/** Links of any version of the roads, one by one. */
@ApplicationScoped
public class OldLinks {
    private final EntityManager entities;

    OldLinks(EntityManager entities) {
        this.entities = entities;
    }

    /**
     * A link as it was.
     *
     * @param course longitude and latitude in turn
     */
    public record OldLink(UUID lastingId, double lengthMetres, double[] course) {
        /** How far along it is a point, from 0 to 1. */
        public double part(double metres) {
            return Math.max(0, Math.min(1, metres / lengthMetres));
        }

        public Position positionAt(double metres) {
            double left = part(metres) * lengthMetres;
            for (int i = 0; i + 3 < course.length; i += 2) {
                var from = new Position(course[i + 1], course[i]);
                var to = new Position(course[i + 3], course[i + 2]);
                double length = Geodesy.metresBetween(from, to);
                if (left <= length && length > 0) {
                    double part = left / length;
                    return new Position(
                            from.latitude() + part * (to.latitude() - from.latitude()),
                            from.longitude() + part * (to.longitude() - from.longitude()));
                }
                left -= length;
            }
            return new Position(course[course.length - 1], course[course.length - 2]);
        }
    }

    @Transactional
    public Map<UUID, OldLink> find(Collection<UUID> ids) {
        Map<UUID, OldLink> links = new HashMap<>();
        if (ids.isEmpty()) {
            return links;
        }
        List<Object[]> rows = entities.createNativeQuery(
                        "SELECT id, lasting_id, length_metres, course FROM road_links WHERE id IN (:ids)",
                        Object[].class)
                .setParameter("ids", Set.copyOf(ids))
                .getResultList();
        for (Object[] row : rows) {
            double[] course = Shapes.longitudeLatitude((LineString) Shapes.fromWkb((byte[]) row[3]));
            links.put((UUID) row[0], new OldLink((UUID) row[1], ((Number) row[2]).doubleValue(), course));
        }
        return links;
    }
}
