package org.culvert.web.desk;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.call.CallCorrections;
import org.culvert.call.CallCorrector;
import org.culvert.call.CallEntry;
import org.culvert.call.CallReader;
import org.culvert.call.CallView;
import org.culvert.call.IncidentService;
import org.culvert.call.IncidentView;
import org.culvert.call.PlaceView;
import org.culvert.call.ToldWordsService;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.Change;
import org.culvert.road.PlaceAsGiven;
import org.culvert.web.Typed;
import org.jspecify.annotations.Nullable;

/** Keeps what a caller tells after the call was kept: what differs from what is kept becomes a revision, the rest stays. */
@ApplicationScoped
class DeskKeeper {
    /** Why a revision was made that way. */
    private static final String LATER = "told later in the call";

    private final CallReader calls;
    private final CallCorrector corrector;
    private final org.culvert.call.CallService service;
    private final IncidentService incidents;
    private final DeskCallReader reader;
    private final ToldWordsService sentences;

    DeskKeeper(
            CallReader calls,
            CallCorrector corrector,
            org.culvert.call.CallService service,
            IncidentService incidents,
            DeskCallReader reader,
            ToldWordsService sentences) {
        this.calls = calls;
        this.corrector = corrector;
        this.service = service;
        this.incidents = incidents;
        this.reader = reader;
        this.sentences = sentences;
    }

    /** A sentence was said to a caller of an incident. */
    @Transactional
    void tell(UUID incidentId, UUID callId, String words) {
        sentences.tell(
                requireCall(incidents.getIncident(incidentId, true), callId),
                new ToldWordsService.ToldWordsEntry(words, null));
    }

    private static UUID requireCall(IncidentView incident, UUID callId) {
        if (incident.calls().stream().noneMatch(call -> call.id().equals(callId))) {
            throw new NotFoundException("call of that incident", callId);
        }
        return callId;
    }

    @Transactional
    void keep(UUID incidentId, UUID callId, DeskCall typed) {
        IncidentView incident = incidents.getIncident(incidentId, true);
        CallView kept = calls.getCall(requireCall(incident, callId), true);
        PlaceView place = incident.place();
        boolean placeStays = place != null && place.verbatim().equals(Typed.given(typed.place));
        if (placeStays) {
            typed.place = null;
        }
        CallEntry told = reader.read(typed);
        PlaceAsGiven given = told.place();
        if (given != null) {
            incidents.movePlace(incidentId, given, LATER, true);
        }
        if (told.happenedAt() != null && !told.happenedAt().equals(incident.happenedAt())) {
            corrector.correctIncident(
                    incidentId,
                    new CallCorrections.IncidentCorrection(
                            Change.none(), Change.to(told.happenedAt()), Change.none(), LATER));
        }
        // Another call about it may have told more: only what this caller says anew changes the incident
        if (!told.cause().equals(kept.cause()) && !told.cause().equals(incident.cause())) {
            corrector.correctIncident(
                    incidentId,
                    new CallCorrections.IncidentCorrection(
                            Change.to(told.cause()), Change.none(), Change.none(), LATER));
        }
        keepCall(kept, told);
        keepAnimal(kept, typed, told);
    }

    private void keepCall(CallView kept, CallEntry told) {
        CallEntry.Caller before = kept.caller();
        CallEntry.Caller now = told.caller();
        Change<CallEntry.Caller> caller = kept.callerHidden()
                        || Objects.equals(name(before), name(now)) && Objects.equals(phone(before), phone(now))
                ? Change.none()
                : Change.to(
                        now == null && before == null
                                ? null
                                : new CallEntry.Caller(
                                        name(now),
                                        phone(now),
                                        before == null ? null : before.email(),
                                        before == null ? null : before.address()));
        var correction = new CallCorrections.CallCorrection(
                Change.none(),
                change(
                        CallEntry.Answer.valueOf(kept.anyoneHurt()),
                        told.people().anyoneHurt()),
                change(
                        CallEntry.Answer.valueOf(kept.offTheRoad()),
                        told.people().offTheRoad()),
                change(kept.policeReference(), told.people().policeReference()),
                change(kept.cause(), told.cause()),
                caller,
                kept.callerHidden() ? Change.none() : change(kept.words(), told.words()),
                LATER);
        if (correction.anyoneHurt().isMade()
                || correction.offTheRoad().isMade()
                || correction.policeReference().isMade()
                || correction.cause().isMade()
                || correction.caller().isMade()
                || correction.words().isMade()) {
            corrector.correctCall(kept.id(), correction);
        }
    }

    private void keepAnimal(CallView kept, DeskCall typed, CallEntry told) {
        CallEntry.Animal now = told.animals().isEmpty() ? null : told.animals().get(0);
        CallView.AnimalView before =
                kept.animals().isEmpty() ? null : kept.animals().get(0);
        if (now == null) {
            return;
        }
        if (before == null) {
            service.addAnimal(kept.id(), now);
            return;
        }
        boolean named = AnimalNames.shown(before).equals(Objects.requireNonNullElse(Typed.given(typed.animal), ""));
        List<Change<?>> made = new ArrayList<>();
        Change<String> scientificName =
                named || now.scientificName() == null ? Change.none() : Change.to(now.scientificName());
        Change<String> group = named || scientificName.isMade() ? Change.none() : Change.to(now.taxonGroup());
        Change<String> verbatim = named ? Change.none() : Change.to(now.verbatimIdentification());
        Change<Integer> count = change(before.individualCount(), now.individualCount());
        Change<CallEntry.Vitality> vitality = change(CallEntry.Vitality.valueOf(before.vitality()), now.vitality());
        Change<String> condition = change(before.condition(), now.condition());
        Change<CallEntry.Answer> pouch = change(CallEntry.Answer.valueOf(before.pouchChecked()), now.pouchChecked());
        made.addAll(List.of(scientificName, group, verbatim, count, vitality, condition, pouch));
        if (made.stream().anyMatch(Change::isMade)) {
            corrector.correctAnimal(
                    kept.id(),
                    before.id(),
                    new CallCorrections.ReportedAnimalCorrection(
                            scientificName,
                            group,
                            verbatim,
                            Change.none(),
                            count,
                            vitality,
                            Change.none(),
                            Change.none(),
                            condition,
                            pouch,
                            Change.none(),
                            LATER));
        }
    }

    private static <T> Change<T> change(@Nullable T before, @Nullable T now) {
        return Objects.equals(before, now) ? Change.none() : Change.to(now);
    }

    private static @Nullable String name(CallEntry.@Nullable Caller caller) {
        return caller == null ? null : caller.name();
    }

    private static @Nullable String phone(CallEntry.@Nullable Caller caller) {
        return caller == null ? null : caller.phone();
    }
}
