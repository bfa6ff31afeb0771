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
import java.util.Set;
import java.util.UUID;
import org.culvert.animal.CaseEntries;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.animal.CustodyService;
import org.culvert.care.matching.Candidacy;
import org.culvert.clinic.ClinicService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RefusedException;
import org.culvert.platform.ledger.Change;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.roster.Holder;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/** Places animals with carers. */
@ApplicationScoped
public class PlacementService {
    /**
     * With whom, and on what conditions.
     *
     * @param visitId the clinic visit whose discharge the placement follows, if any
     * @param despite why, where a rule of the network's own speaks against it; nothing lifts one of law
     */
    public record PlacementEntry(
            @NotNull UUID carerMemberId,
            @Nullable UUID visitId,
            @Nullable @Size(max = 4000) String conditions,
            @Nullable @Size(max = 2000) String despite,
            @Nullable Instant at) {}

    public record PlacementCorrection(
            Change<UUID> visitId,
            Change<String> conditions,
            Change<Instant> offeredAt,
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * @param handOverId the hand-over that the carer accepts or refuses; until then the giver stays holder
     * @param authorisation number under which the carer may hold it
     * @param despite why it was agreed in spite of a rule of the network's own
     * @param tests what was tested when it was agreed; empty for a placement from before these were kept
     */
    public record PlacementView(
            UUID id,
            UUID caseId,
            UUID carerMemberId,
            UUID handOverId,
            String authorisation,
            @Nullable UUID visitId,
            @Nullable String conditions,
            @Nullable String despite,
            List<CarerSearch.CarerTestView> tests,
            @Nullable Instant offeredAt,
            RecordView record) {}

    @ApplicationScoped
    static class Placements implements PanacheRepositoryBase<Placement, UUID> {}

    private final Placements placements;
    private final CarerService carers;
    private final CarerSearch search;
    private final KinReader kin;
    private final CaseService cases;
    private final CustodyService custody;
    private final ClinicService clinic;
    private final RosterService roster;
    private final RecordViews records;
    private final Clock clock;

    PlacementService(
            Placements placements,
            CarerService carers,
            CarerSearch search,
            KinReader kin,
            CaseService cases,
            CustodyService custody,
            ClinicService clinic,
            RosterService roster,
            RecordViews records,
            Clock clock) {
        this.placements = placements;
        this.carers = carers;
        this.search = search;
        this.kin = kin;
        this.cases = cases;
        this.custody = custody;
        this.clinic = clinic;
        this.roster = roster;
        this.records = records;
        this.clock = clock;
    }

    /**
     * Offers an animal to a carer. Two who fill the same place wait for each other, and the second is told that it is taken.
     *
     * @throws RefusedException when law speaks against it, or a rule of the network's own and no reason is given
     */
    @Transactional
    public PlacementView place(UUID caseId, PlacementEntry entry) {
        if (entry.visitId() != null) {
            clinic.requireOfCase("visitId", entry.visitId(), caseId);
        }
        RosterService.MemberView carer = roster.getMember(entry.carerMemberId());
        if (!carer.cares() || carer.leftOn() != null) {
            throw InvalidException.of(
                    "carerMemberId",
                    "Member " + carer.callSign() + " takes no animals into care.",
                    "a member who cares");
        }
        Instant at = entry.at() == null ? clock.instant() : entry.at();
        carers.lockPlaces(carer.id());
        CaseView of = cases.getCase(caseId);
        Candidacy candidacy = search.standings(of.animal().taxonGroupId(), at, Set.of(caseId), Set.of(carer.id()))
                .get(0)
                .candidacy(search.positionOf(of), kin.kinOf(caseId));
        requireAllowed(carer, candidacy, entry.despite());
        UUID handOver = custody.offer(caseId, new CaseEntries.HandOverEntry(Holder.member(carer.id()), at));
        var placement = new Placement(caseId, entry, handOver, candidacy, at);
        placements.persistAndFlush(placement);
        return view(placement);
    }

    private static void requireAllowed(RosterService.MemberView carer, Candidacy candidacy, @Nullable String despite) {
        String who = "Member " + carer.callSign() + ": ";
        if (!candidacy.isListed()) {
            throw new RefusedException(
                    "This carer may not hold the animal, as far as is entered. If a paper or a record is missing, enter it first.",
                    candidacy.tests().stream()
                            .filter(test -> test.strength() == Candidacy.Strength.law && test.refuses())
                            .map(test -> who + test.words())
                            .toList());
        }
        List<String> against = candidacy.tests().stream()
                .filter(Candidacy.Test::blocks)
                .map(test -> who + test.words())
                .toList();
        if (!against.isEmpty() && (despite == null || despite.isBlank())) {
            throw new RefusedException(
                    "A rule of the network speaks against it. Choose another carer, or say why in despite.", against);
        }
    }

    @Transactional
    public List<PlacementView> listPlacements(UUID caseId) {
        return placements.list("caseId = ?1 order by happenedAt, id", caseId).stream()
                .map(this::view)
                .toList();
    }

    @Transactional
    public PlacementView getPlacement(UUID id) {
        return view(require(id));
    }

    @Transactional
    public PlacementView correct(UUID id, PlacementCorrection correction) {
        Placement row = require(id);
        UUID visit = correction.visitId().value();
        if (visit != null) {
            clinic.requireOfCase("visitId", visit, row.caseId);
        }
        row.correct(correction, clock);
        placements.flush();
        return view(row);
    }

    private Placement require(UUID id) {
        return placements.findByIdOptional(id).orElseThrow(() -> new NotFoundException("placement", id));
    }

    private PlacementView view(Placement row) {
        return new PlacementView(
                row.id(),
                row.caseId,
                row.carerId,
                row.handOverId,
                row.authorisation,
                row.visitId,
                row.conditions,
                row.despite,
                row.tests,
                row.happenedAt(),
                records.of(row));
    }
}
