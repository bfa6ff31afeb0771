package org.culvert.hotspot.works;

import jakarta.enterprise.context.ApplicationScoped;
import org.culvert.hotspot.AuthoritySight;
import org.culvert.platform.InvalidException;
import org.culvert.road.RoadService;
import org.jspecify.annotations.Nullable;

/** Finds the stretch around another one of which the asker may be told counts. */
@ApplicationScoped
public class ToldStretches {
    /** A stretch of a road whose counts the asker may have. */
    public record Told(String road, double from, double to) {}

    private final RoadService roads;
    private final AuthoritySight authority;

    ToldStretches(RoadService roads, AuthoritySight authority) {
        this.roads = roads;
        this.authority = authority;
    }

    /**
     * To whole metres outwards; to whom small numbers are not told, to whole hundreds: outwards, or inwards where the road
     * ends sooner.
     *
     * @throws InvalidException where the current roads have no such stretch
     */
    public Told around(String road, double from, double to) {
        RoadPieces pieces = RoadPieces.of(roads.current().network());
        double step = authority.smallestCount() == null ? 1 : StretchQuestionService.TOLD_STEP_METRES;
        double outFrom = Math.floor(from / step) * step;
        double outTo = Math.max(Math.ceil(to / step), outFrom / step + 1) * step;
        InvalidException refused = null;
        for (double[] ends : new double[][] {
            {outFrom, outTo}, {outFrom, outTo - step}, {outFrom + step, outTo}, {outFrom + step, outTo - step}
        }) {
            try {
                pieces.requireStretch("", road, ends[0], ends[1]);
                return new Told(road, ends[0], ends[1]);
            } catch (InvalidException e) {
                refused = refused == null ? e : refused;
            }
        }
        throw because(refused);
    }

    private static InvalidException because(@Nullable InvalidException refused) {
        return refused == null
                ? InvalidException.of("road", "There is no such stretch.", "a stretch of the current roads")
                : refused;
    }
}
