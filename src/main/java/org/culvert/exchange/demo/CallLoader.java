package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.FlushModeType;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.call.CallEntry;
import org.culvert.call.CallService;
import org.culvert.call.IncidentService;
import org.culvert.dispatch.ClosingService;
import org.culvert.dispatch.DispatchService;
import org.culvert.road.PlaceAsGiven;
import org.jspecify.annotations.Nullable;

/** Takes the calls of the region as if they came in now, each with the time it was received. */
@ApplicationScoped
class CallLoader {
    /** The session looks at every row it knows at each flush: so it forgets them every so many incidents. */
    private static final int FORGET_EVERY = 20;

    /** Incidents of the last weeks are worked on one by one, those before are ended as old records are. */
    private static final Duration RECENT = Duration.ofDays(21);

    private final CallService calls;
    private final IncidentService incidents;
    private final ClosingService closings;
    private final DeskWork desk;
    private final Stories stories;
    private final EntityManager entities;

    CallLoader(
            CallService calls,
            IncidentService incidents,
            ClosingService closings,
            DeskWork desk,
            Stories stories,
            EntityManager entities) {
        this.calls = calls;
        this.incidents = incidents;
        this.closings = closings;
        this.desk = desk;
        this.stories = stories;
        this.entities = entities;
    }

    /** What the whole load shares. */
    record Task(
            DemoRegion region,
            Map<String, Callers.Caller> callers,
            Map<Integer, Stories.Story> stories,
            Instant recentFrom,
            Instant end) {
        static Task of(DemoRegion region) {
            Map<String, Callers.Caller> callers = new HashMap<>();
            region.callers().all().forEach(caller -> callers.put(caller.key(), caller));
            Instant end = region.settings()
                    .lastDay()
                    .plusDays(1)
                    .atStartOfDay(region.settings().zone())
                    .toInstant();
            return new Task(region, callers, Stories.choose(region), end.minus(RECENT), end);
        }
    }

    /** Loads incidents with all their calls and what became of them, within the caller's transaction. */
    void load(Task task, List<Incident> batch, UUID importId) {
        entities.setFlushMode(FlushModeType.COMMIT);
        int done = 0;
        for (Incident incident : batch) {
            loadOne(task, incident, importId);
            if (++done % FORGET_EVERY == 0) {
                entities.flush();
                entities.clear();
            }
        }
    }

    private void loadOne(Task task, Incident incident, UUID importId) {
        Incident.Call first = incident.calls().get(0);
        CallService.Kept kept = calls.keep(entry(incident, first, task.callers(), null), importId);
        for (Incident.Call later : incident.calls().subList(1, incident.calls().size())) {
            UUID known = incident.deskJoin() == Incident.DeskJoin.AT_ONCE ? kept.incidentId() : null;
            CallService.Kept other = calls.keep(entry(incident, later, task.callers(), known), importId);
            if (incident.deskJoin() == Incident.DeskJoin.LATER) {
                incidents.join(kept.incidentId(), other.incidentId(), "two callers, one animal", false);
            } else if (incident.deskJoin() == Incident.DeskJoin.NEVER) {
                end(task, other.incidentId(), later, importId);
            }
        }
        Incident.Call last = incident.calls().get(incident.calls().size() - 1);
        Stories.Story story = task.stories().get(incident.number());
        if (story == null && first.received().isBefore(task.recentFrom())) {
            end(task, kept.incidentId(), last, importId);
            return;
        }
        entities.setFlushMode(FlushModeType.AUTO);
        if (story != null) {
            stories.tell(task.region(), story, kept.incidentId(), incident);
        } else {
            desk.work(task.region(), kept.incidentId(), incident, task.end());
        }
        entities.setFlushMode(FlushModeType.COMMIT);
    }

    private void end(Task task, UUID incidentId, Incident.Call call, UUID importId) {
        closings.closeFromHistory(
                incidentId,
                DispatchService.Outcome.valueOf(call.outcome()),
                call.received().plusSeconds(2 * 3600),
                call.outcome().equals("passedOn") ? task.region().settings().roadsAuthority() : null,
                importId);
    }

    static CallEntry entry(
            Incident incident, Incident.Call call, Map<String, Callers.Caller> callers, @Nullable UUID knownIncident) {
        Callers.Caller caller = RosterLoader.required(callers, call.callerKey());
        boolean exact = call.eventEarliest() != null && call.eventEarliest().equals(call.eventLatest());
        return new CallEntry(
                call.received(),
                exact ? call.eventEarliest() : null,
                exact ? null : call.eventEarliest(),
                new CallEntry.People(
                        CallEntry.Answer.valueOf(call.anyoneHurt()),
                        CallEntry.Answer.valueOf(call.offTheRoad()),
                        call.policeReference().isEmpty() ? null : call.policeReference()),
                new CallEntry.Caller(caller.name().isEmpty() ? null : caller.name(), caller.phone(), null, null),
                call.words(),
                incident.cause(),
                call.animals().stream().map(CallLoader::animal).toList(),
                place(call.place()),
                knownIncident);
    }

    private static CallEntry.Animal animal(Incident.Animal animal) {
        return new CallEntry.Animal(
                animal.scientificName(),
                null,
                null,
                CallEntry.Verification.valueOf(animal.identificationVerificationStatus()),
                animal.individualCount(),
                CallEntry.Vitality.valueOf(animal.vitality()),
                animal.lifeStage().equals("unknown") ? null : animal.lifeStage(),
                CallEntry.Sex.valueOf(animal.sex()),
                animal.mother() > 0 ? "young of animal " + animal.mother() + " of this call" : null,
                CallEntry.Answer.unknown,
                false);
    }

    static @Nullable PlaceAsGiven place(GivenPlace place) {
        if (place.kind() == GivenPlace.Kind.NONE) {
            return null;
        }
        boolean pinned = place.kind() == GivenPlace.Kind.DECIMAL_DEGREES;
        return new PlaceAsGiven(
                place.decimalLatitude() == null || place.decimalLongitude() == null
                        ? null
                        : new PlaceAsGiven.DecimalDegrees(place.decimalLatitude(), place.decimalLongitude()),
                place.kind() == GivenPlace.Kind.DEGREES_MINUTES_SECONDS ? place.text() : null,
                place.gridCode() == null
                        ? null
                        : new PlaceAsGiven.Grid(
                                Integer.parseInt(place.gridCode().substring("EPSG:".length())),
                                String.valueOf(place.easting()),
                                String.valueOf(place.northing())),
                place.plusCode(),
                place.chainageKm() == null || place.roadName() == null
                        ? null
                        : new PlaceAsGiven.RoadAndChainage(place.roadName(), place.chainageKm(), place.carriageway()),
                place.crossingRoadName() == null || place.roadName() == null
                        ? null
                        : new PlaceAsGiven.CrossingRoads(place.roadName(), place.crossingRoadName()),
                place.uncertaintyMetres() == null ? null : Double.valueOf(place.uncertaintyMetres()),
                pinned ? place.roadName() : null,
                null);
    }
}
