package org.culvert.web.desk;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.culvert.call.CallReceipt;
import org.culvert.call.CallService;
import org.culvert.call.CallView;
import org.culvert.call.IncidentService;
import org.culvert.call.IncidentView;
import org.culvert.call.PlaceView;
import org.culvert.call.ToldWordsService;
import org.culvert.dispatch.ClosingService;
import org.culvert.dispatch.DispatchService;
import org.culvert.dispatch.DispatchService.AttendanceView;
import org.culvert.dispatch.DispatchService.GateView;
import org.culvert.dispatch.GateKeeper;
import org.culvert.dispatch.OpenIncidentService;
import org.culvert.dispatch.OpenIncidentService.OpenIncidentView;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.road.PlaceAsGiven;
import org.culvert.road.RoadFacts;
import org.culvert.road.RoadService;
import org.culvert.roster.RosterService;
import org.culvert.web.kept.KeptLinks;
import org.jspecify.annotations.Nullable;

/** Gathers what the desk's page of an incident shows. */
@ApplicationScoped
class DeskIncidentPages {
    private static final int NEAREST = 8;
    private static final double AROUND_METRES = 5_000;
    private static final int MOST_AROUND = 8;

    private final IncidentService incidents;
    private final CallService calls;
    private final ToldWordsService told;
    private final GateKeeper gate;
    private final DispatchService dispatch;
    private final ClosingService closings;
    private final OpenIncidentService open;
    private final RosterService roster;
    private final RoadService roads;
    private final AnimalNames animals;
    private final KeptLinks kept;
    private final Clock clock;

    DeskIncidentPages(
            IncidentService incidents,
            CallService calls,
            ToldWordsService told,
            GateKeeper gate,
            DispatchService dispatch,
            ClosingService closings,
            OpenIncidentService open,
            RosterService roster,
            RoadService roads,
            AnimalNames animals,
            KeptLinks kept,
            Clock clock) {
        this.incidents = incidents;
        this.calls = calls;
        this.told = told;
        this.gate = gate;
        this.dispatch = dispatch;
        this.closings = closings;
        this.open = open;
        this.roster = roster;
        this.roads = roads;
        this.animals = animals;
        this.kept = kept;
        this.clock = clock;
    }

    List<String> listAnimals() {
        return animals.list();
    }

    Map<String, String> listCauses() {
        return calls.listCauses();
    }

    @Transactional
    DeskIncidentPage page(
            UUID incidentId,
            @Nullable UUID callId,
            @Nullable DeskCall typed,
            @Nullable DeskSending sending,
            @Nullable GateView asked) {
        IncidentView incident = incidents.getIncident(incidentId, true);
        CallView call = choose(incident, callId);
        CallReceipt receipt = calls.getReceipt(call.id());
        List<DeskIncidentPage.Goer> who = who(incidentId, sending);
        int shown = Math.min(who.size(), NEAREST);
        return new DeskIncidentPage(
                incident,
                call,
                DeskTold.of(typed == null ? DeskCall.of(call, incident.place()) : typed),
                incident.calls().stream()
                        .filter(other -> !other.id().equals(call.id()))
                        .toList(),
                where(incident.place()),
                receipt,
                say(call.id(), receipt),
                who.subList(0, shown),
                who.subList(shown, who.size()),
                (int) who.stream().filter(one -> one.notBecause().isEmpty()).count(),
                asked,
                sending == null
                        ? Objects.requireNonNullElse(call.policeReference(), "")
                        : Objects.requireNonNullElse(sending.policeReference, ""),
                sending == null ? "" : Objects.requireNonNullElse(sending.overrideReason, ""),
                outings(incidentId),
                around(incident),
                closings.list(incidentId),
                kept.waysOf("incidents", incidentId),
                clock.instant());
    }

    private List<DeskIncidentPage.Around> around(IncidentView incident) {
        PlaceView place = incident.place();
        if (place == null) {
            return List.of();
        }
        Position at = new Position(place.decimalLatitude(), place.decimalLongitude());
        record Near(OpenIncidentView open, double metres) {}
        List<Near> near = new ArrayList<>();
        for (OpenIncidentView one : open.listOpen()) {
            Double latitude = one.decimalLatitude();
            Double longitude = one.decimalLongitude();
            if (latitude != null && longitude != null && !one.incidentId().equals(incident.id())) {
                near.add(new Near(one, Geodesy.metresBetween(at, new Position(latitude, longitude))));
            }
        }
        return near.stream()
                .filter(one -> one.metres() <= AROUND_METRES)
                .sorted(Comparator.comparingDouble(Near::metres))
                .limit(MOST_AROUND)
                .map(one -> new DeskIncidentPage.Around(
                        one.open(), String.format(Locale.ROOT, "%.1f", one.metres() / 1000)))
                .toList();
    }

    private static CallView choose(IncidentView incident, @Nullable UUID callId) {
        List<CallView> all = incident.calls();
        if (callId == null) {
            return all.get(all.size() - 1);
        }
        return all.stream()
                .filter(call -> call.id().equals(callId))
                .findFirst()
                .orElseThrow(() -> new NotFoundException("call of that incident", callId));
    }

    private @Nullable DeskWhere where(@Nullable PlaceView place) {
        if (place == null) {
            return null;
        }
        UUID link = place.roadLinkId();
        Double limit = link == null
                ? null
                : roads.findLink(link).map(RoadFacts.LinkFacts::speedLimitKmh).orElse(null);
        return DeskWhere.of(place, limit, roads.findCurrent().orElse(null), List.of());
    }

    private List<DeskIncidentPage.Sentence> say(UUID callId, CallReceipt receipt) {
        Map<String, Instant> at = new HashMap<>();
        told.list(callId).stream()
                .filter(one -> one.withdrawnAt() == null)
                .forEach(one -> at.put(one.words(), one.at()));
        List<DeskIncidentPage.Sentence> say = new ArrayList<>();
        receipt.peopleFirst().forEach(words -> say.add(new DeskIncidentPage.Sentence(words, at.get(words))));
        receipt.sayToCaller().forEach(words -> say.add(new DeskIncidentPage.Sentence(words, at.get(words))));
        return say;
    }

    private List<DeskIncidentPage.Goer> who(UUID incidentId, @Nullable DeskSending sending) {
        return gate.whoCanGo(incidentId, clock.instant()).stream()
                .map(one -> new DeskIncidentPage.Goer(
                        one.memberId(),
                        one.callSign(),
                        one.metresAway() == null ? null : String.format(Locale.ROOT, "%.0f", one.metresAway() / 1000),
                        one.notBecause(),
                        sending != null && sending.isLead(one.memberId()),
                        sending != null && sending.isHelper(one.memberId())))
                .toList();
    }

    private List<DeskIncidentPage.Outing> outings(UUID incidentId) {
        return dispatch.listAttendances(incidentId).stream()
                .map(one -> new DeskIncidentPage.Outing(
                        one,
                        roster.getMember(one.leadMemberId()).callSign(),
                        one.helperMemberIds().stream()
                                .map(id -> roster.getMember(id).callSign())
                                .toList(),
                        next(one)))
                .toList();
    }

    private static String next(AttendanceView attendance) {
        if (attendance.endedAt() != null) {
            return "";
        }
        if (attendance.acceptedAt() == null) {
            return "accept";
        }
        if (attendance.departedAt() == null) {
            return "depart";
        }
        return attendance.arrivedAt() == null ? "arrive" : "end";
    }

    UUID requireAttendance(UUID incidentId, UUID attendanceId) {
        if (!dispatch.getAttendance(attendanceId).incidentId().equals(incidentId)) {
            throw new NotFoundException("attendance of that incident", attendanceId);
        }
        return attendanceId;
    }

    /** The same position, said to be on one of the other roads that it may be on. */
    PlaceAsGiven sameButOn(UUID incidentId, String road) {
        PlaceView place = incidents.getIncident(incidentId, true).place();
        if (place == null) {
            throw new ConflictException("Nobody has said where it is.");
        }
        if (place.otherRoads().stream().noneMatch(other -> other.roadName().equals(road))) {
            throw InvalidException.of("road", "It is not one of the roads that it may be on.", "one of the page");
        }
        return PlaceAsGiven.at(
                place.decimalLatitude(), place.decimalLongitude(), place.coordinateUncertaintyInMeters(), road);
    }
}
