package org.culvert.release.land;

import jakarta.persistence.Basic;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Table;
import java.time.LocalDate;
import org.culvert.geo.Shapes;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** A piece of land, with its polygons as well-known binary and the box that holds them. */
@Entity
@Table(name = "land_areas")
class LandArea extends Recorded {
    String kind;
    String name;
    String source;
    LocalDate fromDay;

    @Nullable
    LocalDate untilDay;

    @Basic(fetch = FetchType.LAZY)
    byte[] shape;

    double west;
    double south;
    double east;
    double north;

    protected LandArea() {}

    static LandArea of(LandService.LandEntry entry, Geometry shape) {
        var row = new LandArea();
        row.kind = entry.kind().name();
        row.name = entry.name();
        row.source = entry.source();
        row.fromDay = entry.from();
        row.untilDay = entry.until();
        row.shape = Shapes.wkb(shape);
        Envelope box = shape.getEnvelopeInternal();
        row.west = box.getMinX();
        row.south = box.getMinY();
        row.east = box.getMaxX();
        row.north = box.getMaxY();
        return row;
    }

    void end(LocalDate until, String reason) {
        untilDay = until;
        revisedBecause(reason);
    }
}
