package org.culvert.care.clutch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseEntries;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.animal.CustodyService;
import org.culvert.call.CallEntry;
import org.culvert.clinic.ClinicService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RefusedException;
import org.culvert.platform.RegionService;
import org.culvert.platform.sight.Sight;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/** Clutches: eggs of one mother, living or dead, with their own custody and authorisation. */
@ApplicationScoped
public class ClutchService {
    private final ClutchRepositories.Clutches clutches;
    private final ClutchRepositories.EggRecoveries recoveries;
    private final ClutchRepositories.ClutchCustodyLinks links;
    private final ClutchRepositories.Hatchings hatchings;
    private final ClutchReader reader;
    private final CaseService cases;
    private final CustodyService custody;
    private final ClinicService clinic;
    private final RegionService region;
    private final Sight sight;
    private final Clock clock;

    ClutchService(
            ClutchRepositories.Clutches clutches,
            ClutchRepositories.EggRecoveries recoveries,
            ClutchRepositories.ClutchCustodyLinks links,
            ClutchRepositories.Hatchings hatchings,
            ClutchReader reader,
            CaseService cases,
            CustodyService custody,
            ClinicService clinic,
            RegionService region,
            Sight sight,
            Clock clock) {
        this.clutches = clutches;
        this.recoveries = recoveries;
        this.links = links;
        this.hatchings = hatchings;
        this.reader = reader;
        this.cases = cases;
        this.custody = custody;
        this.clinic = clinic;
        this.region = region;
        this.sight = sight;
        this.clock = clock;
    }

    @Transactional
    public ClutchViews.ClutchView createClutch(ClutchEntries.ClutchEntry entry) {
        sight.requireSeen("case", entry.motherCaseId());
        cases.getCase(entry.motherCaseId());
        if (entry.visitId() != null) {
            clinic.requireOfCase("visitId", entry.visitId(), entry.motherCaseId());
        }
        requireAccounted(entry.eggs());
        Instant at = at(entry.eggs().at());
        var clutch = new Clutch(entry.motherCaseId(), entry.visitId(), at);
        clutches.persistAndFlush(clutch);
        recoveries.persistAndFlush(new EggRecovery(clutch.id(), entry.eggs(), at));
        begin(clutch, entry.holder(), at);
        return reader.view(clutch);
    }

    /** More eggs of the same mother, that came later. */
    @Transactional
    public ClutchViews.ClutchView addEggs(UUID id, ClutchEntries.EggsEntry eggs) {
        requireAccounted(eggs);
        Clutch clutch = require(id);
        recoveries.persistAndFlush(new EggRecovery(id, eggs, at(eggs.at())));
        return reader.view(clutch);
    }

    /** The clutch goes to another holder, who needs an authorisation too. */
    @Transactional
    public ClutchViews.ClutchView handOver(UUID id, ClutchEntries.ClutchHandOverEntry entry) {
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
        return reader.view(clutch);
    }

    /** Hatchlings: animals with their mother's found place, held by whoever held the clutch when they hatched. */
    @Transactional
    public ClutchViews.HatchingView hatch(UUID id, ClutchEntries.HatchingEntry entry) {
        Clutch clutch = require(id);
        Instant at = at(entry.at());
        ClutchCustody holder = links.find(
                        "clutchId = ?1 and heldFrom <= ?2 and (heldTo is null or heldTo > ?2)", id, at)
                .firstResultOptional()
                .orElseThrow(() -> InvalidException.of(
                        "at",
                        "Nobody is recorded as holder of the clutch at that time.",
                        "a time at which somebody held it; correct its custody first, if that is wrong"));
        hatchings.persistAndFlush(new Hatching(id, entry.hatched(), at));
        CaseView mother = cases.getCase(clutch.motherCaseId);
        var young = new CaseEntries.AnimalEntry(
                mother.animal().scientificName(),
                CallEntry.Verification.seenByMember,
                CallEntry.Sex.unknown,
                "hatchling",
                null,
                null,
                LocalDate.ofInstant(at, region.zone()),
                null);
        List<CaseView> hatchlings = new ArrayList<>();
        for (int i = 0; i < entry.hatched(); i++) {
            hatchlings.add(cases.openForYoung(
                    clutch.motherCaseId, young, at, new Holder(holder.memberId, holder.organisationId, null)));
        }
        return new ClutchViews.HatchingView(reader.view(clutch), hatchlings);
    }

    @Transactional
    public ClutchViews.ClutchView getClutch(UUID id) {
        return reader.view(require(id));
    }

    @Transactional
    public ClutchViews.ClutchView correct(UUID id, ClutchCorrections.ClutchCorrection correction) {
        Clutch clutch = require(id);
        UUID visit = correction.visitId().value();
        if (visit != null) {
            clinic.requireOfCase("visitId", visit, clutch.motherCaseId);
        }
        clutch.correct(correction, clock);
        clutches.flush();
        return reader.view(clutch);
    }

    /** Corrects one recovery; as many stay set as hatched or failed. */
    @Transactional
    public ClutchViews.ClutchView correctEggs(UUID id, UUID recoveryId, ClutchCorrections.EggsCorrection correction) {
        Clutch clutch = require(id);
        EggRecovery row = recoveries
                .findByIdOptional(recoveryId)
                .filter(recovery -> recovery.clutchId.equals(id))
                .orElseThrow(() -> new NotFoundException("recovery of that clutch", recoveryId));
        row.correct(correction, clock);
        ClutchEntries.EggsEntry eggs = row.eggs();
        if (eggs.recovered() < 1 || Math.min(Math.min(eggs.setToIncubate(), eggs.broken()), eggs.discarded()) < 0) {
            throw InvalidException.of(
                    "recovered", "These are no numbers of eggs.", "1 or more recovered, none below 0");
        }
        requireAccounted(eggs);
        recoveries.flush();
        return reader.view(clutch);
    }

    @Transactional
    public ClutchViews.ClutchView correctCustody(
            UUID id, UUID linkId, ClutchCorrections.ClutchCustodyCorrection correction) {
        Clutch clutch = require(id);
        ClutchCustody link = links.findByIdOptional(linkId)
                .filter(row -> row.clutchId.equals(id))
                .orElseThrow(() -> new NotFoundException("custody link of that clutch", linkId));
        Holder holder = correction.holder().over("holder", new Holder(link.memberId, link.organisationId, null));
        Instant from = correction.from().over("from", link.heldFrom);
        link.correct(holder, authorisation(clutch, holder, from), correction, clock);
        links.flush();
        return reader.view(clutch);
    }

    @Transactional
    public ClutchViews.ClutchView correctHatching(
            UUID id, UUID hatchingId, ClutchCorrections.HatchedCorrection correction) {
        Clutch clutch = require(id);
        hatchings
                .findByIdOptional(hatchingId)
                .filter(hatching -> hatching.clutchId.equals(id))
                .orElseThrow(() -> new NotFoundException("hatching of that clutch", hatchingId))
                .correct(correction, clock);
        hatchings.flush();
        return reader.view(clutch);
    }

    @Transactional
    public List<ClutchViews.ClutchView> listClutches(UUID motherCaseId) {
        return clutches.list("motherCaseId = ?1 order by happenedAt, id", motherCaseId).stream()
                .map(reader::view)
                .toList();
    }

    /** Clutches that the asker may see, the newest first. */
    @Transactional
    public Page<ClutchViews.ClutchView> listClutches(int limit, @Nullable UUID before) {
        List<Clutch> rows = sight.seesOwnOnly("clutch")
                ? clutches.list("id in ?1 order by id desc", sight.listOwn("clutch", before, limit + 1, null))
                : clutches.find("?1 is null or id < ?1 order by id desc", before)
                        .page(0, limit + 1)
                        .list();
        return Page.of(rows, limit, reader::view, row -> row.id().toString());
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

    private static void requireAccounted(ClutchEntries.EggsEntry eggs) {
        long told = (long) eggs.setToIncubate() + eggs.broken() + eggs.discarded();
        if (eggs.recovered() != told) {
            throw InvalidException.of(
                    "eggs.recovered",
                    "The eggs do not add up: " + eggs.recovered() + " recovered against " + told + " accounted for.",
                    "recovered = setToIncubate + broken + discarded");
        }
    }

    private Instant at(@Nullable Instant given) {
        return given == null ? clock.instant() : given;
    }

    private Clutch require(UUID id) {
        return clutches.findByIdOptional(id).orElseThrow(() -> new NotFoundException("clutch", id));
    }
}
