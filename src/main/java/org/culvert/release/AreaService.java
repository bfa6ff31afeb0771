package org.culvert.release;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.call.PlaceView;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.culvert.platform.sight.Sight;
import org.culvert.release.rules.Approval;
import org.culvert.release.rules.Assessor;
import org.culvert.release.rules.Barrier;
import org.culvert.release.rules.Circumstances;
import org.culvert.release.rules.Conditions;
import org.culvert.release.rules.Finding;
import org.culvert.release.rules.Land;
import org.culvert.release.rules.LandsAround;
import org.culvert.release.rules.Lifting;
import org.culvert.release.rules.Rule;
import org.culvert.release.rules.Site;
import org.culvert.release.rules.SpeciesFact;
import org.culvert.release.rules.Subject;
import org.culvert.release.rules.UncertainPosition;
import org.culvert.release.rules.Unsuitability;
import org.culvert.release.rules.area.AreaFinder;
import org.culvert.release.rules.area.AreaQuestion;
import org.culvert.release.rules.area.FirstPlace;
import org.culvert.release.rules.area.Limit;
import org.culvert.release.rules.area.ReleaseArea;
import org.culvert.release.rules.area.SiteRanking;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadService;
import org.jspecify.annotations.Nullable;

/** Says where an animal may go, as an area on the map, with the known sites in the order in which they are worth a look. */
@ApplicationScoped
public class AreaService {
    /** Just off a road's surface. */
    private static final double BESIDE_METRES = 1;

    private static final int MOST_SITES = 5000;

    private static final String INTRODUCED =
            "Its kind is listed as introduced here, so there is no way back into the wild"
                    + " for it. Ask your wildlife authority.";

    private final AssessmentService assessments;
    private final CircumstanceReader circumstances;
    private final SiteService sites;
    private final RuleService rules;
    private final CaseService cases;
    private final RoadService roads;
    private final RoadLand roadLand;
    private final RegionService region;
    private final Sight sight;
    private final Clock clock;

    AreaService(
            AssessmentService assessments,
            CircumstanceReader circumstances,
            SiteService sites,
            RuleService rules,
            CaseService cases,
            RoadService roads,
            RoadLand roadLand,
            RegionService region,
            Sight sight,
            Clock clock) {
        this.assessments = assessments;
        this.circumstances = circumstances;
        this.sites = sites;
        this.rules = rules;
        this.cases = cases;
        this.roads = roads;
        this.roadLand = roadLand;
        this.region = region;
        this.sight = sight;
        this.clock = clock;
    }

    /**
     * An answer, and what the rules say of each known site.
     *
     * @param findings by site, as of today and with nothing said of the hour
     */
    public record Looked(ReleaseAreaFeature area, Map<UUID, List<Finding>> findings) {}

    /** As {@link #look}, the area alone. */
    @Transactional
    public ReleaseAreaFeature find(UUID caseId, @Nullable String jurisdiction, @Nullable Double withinMetres) {
        return look(caseId, jurisdiction, withinMetres).area();
    }

    /**
     * @param jurisdiction whose rules hold; left out: that of the known site nearest to the origin
     * @param withinMetres a distance of the asker's own; left out: only what rules or the kind's movement range say
     */
    @Transactional
    public Looked look(UUID caseId, @Nullable String jurisdiction, @Nullable Double withinMetres) {
        sight.requireSeen("case", caseId);
        CaseView told = cases.getCase(caseId);
        LocalDate day = clock.instant().atZone(region.zone()).toLocalDate();
        Subject subject = assessments.subject(told);
        List<SiteService.KnownSite> known = sites.listKnown(MOST_SITES);
        String where = jurisdiction == null ? nearestJurisdiction(subject, known) : jurisdiction;
        List<Rule> applicable = rules.listRules().stream()
                .filter(rule -> rule.holdsOn(day) && rule.holdsIn(where) && rule.isAbout(subject))
                .toList();
        UncertainPosition origin = subject.origin().at();
        Optional<String> noWay = noWayBack(subject, applicable);
        if (noWay.isPresent()) {
            return new Looked(AreaFeatures.without(told, day, where, subject, noWay.get()), Map.of());
        }
        if (origin == null) {
            return new Looked(AreaFeatures.without(told, day, where, subject, unknownOrigin(applicable)), Map.of());
        }
        CircumstanceReader.OfCase knownOfCase = circumstances.of(told, subject, day);
        List<Limit> limits = limits(applicable, knownOfCase, withinMetres);
        double reach = limits.stream().mapToDouble(Limit::metres).max().orElseThrow();
        List<Land> lands = knownOfCase.landsWithin(reach);
        boolean keepToCatchment = applicable.stream()
                .anyMatch(rule -> rule.test() == Rule.Question.sameCatchment
                        && rule.lifting().stands());
        CurrentRoads current = roads.current();
        ReleaseArea area =
                AreaFinder.find(roadLand.of(current), new AreaQuestion(origin, limits, lands, keepToCatchment));
        List<Land> waters = knownOfCase.facts().stream().anyMatch(fact -> fact.kind() == SpeciesFact.Kind.aquatic)
                ? lands.stream().filter(land -> land.kind() == Land.Kind.water).toList()
                : List.of();
        Optional<FirstPlace> first = FirstPlace.find(
                area, origin.position(), beside(told.foundPlace(), current), waters, knownOfCase.movementRangeMetres());
        Map<UUID, List<Finding>> findings = new HashMap<>();
        List<SiteRanking.Ranked> ranked = rank(told, subject, known, knownOfCase, area, day, findings);
        return new Looked(
                AreaFeatures.of(told, day, where, subject, area, first, firstOf(told, subject, applicable), ranked),
                findings);
    }

    /** Why its kind is let go nowhere, where it is not. */
    private static Optional<String> noWayBack(Subject subject, List<Rule> applicable) {
        if (subject.introduced()) {
            return Optional.of(INTRODUCED);
        }
        return applicable.stream()
                .filter(rule -> rule.test() == Rule.Question.noRelease)
                .findFirst()
                .map(rule -> "By a rule entered here its kind is let go nowhere: " + rule.words() + " (" + rule.kind()
                        + ", " + rule.jurisdiction() + ": " + rule.source() + ") Ask your wildlife authority.");
    }

    private static String unknownOrigin(List<Rule> applicable) {
        boolean none = applicable.stream().anyMatch(rule -> rule.unknownOrigin() == Rule.UnknownOrigin.notReleasable);
        return none
                ? "Nobody knows where it was found, and by a rule entered here such an animal is not released."
                : "Nobody knows where it was found, so there is no place to measure from. Ask your wildlife authority.";
    }

    private String nearestJurisdiction(Subject subject, List<SiteService.KnownSite> known) {
        UncertainPosition origin = subject.origin().at();
        return known.stream()
                .min(Comparator.comparingDouble(site -> origin == null
                        ? 0
                        : Geodesy.metresBetween(
                                origin.position(), site.target().at().position())))
                .map(site -> site.target().jurisdiction())
                .orElseThrow(() -> InvalidException.of(
                        "jurisdiction",
                        "No site is known whose jurisdiction could be taken.",
                        "the ISO 3166 code of the law that holds there, such as AU-QLD"));
    }

    private static List<Limit> limits(
            List<Rule> applicable, CircumstanceReader.OfCase known, @Nullable Double withinMetres) {
        List<Limit> limits = new ArrayList<>();
        for (Rule rule : applicable) {
            Double metres = rule.greatestDistanceMetres();
            if (rule.test() == Rule.Question.greatestDistance
                    && metres != null
                    && rule.lifting().stands()) {
                limits.add(new Limit(
                        rule.id().toString(),
                        rule.words() + " (" + rule.kind() + ", " + rule.jurisdiction() + ": " + rule.source() + ")",
                        metres,
                        rule.lifting()));
            }
        }
        if (withinMetres != null) {
            limits.add(new Limit(
                    "asked",
                    String.format(Locale.ROOT, "At most %,.0f m, as you asked.", withinMetres),
                    withinMetres,
                    Lifting.notNeeded));
        }
        if (limits.isEmpty()) {
            for (SpeciesFact fact : known.facts()) {
                Double metres = fact.metres();
                if (fact.kind() == SpeciesFact.Kind.movementRange && metres != null) {
                    limits.add(new Limit(
                            "movementRange",
                            "No rule entered here gives a distance; its kind is told to move so far: " + fact.words()
                                    + " (" + fact.source() + ")",
                            metres,
                            Lifting.notNeeded));
                }
            }
        }
        if (limits.isEmpty()) {
            throw InvalidException.of(
                    "withinMetres",
                    "No rule entered here gives a distance for this animal, and how far its kind moves is not known here.",
                    "a distance of your own in metres, such as 2000");
        }
        return limits;
    }

    /** A point just off the road, on the side on which the animal was found; null where that is not known. */
    private @Nullable Position beside(@Nullable PlaceView found, CurrentRoads current) {
        if (found == null || found.roadLinkId() == null || found.side() == null || found.metresAlongLink() == null) {
            return null;
        }
        OptionalInt link = current.findLink(found.roadLinkId());
        boolean left = found.side().equalsIgnoreCase("left");
        if (link.isEmpty() || !(left || found.side().equalsIgnoreCase("right"))) {
            return null;
        }
        double along = found.metresAlongLink();
        double bearing = current.network().bearingAt(link.getAsInt(), along);
        return Geodesy.WGS84.direct(
                current.network().positionAt(link.getAsInt(), along),
                bearing + (left ? -90 : 90),
                roadLand.of(current).halfWidthMetres() + BESIDE_METRES);
    }

    private List<SiteRanking.Ranked> rank(
            CaseView told,
            Subject subject,
            List<SiteService.KnownSite> known,
            CircumstanceReader.OfCase knownOfCase,
            ReleaseArea area,
            LocalDate day,
            Map<UUID, List<Finding>> found) {
        UncertainPosition origin = subject.origin().at();
        if (origin == null) {
            return List.of();
        }
        double farthest = known.stream()
                .mapToDouble(site -> Geodesy.metresBetween(
                        origin.position(), site.target().at().position()))
                .max()
                .orElse(0);
        LandsAround laid = knownOfCase.landsAroundAll(farthest);
        Map<UUID, List<Approval>> approved = knownOfCase.approvalsOfSites();
        List<Unsuitability> against = assessments.unsuitabilities(told);
        List<Rule> all = rules.listRules();
        List<SiteRanking.Candidate> candidates = new ArrayList<>();
        for (SiteService.KnownSite site : known) {
            Circumstances there = knownOfCase.at(
                    site.target(), Conditions.NOT_SAID, laid, approved.getOrDefault(site.id(), List.of()));
            Site.Consent consent = site.consentOn(day);
            List<Finding> findings =
                    Assessor.assessWhole(subject, site.target().site(consent), against, all, there, day);
            found.put(site.id(), findings);
            candidates.add(new SiteRanking.Candidate(
                    site.id().toString(),
                    site.name(),
                    site.target().at(),
                    site.isFitFor(subject.taxonGroup()),
                    Assessor.overall(findings),
                    there.roadsBetween() == null ? Barrier.NONE : there.roadsBetween()));
        }
        return SiteRanking.rank(origin, area, candidates);
    }

    /** What stands before any other site, by the rules that ask for the found place first. */
    private @Nullable String firstOf(CaseView told, Subject subject, List<Rule> applicable) {
        List<Rule> asking = applicable.stream()
                .filter(rule -> rule.test() == Rule.Question.foundPlaceFirst)
                .toList();
        List<Unsuitability> against = assessments.unsuitabilities(told);
        boolean open = asking.stream()
                .allMatch(rule -> against.stream()
                        .anyMatch(one -> rule.findGround(one.ground()).isPresent()));
        return open || subject.origin().at() == null
                ? null
                : "The place where it was found comes first. Another site is considered when somebody has recorded that place as"
                        + " unsuitable, on a ground that the rule allows.";
    }
}
