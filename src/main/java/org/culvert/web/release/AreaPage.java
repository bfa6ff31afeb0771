package org.culvert.web.release;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.culvert.animal.CaseView;
import org.culvert.geo.Position;
import org.culvert.release.AreaService;
import org.culvert.release.ReleaseAreaFeature;
import org.culvert.release.ReleaseAreaFeature.LookFirst;
import org.culvert.release.ReleaseAreaFeature.RankedSite;
import org.culvert.release.rules.Barrier;
import org.culvert.release.rules.Finding;
import org.culvert.release.rules.UncertainPosition;
import org.culvert.web.Typed;
import org.culvert.web.words.ReleaseWords;
import org.jspecify.annotations.Nullable;

/**
 * What a page says of where an animal may go back.
 *
 * @param picture null where nothing is left to draw
 * @param nearest a sentence, null where nothing is left
 * @param lookFirst a sentence, null where there is no such place
 * @param sitesNotShown how many more sites the answer has
 * @param geoJson address of the same for GIS programs, and for the map
 * @param found where it was found, latitude and longitude; null where nobody knows
 */
public record AreaPage(
        ReleaseAreaFeature.Properties told,
        @Nullable AreaPicture picture,
        @Nullable String nearest,
        @Nullable String lookFirst,
        List<StepRow> steps,
        List<AskRow> askFirst,
        List<SiteRow> sites,
        int sitesNotShown,
        String geoJson,
        @Nullable Found found) {
    private static final int MOST_SITES = 20;
    private static final int MOST_ROADS = 4;

    /** @param sign its letter in the picture, empty where it has none */
    public record AskRow(String sign, String words) {}

    public record StepRow(String words, String left, String opens) {}

    public record Found(double latitude, double longitude, double uncertaintyMetres) {}

    /**
     * @param against what stands in the way there, and not wherever it goes
     * @param advice what was not passed and is in nobody's way
     */
    public record SiteRow(
            int rank,
            String name,
            String fit,
            String verdict,
            String tests,
            String inArea,
            String distance,
            String roads,
            List<FindingRow> against,
            List<FindingRow> advice) {}

    /** Which kinds of parts are taken out, for the key of the map. */
    List<String> cuts() {
        return told.takenOut().stream()
                .map(ReleaseAreaFeature.TakenOut::cut)
                .distinct()
                .toList();
    }

    /** @param everywhere keys of the tests that stand in the way wherever it goes */
    static AreaPage of(
            AreaService.Looked looked, CaseView told, AreaForm form, Set<String> everywhere, ReleaseTongue tongue) {
        ReleaseAreaFeature area = looked.area();
        ReleaseAreaFeature.Properties said = area.properties();
        ReleaseWords words = tongue.words();
        UncertainPosition origin = origin(told);
        ReleaseAreaFeature.Point nearest = said.nearest();
        LookFirst first = said.lookFirst();
        AreaPicture picture = origin == null || area.geometry() == null ? null : AreaPicture.draw(area, origin, tongue);
        List<SiteRow> sites = said.sites().stream()
                .filter(site -> site.rank() <= MOST_SITES || (picture != null && picture.shows(site.rank())))
                .map(site -> row(site, looked.findings(), everywhere, tongue))
                .toList();
        return new AreaPage(
                said,
                picture,
                origin == null || nearest == null
                        ? null
                        : nearest.metres() == 0
                                ? words.nearestInside()
                                : words.nearestAt(way(
                                        origin,
                                        nearest.decimalLatitude(),
                                        nearest.decimalLongitude(),
                                        nearest.metres(),
                                        tongue)),
                origin == null || first == null ? null : lookFirst(origin, first, tongue),
                said.steps().stream()
                        .map(step -> new StepRow(step.words(), tongue.size(step.squareMetresLeft()), step.opens()))
                        .toList(),
                IntStream.range(0, said.askFirst().size())
                        .mapToObj(i -> new AskRow(
                                AreaPicture.letter(i), ask(said.askFirst().get(i), tongue)))
                        .toList(),
                sites,
                said.sites().size() - sites.size(),
                geoJson(said, form),
                origin == null
                        ? null
                        : new Found(
                                origin.position().latitude(),
                                origin.position().longitude(),
                                origin.uncertaintyMetres()));
    }

    private static @Nullable UncertainPosition origin(CaseView told) {
        return told.foundPlace() == null
                ? null
                : UncertainPosition.of(
                        told.foundPlace().decimalLatitude(),
                        told.foundPlace().decimalLongitude(),
                        told.foundPlace().coordinateUncertaintyInMeters());
    }

    private static String lookFirst(UncertainPosition origin, LookFirst first, ReleaseTongue tongue) {
        ReleaseWords words = tongue.words();
        String where = way(origin, first.decimalLatitude(), first.decimalLongitude(), first.metres(), tongue);
        return words.lookFirst(where)
                + (first.water() == null ? "" : words.atWater(first.water()))
                + (first.onSide() ? words.onSide() : words.notOnSide())
                + " " + words.nobodyLooked();
    }

    /** How far and which way from where it was found, and the place in degrees. */
    private static String way(
            UncertainPosition origin, double latitude, double longitude, double metres, ReleaseTongue tongue) {
        String degrees = String.format(Locale.ROOT, "%.5f, %.5f", latitude, longitude);
        ReleaseWords words = tongue.words();
        return metres < 1
                ? words.wayHere(degrees)
                : words.way(
                        tongue.distance(metres),
                        words.compass(AreaPicture.eighth(origin.position(), new Position(latitude, longitude))),
                        degrees);
    }

    private static String ask(ReleaseAreaFeature.AskFirst one, ReleaseTongue tongue) {
        ReleaseWords words = tongue.words();
        return words.askOf(words.askKind(one.kind()), one.name(), one.source(), tongue.size(one.squareMetres()));
    }

    private static SiteRow row(
            RankedSite site, Map<UUID, List<Finding>> findings, Set<String> everywhere, ReleaseTongue tongue) {
        ReleaseWords words = tongue.words();
        List<Finding> found = findings.getOrDefault(site.siteId(), List.of());
        return new SiteRow(
                site.rank(),
                site.name(),
                site.fitForGroup() ? words.fit() : words.notFit(),
                site.overall(),
                words.verdict(site.overall()),
                words.inAreaOf(site.inArea()),
                words.giveOrTake(tongue.distance(site.distanceMetres()), tongue.distance(site.doubtMetres())),
                roads(site.roadsBetween(), tongue),
                FindingRow.standing(
                        found.stream()
                                .filter(one -> !everywhere.contains(one.key()))
                                .toList(),
                        tongue),
                FindingRow.advice(found, tongue));
    }

    private static String roads(List<Barrier.Crossed> roads, ReleaseTongue tongue) {
        ReleaseWords words = tongue.words();
        if (roads.isEmpty()) {
            return words.noRoads();
        }
        List<String> told = new ArrayList<>();
        for (Barrier.Crossed road : roads.subList(0, Math.min(MOST_ROADS, roads.size()))) {
            told.add(words.road(
                    road.roadName(),
                    road.speedLimitKmh() == null ? words.speedUnknown() : words.speed(road.speedLimitKmh()),
                    road.aadt() == null ? words.trafficUnknown() : words.traffic(road.aadt())));
        }
        int more = roads.size() - told.size();
        return String.join("; ", told) + (more > 0 ? words.andMore(more) : "");
    }

    private static String geoJson(ReleaseAreaFeature.Properties said, AreaForm form) {
        String metres = Typed.given(form.withinMetres);
        return "/api/cases/" + said.caseId() + "/release-area?jurisdiction="
                + URLEncoder.encode(said.jurisdiction(), StandardCharsets.UTF_8)
                + (metres == null ? "" : "&withinMetres=" + URLEncoder.encode(metres, StandardCharsets.UTF_8));
    }
}
