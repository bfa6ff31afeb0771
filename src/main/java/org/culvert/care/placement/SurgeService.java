package org.culvert.care.placement;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.platform.Actor;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RefusedException;
import org.culvert.platform.Rows;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/** Moves many animals at once: proposes who takes which, and places them when somebody approves. */
@ApplicationScoped
public class SurgeService {
    private static final int MOST_ANIMALS = 500;

    /**
     * What to share out.
     *
     * @param fromMemberId whose animals, all of them; or else {@code caseIds}
     * @param words why
     */
    public record ProposalEntry(
            @Nullable UUID fromMemberId,
            @Nullable @Size(max = MOST_ANIMALS) List<@NotNull UUID> caseIds,
            @NotBlank @Size(max = 2000) String words) {}

    /**
     * Approves what was proposed.
     *
     * @param leaveOut cases that are not placed
     * @param conditions for all of them
     */
    public record ProposalApproval(
            @NotNull @Size(max = MOST_ANIMALS) List<@NotNull UUID> leaveOut,
            @Nullable @Size(max = 4000) String conditions) {}

    /**
     * @param isBest whether it is known that there is no better way to share them out
     * @param placed how many of the animals somebody could take
     */
    public record ProposalView(
            UUID id,
            @Nullable UUID fromMemberId,
            String words,
            Instant proposedAt,
            boolean isBest,
            int placed,
            double burdenKilometres,
            @Nullable Instant approvedAt,
            @Nullable UUID approvedBy,
            List<ProposedMove> moves,
            RecordView record) {}

    /**
     * @param carerMemberId who could take it; null: nobody
     * @param placementId once it is approved
     */
    public record ProposedMove(
            UUID caseId,
            long number,
            String scientificName,
            @Nullable UUID carerMemberId,
            @Nullable String callSign,
            @Nullable Double burdenKilometres,
            String words,
            @Nullable UUID placementId) {}

    @ApplicationScoped
    static class Proposals implements PanacheRepositoryBase<Proposal, UUID> {}

    @ApplicationScoped
    static class ProposalRows implements PanacheRepositoryBase<ProposalRow, UUID> {}

    private final Proposals proposals;
    private final ProposalRows rows;
    private final Sharer sharer;
    private final CarerService carers;
    private final KinReader kin;
    private final PlacementService placements;
    private final CaseService cases;
    private final RosterService roster;
    private final EntityManager entities;
    private final Actor actor;
    private final RecordViews records;
    private final Clock clock;

    SurgeService(
            Proposals proposals,
            ProposalRows rows,
            Sharer sharer,
            CarerService carers,
            KinReader kin,
            PlacementService placements,
            CaseService cases,
            RosterService roster,
            EntityManager entities,
            Actor actor,
            RecordViews records,
            Clock clock) {
        this.proposals = proposals;
        this.rows = rows;
        this.sharer = sharer;
        this.carers = carers;
        this.kin = kin;
        this.placements = placements;
        this.cases = cases;
        this.roster = roster;
        this.entities = entities;
        this.actor = actor;
        this.records = records;
        this.clock = clock;
    }

    /** Proposes who takes which. Nothing moves until somebody approves. */
    @Transactional
    public ProposalView propose(ProposalEntry entry) {
        boolean named = entry.caseIds() != null && !entry.caseIds().isEmpty();
        if ((entry.fromMemberId() == null) != named) {
            throw InvalidException.of(
                    "fromMemberId",
                    "It does not say which animals, or says it twice.",
                    "either fromMemberId or caseIds");
        }
        UUID from = entry.fromMemberId();
        List<UUID> caseIds;
        if (from != null) {
            roster.getMember(from);
            caseIds = heldBy(from);
            if (caseIds.size() > MOST_ANIMALS) {
                throw InvalidException.of(
                        "fromMemberId",
                        "This carer holds " + caseIds.size() + " animals.",
                        "caseIds, at most " + MOST_ANIMALS);
            }
        } else {
            caseIds = List.copyOf(new LinkedHashSet<>(Objects.requireNonNull(entry.caseIds())));
        }
        List<CaseView> open = new ArrayList<>();
        Map<UUID, CaseView> seen = cases.casesById(caseIds);
        for (UUID id : caseIds) {
            CaseView one = Optional.ofNullable(seen.get(id)).orElseThrow(() -> new NotFoundException("case", id));
            if (one.state().equals("ended")) {
                throw InvalidException.of("caseIds", "Case " + one.number() + " has ended.", "open cases");
            }
            open.add(one);
        }
        List<CaseView> free =
                open.stream().filter(one -> one.pendingHandOver() == null).toList();
        Instant now = clock.instant();
        Sharer.Shares shares = sharer.share(free, now, from == null ? Set.of() : Set.of(from));
        var proposal = new Proposal(from, entry.words(), shares.isBest(), now);
        proposals.persistAndFlush(proposal);
        for (CaseView one : open) {
            Sharer.Share share = shares.byCase().get(one.id());
            rows.persist(new ProposalRow(
                    proposal.id(),
                    one.id(),
                    share != null
                            ? share
                            : new Sharer.Share(
                                    null, null, null, "A hand-over is pending: let it be accepted or refused first.")));
        }
        rows.flush();
        return view(proposal);
    }

    private List<UUID> heldBy(UUID member) {
        return Rows.column(
                entities.createNativeQuery(
                                "select case_id from animals_with_carers where member_id = :member and not offered order by case_id")
                        .setParameter("member", member),
                UUID.class);
    }

    /** The latest first. */
    @Transactional
    public List<ProposalView> listProposals(int most) {
        return proposals.find("order by id desc").page(0, most).list().stream()
                .map(this::view)
                .toList();
    }

    @Transactional
    public ProposalView getProposal(UUID id) {
        return view(proposals.findByIdOptional(id).orElseThrow(() -> new NotFoundException("proposal", id)));
    }

    /**
     * Places all that was proposed, but for what is left out, or nothing: every one is tested again, and each carer still
     * accepts or refuses.
     */
    @Transactional
    public ProposalView approve(UUID id, ProposalApproval approval) {
        Proposal proposal = proposals.findByIdOptional(id).orElseThrow(() -> new NotFoundException("proposal", id));
        List<ProposalRow> all = rows.list("proposalId = ?1 order by carerId, caseId", id);
        Set<UUID> leftOut = new HashSet<>(approval.leaveOut());
        for (UUID one : leftOut) {
            if (all.stream().noneMatch(row -> row.caseId.equals(one))) {
                throw InvalidException.of(
                        "leaveOut", "Case " + one + " is not in this proposal.", "cases of its moves");
            }
        }
        requireNoneParted(all, leftOut);
        Instant now = clock.instant();
        proposal.approve(now, actor.accountId());
        List<ProposalRow> moves = all.stream()
                .filter(row -> row.carerId != null && !leftOut.contains(row.caseId))
                .toList();
        if (moves.isEmpty()) {
            throw new ConflictException("Nothing is left of that proposal to be placed.");
        }
        // In the order of carers, so that two approvals wait for each other and do not block
        moves.stream()
                .map(row -> Objects.requireNonNull(row.carerId))
                .distinct()
                .sorted()
                .forEach(carers::lockPlaces);
        for (ProposalRow row : moves) {
            try {
                row.placementId = placements
                        .place(
                                row.caseId,
                                new PlacementService.PlacementEntry(
                                        Objects.requireNonNull(row.carerId), null, approval.conditions(), null, now))
                        .id();
            } catch (RefusedException refused) {
                throw new ConflictException(
                        "Case " + cases.getCase(row.caseId).number() + " can not go there any more: "
                                + String.join(" ", refused.reasons())
                                + " Nothing was placed: leave it out, or ask for a new proposal.");
            }
        }
        rows.flush();
        return view(proposal);
    }

    /** Of those that are kept together all go, or none does. */
    private void requireNoneParted(List<ProposalRow> all, Set<UUID> leftOut) {
        Set<UUID> placed = all.stream()
                .filter(row -> row.carerId != null)
                .map(row -> row.caseId)
                .collect(java.util.stream.Collectors.toSet());
        for (Set<UUID> family : kin.families(placed)) {
            List<UUID> left = family.stream().filter(leftOut::contains).toList();
            if (!left.isEmpty() && left.size() < family.size()) {
                UUID goes = family.stream()
                        .filter(id -> !leftOut.contains(id))
                        .findFirst()
                        .orElseThrow();
                throw InvalidException.of(
                        "leaveOut",
                        "Case " + cases.getCase(left.get(0)).number() + " and case "
                                + cases.getCase(goes).number() + " are kept together.",
                        "both or neither, or say first that one of them goes alone");
            }
        }
    }

    private ProposalView view(Proposal row) {
        List<ProposalRow> proposed = rows.list("proposalId = ?1 order by caseId", row.id());
        Map<UUID, CaseView> seen =
                cases.casesById(proposed.stream().map(one -> one.caseId).toList());
        List<ProposedMove> moves = proposed.stream()
                .map(one -> move(one, Objects.requireNonNull(seen.get(one.caseId))))
                .toList();
        return new ProposalView(
                row.id(),
                row.fromMemberId,
                row.words,
                Objects.requireNonNull(row.happenedAt(), "a proposal has a time"),
                row.isBest,
                (int) moves.stream().filter(one -> one.carerMemberId() != null).count(),
                moves.stream()
                        .mapToDouble(one -> one.burdenKilometres() == null ? 0 : one.burdenKilometres())
                        .sum(),
                row.approvedAt,
                row.approvedBy,
                moves,
                records.of(row));
    }

    private ProposedMove move(ProposalRow row, CaseView of) {
        return new ProposedMove(
                row.caseId,
                of.number(),
                of.animal().scientificName(),
                row.carerId,
                row.carerId == null ? null : roster.getMember(row.carerId).callSign(),
                row.burdenKilometres,
                row.words,
                row.placementId);
    }
}
