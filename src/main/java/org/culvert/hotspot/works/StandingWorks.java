package org.culvert.hotspot.works;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/** Where works stand on the current roads, so that what lies there is not taken for usual. */
@ApplicationScoped
class StandingWorks {
    /**
     * Where they stand.
     *
     * @param parts inside and at the ends
     * @param notPlaced works that the current roads have no place for
     */
    record Places(List<RoadPieces.Part> parts, List<String> notPlaced) {
        boolean touch(List<RoadPieces.Part> others) {
            return others.stream()
                    .anyMatch(other -> parts.stream()
                            .anyMatch(part ->
                                    part.piece().number() == other.piece().number()
                                            && part.from() < other.to()
                                            && other.from() < part.to()));
        }
    }

    private final WorksService works;

    StandingWorks(WorksService works) {
        this.works = works;
    }

    /** Works that stood on any day of a period, save one. */
    Places find(RoadPieces pieces, LocalDate from, LocalDate to, @Nullable UUID except) {
        List<RoadPieces.Part> parts = new ArrayList<>();
        List<String> notPlaced = new ArrayList<>();
        for (Works one : works.listStanding(from, to)) {
            if (one.id().equals(except)) {
                continue;
            }
            try {
                pieces.requireStretch("", one.road, one.fromChainageMetres, one.toChainageMetres)
                        .forEach(part -> parts.add(widened(part, one.endsMetres)));
            } catch (InvalidException noLongerThere) {
                notPlaced.add(
                        "Works on " + one.road + " have no place on the current roads, so that road counts as without"
                                + " works: " + noLongerThere.getMessage());
            }
        }
        return new Places(parts, notPlaced);
    }

    /** A part with more to either side, as far as its piece goes. */
    static RoadPieces.Part widened(RoadPieces.Part part, double metres) {
        return new RoadPieces.Part(
                part.piece(),
                Math.max(part.piece().from(), part.from() - metres),
                Math.min(part.piece().to(), part.to() + metres));
    }
}
