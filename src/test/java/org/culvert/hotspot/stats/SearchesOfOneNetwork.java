package org.culvert.hotspot.stats;

import java.util.Collection;
import java.util.List;
import org.culvert.road.network.RoadGraph;

/** Searches of one network, for which the rows of all its pieces are worked out once and not for each search again. */
public final class SearchesOfOneNetwork {
    private static final int THREADS = 2;

    private final HotspotSearch search;
    private final Twins twins;
    private final Smoother smoother;

    /** @param events all that will be searched for, since it hangs on how their places were recorded which rows there are */
    public SearchesOfOneNetwork(RoadGraph graph, Chainage chainage, Settings settings, Collection<RoadEvent> events) {
        var pieces = new Pieces(graph, settings.pieceMetres());
        this.search = new HotspotSearch(graph, chainage, settings);
        this.twins = new Twins(pieces, Carriageways.NONE);
        this.smoother =
                Smoother.of(settings.kernel(), pieces, chainage, twins, settings.pieceMetres(), events, true, THREADS);
    }

    /** As {@link HotspotSearch#search} finds. */
    public Findings search(List<RoadEvent> events, Chance chance) {
        return search.search(events, chance, smoother, twins, THREADS, done -> {});
    }
}
