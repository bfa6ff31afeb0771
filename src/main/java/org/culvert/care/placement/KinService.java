package org.culvert.care.placement;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.care.matching.Candidacy;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.Sight;
import org.jspecify.annotations.Nullable;

/** Keeps what people say of who is kept together. */
@ApplicationScoped
public class KinService {
    /** Whether an animal is kept together with another, or goes alone whatever its mother is. */
    public enum KeepingKind {
        together,
        alone
    }

    /**
     * What somebody says of an animal.
     *
     * @param otherCaseId the other animal, for together and for that alone
     * @param words why
     */
    public record KeepingTieEntry(
            @NotNull KeepingKind keep,
            @Nullable UUID otherCaseId,
            @NotBlank @Size(max = 2000) String words) {}

    public record KeepingTieView(
            UUID id,
            UUID caseId,
            KeepingKind keep,
            @Nullable UUID otherCaseId,
            String words,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    /**
     * An animal in care from which this one is not parted.
     *
     * @param relation {@code mother}, {@code young}, {@code sibling} (of one mother, and so of one clutch), or {@code told}
     * @param holderMemberId who has it or has been offered it
     * @param tieId by which somebody said so
     */
    public record RelativeView(
            UUID caseId,
            long caseNumber,
            Candidacy.Relation relation,
            @Nullable UUID holderMemberId,
            @Nullable UUID holderOrganisationId,
            @Nullable UUID tieId) {}

    /**
     * Who is not parted from an animal.
     *
     * @param ties what people said of it that stands
     */
    public record KinView(UUID caseId, List<RelativeView> relatives, List<KeepingTieView> ties) {}

    @ApplicationScoped
    static class Ties implements PanacheRepositoryBase<KeepingTie, UUID> {}

    private final Ties ties;
    private final KinReader kin;
    private final CaseService cases;
    private final RecordViews records;
    private final Sight sight;
    private final Clock clock;

    KinService(Ties ties, KinReader kin, CaseService cases, RecordViews records, Sight sight, Clock clock) {
        this.ties = ties;
        this.kin = kin;
        this.cases = cases;
        this.records = records;
        this.sight = sight;
        this.clock = clock;
    }

    @Transactional
    public KinView getKin(UUID caseId) {
        cases.getCase(caseId);
        return new KinView(
                caseId,
                kin.relativesOf(List.of(caseId)).stream()
                        .map(one -> new RelativeView(
                                one.caseId(),
                                one.caseNumber(),
                                one.relation(),
                                one.memberId(),
                                one.organisationId(),
                                one.tieId()))
                        .toList(),
                ties.list("(caseId = ?1 or otherCaseId = ?1) and withdrawnAt is null order by id", caseId).stream()
                        .map(this::view)
                        .toList());
    }

    @Transactional
    public KeepingTieView enter(UUID caseId, KeepingTieEntry entry) {
        cases.getCase(caseId);
        UUID other = entry.otherCaseId();
        if ((entry.keep() == KeepingKind.together) == (other == null)) {
            throw InvalidException.of(
                    "otherCaseId",
                    other == null ? "It does not say with which animal." : "One that goes alone is kept with nobody.",
                    other == null ? "the other animal's case" : "nothing");
        }
        if (other != null) {
            if (other.equals(caseId)) {
                throw InvalidException.of("otherCaseId", "It is the same animal.", "another animal's case");
            }
            sight.requireSeen("case", other);
            cases.getCase(other);
        }
        var row = new KeepingTie(caseId, entry, clock.instant());
        ties.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public KeepingTieView getTie(UUID id) {
        return view(require(id));
    }

    @Transactional
    public KeepingTieView withdraw(UUID id, String reason) {
        KeepingTie row = require(id);
        row.withdraw(clock.instant(), reason);
        ties.flush();
        return view(row);
    }

    private KeepingTie require(UUID id) {
        return ties.findByIdOptional(id).orElseThrow(() -> new NotFoundException("keeping tie", id));
    }

    private KeepingTieView view(KeepingTie row) {
        return new KeepingTieView(
                row.id(),
                row.caseId,
                KeepingKind.valueOf(row.keep),
                row.otherCaseId,
                row.words,
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }
}
