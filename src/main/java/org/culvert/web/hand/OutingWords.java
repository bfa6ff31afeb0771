package org.culvert.web.hand;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.culvert.call.CallView;
import org.culvert.call.IncidentView;
import org.culvert.call.PlaceView;
import org.culvert.dispatch.DispatchService.AttendanceView;
import org.culvert.dispatch.DispatchService.Outcome;
import org.culvert.dispatch.GateTest;
import org.culvert.web.words.HandWords;
import org.jspecify.annotations.Nullable;

/** A going-out as its people read it: what to mind first, then where, then the next step. */
final class OutingWords {
    private OutingWords() {}

    /** What comes next: {@code accept}, {@code depart}, {@code arrive}, {@code outcome}, or {@code none} once it has ended. */
    static String stepOf(AttendanceView told) {
        if (told.endedAt() != null) {
            return "none";
        }
        if (told.arrivedAt() != null) {
            return "outcome";
        }
        if (told.departedAt() != null) {
            return "arrive";
        }
        return told.acceptedAt() != null ? "depart" : "accept";
    }

    static String stepWords(String step, HandWords words) {
        return switch (step) {
            case "accept" -> words.stepAccept();
            case "depart" -> words.stepDepart();
            case "arrive" -> words.stepArrive();
            default -> words.stepOutcome();
        };
    }

    static HandPages.OutingPage page(
            HandPages.Frame frame,
            AttendanceView told,
            IncidentView incident,
            int photographs,
            boolean mayAct,
            HandTongue tongue,
            Sent sent) {
        HandWords words = tongue.words();
        String step = stepOf(told);
        Sent scene = sent.of("s-" + told.id());
        boolean stepIsGone = step.equals("none") && !sent.form().startsWith("p-");
        return new HandPages.OutingPage(
                frame,
                stepIsGone ? sent : Sent.NOTHING,
                told.id(),
                told.incidentId(),
                words.incident(incident.number()) + ": " + String.join(", ", animals(incident, tongue)),
                mayAct,
                hurt(incident),
                animals(incident, tongue),
                told.sayToRescuer(),
                told.gate().tests().stream()
                        .map(test -> gate(test, told.gate().overrideReason() != null, words))
                        .toList(),
                told.gate().overrideReason() == null
                        ? null
                        : words.gateSetAside(told.gate().overrideReason()),
                spot(incident.place(), tongue),
                past(told, tongue),
                List.of(
                        new HandPages.Step(
                                "accept", "acceptance", "acceptedAt", words.stepAccept(), step.equals("accept")),
                        new HandPages.Step(
                                "depart", "departure", "departedAt", words.stepDepart(), step.equals("depart")),
                        new HandPages.Step(
                                "arrive", "arrival", "arrivedAt", words.stepArrive(), step.equals("arrive"))),
                step,
                told.outcome() == null ? null : words.ended(outcome(Outcome.valueOf(told.outcome()), words)),
                told.outcome() == null || !foundOne(Outcome.valueOf(told.outcome()))
                        ? null
                        : "/cases/new?incident=" + told.incidentId() + "&attendance=" + told.id(),
                Arrays.stream(Outcome.values())
                        .map(one -> new HandPages.Choice(
                                one.name(), outcome(one, words), one.name().equals(scene.typed("outcome"))))
                        .toList(),
                scene,
                new HandPages.Picture(
                        "/hand/attendances/" + told.id() + "/photographs",
                        "/api/incidents/" + told.incidentId() + "/photographs",
                        photographs,
                        sent.of("p-" + told.id())),
                sent.of("a-" + told.id()));
    }

    private static boolean foundOne(Outcome outcome) {
        return outcome == Outcome.collected || outcome == Outcome.leftWell || outcome == Outcome.deadChecked;
    }

    /** {@code yes} or {@code unknown} as soon as one caller says so. */
    private static String hurt(IncidentView incident) {
        if (incident.calls().stream().anyMatch(call -> call.anyoneHurt().equals("yes"))) {
            return "yes";
        }
        boolean allKnown = !incident.calls().isEmpty()
                && incident.calls().stream().allMatch(call -> call.anyoneHurt().equals("no"));
        return allKnown ? "no" : "unknown";
    }

    static List<String> animals(IncidentView incident, HandTongue tongue) {
        HandWords words = tongue.words();
        List<String> told = incident.calls().stream()
                .flatMap(call -> call.animals().stream())
                .map(animal -> animal.individualCount() + " " + name(animal, words) + ", "
                        + switch (animal.vitality()) {
                            case "alive" -> words.alive();
                            case "dead" -> words.dead();
                            default -> words.vitalityUnknown();
                        })
                .distinct()
                .toList();
        return told.isEmpty() ? List.of(words.someAnimal()) : told;
    }

    private static String name(CallView.AnimalView animal, HandWords words) {
        return Objects.requireNonNullElse(
                animal.vernacularName(),
                Objects.requireNonNullElse(
                        animal.verbatimIdentification(),
                        Objects.requireNonNullElse(animal.taxonGroup(), words.someAnimal())));
    }

    private static HandPages.GateLine gate(GateTest test, boolean setAside, HandWords words) {
        boolean passed = test.verdict().equals("pass");
        String state = passed
                ? "passed"
                : test.kind().equals("advice")
                        ? "advice"
                        : setAside && test.kind().equals("policy")
                                ? "aside"
                                : test.verdict().equals("cantTell") ? "cantTell" : "stops";
        return new HandPages.GateLine(
                switch (test.test()) {
                    case "speed" -> words.testSpeed();
                    case "light" -> words.testLight();
                    case "vaccination" -> words.testVaccination();
                    case "people" -> words.testPeople();
                    default -> test.test();
                },
                state,
                switch (state) {
                    case "passed" -> words.gatePassed();
                    case "advice" -> words.gateAdvice();
                    case "aside" -> words.gateAside();
                    case "cantTell" -> words.gateCannotTell();
                    default -> words.gateStops();
                },
                test.figures() + (passed ? "" : ". " + test.words()));
    }

    static String roadLine(@Nullable PlaceView place, HandTongue tongue) {
        if (place == null) {
            return tongue.words().noPlace();
        }
        String road = road(place, tongue);
        return road == null ? latitude(place) + ", " + longitude(place) : road;
    }

    private static @Nullable String road(PlaceView place, HandTongue tongue) {
        if (place.roadName() == null) {
            return null;
        }
        return place.chainageMetres() == null
                ? tongue.words().onRoadSomewhere(place.roadName())
                : tongue.words().onRoad(place.roadName(), tongue.number(place.chainageMetres() / 1000, 2));
    }

    private static HandPages.@Nullable Spot spot(@Nullable PlaceView place, HandTongue tongue) {
        if (place == null) {
            return null;
        }
        HandWords words = tongue.words();
        List<String> more = new ArrayList<>();
        if (place.roadIsInDoubt()) {
            more.add(words.roadInDoubt());
        }
        if (place.carriageway() != null && !place.carriageway().isBlank()) {
            more.add(words.carriageway(place.carriageway()));
        }
        if (place.side() != null) {
            more.add(
                    switch (place.side()) {
                        case "left" -> words.sideLeft();
                        case "right" -> words.sideRight();
                        default -> words.sideOn();
                    });
        }
        return new HandPages.Spot(
                road(place, tongue),
                more,
                latitude(place),
                longitude(place),
                words.knownTo(tongue.number(place.coordinateUncertaintyInMeters(), 0)),
                place.verbatim().isBlank() ? null : words.asSaid(place.verbatim()));
    }

    private static String latitude(PlaceView place) {
        return String.format(Locale.ROOT, "%.5f", place.decimalLatitude());
    }

    private static String longitude(PlaceView place) {
        return String.format(Locale.ROOT, "%.5f", place.decimalLongitude());
    }

    private static List<String> past(AttendanceView told, HandTongue tongue) {
        List<String> past = new ArrayList<>();
        if (told.acceptedAt() != null) {
            past.add(tongue.words().acceptedAt(tongue.time(told.acceptedAt())));
        }
        if (told.departedAt() != null) {
            past.add(tongue.words().departedAt(tongue.time(told.departedAt())));
        }
        if (told.arrivedAt() != null) {
            past.add(tongue.words().arrivedAt(tongue.time(told.arrivedAt())));
        }
        return past;
    }

    private static String outcome(Outcome outcome, HandWords words) {
        return switch (outcome) {
            case collected -> words.outcomeCollected();
            case leftWell -> words.outcomeLeftWell();
            case deadChecked -> words.outcomeDeadChecked();
            case notFound -> words.outcomeNotFound();
            case notAttendedUnsafe -> words.outcomeUnsafe();
            case notAttendedNobody -> words.outcomeNobody();
            case adviceOnly -> words.outcomeAdvice();
            case passedOn -> words.outcomePassedOn();
        };
    }
}
