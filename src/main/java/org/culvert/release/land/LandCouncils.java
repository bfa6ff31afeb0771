package org.culvert.release.land;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import org.culvert.geo.Position;
import org.culvert.geo.Shapes;
import org.culvert.hotspot.CouncilAreas;
import org.culvert.release.rules.Land.Kind;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/** Council areas among the land. */
@ApplicationScoped
class LandCouncils implements CouncilAreas {
    private record Area(String name, PreparedGeometry shape) {}

    private final LandService.Rows rows;

    LandCouncils(LandService.Rows rows) {
        this.rows = rows;
    }

    @Override
    @Transactional
    public OnADay open(LocalDate day) {
        List<Area> areas = rows
                .list(
                        "kind = ?1 and fromDay <= ?2 and (untilDay is null or untilDay > ?2) order by name, id",
                        Kind.councilArea.name(),
                        day)
                .stream()
                .map(row -> new Area(row.name, PreparedGeometryFactory.prepare(Shapes.fromWkb(row.shape))))
                .toList();
        return new OnADay() {
            @Override
            public List<String> names() {
                return areas.stream().map(Area::name).distinct().toList();
            }

            @Override
            public List<String> at(Position position) {
                Point point = Shapes.point(position);
                return areas.stream()
                        .filter(area -> area.shape.covers(point))
                        .map(Area::name)
                        .distinct()
                        .toList();
            }
        };
    }
}
