package org.culvert.dispatch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.call.IncidentService;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.Change;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Ends incidents to which nobody goes, with the reason. */
@ApplicationScoped
public class ClosingService {
    /** How an incident ended to which nobody went. */
    public enum ClosingOutcome {
        leftWell,
        notAttendedUnsafe,
        notAttendedNobody,
        adviceOnly,
        passedOn
    }

    /** Ends an incident to which nobody goes. */
    public record ClosingEntry(
            @NotNull ClosingOutcome outcome,
            @Nullable Instant at,
            @Nullable @Size(max = 200) String passedOnTo,
            @Nullable @Size(max = 200) String theirReference,
            @NotBlank String reason) {}

    /** A closing as kept. */
    public record ClosingView(
            UUID id,
            UUID incidentId,
            String outcome,
            @Nullable Instant at,
            @Nullable String passedOnTo,
            @Nullable String theirReference,
            String reason,
            RecordView record) {}

    /**
     * Of how an incident ended to which nobody went.
     *
     * @param because why nobody went
     * @param reason why it is corrected
     */
    public record ClosingCorrection(
            Change<ClosingOutcome> outcome,
            Change<Instant> at,
            Change<String> passedOnTo,
            Change<String> theirReference,
            Change<String> because,
            @NotBlank @Size(max = 2000) String reason) {}

    private final Outings.Closings closings;
    private final IncidentService incidents;
    private final RecordViews records;
    private final Clock clock;

    ClosingService(Outings.Closings closings, IncidentService incidents, RecordViews records, Clock clock) {
        this.closings = closings;
        this.incidents = incidents;
        this.records = records;
        this.clock = clock;
    }

    @Transactional
    public UUID close(UUID incidentId, ClosingEntry entry) {
        incidents.placeOf(incidentId);
        DispatchService.requireBody(entry.outcome().name(), entry.passedOnTo());
        var closing = new Closing(
                incidentId,
                entry.outcome().name(),
                entry.passedOnTo(),
                entry.theirReference(),
                entry.reason(),
                entry.at() == null ? clock.instant() : entry.at());
        closings.persistAndFlush(closing);
        return closing.id();
    }

    /**
     * Ends an incident of records that were kept before attendances were: nobody asks the gate about the past, and who
     * went is not known here. A later call still opens it again.
     *
     * @param importId the file it came from
     */
    @Transactional
    public UUID closeFromHistory(
            UUID incidentId, DispatchService.Outcome outcome, Instant at, @Nullable String passedOnTo, UUID importId) {
        DispatchService.requireBody(outcome.name(), passedOnTo);
        var closing = new Closing(
                incidentId, outcome.name(), passedOnTo, null, "from records kept before attendances were", at);
        closing.importedBy(importId);
        closings.persist(closing);
        return closing.id();
    }

    @Transactional
    public ClosingView get(UUID id) {
        return view(require(id));
    }

    @Transactional
    public List<ClosingView> list(UUID incidentId) {
        return closings.list("incidentId = ?1 order by happenedAt, id", incidentId).stream()
                .map(this::view)
                .toList();
    }

    @Transactional
    public ClosingView correct(UUID id, ClosingCorrection correction) {
        Closing closing = require(id);
        closing.correct(correction, clock);
        DispatchService.requireBody(closing.outcome, closing.passedOnTo);
        closings.flush();
        return view(closing);
    }

    private Closing require(UUID id) {
        return closings.findByIdOptional(id).orElseThrow(() -> new NotFoundException("closing", id));
    }

    private ClosingView view(Closing closing) {
        return new ClosingView(
                closing.id(),
                closing.incidentId,
                closing.outcome,
                closing.happenedAt(),
                closing.passedOnTo,
                closing.theirReference,
                closing.reason,
                records.of(closing));
    }
}
