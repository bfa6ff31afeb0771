package org.culvert.hotspot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import org.culvert.call.CollisionReport;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;

/** Distances along the roads are sums of lengths that anyone can add up. */
class RoadDoubtTest {
    /**
     * <pre>
     *   0 ---- link 0, 1,000 m ---- 1 ---- link 1, 1,000 m ---- 2
     *                               |
     *                               | link 2, 500 m
     *                               3 ---- link 3, 900 m ------ 4   (beside link 1)
     * </pre>
     */
    private static final RoadGraph GRAPH =
            new RoadGraph(5, new int[] {0, 1, 1, 3}, new int[] {1, 2, 3, 4}, new double[] {1000, 1000, 500, 900});

    private final RoadDoubt doubt = new RoadDoubt(
            GRAPH,
            id -> id.getLeastSignificantBits() < GRAPH.linkCount()
                    ? OptionalInt.of((int) id.getLeastSignificantBits())
                    : OptionalInt.empty());

    private static CollisionReport report(
            boolean inDoubt, int link, double metres, double uncertainty, CollisionReport.OtherRoad... others) {
        Instant at = Instant.parse("2026-01-01T00:00:00Z");
        return new CollisionReport(
                new UUID(1, 1),
                false,
                true,
                at,
                null,
                at,
                true,
                new UUID(0, link),
                metres,
                null,
                null,
                uncertainty,
                inDoubt,
                List.of(others),
                Set.of(),
                null);
    }

    private static CollisionReport.OtherRoad other(int link, double metres) {
        return new CollisionReport.OtherRoad(new UUID(0, link), metres);
    }

    @Test
    void aRoadThatIsNotInDoubtIsNoWayFromAnother() {
        assertThat(doubt.metresBetweenRoads(report(false, 0, 400, 20))).isZero();
    }

    @Test
    void byAJunctionTheDoubtIsTheWayToTheFurthestArm() {
        assertThat(doubt.metresBetweenRoads(report(true, 0, 990, 20, other(1, 12), other(2, 25))))
                .isEqualTo(35);
    }

    @Test
    void roadsBesideOneAnotherThatMeetFarAwayStayInDoubt() {
        assertThat(doubt.metresBetweenRoads(report(true, 1, 400, 20, other(3, 400))))
                .isInfinite();
        assertThat(doubt.metresBetweenRoads(report(true, 0, 990, 20, other(1, 12), other(3, 5))))
                .isInfinite();
    }

    @Test
    void theLimitFollowsTheDoubtAboutThePlace() {
        // Four times 30 m at least; 130 m apart is too far for 20 m of doubt and near enough for 50 m.
        assertThat(doubt.metresBetweenRoads(report(true, 0, 930, 20, other(1, 60))))
                .isInfinite();
        assertThat(doubt.metresBetweenRoads(report(true, 0, 930, 50, other(1, 60))))
                .isEqualTo(130);
    }

    @Test
    void aDoubtWhoseOtherRoadsAreNotToldStays() {
        assertThat(doubt.metresBetweenRoads(report(true, 0, 990, 20))).isInfinite();
    }

    @Test
    void aRoadOfAnotherNetworkStaysInDoubt() {
        assertThat(doubt.metresBetweenRoads(report(true, 0, 990, 20, other(77, 1))))
                .isInfinite();
    }
}
