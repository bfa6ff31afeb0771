package org.culvert.call;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Keeps which of the sentences that belong to a call the caller was told. */
@ApplicationScoped
public class ToldWordsService {
    /**
     * A sentence as it was said.
     *
     * @param words one of {@code peopleFirst} or {@code sayToCaller} of the call
     * @param at when; now when left out
     */
    public record ToldWordsEntry(
            @NotBlank @Size(max = 2000) String words,
            @Nullable Instant at) {}

    /** A sentence that was said, until that was withdrawn. */
    public record ToldWordsView(
            UUID id,
            UUID callId,
            String words,
            Instant at,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    private final Ledger.Told told;
    private final Ledger.Calls calls;
    private final CallService service;
    private final RecordViews records;
    private final Clock clock;

    ToldWordsService(Ledger.Told told, Ledger.Calls calls, CallService service, RecordViews records, Clock clock) {
        this.told = told;
        this.calls = calls;
        this.service = service;
        this.records = records;
        this.clock = clock;
    }

    @Transactional
    public ToldWordsView tell(UUID callId, ToldWordsEntry entry) {
        Call call = calls.findByIdOptional(callId).orElseThrow(() -> new NotFoundException("call", callId));
        Instant now = clock.instant();
        Instant at = entry.at() == null ? now : entry.at();
        Instant rang = java.util.Objects.requireNonNull(call.happenedAt());
        if (at.isAfter(now.plusSeconds(300)) || at.isBefore(rang.minusSeconds(300))) {
            throw InvalidException.of("at", "It was said during the call.", "an instant between " + rang + " and now");
        }
        Set<String> sayable = service.sayable(callId);
        if (!sayable.contains(entry.words())) {
            throw InvalidException.of(
                    "words",
                    "That is none of the sentences that belong to this call.",
                    sayable.isEmpty() ? "nothing, there are none" : "one of: " + String.join(" | ", sayable));
        }
        var row = new ToldWords(callId, entry.words(), at);
        told.persistAndFlush(row);
        return view(row);
    }

    /** What the caller was told, in the order in which it was said; withdrawn ones too. */
    @Transactional
    public List<ToldWordsView> list(UUID callId) {
        List<ToldWords> rows = told.list("callId = ?1 order by happenedAt, id", callId);
        records.lookUp(rows);
        return rows.stream().map(this::view).toList();
    }

    @Transactional
    public ToldWordsView get(UUID id) {
        return view(require(id));
    }

    @Transactional
    public ToldWordsView withdraw(UUID id, String reason) {
        ToldWords row = require(id);
        row.withdraw(clock.instant(), reason);
        told.flush();
        return view(row);
    }

    private ToldWords require(UUID id) {
        return told.findByIdOptional(id).orElseThrow(() -> new NotFoundException("told words", id));
    }

    private ToldWordsView view(ToldWords row) {
        return new ToldWordsView(
                row.id(), row.callId, row.words, row.at(), row.withdrawnAt, row.withdrawnBecause, records.of(row));
    }
}
