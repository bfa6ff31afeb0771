package org.culvert.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.culvert.animal.CaseView;
import org.culvert.geo.Position;
import org.culvert.release.ReleaseAreaFeature;
import org.culvert.release.ReleaseAreaFeature.LookFirst;
import org.culvert.release.ReleaseAreaFeature.RankedSite;
import org.culvert.release.rules.Barrier;
import org.culvert.release.rules.Land;
import org.culvert.release.rules.UncertainPosition;
import org.jspecify.annotations.Nullable;

/**
 * What a page says of where an animal may go back.
 *
 * @param number of the case
 * @param picture null where nothing is left to draw
 * @param lookFirst a sentence, null where there is no such place
 * @param nearest a sentence, null where nothing is left
 * @param geoJson address of the same for GIS programs
 * @param sitesNotShown how many more sites that has
 */
public record AreaPage(
        ReleaseAreaFeature.Properties told,
        long number,
        String vernacularName,
        @Nullable AreaPicture picture,
        @Nullable String nearest,
        @Nullable String lookFirst,
        List<StepRow> steps,
        List<AskRow> askFirst,
        List<SiteRow> sites,
        int sitesNotShown,
        String geoJson) {
    private static final int MOST_SITES = 20;
    private static final int MOST_ROADS = 4;

    /** @param sign its letter in the picture, empty where it has none */
    public record AskRow(String sign, String words) {}

    public record StepRow(String words, String left, String opens) {}

    public record SiteRow(
            int rank, String name, String fit, String tests, String inArea, String distance, String roads) {}

    static AreaPage of(ReleaseAreaFeature area, CaseView told, AreaForm form) {
        ReleaseAreaFeature.Properties said = area.properties();
        UncertainPosition origin = origin(told);
        ReleaseAreaFeature.Point nearest = said.nearest();
        LookFirst first = said.lookFirst();
        AreaPicture picture = origin == null || area.geometry() == null ? null : AreaPicture.draw(area, origin);
        List<SiteRow> sites = said.sites().stream()
                .filter(site -> site.rank() <= MOST_SITES || (picture != null && picture.shows(site.rank())))
                .map(AreaPage::row)
                .toList();
        return new AreaPage(
                said,
                told.number(),
                told.animal().vernacularName(),
                picture,
                origin == null || nearest == null
                        ? null
                        : nearest.metres() == 0
                                ? "The place where it was found lies in it."
                                : "Its nearest point is "
                                        + way(
                                                origin,
                                                nearest.decimalLatitude(),
                                                nearest.decimalLongitude(),
                                                nearest.metres())
                                        + ".",
                origin == null || first == null ? null : lookFirst(origin, first),
                said.steps().stream()
                        .map(step -> new StepRow(step.words(), size(step.squareMetresLeft()), step.opens()))
                        .toList(),
                IntStream.range(0, said.askFirst().size())
                        .mapToObj(i -> new AskRow(
                                AreaPicture.letter(i), ask(said.askFirst().get(i))))
                        .toList(),
                sites,
                said.sites().size() - sites.size(),
                geoJson(said, form));
    }

    private static @Nullable UncertainPosition origin(CaseView told) {
        return told.foundPlace() == null
                ? null
                : UncertainPosition.of(
                        told.foundPlace().decimalLatitude(),
                        told.foundPlace().decimalLongitude(),
                        told.foundPlace().coordinateUncertaintyInMeters());
    }

    private static String lookFirst(UncertainPosition origin, LookFirst first) {
        String where = way(origin, first.decimalLatitude(), first.decimalLongitude(), first.metres());
        return "Look first " + where
                + (first.water() == null ? "" : ", at the water " + first.water())
                + (first.onSide()
                        ? ". It is on the side of the road on which the animal was."
                        : ". On which side of the road the animal was is not known, or nothing is left there.")
                + " It is a place on a map: nobody has looked there yet.";
    }

    /** How far and which way from where it was found, and the place in degrees. */
    private static String way(UncertainPosition origin, double latitude, double longitude, double metres) {
        String degrees = String.format(Locale.ROOT, "%.5f, %.5f", latitude, longitude);
        return metres < 1
                ? "where it was found (" + degrees + ")"
                : distance(metres) + " to the "
                        + AreaPicture.compass(origin.position(), new Position(latitude, longitude))
                        + " of where it was found (" + degrees + ")";
    }

    private static String ask(ReleaseAreaFeature.AskFirst one) {
        String what = switch (Land.Kind.valueOf(one.kind())) {
            case protectedArea -> "Park or reserve";
            case property -> "Property";
            case jurisdiction -> "Across a border";
            default -> one.kind();
        };
        return what + ": " + one.name() + " (" + one.source() + "), " + size(one.squareMetres()) + " of the area.";
    }

    private static SiteRow row(RankedSite site) {
        return new SiteRow(
                site.rank(),
                site.name(),
                site.fitForGroup() ? "entered as fit for its kind" : "not entered as fit for its kind",
                switch (site.overall()) {
                    case "pass" -> "passed";
                    case "fail" -> "not passed";
                    default -> "can't tell";
                },
                switch (site.inArea()) {
                    case "pass" -> "yes, all of it";
                    case "fail" -> "no";
                    default -> "can't tell";
                },
                distance(site.distanceMetres()) + ", give or take " + distance(site.doubtMetres()),
                roads(site.roadsBetween()));
    }

    private static String roads(List<Barrier.Crossed> roads) {
        if (roads.isEmpty()) {
            return "none known";
        }
        List<String> words = new ArrayList<>();
        for (Barrier.Crossed road : roads.subList(0, Math.min(MOST_ROADS, roads.size()))) {
            words.add(road.roadName() + " ("
                    + (road.speedLimitKmh() == null ? "speed limit not known" : road.speedLimitKmh() + " km/h") + ", "
                    + (road.aadt() == null ? "traffic not known" : road.aadt() + " vehicles a day") + ")");
        }
        int more = roads.size() - words.size();
        return String.join("; ", words) + (more > 0 ? "; and " + more + " more" : "");
    }

    private static String geoJson(ReleaseAreaFeature.Properties said, AreaForm form) {
        String metres = Typed.given(form.withinMetres);
        return "/api/cases/" + said.caseId() + "/release-area?jurisdiction="
                + URLEncoder.encode(said.jurisdiction(), StandardCharsets.UTF_8)
                + (metres == null ? "" : "&withinMetres=" + URLEncoder.encode(metres, StandardCharsets.UTF_8));
    }

    static String size(double squareMetres) {
        return squareMetres == 0 ? "nothing" : ReleaseAreaFeature.size(squareMetres);
    }

    static String distance(double metres) {
        return metres < 1000
                ? String.format(Locale.ROOT, "%.0f m", metres)
                : String.format(Locale.ROOT, "%,.2f km", metres / 1000);
    }
}
