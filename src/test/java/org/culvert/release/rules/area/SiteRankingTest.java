package org.culvert.release.rules.area;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.Position;
import org.culvert.release.rules.Barrier;
import org.culvert.release.rules.Lifting;
import org.culvert.release.rules.UncertainPosition;
import org.culvert.release.rules.Verdict;
import org.culvert.road.network.NetworkBuilder;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.RoadCrossings;
import org.culvert.road.network.RoadLine;
import org.culvert.road.network.RoadNetwork;
import org.junit.jupiter.api.Test;

/** On a country invented for the test: in which order sites stand is decided here, and no outside source says it. */
class SiteRankingTest {
    private static final Position ORIGIN = new Position(-33.5, 150.2);
    private static final LocalPlane PLANE = LocalPlane.around(ORIGIN);

    /** A slow lane to the north, a road of unknown speed to the east, none to the south. */
    private final RoadNetwork network = NetworkBuilder.geographic()
            .add(road(
                    "Slow Lane",
                    new RoadAttributes(null, null, null, 40, 200, null, null, 0, RoadAttributes.UNKNOWN.structure()),
                    -5000,
                    500,
                    5000,
                    500))
            .add(road("Unknown Road", RoadAttributes.UNKNOWN, 500, -4000, 500, 400))
            .build()
            .network();

    private final ReleaseArea area = AreaFinder.find(
            LandBetweenRoads.of(network, 10),
            new AreaQuestion(
                    new UncertainPosition(ORIGIN, 20),
                    List.of(new Limit("rule", "At most 3 km.", 3000, Lifting.byPermit)),
                    List.of(),
                    false));

    private static RoadLine road(String name, RoadAttributes attributes, double... xy) {
        double[] vertices = new double[xy.length];
        for (int i = 0; i < xy.length; i += 2) {
            Position position = PLANE.inverse(xy[i], xy[i + 1]);
            vertices[i] = position.longitude();
            vertices[i + 1] = position.latitude();
        }
        return new RoadLine(name, attributes.withRoadName(name), null, vertices);
    }

    private SiteRanking.Candidate site(String key, double x, double y, boolean fit, Verdict verdict) {
        Position at = PLANE.inverse(x, y);
        return new SiteRanking.Candidate(
                key,
                key,
                new UncertainPosition(at, 30),
                fit,
                verdict,
                Barrier.between(network, new RoadCrossings(network), ORIGIN, at, 20));
    }

    private List<SiteRanking.Ranked> rank(List<SiteRanking.Candidate> sites) {
        return SiteRanking.rank(new UncertainPosition(ORIGIN, 20), area, sites);
    }

    @Test
    void whatTheTestsSayGoesFirstThenFitnessThenAreaThenRoadsThenDistance() {
        List<SiteRanking.Ranked> ranked = rank(List.of(
                site("refused, near", -100, -100, true, Verdict.fail),
                site("unfit, near", -100, -200, false, Verdict.pass),
                site("beyond", -100, -3500, true, Verdict.pass),
                site("across an unknown road", 700, -100, true, Verdict.pass),
                site("across a lane", -100, 700, true, Verdict.pass),
                site("farther on this side", -2000, -900, true, Verdict.pass),
                site("near on this side", -900, -300, true, Verdict.pass)));
        assertThat(ranked)
                .extracting(one -> one.candidate().key())
                .containsExactly(
                        "near on this side",
                        "farther on this side",
                        "across a lane",
                        "across an unknown road",
                        "beyond",
                        "unfit, near",
                        "refused, near");
        assertThat(ranked).extracting(SiteRanking.Ranked::rank).containsExactly(1, 2, 3, 4, 5, 6, 7);
        assertThat(ranked.get(2).candidate().barrier().roads()).singleElement().satisfies(crossed -> {
            assertThat(crossed.roadName()).isEqualTo("Slow Lane");
            assertThat(crossed.speedLimitKmh()).isEqualTo(40);
        });
        assertThat(ranked.get(3).candidate().barrier().fastestKmh()).isInfinite();
        assertThat(ranked.get(4).inArea()).isEqualTo(Verdict.fail);
        assertThat(ranked.get(0).inArea()).isEqualTo(Verdict.pass);
    }

    @Test
    void theOrderInWhichSitesComeChangesNothing() {
        var random = new Random(4);
        List<SiteRanking.Candidate> sites = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            sites.add(site(
                    "site " + i,
                    2000 * random.nextGaussian(),
                    2000 * random.nextGaussian(),
                    random.nextBoolean(),
                    Verdict.values()[random.nextInt(3)]));
        }
        // Alike in everything but the name
        sites.add(site("twin b", 100, 100, true, Verdict.pass));
        sites.add(site("twin a", 100, 100, true, Verdict.pass));
        List<SiteRanking.Ranked> wanted = rank(sites);
        for (int time = 0; time < 5; time++) {
            Collections.shuffle(sites, random);
            assertThat(rank(sites)).isEqualTo(wanted);
        }
    }

    /** A site whose circle reaches over the border of the area cannot be told. */
    @Test
    void aSiteOnTheBorderCannotBeTold() {
        SiteRanking.Ranked ranked = rank(List.of(site("on the border", 0, -2970, true, Verdict.pass)))
                .get(0);
        assertThat(ranked.inArea()).isEqualTo(Verdict.cantTell);
    }
}
