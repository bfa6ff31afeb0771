package org.culvert.care;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.CaseEntries;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.animal.CustodyService;
import org.culvert.call.CallEntry;
import org.culvert.clinic.ClinicService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RefusedException;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.Sight;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/** Clutches: eggs of one mother, with their own custody and authorisation. */
@ApplicationScoped
public class ClutchService {
    /** Eggs recovered at one time: {@code recovered = setToIncubate + broken + discarded}. */
    public record EggsEntry(
            @Min(1) int recovered,
            @Min(0) int setToIncubate,
            @Min(0) int broken,
            @Min(0) int discarded,
            @Nullable Instant at) {}

    /**
     * A new clutch.
     *
     * @param holder who runs the incubator, under an authorisation of their own
     */
    public record ClutchEntry(
            @NotNull UUID motherCaseId,
            @Nullable UUID visitId,
            @NotNull Holder holder,
            @NotNull @Valid EggsEntry eggs) {}

    public record ClutchHandOverEntry(
            @NotNull Holder holder, @Nullable Instant at) {}

    public record HatchingEntry(
            @Min(1) @Max(200) int hatched, @Nullable Instant at) {}

    public record ClutchCustodyView(
            UUID id, Holder holder, Instant from, @Nullable Instant to, String authorisation, RecordView record) {}

    /** Eggs recovered at one time, as kept. */
    public record EggsView(
            UUID id,
            int recovered,
            int setToIncubate,
            int broken,
            int discarded,
            @Nullable Instant at,
            RecordView record) {}

    /** Hatchlings of one time, as kept. */
    public record HatchedView(
            UUID id, int hatched, @Nullable Instant at, RecordView record) {}

    /**
     * A clutch with its count.
     *
     * @param readOnFilm the largest count of eggs read off a film at the visit, or null; compared, never enforced
     * @param filmDiffers whether the count recovered differs from that reading
     */
    public record ClutchView(
            UUID id,
            UUID motherCaseId,
            @Nullable UUID visitId,
            int recovered,
            int setToIncubate,
            int broken,
            int discarded,
            long hatched,
            @Nullable Integer readOnFilm,
            @Nullable Boolean filmDiffers,
            List<ClutchCustodyView> custody,
            List<EggsView> recoveries,
            List<HatchedView> hatchings,
            RecordView record) {}

    /** The clutch and the cases of its new hatchlings, each with its mother's found place. */
    public record HatchingView(ClutchView clutch, List<CaseView> hatchlings) {}

    @ApplicationScoped
    static class Clutches implements PanacheRepositoryBase<Clutch, UUID> {}

    @ApplicationScoped
    static class EggRecoveries implements PanacheRepositoryBase<EggRecovery, UUID> {}

    @ApplicationScoped
    static class ClutchCustodyLinks implements PanacheRepositoryBase<ClutchCustody, UUID> {}

    @ApplicationScoped
    static class Hatchings implements PanacheRepositoryBase<Hatching, UUID> {}

    private final Clutches clutches;
    private final EggRecoveries recoveries;
    private final ClutchCustodyLinks links;
    private final Hatchings hatchings;
    private final CaseService cases;
    private final CustodyService custody;
    private final ClinicService clinic;
    private final RecordViews records;
    private final Sight sight;
    private final Clock clock;

    ClutchService(
            Clutches clutches,
            EggRecoveries recoveries,
            ClutchCustodyLinks links,
            Hatchings hatchings,
            CaseService cases,
            CustodyService custody,
            ClinicService clinic,
            RecordViews records,
            Sight sight,
            Clock clock) {
        this.clutches = clutches;
        this.recoveries = recoveries;
        this.links = links;
        this.hatchings = hatchings;
        this.cases = cases;
        this.custody = custody;
        this.clinic = clinic;
        this.records = records;
        this.sight = sight;
        this.clock = clock;
    }

    @Transactional
    public ClutchView createClutch(ClutchEntry entry) {
        sight.requireSeen("case", entry.motherCaseId());
        cases.getCase(entry.motherCaseId());
        requireAccounted(entry.eggs());
        Instant at = at(entry.eggs().at());
        var clutch = new Clutch(entry.motherCaseId(), entry.visitId(), at);
        clutches.persistAndFlush(clutch);
        recoveries.persistAndFlush(new EggRecovery(clutch.id(), entry.eggs(), at));
        begin(clutch, entry.holder(), at);
        return view(clutch);
    }

    /** More eggs of the same mother, found later. */
    @Transactional
    public ClutchView addEggs(UUID id, EggsEntry eggs) {
        requireAccounted(eggs);
        Clutch clutch = require(id);
        recoveries.persistAndFlush(new EggRecovery(id, eggs, at(eggs.at())));
        return view(clutch);
    }

    /** The clutch goes to another holder, who needs an authorisation too. */
    @Transactional
    public ClutchView handOver(UUID id, ClutchHandOverEntry entry) {
        Clutch clutch = require(id);
        Instant at = at(entry.at());
        links.find("clutchId = ?1 and heldTo is null", id).firstResultOptional().ifPresent(link -> {
            if (!at.isAfter(link.heldFrom)) {
                throw InvalidException.of("at", "The giver had it only later.", "after " + link.heldFrom);
            }
            link.endAt(at);
        });
        links.flush();
        begin(clutch, entry.holder(), at);
        return view(clutch);
    }

    /** Hatchlings: animals with their mother's found place, held by whoever holds the clutch. */
    @Transactional
    public HatchingView hatch(UUID id, HatchingEntry entry) {
        Clutch clutch = require(id);
        Instant at = at(entry.at());
        hatchings.persistAndFlush(new Hatching(id, entry.hatched(), at));
        ClutchCustody holder =
                links.find("clutchId = ?1 and heldTo is null", id).firstResult();
        if (holder == null) {
            throw new IllegalStateException("a clutch without a holder");
        }
        CaseView mother = cases.getCase(clutch.motherCaseId);
        var young = new CaseEntries.AnimalEntry(
                mother.animal().scientificName(),
                CallEntry.Verification.seenByMember,
                CallEntry.Sex.unknown,
                "hatchling",
                null,
                null);
        List<CaseView> hatchlings = new ArrayList<>();
        for (int i = 0; i < entry.hatched(); i++) {
            hatchlings.add(cases.openForYoung(
                    clutch.motherCaseId, young, at, new Holder(holder.memberId, holder.organisationId, null)));
        }
        return new HatchingView(view(clutch), hatchlings);
    }

    @Transactional
    public ClutchView getClutch(UUID id) {
        return view(require(id));
    }

    @Transactional
    public ClutchView correct(UUID id, CareCorrections.ClutchCorrection correction) {
        Clutch clutch = require(id);
        clutch.correct(correction, clock);
        clutches.flush();
        return view(clutch);
    }

    /** Corrects one recovery; more than were set cannot have hatched of what is left. */
    @Transactional
    public ClutchView correctEggs(UUID id, UUID recoveryId, CareCorrections.EggsCorrection correction) {
        Clutch clutch = require(id);
        EggRecovery row = recoveries
                .findByIdOptional(recoveryId)
                .filter(recovery -> recovery.clutchId.equals(id))
                .orElseThrow(() -> new NotFoundException("recovery of that clutch", recoveryId));
        row.correct(correction, clock);
        ClutchService.EggsEntry eggs = row.eggs();
        if (eggs.recovered() < 1 || Math.min(Math.min(eggs.setToIncubate(), eggs.broken()), eggs.discarded()) < 0) {
            throw InvalidException.of(
                    "recovered", "These are no numbers of eggs.", "1 or more recovered, none below 0");
        }
        requireAccounted(eggs);
        recoveries.flush();
        ClutchView after = view(clutch);
        if (after.hatched() > after.setToIncubate()) {
            throw InvalidException.of(
                    "setToIncubate",
                    after.hatched() + " hatched already of " + after.setToIncubate() + ".",
                    "at least as many as hatched");
        }
        return after;
    }

    @Transactional
    public ClutchView correctCustody(UUID id, UUID linkId, CareCorrections.ClutchCustodyCorrection correction) {
        Clutch clutch = require(id);
        ClutchCustody link = links.findByIdOptional(linkId)
                .filter(row -> row.clutchId.equals(id))
                .orElseThrow(() -> new NotFoundException("custody link of that clutch", linkId));
        Holder holder = correction.holder().over("holder", new Holder(link.memberId, link.organisationId, null));
        Instant from = correction.from().over("from", link.heldFrom);
        link.correct(holder, authorisation(clutch, holder, from), correction, clock);
        links.flush();
        return view(clutch);
    }

    @Transactional
    public ClutchView correctHatching(UUID id, UUID hatchingId, CareCorrections.HatchedCorrection correction) {
        Clutch clutch = require(id);
        hatchings
                .findByIdOptional(hatchingId)
                .filter(hatching -> hatching.clutchId.equals(id))
                .orElseThrow(() -> new NotFoundException("hatching of that clutch", hatchingId))
                .correct(correction, clock);
        hatchings.flush();
        return view(clutch);
    }

    @Transactional
    public List<ClutchView> listClutches(UUID motherCaseId) {
        return clutches.list("motherCaseId = ?1 order by happenedAt, id", motherCaseId).stream()
                .map(this::view)
                .toList();
    }

    private void begin(Clutch clutch, Holder holder, Instant at) {
        links.persistAndFlush(new ClutchCustody(clutch.id(), holder, at, authorisation(clutch, holder, at)));
    }

    private String authorisation(Clutch clutch, Holder wanted, Instant at) {
        Holder holder = Holder.require("holder", wanted);
        if (holder.personId() != null) {
            throw InvalidException.of(
                    "holder", "Whoever runs the incubator needs an authorisation.", "a member or an organisation");
        }
        return custody.authorisation(clutch.motherCaseId, holder, at)
                .orElseThrow(
                        () -> new RefusedException(
                                "No authorisation is listed for this holder.",
                                List.of(
                                        "Eggs are protected wildlife too: no authorisation is listed for this holder and this kind"
                                                + " of animal on that day. Check your local code; if one was issued, enter it first.")));
    }

    static void requireAccounted(EggsEntry eggs) {
        if (eggs.recovered() != eggs.setToIncubate() + eggs.broken() + eggs.discarded()) {
            throw InvalidException.of(
                    "eggs.recovered",
                    "The eggs do not add up: " + eggs.recovered() + " recovered against "
                            + (eggs.setToIncubate() + eggs.broken() + eggs.discarded()) + " accounted for.",
                    "recovered = setToIncubate + broken + discarded");
        }
    }

    private Instant at(@Nullable Instant given) {
        return given == null ? clock.instant() : given;
    }

    private Clutch require(UUID id) {
        return clutches.findByIdOptional(id).orElseThrow(() -> new NotFoundException("clutch", id));
    }

    private ClutchView view(Clutch clutch) {
        List<EggRecovery> eggs = recoveries.list("clutchId = ?1 order by happenedAt, id", clutch.id());
        List<Hatching> hatched = hatchings.list("clutchId = ?1 order by happenedAt, id", clutch.id());
        int recovered = eggs.stream().mapToInt(row -> row.recovered).sum();
        Integer film = clutch.visitId == null
                ? null
                : clinic.getVisit(clutch.visitId).readings().stream()
                        .filter(reading -> reading.what().equals("eggs"))
                        .map(ClinicService.VisitView.ReadingView::counted)
                        .filter(Objects::nonNull)
                        .max(Integer::compare)
                        .orElse(null);
        return new ClutchView(
                clutch.id(),
                clutch.motherCaseId,
                clutch.visitId,
                recovered,
                eggs.stream().mapToInt(row -> row.setToIncubate).sum(),
                eggs.stream().mapToInt(row -> row.broken).sum(),
                eggs.stream().mapToInt(row -> row.discarded).sum(),
                hatched.stream().mapToLong(row -> row.hatched).sum(),
                film,
                film == null ? null : film != recovered,
                links.list("clutchId = ?1 order by heldFrom", clutch.id()).stream()
                        .map(link -> new ClutchCustodyView(
                                link.id(),
                                new Holder(link.memberId, link.organisationId, null),
                                link.heldFrom,
                                link.heldTo,
                                link.authorisation,
                                records.of(link)))
                        .toList(),
                eggs.stream()
                        .map(row -> new EggsView(
                                row.id(),
                                row.recovered,
                                row.setToIncubate,
                                row.broken,
                                row.discarded,
                                row.happenedAt(),
                                records.of(row)))
                        .toList(),
                hatched.stream()
                        .map(row -> new HatchedView(row.id(), row.hatched, row.happenedAt(), records.of(row)))
                        .toList(),
                records.of(clutch));
    }
}
