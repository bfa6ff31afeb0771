package org.culvert.hotspot.works;

import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.stats.rate.TreatedStretch.Part;
import org.jspecify.annotations.Nullable;

/**
 * The road at works: inside, at the ends, and beyond, on every carriageway.
 *
 * @param zones in the order of the parts
 */
record EffectZones(List<Zone> zones) {
    /** One piece of one part. */
    record Zone(Part part, RoadPieces.Part road) {
        boolean holds(RoadPieces.Piece piece, double chainage) {
            return road.piece().number() == piece.number() && road.from() <= chainage && chainage <= road.to();
        }
    }

    static EffectZones of(List<RoadPieces.Part> inside, double endsMetres, double beyondMetres) {
        List<Zone> zones = new ArrayList<>();
        inside.forEach(part -> zones.add(new Zone(Part.INSIDE, part)));
        for (RoadPieces.Part part : inside) {
            RoadPieces.Part ends = StandingWorks.widened(part, endsMetres);
            around(zones, Part.ENDS, part, ends);
        }
        for (RoadPieces.Part part : inside) {
            RoadPieces.Part ends = StandingWorks.widened(part, endsMetres);
            around(zones, Part.BEYOND, ends, StandingWorks.widened(ends, beyondMetres));
        }
        return new EffectZones(zones);
    }

    private static void around(List<Zone> zones, Part kind, RoadPieces.Part within, RoadPieces.Part whole) {
        if (whole.from() < within.from()) {
            zones.add(new Zone(kind, new RoadPieces.Part(within.piece(), whole.from(), within.from())));
        }
        if (within.to() < whole.to()) {
            zones.add(new Zone(kind, new RoadPieces.Part(within.piece(), within.to(), whole.to())));
        }
    }

    /** The first zone that holds a place: what lies on a border counts inside, or at the ends. */
    @Nullable
    Zone of(RoadPieces pieces, Collisions.Placed placed) {
        RoadPieces.Piece piece = pieces.pieceOf(placed.link());
        double chainage = pieces.chainage(placed.link(), placed.metres());
        return zones.stream()
                .filter(zone -> zone.holds(piece, chainage))
                .findFirst()
                .orElse(null);
    }

    double lengthMetres(Part part) {
        return zones.stream()
                .filter(zone -> part == Part.COMBINED || zone.part() == part)
                .mapToDouble(zone -> zone.road().lengthMetres())
                .sum();
    }

    /** All of it, to be left out of what is usual. */
    List<RoadPieces.Part> roads() {
        return zones.stream().map(Zone::road).toList();
    }
}
