package org.culvert.release.holds;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.Change;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.release.rules.Hold;
import org.culvert.release.rules.Hold.Kind;
import org.jspecify.annotations.Nullable;

/** Keeps holds, and says which are active. */
@ApplicationScoped
public class HoldService {
    static final int LONGEST_NAME = 200;

    /** What every hold says of itself. */
    public static final String NOTE =
            "Nothing overrides a hold. Whom it concerns is not kept here, in no field: exposures are kept"
                    + " elsewhere, for very few. Check your local code and your licensed vet.";

    /** To whoever sets a hold for an exposure: Australian Immunisation Handbook; sources say 5 or 15 minutes. */
    private static final List<String> AFTER_AN_EXPOSURE = List.of(
            "Wash the place at once and thoroughly: sources say for 5 or for 15 minutes.",
            "Ring the public health unit now, even if vaccinated.",
            "The animal is held for the health authority: it is neither released nor disposed of until cleared.");

    private static final List<String> AFTER_A_SUSPICION = List.of(
            "Ring the state's animal disease hotline now: one suspicion is enough.",
            "The animal is neither handed on nor released nor disposed of until cleared.");

    /** Who may clear a hold. */
    public enum ClearedBy {
        authority,
        licensedVet
    }

    /**
     * A hold as it is set. Whom it concerns is not a part of it: that is health data of people.
     *
     * @param since from when; now when left out
     * @param askedBy the authority or practice that asked for it, no person bitten or scratched; null while none has been
     *     reached
     * @param reference its number of the matter
     */
    public record HoldEntry(
            @NotNull Kind kind,
            @Nullable Instant since,
            @Nullable @Size(max = LONGEST_NAME) String askedBy,
            @Nullable @Size(max = LONGEST_NAME) String reference) {}

    /** What can be corrected of a hold that stands, such as by whom it was asked for once they were reached. */
    public record HoldCorrection(
            Change<String> askedBy,
            Change<String> reference,
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * The end of a hold.
     *
     * @param by the authority; for a hold that was asked for on another ground, a licensed vet too
     * @param name which authority, or the vet's name
     * @param reference number of the letter or of the call, or the vet's registration
     * @param at when; now when left out
     */
    public record HoldClearing(
            @NotNull ClearedBy by,
            @NotBlank @Size(max = LONGEST_NAME) String name,
            @NotBlank @Size(max = LONGEST_NAME) String reference,
            @Nullable Instant at) {}

    /**
     * A hold as shown.
     *
     * @param clearing null while it stands
     * @param advice what to do now; empty once it is cleared
     */
    public record CaseHoldView(
            UUID id,
            UUID caseId,
            String kind,
            Instant since,
            @Nullable String askedBy,
            @Nullable String reference,
            @Nullable Clearing clearing,
            List<String> advice,
            String note,
            RecordView record) {

        /** How it ended. */
        public record Clearing(String by, String name, String reference, Instant at) {}
    }

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<CaseHold, UUID> {}

    private final Rows rows;
    private final CaseService cases;
    private final RecordViews records;
    private final Clock clock;

    HoldService(Rows rows, CaseService cases, RecordViews records, Clock clock) {
        this.rows = rows;
        this.cases = cases;
        this.records = records;
        this.clock = clock;
    }

    /** Sets a hold; of a case that ended too, whose body is then held. */
    @Transactional
    public CaseHoldView setHold(UUID caseId, HoldEntry entry) {
        cases.getCase(caseId);
        requireAsker(entry.kind(), entry.askedBy());
        var row = new CaseHold(caseId, entry, Corrections.passed("since", entry.since(), clock));
        rows.persistAndFlush(row);
        return view(row);
    }

    /**
     * A hold that stands, for rooms above whose records call for one.
     *
     * @param set whether it was set now; else it stood already
     */
    public record Standing(UUID id, boolean set) {}

    /** Keeps an animal held: by a hold of a kind that stands already, else by a new one from an instant on. */
    @Transactional
    public Standing keepHeld(UUID caseId, Kind kind, Instant since) {
        cases.hold(List.of(caseId));
        return rows.find("caseId = ?1 and kind = ?2 and clearedAt is null order by happenedAt, id", caseId, kind.name())
                .firstResultOptional()
                .map(row -> new Standing(row.id(), false))
                .orElseGet(() -> {
                    var row = new CaseHold(caseId, new HoldEntry(kind, since, null, null), since);
                    rows.persistAndFlush(row);
                    return new Standing(row.id(), true);
                });
    }

    /** Which of some cases have a hold of a kind that nobody has cleared. */
    @Transactional
    public Set<UUID> heldAmong(Collection<UUID> caseIds, Kind kind) {
        return rows.list("caseId in ?1 and kind = ?2 and clearedAt is null", caseIds, kind.name()).stream()
                .map(row -> row.caseId)
                .collect(Collectors.toSet());
    }

    @Transactional
    public CaseHoldView getHold(UUID id) {
        return view(require(id));
    }

    /** Holds of a case, those that were cleared among them, in the order in which they began. */
    @Transactional
    public List<CaseHoldView> listHolds(UUID caseId) {
        cases.getCase(caseId);
        return rows.list("caseId = ?1 order by happenedAt, id", caseId).stream()
                .map(this::view)
                .toList();
    }

    @Transactional
    public CaseHoldView correct(UUID id, HoldCorrection correction) {
        CaseHold row = require(id);
        row.correct(correction);
        rows.flush();
        return view(row);
    }

    /** Ends a hold. What is held for an authority is cleared by an authority. */
    @Transactional
    public CaseHoldView clear(UUID id, HoldClearing clearing) {
        CaseHold row = require(id);
        if (row.kind() != Kind.asked && clearing.by() != ClearedBy.authority) {
            throw InvalidException.of(
                    "by", "The animal is held for the authority, and a vet does not clear that.", "authority");
        }
        row.clear(clearing, Corrections.passed("at", clearing.at(), clock));
        rows.flush();
        return view(row);
    }

    /** The holds of a case that stand at an instant, in the order in which they began. */
    @Transactional
    public List<Hold> activeHolds(UUID caseId, Instant at) {
        return rows
                .list(
                        "caseId = ?1 and happenedAt <= ?2 and (clearedAt is null or clearedAt > ?2)"
                                + " order by happenedAt, id",
                        caseId,
                        at)
                .stream()
                .map(row -> new Hold(row.kind(), row.since()))
                .toList();
    }

    static void requireAsker(Kind kind, @Nullable String askedBy) {
        if (kind == Kind.asked && (askedBy == null || askedBy.isBlank())) {
            throw InvalidException.of(
                    "askedBy",
                    "Nobody is named who asked for it.",
                    "the authority or the vet's practice; never whom the matter concerns");
        }
    }

    private CaseHold require(UUID id) {
        return rows.findByIdOptional(id).orElseThrow(() -> new NotFoundException("hold", id));
    }

    private CaseHoldView view(CaseHold row) {
        Instant clearedAt = row.clearedAt;
        return new CaseHoldView(
                row.id(),
                row.caseId,
                row.kind,
                row.since(),
                row.askedBy,
                row.reference,
                clearedAt == null
                        ? null
                        : new CaseHoldView.Clearing(
                                Objects.requireNonNull(row.clearedBy),
                                Objects.requireNonNull(row.clearedByName),
                                Objects.requireNonNull(row.clearedReference),
                                clearedAt),
                clearedAt == null ? advice(row.kind()) : List.of(),
                NOTE,
                records.of(row));
    }

    private static List<String> advice(Kind kind) {
        return switch (kind) {
            case exposure -> AFTER_AN_EXPOSURE;
            case notifiableDisease -> AFTER_A_SUSPICION;
            case asked -> List.of();
        };
    }
}
