package org.culvert.exchange.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Makes what happened and what was reported of it. */
final class CallMaker {
    static final String COLLISION = "collisionWithVehicle";
    private static final List<String> OTHER_CAUSES =
            List.of("attackByDog", "attackByCat", "entanglement", "orphaned", "disease", "unsuitablePlace", "unknown");
    private static final List<String> OUTCOMES = List.of(
            "collected",
            "leftWell",
            "deadChecked",
            "notFound",
            "notAttendedUnsafe",
            "notAttendedNobody",
            "adviceOnly",
            "passedOn");
    private static final double[] OTHER_CAUSE_WEIGHTS = {22, 10, 12, 24, 10, 10, 12};

    private final Settings settings;
    private final Calendar calendar;
    private final Exposure exposure;
    private final List<Road> streets;
    private final Callers callers;
    private final PlaceGiver placeGiver;
    private final AnimalMaker animalMaker;
    private final List<Incident> incidents = new ArrayList<>();

    CallMaker(Settings settings, List<Road> roads, Exposure exposure, Callers callers) {
        this.settings = settings;
        this.calendar = new Calendar(settings);
        this.exposure = exposure;
        this.streets = roads.stream()
                .filter(road -> road.kind() == RoadClass.RESIDENTIAL)
                .toList();
        this.callers = callers;
        this.placeGiver = new PlaceGiver(settings.ground(), Planter.crewRoad(settings, roads));
        this.animalMaker = new AnimalMaker(settings);
    }

    List<Incident> make(List<Plant> plants) {
        background();
        others();
        for (Plant plant : plants) {
            if (plant.hot()) {
                planted(plant);
            }
        }
        return numbered();
    }

    private void background() {
        Dice dice = new Dice(settings.seed(), "background collisions");
        double[] shares = settings.groups().stream()
                .mapToDouble(Settings.Group::collisionShare)
                .toArray();
        for (int i = 0; i < settings.collisionIncidents(); i++) {
            Settings.Group group = settings.groups().get(dice.weighted(shares));
            collision(dice, group, calendar.day(dice, group), exposure.draw(dice), null);
        }
    }

    private void others() {
        Dice dice = new Dice(settings.seed(), "other causes");
        double[] shares = settings.groups().stream()
                .mapToDouble(Settings.Group::otherShare)
                .toArray();
        while (incidents.size() < settings.collisionIncidents() + settings.otherIncidents()) {
            Settings.Group group = settings.groups().get(dice.weighted(shares));
            String cause = OTHER_CAUSES.get(dice.weighted(OTHER_CAUSE_WEIGHTS));
            Road street = dice.pick(streets);
            Spot street0 = street.spotAt(dice.between(street.startMeasure(), street.endMeasure()));
            if (dice.unit() * settings.townReportingFactor() < exposure.reporting(street0)) {
                Spot yard = settings.ground().moved(street0, dice.normal(0, 60), dice.normal(0, 60));
                Instant happened = calendar.instant(calendar.moment(dice, group.activity(), calendar.day(dice, group)));
                GivenPlace place = dice.chance(0.12)
                        ? GivenPlace.none("at the caller's home in " + street.name())
                        : placeGiver.pinned(dice, yard, null);
                record(dice, cause, group, happened, yard, null, null, place);
            }
        }
    }

    /** The extra collisions of the six years, and, if they have not ended, of as much of the present season as has passed. */
    private void planted(Plant plant) {
        Dice dice = new Dice(settings.seed(), "collisions of " + plant.id());
        Settings.PlantSpec spec = plant.spec();
        Settings.Group group = settings.group(spec.taxonGroup());
        LocalDate until = spec.until();
        LocalDate end = until == null ? settings.sixYearsEnd() : until;
        for (int i = 0; i < spec.extraCollisions(); i++) {
            plantOne(dice, plant, group, calendar.day(dice, group, spec.months(), settings.firstDay(), end));
        }
        if (until != null) {
            return;
        }
        LocalDate now = settings.sixYearsEnd().plusDays(1);
        double before = calendar.weight(group, spec.months(), settings.firstDay(), settings.sixYearsEnd());
        double since = calendar.weight(group, spec.months(), now, settings.lastDay());
        long more = StrictMath.round(spec.extraCollisions() * since / before);
        for (int i = 0; i < more; i++) {
            plantOne(dice, plant, group, calendar.day(dice, group, spec.months(), now, settings.lastDay()));
        }
    }

    private void plantOne(Dice dice, Plant plant, Settings.Group group, LocalDate day) {
        Road road = dice.pick(plant.roads());
        double measure = dice.between(plant.fromMetres(), plant.toMetres());
        collision(dice, group, day, new Exposure.RoadPoint(road, measure), plant);
    }

    private void collision(
            Dice dice, Settings.Group group, LocalDate day, Exposure.RoadPoint point, @Nullable Plant plant) {
        LocalDateTime moment = calendar.moment(dice, group.activity(), day);
        while (plant != null && moment.getMonthValue() != day.getMonthValue()) {
            moment = calendar.moment(dice, group.activity(), day);
        }
        Instant happened = calendar.instant(moment);
        GivenPlace place = placeGiver.onRoad(
                dice, point, plant == null ? null : plant.spec().wholeKmShare());
        record(dice, COLLISION, group, happened, point.spot(), point, plant == null ? null : plant.id(), place);
    }

    private void record(
            Dice dice,
            String cause,
            Settings.Group group,
            Instant happened,
            Spot spot,
            Exposure.@Nullable RoadPoint point,
            @Nullable String plantId,
            GivenPlace place) {
        boolean dead = dice.chance(cause.equals(COLLISION) ? group.deadShare() : 0.08);
        Settings.Taxon taxon = animalMaker.taxon(dice, group);
        LocalDateTime local = happened.atZone(settings.zone()).toLocalDateTime();
        List<Incident.Animal> animals = animalMaker.animals(dice, group, taxon, cause, dead, local.getMonthValue());
        boolean seen = !dead && dice.chance(0.7) || dice.chance(0.25);
        Instant received = seen
                ? happened.plusSeconds((long) (60 * dice.logNormal(14, 0.8)))
                : calendar.instant(
                        calendar.nextDaylight(dice, local).plusSeconds((long) (60 * dice.logNormal(60, 0.9))));
        List<Incident.Call> calls = new ArrayList<>();
        calls.add(call(dice, cause, happened, received, seen, point, taxon, animals, dead, place));
        if (point != null && dice.chance(settings.duplicateShare())) {
            Instant second = received.plusSeconds(60L * dice.from(4, 150));
            GivenPlace again = placeGiver.onRoad(dice, point, null);
            Settings.Taxon saidTaxon = dice.chance(0.75) ? taxon : animalMaker.taxon(dice, group);
            List<Incident.Animal> said =
                    List.of(animalMaker.unsure(saidTaxon, dead || dice.chance(0.1) ? "dead" : "alive"));
            calls.add(call(dice, cause, happened, second, false, point, saidTaxon, said, dead, again));
        }
        Incident.DeskJoin deskJoin = calls.size() == 1
                ? Incident.DeskJoin.NONE
                : List.of(Incident.DeskJoin.AT_ONCE, Incident.DeskJoin.LATER, Incident.DeskJoin.NEVER)
                        .get(dice.weighted(new double[] {60, 27, 13}));
        incidents.add(
                new Incident(0, cause, group.name(), happened, spot, point, plantId, deskJoin, List.copyOf(calls)));
    }

    private Incident.Call call(
            Dice dice,
            String cause,
            Instant happened,
            Instant received,
            boolean seen,
            Exposure.@Nullable RoadPoint point,
            Settings.Taxon taxon,
            List<Incident.Animal> animals,
            boolean dead,
            GivenPlace place) {
        Instant earliest = null;
        Instant latest = null;
        if (seen) {
            earliest = happened;
            latest = happened;
        } else if (dice.chance(0.6)) {
            earliest = happened.minusSeconds(3600L * dice.from(1, 10));
            latest = received;
        }
        boolean late = dice.chance(settings.lateEntryShare());
        Instant written = late
                ? received.plus(Duration.ofHours(dice.from(20, 20 * 24)))
                : received.plusSeconds(dice.from(30, 400));
        Instant end =
                settings.lastDay().plusDays(2).atStartOfDay(settings.zone()).toInstant();
        Instant recorded = written.isAfter(end) && received.isBefore(end) ? end : written;
        boolean collision = cause.equals(COLLISION);
        boolean hurt = collision && dice.chance(0.008);
        String offTheRoad = !collision ? "yes" : dice.chance(0.85) ? "yes" : dice.chance(0.5) ? "unknown" : "no";
        String words = Words.of(dice, cause, dead, taxon.vernacularName());
        if (point != null && dice.chance(0.4)) {
            words += " " + point.road().name() + '.';
        }
        return new Incident.Call(
                "",
                received,
                recorded,
                earliest,
                latest,
                callers.draw(dice).key(),
                place,
                words,
                hurt ? "yes" : collision && dice.chance(0.03) ? "unknown" : "no",
                offTheRoad,
                hurt ? String.format(Locale.ROOT, "P%06d", dice.below(1_000_000)) : "",
                animals,
                outcome(dice, dead, place));
    }

    private static String outcome(Dice dice, boolean dead, GivenPlace place) {
        if (place.kind() == GivenPlace.Kind.NONE && dice.chance(0.5)) {
            return "adviceOnly";
        }
        double[] weights = dead ? new double[] {4, 0, 60, 16, 8, 6, 4, 2} : new double[] {58, 12, 6, 14, 1, 3, 4, 2};
        return OUTCOMES.get(dice.weighted(weights));
    }

    /** Incidents in the order in which they became known, calls numbered as they came in. */
    private List<Incident> numbered() {
        Comparator<Incident> order = Comparator.comparing(
                        (Incident incident) -> incident.calls().get(0).received())
                .thenComparing(incident -> incident.spot().longitudeE7())
                .thenComparing(incident -> incident.spot().latitudeE7());
        List<Incident> sorted = incidents.stream().sorted(order).toList();
        List<Incident.Call> calls = sorted.stream()
                .flatMap(incident -> incident.calls().stream())
                .sorted(Comparator.comparing(Incident.Call::received).thenComparing(Incident.Call::words))
                .toList();
        Map<Incident.Call, String> ids = new IdentityHashMap<>();
        for (Incident.Call call : calls) {
            ids.put(call, String.format(Locale.ROOT, "K%05d", ids.size() + 1));
        }
        return IntStream.range(0, sorted.size())
                .mapToObj(i -> withNumbers(sorted.get(i), i + 1, ids))
                .toList();
    }

    private static Incident withNumbers(Incident incident, int number, Map<Incident.Call, String> ids) {
        return new Incident(
                number,
                incident.cause(),
                incident.taxonGroup(),
                incident.happened(),
                incident.spot(),
                incident.point(),
                incident.plantId(),
                incident.deskJoin(),
                incident.calls().stream()
                        .map(call -> new Incident.Call(
                                Objects.requireNonNull(ids.get(call)),
                                call.received(),
                                call.recorded(),
                                call.eventEarliest(),
                                call.eventLatest(),
                                call.callerKey(),
                                call.place(),
                                call.words(),
                                call.anyoneHurt(),
                                call.offTheRoad(),
                                call.policeReference(),
                                call.animals(),
                                call.outcome()))
                        .toList());
    }
}
