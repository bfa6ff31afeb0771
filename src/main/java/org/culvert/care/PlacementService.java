package org.culvert.care;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseEntries;
import org.culvert.animal.CustodyService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RefusedException;
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
     */
    public record PlacementEntry(
            @NotNull UUID carerMemberId,
            @Nullable UUID visitId,
            @Nullable @Size(max = 4000) String conditions,
            @Nullable Instant at) {}

    /**
     * @param handOverId the hand-over that the carer accepts or refuses; until then the giver stays holder
     * @param authorisation number under which the carer may hold it
     */
    public record PlacementView(
            UUID id,
            UUID caseId,
            UUID carerMemberId,
            UUID handOverId,
            String authorisation,
            @Nullable UUID visitId,
            @Nullable String conditions,
            @Nullable Instant offeredAt,
            RecordView record) {}

    @ApplicationScoped
    static class Placements implements PanacheRepositoryBase<Placement, UUID> {}

    private final Placements placements;
    private final CustodyService custody;
    private final RosterService roster;
    private final RecordViews records;
    private final Clock clock;

    PlacementService(
            Placements placements, CustodyService custody, RosterService roster, RecordViews records, Clock clock) {
        this.placements = placements;
        this.custody = custody;
        this.roster = roster;
        this.records = records;
        this.clock = clock;
    }

    /**
     * Offers an animal to a carer.
     *
     * @throws RefusedException when no authorisation of the carer, or of the organisation the carer works under, is listed
     *     for this kind of animal on that day
     */
    @Transactional
    public PlacementView place(UUID caseId, PlacementEntry entry) {
        RosterService.MemberView carer = roster.getMember(entry.carerMemberId());
        if (!carer.cares()) {
            throw InvalidException.of(
                    "carerMemberId",
                    "Member " + carer.callSign() + " takes no animals into care.",
                    "a member who cares");
        }
        Instant at = entry.at() == null ? clock.instant() : entry.at();
        Holder holder = Holder.member(carer.id());
        String authorisation = custody.authorisation(caseId, holder, at)
                .orElseThrow(() -> new RefusedException(
                        "No authorisation is listed for this carer.",
                        List.of("Member " + carer.callSign()
                                + " has no authorisation listed for this kind of animal on that day. Check your local"
                                + " code; if one was issued, enter it first.")));
        UUID handOver = custody.offer(caseId, new CaseEntries.HandOverEntry(holder, at));
        var placement = new Placement(caseId, entry, handOver, authorisation, at);
        placements.persistAndFlush(placement);
        return view(placement);
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
    public PlacementView correct(UUID id, CareCorrections.PlacementCorrection correction) {
        Placement row = require(id);
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
                row.happenedAt(),
                records.of(row));
    }
}
