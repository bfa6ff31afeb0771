package org.culvert.care.health;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Keeps syndromes, from how many on there is an alert, and reports of animals that show one. */
@ApplicationScoped
public class SyndromeService {
    @ApplicationScoped
    static class Syndromes implements PanacheRepositoryBase<Syndrome, UUID> {}

    @ApplicationScoped
    static class Reports implements PanacheRepositoryBase<SyndromeReport, UUID> {}

    private final Syndromes syndromes;
    private final Reports reports;
    private final AlertService.Thresholds thresholds;
    private final AlertService.Members members;
    private final AlertService alerts;
    private final CaseService cases;
    private final TaxonService taxa;
    private final RecordViews records;
    private final RegionService region;
    private final EntityManager entities;
    private final Clock clock;

    SyndromeService(
            Syndromes syndromes,
            Reports reports,
            AlertService.Thresholds thresholds,
            AlertService.Members members,
            AlertService alerts,
            CaseService cases,
            TaxonService taxa,
            RecordViews records,
            RegionService region,
            EntityManager entities,
            Clock clock) {
        this.syndromes = syndromes;
        this.reports = reports;
        this.thresholds = thresholds;
        this.members = members;
        this.alerts = alerts;
        this.cases = cases;
        this.taxa = taxa;
        this.records = records;
        this.region = region;
        this.entities = entities;
        this.clock = clock;
    }

    @Transactional
    public SyndromeView enterSyndrome(SyndromeEntries.SyndromeEntry entry) {
        UUID group = entry.taxonGroup() == null
                ? null
                : taxa.requireGroup("taxonGroup", entry.taxonGroup()).id();
        var row = new Syndrome(entry, group);
        syndromes.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public List<SyndromeView> listSyndromes() {
        List<Syndrome> rows = syndromes.list("order by name, id");
        records.lookUp(rows);
        return rows.stream().map(this::view).toList();
    }

    /** A threshold holds from the next report on: what was reported before is not looked at again. */
    @Transactional
    public AlertThresholdView enterThreshold(SyndromeEntries.ThresholdEntry entry) {
        if (entry.syndromeId() != null) {
            requireSyndrome(entry.syndromeId());
        }
        var row = new AlertThreshold(entry);
        thresholds.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public List<AlertThresholdView> listThresholds() {
        List<AlertThreshold> rows = thresholds.list("order by id");
        records.lookUp(rows);
        return rows.stream().map(this::view).toList();
    }

    @Transactional
    public AlertThresholdView getThreshold(UUID id) {
        return view(requireThreshold(id));
    }

    @Transactional
    public AlertThresholdView endThreshold(UUID id, SyndromeEntries.ThresholdEnding ending) {
        AlertThreshold row = requireThreshold(id);
        row.end(ending.validTo(), ending.reason());
        thresholds.flush();
        return view(row);
    }

    /** Keeps a report, and raises an alert where it makes enough alike. */
    @Transactional
    public SyndromeReportView report(UUID caseId, SyndromeEntries.ReportEntry entry) {
        CaseView told = cases.getCase(caseId);
        Syndrome syndrome = requireSyndrome(entry.syndromeId());
        UUID group = syndrome.taxonGroupId;
        if (group != null && !group.equals(told.animal().taxonGroupId())) {
            throw InvalidException.of(
                    "syndromeId",
                    syndrome.name + " is told of another group of animals.",
                    "a syndrome of " + told.animal().taxonGroup() + ", or of any animal, from /api/syndromes");
        }
        Instant at = Corrections.passed("at", entry.at(), clock);
        AlertService.hold(entities, syndrome.id());
        var row = new SyndromeReport(caseId, told.animal().id(), entry, at, region.zone());
        reports.persistAndFlush(row);
        alerts.watch(row, today());
        return view(row);
    }

    @Transactional
    public SyndromeReportView getReport(UUID id) {
        return view(require(id));
    }

    @Transactional
    public List<SyndromeReportView> listReports(UUID caseId) {
        cases.getCase(caseId);
        return reports.list("caseId = ?1 order by happenedAt, id", caseId).stream()
                .map(this::view)
                .toList();
    }

    /** A corrected report is looked at anew; it stays in the alert that it was in. */
    @Transactional
    public SyndromeReportView correct(UUID id, SyndromeEntries.ReportCorrection correction) {
        SyndromeReport row = require(id);
        Instant at = correction.at().isMade()
                ? Corrections.known("at", correction.at(), Objects.requireNonNull(row.happenedAt()), clock)
                : null;
        row.correct(correction, at, region.zone());
        reports.flush();
        alerts.watch(row, today());
        return view(row);
    }

    /** Takes back a report; an alert that it is in says so and stands until somebody has read it. */
    @Transactional
    public SyndromeReportView withdraw(UUID id, SyndromeEntries.ReportWithdrawal withdrawal) {
        SyndromeReport row = require(id);
        row.withdraw(clock.instant(), withdrawal.reason());
        reports.flush();
        return view(row);
    }

    /** Locks a report, after its syndrome as whoever enters one does. */
    void lock(UUID id) {
        reports.findByIdOptional(id).ifPresent(row -> {
            AlertService.hold(entities, row.syndromeId);
            entities.refresh(row, jakarta.persistence.LockModeType.PESSIMISTIC_WRITE);
        });
    }

    private LocalDate today() {
        return clock.instant().atZone(region.zone()).toLocalDate();
    }

    private Syndrome requireSyndrome(UUID id) {
        return syndromes
                .findByIdOptional(id)
                .orElseThrow(() -> InvalidException.of(
                        "syndromeId", "There is no such syndrome.", "an identifier from /api/syndromes"));
    }

    private AlertThreshold requireThreshold(UUID id) {
        return thresholds.findByIdOptional(id).orElseThrow(() -> new NotFoundException("alert threshold", id));
    }

    private SyndromeReport require(UUID id) {
        return reports.findByIdOptional(id).orElseThrow(() -> new NotFoundException("syndrome report", id));
    }

    private SyndromeView view(Syndrome row) {
        UUID group = row.taxonGroupId;
        return new SyndromeView(
                row.id(),
                row.name,
                group == null ? null : taxa.getGroup(group).key(),
                row.words,
                row.source,
                row.readOn,
                records.of(row));
    }

    private AlertThresholdView view(AlertThreshold row) {
        return new AlertThresholdView(
                row.id(),
                row.syndromeId,
                row.smallestCount,
                row.withinKilometres,
                row.withinDays,
                row.source,
                row.readOn,
                row.validFrom,
                row.validTo,
                records.of(row));
    }

    private SyndromeReportView view(SyndromeReport row) {
        @Nullable
        UUID alert = members.find("reportId", row.id())
                .firstResultOptional()
                .map(member -> member.alertId)
                .orElse(null);
        return new SyndromeReportView(
                row.id(),
                row.caseId,
                row.syndromeId,
                requireSyndrome(row.syndromeId).name,
                row.day,
                row.words,
                cases.getCase(row.caseId).foundPlace() != null,
                alert,
                row.withdrawnAt,
                row.withdrawnBecause,
                SyndromeReportView.NOTE,
                records.of(row));
    }
}
