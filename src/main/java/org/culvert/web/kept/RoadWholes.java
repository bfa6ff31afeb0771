package org.culvert.web.kept;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.photograph.FoundPlaceService;
import org.culvert.animal.photograph.PhotographResource;
import org.culvert.animal.photograph.PhotographService;
import org.culvert.call.CallCorrections;
import org.culvert.call.CallCorrector;
import org.culvert.call.CallEntry;
import org.culvert.call.CallResource;
import org.culvert.call.CallService;
import org.culvert.call.IncidentService;
import org.culvert.call.IncidentView;
import org.culvert.call.ToldWordsService;
import org.culvert.care.health.ExposureEntries;
import org.culvert.care.health.ExposureService;
import org.culvert.dispatch.ClosingService;
import org.culvert.dispatch.DispatchService;
import org.culvert.hotspot.works.WorksService;
import org.culvert.platform.Role;
import org.culvert.platform.sight.Sight;

/** Incidents with their calls and goings-out, and works on roads. */
@ApplicationScoped
class RoadWholes implements WholeSource {
    private static final String INCIDENT = "/api/incidents/{id}";

    private final IncidentService incidents;
    private final CallService calls;
    private final CallCorrector corrector;
    private final ToldWordsService told;
    private final DispatchService dispatch;
    private final ClosingService closings;
    private final PhotographService photographs;
    private final FoundPlaceService places;
    private final ExposureService exposures;
    private final WorksService works;
    private final Sight sight;

    RoadWholes(
            IncidentService incidents,
            CallService calls,
            CallCorrector corrector,
            ToldWordsService told,
            DispatchService dispatch,
            ClosingService closings,
            PhotographService photographs,
            FoundPlaceService places,
            ExposureService exposures,
            WorksService works,
            Sight sight) {
        this.incidents = incidents;
        this.calls = calls;
        this.corrector = corrector;
        this.told = told;
        this.dispatch = dispatch;
        this.closings = closings;
        this.photographs = photographs;
        this.places = places;
        this.exposures = exposures;
        this.works = works;
        this.sight = sight;
    }

    @Override
    public List<Whole> wholes() {
        return List.of(
                new Whole(
                        "incidents",
                        "incident",
                        "/desk/incidents/{id}",
                        this::incident,
                        List.of(
                                itself(),
                                calls(),
                                animals(),
                                toldWords(),
                                attendances(),
                                closings(),
                                joins(),
                                photographs())),
                new Whole(
                        "works",
                        "works",
                        "/works/{id}",
                        works::getWorks,
                        List.of(KeptKind.of("works", "GET /api/works/{id}", id -> List.of(works.getWorks(id)))
                                .corrected(
                                        "/api/works/{id}",
                                        "works",
                                        WorksService.WorksCorrection.class,
                                        (ids, entry) -> works.correct(ids.id(), entry)))));
    }

    private IncidentView incident(UUID id) {
        return incidents.getIncident(id, sight.viewer().hasAny(Role.DISPATCHER, Role.COORDINATOR));
    }

    private KeptKind itself() {
        return KeptKind.of("incidents", "GET " + INCIDENT, id -> List.of(incident(id)))
                .corrected(
                        INCIDENT,
                        "incident",
                        CallCorrections.IncidentCorrection.class,
                        (ids, entry) -> corrector.correctIncident(ids.id(), entry))
                .act(
                        "place",
                        "PUT " + INCIDENT + "/place",
                        "incident",
                        CallResource.PlaceChange.class,
                        (ids, change) -> incidents.movePlace(ids.id(), change.place(), change.reason(), true))
                .act(
                        "exposures",
                        "POST /api/exposures",
                        "",
                        ExposureEntries.ExposureEntry.class,
                        (ids, entry) -> exposures.enter(CaseKinds.of(null, ids.id(), entry)),
                        "caseId",
                        "incidentId");
    }

    private KeptKind calls() {
        return KeptKind.of("calls", "GET /api/calls/{id}", id -> incident(id).calls())
                .corrected(
                        "/api/calls/{id}",
                        "call",
                        CallCorrections.CallCorrection.class,
                        (ids, entry) -> corrector.correctCall(ids.id(), entry))
                .act(
                        "animals",
                        "POST /api/calls/{id}/animals",
                        "",
                        CallEntry.Animal.class,
                        (ids, entry) -> calls.addAnimal(ids.id(), entry));
    }

    private KeptKind animals() {
        return KeptKind.of(
                        "call-animals",
                        "GET /api/calls/{id}",
                        id -> incident(id).calls(),
                        "animals")
                .corrected(
                        "/api/calls/{id}/animals/{animalId}",
                        "call",
                        CallCorrections.ReportedAnimalCorrection.class,
                        (ids, entry) -> corrector.correctAnimal(ids.in(), ids.id(), entry));
    }

    private KeptKind toldWords() {
        return KeptKind.of(
                        "told-words",
                        "GET /api/calls/{id}/told-words",
                        id -> incident(id).calls().stream()
                                .flatMap(call -> told.list(call.id()).stream())
                                .toList())
                .withdrawn(
                        "/api/told-words/{id}/withdrawal",
                        "told-words",
                        (ids, why) -> told.withdraw(ids.id(), why.reason()));
    }

    private KeptKind attendances() {
        return KeptKind.of("attendances", "GET /api/incidents/{id}/attendances", dispatch::listAttendances)
                .corrected(
                        "/api/attendances/{id}",
                        "attendance",
                        DispatchService.AttendanceCorrection.class,
                        (ids, entry) -> dispatch.correct(ids.id(), entry));
    }

    private KeptKind closings() {
        return KeptKind.of("closings", "GET /api/incidents/{id}/closings", closings::list)
                .corrected(
                        "/api/closings/{id}",
                        "closing",
                        ClosingService.ClosingCorrection.class,
                        (ids, entry) -> closings.correct(ids.id(), entry));
    }

    private KeptKind joins() {
        return KeptKind.of("joins", "GET /api/joins/{id}", id -> incident(id).joins())
                .act(
                        "undoing",
                        "POST /api/joins/{id}/undoing",
                        "join",
                        Why.class,
                        (ids, why) -> incidents.undoJoin(ids.id(), why.reason(), true));
    }

    private KeptKind photographs() {
        return KeptKind.paged("photographs", "GET /api/incidents/{id}/photographs", photographs::listOfIncident)
                .withdrawn(
                        "/api/photographs/{id}/withdrawal",
                        "photograph",
                        (ids, why) -> photographs.withdraw(ids.id(), why.reason()))
                .act(
                        "found-place",
                        "POST " + INCIDENT + "/photographs/{photographId}/found-place",
                        "incident",
                        PhotographResource.PhotographReason.class,
                        (ids, why) -> places.place(ids.whole(), ids.id(), why.reason(), true));
    }
}
