package org.culvert.exchange.demo;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The region as files: name and text of each. */
public final class RegionFiles {
    private final DemoRegion region;

    private RegionFiles(DemoRegion region) {
        this.region = region;
    }

    /** All files in a fixed order. */
    public static Map<String, String> of(DemoRegion region) {
        RegionFiles files = new RegionFiles(region);
        Map<String, String> texts = new LinkedHashMap<>();
        texts.put("roads.geojson", files.roads());
        texts.put("waters.geojson", files.waters());
        texts.put("catchments.geojson", areas(region.terrain().catchments()));
        texts.put("parks.geojson", areas(region.terrain().parks()));
        texts.put("councils.geojson", areas(region.terrain().councils()));
        texts.put("taxon-groups.csv", files.taxonGroups());
        texts.put("taxa.csv", files.taxa());
        texts.put("organisations.csv", files.organisations());
        texts.put("members.csv", files.members());
        texts.put("premises.csv", files.premises());
        texts.put("authorisations.csv", files.authorisations());
        texts.put("vaccinations.csv", files.vaccinations());
        texts.put("release-sites.csv", files.releaseSites());
        texts.put("callers.csv", files.callers());
        texts.put("calls.csv", files.calls());
        texts.put("animals.csv", files.animals());
        texts.putAll(Truth.files(region));
        return texts;
    }

    String roads() {
        GeoJson json = new GeoJson();
        for (Road road : region.roads()) {
            for (Road.Piece piece : road.pieces()) {
                json.line(
                        road.spots().subList(piece.fromVertex(), piece.toVertex() + 1),
                        "name",
                        road.name(),
                        "class",
                        road.kind().word(),
                        "speedLimitKmh",
                        road.speedLimit(),
                        "aadt",
                        road.shownAadt(),
                        "owner",
                        piece.owner(),
                        "carriageway",
                        road.carriageway(),
                        "level",
                        piece.level(),
                        "bridge",
                        piece.level() > 0 ? "yes" : null,
                        "startMeasureMetres",
                        road.measured() ? Double.valueOf(millimetres(road.measures()[piece.fromVertex()])) : null);
            }
        }
        return json.text();
    }

    private static double millimetres(double metres) {
        return StrictMath.rint(metres * 1000) / 1000;
    }

    private String waters() {
        GeoJson json = new GeoJson();
        for (Terrain.Watercourse river : region.terrain().rivers()) {
            json.line(river.line(), "name", river.name(), "kind", river.kind(), "catchment", river.catchment());
        }
        for (Terrain.Area water : region.terrain().waters()) {
            json.ring(water.ring(), "name", water.name(), "kind", water.kind());
        }
        return json.text();
    }

    private static String areas(List<Terrain.Area> areas) {
        GeoJson json = new GeoJson();
        areas.forEach(area -> json.ring(area.ring(), "name", area.name(), "kind", area.kind()));
        return json.text();
    }

    private String taxonGroups() {
        Csv csv = new Csv("key", "name", "vaccinationNeeded", "pouch", "clutches", "introduced");
        region.settings()
                .groups()
                .forEach(g ->
                        csv.row(g.name(), g.label(), g.vaccinationNeeded(), g.pouch(), g.clutches(), g.introduced()));
        return csv.text();
    }

    private String taxa() {
        List<String> columns = List.of(
                "scientificName",
                "vernacularName",
                "taxonRank",
                "class",
                "order",
                "family",
                "taxonGroup",
                "establishmentMeans",
                "sensitivityGridDegrees",
                "sensitivityReason",
                "sensitivityReviewBy",
                "cautions");
        Csv csv = new Csv(columns.toArray(String[]::new));
        region.settings()
                .taxa()
                .forEach(taxon -> csv.row(columns.stream().map(taxon::cell).toArray()));
        return csv.text();
    }

    private String organisations() {
        Csv csv = new Csv("key", "name", "kind", "email", "phone");
        region.people().organisations().forEach(o -> csv.row(o.key(), o.name(), o.kind(), o.email(), o.phone()));
        return csv.text();
    }

    private String members() {
        Csv csv = new Csv(
                "key",
                "callSign",
                "vetRegistration",
                "givenName",
                "familyName",
                "email",
                "phone",
                "organisationKey",
                "roles",
                "premisesKey");
        region.people()
                .members()
                .forEach(m -> csv.row(
                        m.key(),
                        m.callSign(),
                        m.vetRegistration(),
                        m.givenName(),
                        m.familyName(),
                        m.email(),
                        m.phone(),
                        m.organisationKey(),
                        String.join(";", m.roles()),
                        m.premisesKey()));
        return csv.text();
    }

    private String premises() {
        Csv csv = new Csv("key", "kind", "address", "decimalLatitude", "decimalLongitude", "capacity");
        region.people()
                .premises()
                .forEach(p ->
                        csv.row(p.key(), p.kind(), p.address(), latitude(p.spot()), longitude(p.spot()), p.capacity()));
        return csv.text();
    }

    private String authorisations() {
        Csv csv = new Csv("number", "memberKey", "class", "taxonGroups", "validFrom", "validTo", "incubation");
        region.people()
                .authorisations()
                .forEach(a -> csv.row(
                        a.number(),
                        a.memberKey(),
                        a.authorisationClass(),
                        String.join(";", a.taxonGroups()),
                        a.validFrom(),
                        a.validTo(),
                        a.incubation()));
        return csv.text();
    }

    private String vaccinations() {
        Csv csv = new Csv("memberKey", "against", "event", "date", "antibodyIuPerMl");
        region.people()
                .vaccinations()
                .forEach(v -> csv.row(v.memberKey(), v.against(), v.event(), v.date(), v.antibodyIuPerMl()));
        return csv.text();
    }

    private String releaseSites() {
        Csv csv = new Csv(
                "key",
                "name",
                "decimalLatitude",
                "decimalLongitude",
                "habitat",
                "taxonGroups",
                "catchment",
                "council",
                "park",
                "ownerConsents");
        region.people()
                .releaseSites()
                .forEach(s -> csv.row(
                        s.key(),
                        s.name(),
                        latitude(s.spot()),
                        longitude(s.spot()),
                        s.habitat(),
                        String.join(";", s.taxonGroups()),
                        s.catchment(),
                        s.council(),
                        s.park(),
                        s.ownerConsents()));
        return csv.text();
    }

    private String callers() {
        Csv csv = new Csv("key", "name", "phone");
        region.callers().all().forEach(caller -> csv.row(caller.key(), caller.name(), caller.phone()));
        return csv.text();
    }

    private String calls() {
        Csv csv = new Csv(
                "id",
                "received",
                "recorded",
                "eventEarliest",
                "eventLatest",
                "callerKey",
                "cause",
                "placeKind",
                "placeText",
                "decimalLatitude",
                "decimalLongitude",
                "coordinateUncertaintyInMeters",
                "grid",
                "easting",
                "northing",
                "plusCode",
                "roadName",
                "carriageway",
                "chainageKm",
                "crossingRoadName",
                "words",
                "anyoneHurt",
                "offTheRoad",
                "policeReference",
                "outcome");
        for (CallOf callOf : CallOf.inOrder(region.incidents())) {
            Incident.Call call = callOf.call();
            GivenPlace place = call.place();
            csv.row(
                    call.id(),
                    local(call.received()),
                    local(call.recorded()),
                    local(call.eventEarliest()),
                    local(call.eventLatest()),
                    call.callerKey(),
                    callOf.incident().cause(),
                    place.kind().word(),
                    place.text(),
                    place.decimalLatitude(),
                    place.decimalLongitude(),
                    place.uncertaintyMetres(),
                    place.gridCode(),
                    place.easting(),
                    place.northing(),
                    place.plusCode(),
                    place.roadName(),
                    place.carriageway(),
                    place.chainageKm(),
                    place.crossingRoadName(),
                    call.words(),
                    call.anyoneHurt(),
                    call.offTheRoad(),
                    call.policeReference(),
                    call.outcome());
        }
        return csv.text();
    }

    private @Nullable String local(@Nullable Instant instant) {
        return instant == null
                ? null
                : instant.atZone(region.settings().zone()).toOffsetDateTime().toString();
    }

    private String animals() {
        Csv csv = new Csv(
                "callId",
                "number",
                "scientificName",
                "identificationVerificationStatus",
                "individualCount",
                "vitality",
                "lifeStage",
                "sex",
                "motherNumber");
        for (CallOf callOf : CallOf.inOrder(region.incidents())) {
            int number = 0;
            for (Incident.Animal animal : callOf.call().animals()) {
                number++;
                csv.row(
                        callOf.call().id(),
                        number,
                        animal.scientificName(),
                        animal.identificationVerificationStatus(),
                        animal.individualCount(),
                        animal.vitality(),
                        animal.lifeStage(),
                        animal.sex(),
                        animal.mother() == 0 ? null : animal.mother());
            }
        }
        return csv.text();
    }

    static String latitude(Spot spot) {
        return String.format(Locale.ROOT, "%.7f", spot.latitude());
    }

    static String longitude(Spot spot) {
        return String.format(Locale.ROOT, "%.7f", spot.longitude());
    }
}
