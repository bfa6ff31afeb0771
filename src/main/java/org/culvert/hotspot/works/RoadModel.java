package org.culvert.hotspot.works;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.culvert.hotspot.stats.rate.EmpiricalBayes;
import org.culvert.hotspot.stats.rate.RoadChainages;
import org.culvert.hotspot.stats.rate.RoadProfile;
import org.culvert.hotspot.stats.rate.RoadProfile.Section;
import org.culvert.hotspot.stats.rate.SafetyPerformance;
import org.culvert.hotspot.stats.rate.SafetyPerformance.Basis;
import org.culvert.hotspot.stats.rate.SafetyPerformance.Dispersion;
import org.culvert.hotspot.stats.rate.Site;
import org.jspecify.annotations.Nullable;

/** What roads of some classes have, by a safety performance function fitted to windows of the network without works. */
final class RoadModel {
    /** A class with fewer shares a level with others, or has that of the commonest (common practice, no source). */
    static final SafetyPerformance.Settings SETTINGS = new SafetyPerformance.Settings(Dispersion.PER_KILOMETRE, 5);

    private final Map<String, RoadProfile> byRoad = new HashMap<>();
    private final Map<String, RoadProfile> later = new HashMap<>();
    private final Set<String> classes;
    private final @Nullable SafetyPerformance performance;
    private final String whyNone;

    private RoadModel(
            List<RoadProfile> profiles, Set<String> classes, @Nullable SafetyPerformance performance, String whyNone) {
        profiles.forEach(profile -> byRoad.put(profile.road().road(), profile));
        this.classes = classes;
        this.performance = performance;
        this.whyNone = whyNone;
    }

    /**
     * Fits.
     *
     * @param treated where works stand, to be left out
     * @param classes those that count
     * @param windowMetres length of the windows
     * @param years of the collisions
     */
    static RoadModel of(
            RoadPieces pieces,
            List<Collisions.Placed> collisions,
            List<RoadPieces.Part> treated,
            Set<String> classes,
            double windowMetres,
            double years) {
        List<RoadProfile> profiles = profiles(pieces, collisions, treated);
        List<Site> sites = profiles.stream()
                .flatMap(profile -> profile.sites(windowMetres, years).stream())
                .filter(site -> classes.contains(site.roadClass()))
                .toList();
        String names = String.join(", ", new TreeSet<>(classes));
        if (sites.stream().allMatch(Site::treated)) {
            return new RoadModel(profiles, classes, null, "There is no road of class " + names + " without works.");
        }
        var performance = SafetyPerformance.of(sites, SETTINGS);
        return performance.fit().outcome().hasEstimates()
                ? new RoadModel(profiles, classes, performance, "")
                : new RoadModel(
                        profiles,
                        classes,
                        null,
                        "Roads of class " + names + " without works do not tell what is usual: "
                                + performance.fit().remark() + ".");
    }

    /** Every piece with its collisions and sections, cut where works begin and end. */
    static List<RoadProfile> profiles(
            RoadPieces pieces, List<Collisions.Placed> collisions, List<RoadPieces.Part> treated) {
        Map<Integer, List<Double>> chainages = new HashMap<>();
        for (Collisions.Placed placed : collisions) {
            chainages
                    .computeIfAbsent(pieces.pieceOf(placed.link()).number(), number -> new ArrayList<>())
                    .add(pieces.chainage(placed.link(), placed.metres()));
        }
        List<RoadProfile> profiles = new ArrayList<>();
        for (RoadPieces.Piece piece : pieces.all()) {
            if (!(piece.to() > piece.from())) {
                continue;
            }
            List<Section> sections = pieces.sections(piece);
            for (RoadPieces.Part part : treated) {
                if (part.piece().number() == piece.number()) {
                    sections = cut(sections, part.from(), part.to());
                }
            }
            var road = new RoadChainages(
                    piece.id(), piece.from(), piece.to(), chainages.getOrDefault(piece.number(), List.of()));
            profiles.add(new RoadProfile(road, sections));
        }
        return profiles;
    }

    private static List<Section> cut(List<Section> sections, double from, double to) {
        List<Section> result = new ArrayList<>();
        for (Section section : sections) {
            double start = Math.max(from, section.fromChainageMetres());
            double end = Math.min(to, section.toChainageMetres());
            if (start >= end) {
                result.add(section);
                continue;
            }
            addUnlessEmpty(result, section, section.fromChainageMetres(), start, section.treated());
            addUnlessEmpty(result, section, start, end, true);
            addUnlessEmpty(result, section, end, section.toChainageMetres(), section.treated());
        }
        return result;
    }

    private static void addUnlessEmpty(List<Section> sections, Section of, double from, double to, boolean treated) {
        if (from < to) {
            sections.add(new Section(from, to, of.aadt(), of.roadClass(), treated));
        }
    }

    /** The same, which also expects something of the same pieces at the traffic that they had later. */
    RoadModel later(RoadPieces pieces) {
        var model = new RoadModel(List.copyOf(byRoad.values()), classes, performance, whyNone);
        profiles(pieces, List.of(), List.of())
                .forEach(profile -> model.later.put(profile.road().road(), profile));
        return model;
    }

    /** The function, or null where {@link #whyNone()} says why there is none. */
    @Nullable
    SafetyPerformance performance() {
        return performance;
    }

    String whyNone() {
        return whyNone;
    }

    /** Incidents expected on a part; 0 where the function has no level for it. */
    double expected(RoadPieces.Part part, double years) {
        return performance == null ? 0 : profile(part).expected(performance, part.from(), part.to(), years);
    }

    /** The same at the traffic that it had later. */
    double expectedLater(RoadPieces.Part part, double years) {
        RoadProfile profile = later.getOrDefault(part.piece().id(), profile(part));
        return performance == null ? 0 : profile.expected(performance, part.from(), part.to(), years);
    }

    /** Whether traffic says something of what is expected on these parts. */
    boolean usesTraffic(List<RoadPieces.Part> parts) {
        return performance != null && basis(parts) == Basis.RISK;
    }

    /** Why nothing is expected of a part, or nothing where something is. */
    String obstacle(RoadPieces.Part part) {
        if (performance == null) {
            return whyNone;
        }
        try {
            profile(part).expected(performance, part.from(), part.to(), 1);
            return "";
        } catch (IllegalArgumentException unknownTraffic) {
            return "Nothing is expected of this stretch: " + unknownTraffic.getMessage() + ".";
        }
    }

    EmpiricalBayes estimate(double predicted, double lengthMetres, int incidents, double level) {
        return EmpiricalBayes.of(predicted, requireNone().overdispersion(lengthMetres), incidents, level);
    }

    double overdispersion(double lengthMetres) {
        return requireNone().overdispersion(lengthMetres);
    }

    Basis basis(List<RoadPieces.Part> parts) {
        SafetyPerformance known = requireNone();
        return parts.stream().anyMatch(part -> profile(part).basis(known, part.from(), part.to()) == Basis.BURDEN)
                ? Basis.BURDEN
                : Basis.RISK;
    }

    /** Whether a place counts among roads of these classes without works. */
    boolean isReference(RoadPieces pieces, Collisions.Placed placed) {
        RoadPieces.Piece piece = pieces.pieceOf(placed.link());
        double chainage = pieces.chainage(placed.link(), placed.metres());
        return classes.contains(pieces.roadClass(placed.link()))
                && !profile(new RoadPieces.Part(piece, chainage, chainage))
                        .isTreated(Math.nextDown(chainage), Math.nextUp(chainage));
    }

    private SafetyPerformance requireNone() {
        if (performance == null) {
            throw new IllegalStateException(whyNone);
        }
        return performance;
    }

    private RoadProfile profile(RoadPieces.Part part) {
        RoadProfile profile = byRoad.get(part.piece().id());
        if (profile == null) {
            throw new IllegalStateException("no profile of " + part.piece().id());
        }
        return profile;
    }
}
