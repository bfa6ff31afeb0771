package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.release.AssessmentService;
import org.culvert.release.ReleaseEntries;
import org.culvert.release.ReleaseService;
import org.culvert.release.RuleService;
import org.culvert.release.SiteService;
import org.culvert.release.fitness.FitnessService;
import org.culvert.release.land.LandService;
import org.culvert.release.rules.Conditions;
import org.culvert.release.rules.FitnessCheck;
import org.culvert.release.rules.Ground;
import org.culvert.release.rules.Land;
import org.culvert.release.rules.Rule;
import org.culvert.release.rules.RuleKind;
import org.culvert.release.rules.Site;

/** Release sites, the invented rules of an invented jurisdiction, and the releases of the demo's stories. */
@ApplicationScoped
class ReleaseLoader {
    /** A code that ISO 3166 leaves to its users: no country. */
    static final String JURISDICTION = "XX";

    private static final String SOURCE =
            "Invented for the demo region, so that an assessment can be shown whole." + " It is the law of no place.";
    private static final String GROUND = "hazard";
    private static final double WATER_METRES = 120;
    private static final double PARK_METRES = 900;
    private static final double POND_EAST = 240;
    private static final double POND_NORTH = 90;
    private static final double OVER_THE_EDGE = 20_000;

    /** The site beside a hotspot. */
    static final String POND = "Bend Pond";

    private static final int CORNERS = 8;

    private final RuleService rules;
    private final SiteService sites;
    private final AssessmentService assessments;
    private final ReleaseService releases;
    private final FitnessService fitness;
    private final LandService lands;
    private final Clock clock;

    ReleaseLoader(
            RuleService rules,
            SiteService sites,
            AssessmentService assessments,
            ReleaseService releases,
            FitnessService fitness,
            LandService lands,
            Clock clock) {
        this.lands = lands;
        this.fitness = fitness;
        this.rules = rules;
        this.sites = sites;
        this.assessments = assessments;
        this.releases = releases;
        this.clock = clock;
    }

    void load(DemoRegion region) {
        LocalDate day = region.settings().lastDay();
        rules.createRule(new RuleService.RuleEntry(
                JURISDICTION,
                RuleKind.code,
                null,
                null,
                List.of(),
                Rule.AppliesTo.any,
                null,
                Rule.Question.foundPlaceFirst,
                null,
                null,
                1000.0,
                List.of("where it was found", "as near to it as possible"),
                false,
                List.of(
                        new Ground(GROUND, "it is not free of immediate hazards"),
                        new Ground("habitat", "it is not the right habitat")),
                Rule.UnknownOrigin.withinRangeWithApproval,
                null,
                "Where the found place is known and suitable, the animal goes back there.",
                SOURCE,
                day,
                day.plusYears(3),
                region.settings().firstDay(),
                null));
        rules.createRule(new RuleService.RuleEntry(
                JURISDICTION,
                RuleKind.code,
                "turtles",
                null,
                List.of(),
                Rule.AppliesTo.any,
                null,
                Rule.Question.greatestDistance,
                8000.0,
                null,
                null,
                List.of(),
                false,
                List.of(),
                Rule.UnknownOrigin.notReleasable,
                null,
                "A freshwater turtle goes back at most 8 km from where it was found.",
                SOURCE,
                day,
                day.plusYears(3),
                region.settings().firstDay(),
                null));
        for (People.ReleaseSite site : region.people().releaseSites()) {
            sites.createSite(new SiteService.SiteEntry(
                    site.name(),
                    JURISDICTION,
                    site.spot().latitude(),
                    site.spot().longitude(),
                    80.0,
                    site.habitat(),
                    site.taxonGroups(),
                    site.catchment().isEmpty() ? null : site.catchment(),
                    site.park().isEmpty() ? null : site.park(),
                    site.ownerConsents() ? Site.Consent.yes : Site.Consent.unknown,
                    site.ownerConsents() ? day.plusYears(2) : null));
            if (site.taxonGroups().contains("turtles")) {
                around(region, Land.Kind.water, site.name() + " water", site.spot(), WATER_METRES);
            }
            if (!site.park().isEmpty()) {
                around(region, Land.Kind.protectedArea, site.park(), site.spot(), PARK_METRES);
            }
        }
        besideAHotspot(region, day);
        for (Terrain.Area catchment : region.terrain().catchments()) {
            land(region, Land.Kind.catchment, catchment.name(), catchment.ring());
        }
        var ground = region.settings().ground();
        double width = ground.widthMetres();
        double height = ground.heightMetres();
        land(
                region,
                Land.Kind.jurisdiction,
                JURISDICTION,
                List.of(
                        ground.spot(-OVER_THE_EDGE, -OVER_THE_EDGE),
                        ground.spot(width + OVER_THE_EDGE, -OVER_THE_EDGE),
                        ground.spot(width + OVER_THE_EDGE, height + OVER_THE_EDGE),
                        ground.spot(-OVER_THE_EDGE, height + OVER_THE_EDGE),
                        ground.spot(-OVER_THE_EDGE, -OVER_THE_EDGE)));
    }

    /** A pond by the bend where turtles are struck: an assessment there has its warning to read. */
    private void besideAHotspot(DemoRegion region, LocalDate day) {
        Spot bend = Stories.incidentOf(region, Stories.Story.TURTLE_IN_CARE).spot();
        Spot pond = region.settings().ground().moved(bend, POND_EAST, POND_NORTH);
        sites.createSite(new SiteService.SiteEntry(
                POND,
                JURISDICTION,
                pond.latitude(),
                pond.longitude(),
                40.0,
                "fresh water",
                List.of("turtles"),
                region.terrain().catchmentAt(pond),
                null,
                Site.Consent.yes,
                day.plusYears(2)));
        around(region, Land.Kind.water, POND, pond, WATER_METRES);
    }

    /** An octagon around a spot. */
    private void around(DemoRegion region, Land.Kind kind, String name, Spot middle, double metres) {
        List<Spot> ring = new ArrayList<>();
        for (int corner = 0; corner <= CORNERS; corner++) {
            Position at = Geodesy.WGS84.direct(
                    new Position(middle.latitude(), middle.longitude()),
                    360.0 * (CORNERS - corner) / CORNERS % 360,
                    metres);
            ring.add(new Spot(
                    (int) StrictMath.round(at.longitude() * 1e7), (int) StrictMath.round(at.latitude() * 1e7)));
        }
        land(region, kind, name, ring);
    }

    /** @param spots a closed ring */
    private void land(DemoRegion region, Land.Kind kind, String name, List<Spot> spots) {
        List<Object> ring = new ArrayList<>();
        for (Spot spot : spots) {
            ring.add(List.of(rounded(spot.longitude()), rounded(spot.latitude())));
        }
        lands.enter(new LandService.LandEntry(
                kind,
                name,
                "Invented for the demo region.",
                region.settings().firstDay(),
                null,
                new LandService.GeometryEntry(LandService.GeometryType.Polygon, List.of(ring))));
    }

    private static double rounded(double degrees) {
        return StrictMath.round(degrees * 1e6) / 1e6;
    }

    /**
     * Lets animals found at one place go at the fit site nearest to it, once somebody has said why not where they were
     * found.
     */
    void release(
            DemoRegion region,
            List<UUID> caseIds,
            Spot found,
            String group,
            Instant at,
            UUID by,
            Helpers.Clinic hospital) {
        People.ReleaseSite nearest = nearestSite(region, found, group);
        UUID siteId = sites.listSites(100, null).items().stream()
                .filter(site -> site.name().equals(nearest.name()))
                .map(SiteService.SiteView::id)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("the site " + nearest.name() + " is not there"));
        List<UUID> assessed = new ArrayList<>();
        assessments.recordUnsuitable(
                caseIds.get(0),
                new AssessmentService.UnsuitableEntry(
                        GROUND, "the verge where she was struck, beside fast traffic", clock.instant()));
        for (UUID caseId : caseIds) {
            fitness.sign(
                    caseId,
                    new FitnessService.CheckEntry(
                            at.minus(Duration.ofHours(20)),
                            null,
                            hospital.vetName(),
                            hospital.vetRegistration(),
                            Arrays.stream(FitnessCheck.Aspect.values())
                                    .map(aspect -> new FitnessService.ItemEntry(aspect, FitnessCheck.Answer.fit))
                                    .toList(),
                            Site.Consent.no,
                            null));
            assessed.add(assessments
                    .assess(new AssessmentService.AssessmentEntry(
                            caseId, siteId, null, Conditions.Light.day, Conditions.Weather.fair, Site.Consent.yes))
                    .id());
        }
        releases.release(new ReleaseEntries.ReleaseEntry(
                caseIds,
                assessed,
                at,
                hospital.vetName(),
                by,
                List.of(),
                List.of(),
                List.of(),
                null,
                null,
                ReleaseEntries.Manner.hard,
                null,
                null,
                null));
    }

    static People.ReleaseSite nearestSite(DemoRegion region, Spot found, String group) {
        return region.people().releaseSites().stream()
                .filter(site -> site.taxonGroups().contains(group) && site.ownerConsents())
                .min(Comparator.comparingDouble(
                        site -> region.settings().ground().distance(site.spot(), found)))
                .orElseThrow();
    }
}
