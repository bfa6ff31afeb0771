package org.culvert.exchange.demo;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** What no call says: where the collisions truly are denser, which calls tell of the same animal, and where each was. */
final class Truth {
    private Truth() {}

    static Map<String, String> files(DemoRegion region) {
        Map<String, String> texts = new LinkedHashMap<>();
        texts.put("truth.csv", stretches(region));
        texts.put("duplicates.csv", duplicates(region));
        texts.put("calls-truth.csv", calls(region));
        return texts;
    }

    /** The file that is committed: the planted stretches and those that are not hot. */
    static String stretches(DemoRegion region) {
        Csv csv = new Csv(
                "id",
                "kind",
                "road",
                "roadClass",
                "carriageways",
                "aadt",
                "owners",
                "fromMetres",
                "toMetres",
                "decimalLatitude",
                "decimalLongitude",
                "taxonGroup",
                "months",
                "extraSixYears",
                "extraSinceThen",
                "backgroundSixYears",
                "expectedBackgroundSixYears",
                "placedSixYears",
                "note");
        Instant end = endOfSixYears(region.settings());
        for (Plant plant : region.plants()) {
            Settings.PlantSpec spec = plant.spec();
            List<Incident> matching = region.incidents().stream()
                    .filter(incident -> matches(region, plant, incident))
                    .toList();
            List<Incident> sixYears = matching.stream()
                    .filter(incident -> incident.happened().isBefore(end))
                    .toList();
            Road road = plant.roads().get(0);
            csv.row(
                    plant.id(),
                    plant.hot() ? "planted" : "not hot",
                    road.name(),
                    road.kind().word(),
                    plant.roads().stream()
                            .map(each -> each.carriageway() == null ? "" : each.carriageway())
                            .collect(Collectors.joining(";")),
                    road.aadt(),
                    owners(plant),
                    metres(plant.fromMetres()),
                    metres(plant.toMetres()),
                    RegionFiles.latitude(plant.middle()),
                    RegionFiles.longitude(plant.middle()),
                    spec.taxonGroup(),
                    spec.months().stream().map(String::valueOf).collect(Collectors.joining(";")),
                    sixYears.stream()
                            .filter(incident -> incident.plantId() != null)
                            .count(),
                    matching.stream()
                            .filter(incident -> incident.plantId() != null
                                    && !incident.happened().isBefore(end))
                            .count(),
                    sixYears.stream()
                            .filter(incident -> incident.plantId() == null)
                            .count(),
                    String.format(Locale.ROOT, "%.2f", expected(region, plant, end)),
                    sixYears.stream()
                            .filter(incident -> incident.calls().get(0).place().kind() != GivenPlace.Kind.NONE)
                            .count(),
                    spec.note());
        }
        return csv.text();
    }

    static Instant endOfSixYears(Settings settings) {
        return settings.sixYearsEnd().plusDays(1).atStartOfDay(settings.zone()).toInstant();
    }

    /** Whether a collision lies on a stretch and is of its group and months; no group means any. */
    static boolean matches(DemoRegion region, Plant plant, Incident incident) {
        Exposure.RoadPoint point = incident.point();
        Settings.PlantSpec spec = plant.spec();
        return point != null
                && plant.covers(point.road(), point.measure())
                && (spec.taxonGroup().isEmpty() || spec.taxonGroup().equals(incident.taxonGroup()))
                && spec.months()
                        .contains(incident.happened()
                                .atZone(region.settings().zone())
                                .getMonthValue());
    }

    private static double expected(DemoRegion region, Plant plant, Instant end) {
        long background = region.incidents().stream()
                .filter(incident -> incident.point() != null && incident.plantId() == null)
                .filter(incident -> incident.happened().isBefore(end))
                .filter(incident -> plant.spec().taxonGroup().isEmpty()
                        || plant.spec().taxonGroup().equals(incident.taxonGroup()))
                .filter(incident -> plant.spec()
                        .months()
                        .contains(incident.happened()
                                .atZone(region.settings().zone())
                                .getMonthValue()))
                .count();
        return background * plant.expectedShare();
    }

    private static String owners(Plant plant) {
        Road road = plant.roads().get(0);
        String first = road.ownerAt(plant.fromMetres());
        String last = road.ownerAt(plant.toMetres());
        return first.equals(last) ? first : first + ';' + last;
    }

    private static String metres(double metres) {
        return String.format(Locale.ROOT, "%.0f", metres);
    }

    private static String duplicates(DemoRegion region) {
        Csv csv = new Csv("incident", "callId", "sameAsCallId", "joinedByTheDesk");
        for (Incident incident : region.incidents()) {
            for (Incident.Call later :
                    incident.calls().subList(1, incident.calls().size())) {
                csv.row(
                        incident.number(),
                        later.id(),
                        incident.calls().get(0).id(),
                        incident.deskJoin().name().toLowerCase(Locale.ROOT).replace('_', ' '));
            }
        }
        return csv.text();
    }

    private static String calls(DemoRegion region) {
        Csv csv = new Csv(
                "callId",
                "incident",
                "happened",
                "taxonGroup",
                "decimalLatitude",
                "decimalLongitude",
                "road",
                "carriageway",
                "chainageMetres",
                "plantedId");
        for (CallOf callOf : CallOf.inOrder(region.incidents())) {
            Incident incident = callOf.incident();
            Exposure.RoadPoint point = incident.point();
            csv.row(
                    callOf.call().id(),
                    incident.number(),
                    incident.happened(),
                    incident.taxonGroup(),
                    RegionFiles.latitude(incident.spot()),
                    RegionFiles.longitude(incident.spot()),
                    point == null ? null : point.road().name(),
                    point == null ? null : point.road().carriageway(),
                    point == null ? null : metres(point.measure()),
                    incident.plantId());
        }
        return csv.text();
    }
}
