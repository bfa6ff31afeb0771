package org.culvert.hotspot.works;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.culvert.geo.Position;
import org.culvert.hotspot.CouncilAreas;
import org.culvert.road.network.RoadNetwork;

/** Says in whose area stretches of pieces of road lie, by their ends and their middle. */
final class PieceCouncils {
    private final RoadNetwork network;
    private final CouncilAreas.OnADay areas;
    private final Map<String, RoadPieces.Piece> pieces = new HashMap<>();

    PieceCouncils(RoadNetwork network, RoadPieces roads, CouncilAreas.OnADay areas) {
        this.network = network;
        this.areas = areas;
        roads.all().forEach(piece -> pieces.put(piece.id(), piece));
    }

    /** Names in order; none where nobody entered the area. */
    List<String> of(String piece, double fromChainageMetres, double toChainageMetres) {
        if (areas.names().isEmpty()) {
            return List.of();
        }
        var names = new TreeSet<String>();
        for (double chainage :
                new double[] {fromChainageMetres, (fromChainageMetres + toChainageMetres) / 2, toChainageMetres}) {
            names.addAll(areas.at(at(piece, chainage)));
        }
        return List.copyOf(names);
    }

    private Position at(String id, double chainage) {
        RoadPieces.Piece piece = pieces.get(id);
        if (piece == null) {
            throw new IllegalStateException("no piece of road is called " + id);
        }
        int link = piece.links().get(0);
        for (int next : piece.links()) {
            if (network.fromChainage(next) <= chainage) {
                link = next;
            }
        }
        double metres = Math.max(0, chainage - network.fromChainage(link));
        return network.positionAt(link, Math.min(metres, network.graph().length(link)));
    }
}
