package org.culvert.exchange.auditfile;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseView;
import org.culvert.call.CallView;
import org.culvert.clinic.DrugOrders;
import org.culvert.clinic.VisitView;
import org.culvert.exchange.auditfile.AuditFile.AuditEntry;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/** Puts the records of one animal in the order of what happened. */
final class AuditTimeline {
    private final List<AuditEntry> entries = new ArrayList<>();

    private AuditTimeline() {}

    static List<AuditEntry> of(AuditParts parts) {
        var timeline = new AuditTimeline();
        timeline.found(parts);
        timeline.treated(parts);
        timeline.decided(parts);
        timeline.entries.sort(
                Comparator.comparing(AuditEntry::at, Comparator.nullsFirst(Comparator.<Instant>naturalOrder()))
                        .thenComparing(AuditEntry::recordedAt)
                        .thenComparing(AuditEntry::section));
        return List.copyOf(timeline.entries);
    }

    private void found(AuditParts parts) {
        CaseView of = parts.animal();
        add(
                "incident",
                parts.incident().id(),
                "incident " + parts.incident().number(),
                parts.incident().record());
        for (CallView call : parts.incident().calls()) {
            add("incident", call.id(), "call", call.receivedAt(), call.record());
        }
        parts.incident()
                .joins()
                .forEach(join ->
                        add("incident", join.id(), "joined with another incident", join.joinedAt(), join.record()));
        add("animal", of.id(), "found: " + of.cause(), of.foundAt(), of.record());
        add(
                "animal",
                of.animal().id(),
                of.animal().scientificName(),
                of.animal().record());
        parts.attendances().forEach(row -> add("attendances", row.id(), "attendance", row.offeredAt(), row.record()));
        parts.custody()
                .forEach(link -> add("custody", link.linkId(), "held by " + link.holder(), link.from(), link.record()));
        CaseView.HandOverView pending = of.pendingHandOver();
        if (pending != null) {
            add("animal", pending.id(), "offered to another holder", pending.offeredAt(), pending.record());
        }
        parts.whereabouts().forEach(row -> add("whereabouts", row.id(), "moved", row.since(), row.record()));
        CaseView.FateView fate = of.fate();
        if (fate != null) {
            add("animal", null, "ended: " + fate.fate(), fate.at(), fate.record());
        }
        CaseView.BodyView body = of.body();
        if (body != null) {
            add("animal", body.id(), body.disposal() == null ? "body" : "body: " + body.disposal(), body.record());
        }
        parts.photographs()
                .forEach(row -> add(
                        "photographs", row.id(), said("photograph", row.withdrawnAt()), row.takenAt(), row.record()));
    }

    private void treated(AuditParts parts) {
        for (VisitView visit : parts.visits()) {
            add(
                    "visits",
                    visit.id(),
                    visit.ofBody() ? "visit of the body" : "visit",
                    visit.arrivedAt(),
                    visit.record());
            visit.findings()
                    .forEach(row -> add("visits", row.id(), row.bodyPart() + ": " + row.finding(), row.record()));
            visit.readings().forEach(row -> add("visits", row.id(), "read: " + row.what(), row.at(), row.record()));
            visit.procedures().forEach(row -> add("visits", row.id(), row.procedure(), row.at(), row.record()));
            for (DrugOrders.DrugOrderView order : visit.drugOrders()) {
                add(
                        "visits",
                        order.id(),
                        said("ordered: " + order.drug(), order.withdrawnAt()),
                        order.at(),
                        order.record());
                order.uses()
                        .forEach(use -> add(
                                "visits",
                                use.id(),
                                said("given: " + order.drug(), use.withdrawnAt()),
                                use.at(),
                                use.record()));
            }
            VisitView.DischargeView discharge = visit.discharge();
            if (discharge != null) {
                add("visits", visit.id(), "discharged", discharge.at(), discharge.record());
            }
        }
        parts.aftercarePlans().forEach(plan -> {
            add("aftercarePlans", plan.id(), "aftercare plan", plan.record());
            plan.phases()
                    .forEach(phase ->
                            add("aftercarePlans", phase.id(), "steps from day " + phase.fromDay(), phase.record()));
        });
        parts.careEntries()
                .forEach(row -> add(
                        "careEntries",
                        row.id(),
                        said("care: " + row.kind(), row.withdrawnAt()),
                        row.at(),
                        row.record()));
        parts.clutches().forEach(clutch -> {
            add("clutches", clutch.id(), "clutch", clutch.record());
            clutch.custody().forEach(link -> add("clutches", link.id(), "clutch held", link.from(), link.record()));
            clutch.recoveries()
                    .forEach(row -> add(
                            "clutches",
                            row.id(),
                            said(row.recovered() + " eggs came", row.withdrawnAt()),
                            row.at(),
                            row.record()));
            clutch.hatchings()
                    .forEach(row -> add("clutches", row.id(), row.hatched() + " hatched", row.at(), row.record()));
            clutch.failures()
                    .forEach(row -> add(
                            "clutches",
                            row.id(),
                            said(row.failed() + " failed", row.withdrawnAt()),
                            row.at(),
                            row.record()));
        });
    }

    private void decided(AuditParts parts) {
        parts.holds().forEach(row -> add("holds", row.id(), "held back: " + row.kind(), row.since(), row.record()));
        parts.fitnessChecks().forEach(row -> add("fitnessChecks", row.id(), "fitness signed", row.at(), row.record()));
        parts.approvals()
                .forEach(row -> add(
                        "approvals",
                        row.id(),
                        said((row.given() ? "approved by: " : "refused by: ") + row.of(), row.withdrawnAt()),
                        row.at(),
                        row.record()));
        parts.assessments().forEach(row -> add("assessments", row.id(), "assessed: " + row.overall(), row.record()));
        parts.releases().forEach(row -> add("releases", row.id(), "released", row.at(), row.record()));
        parts.nonReleaseDecisions().forEach(decision -> {
            String section = "nonReleaseDecisions";
            add(
                    section,
                    decision.id(),
                    "not to be released: " + decision.standing(),
                    decision.decidedAt(),
                    decision.record());
            decision.secondOpinions()
                    .forEach(row ->
                            add(section, row.id(), said("second opinion", row.withdrawnAt()), row.at(), row.record()));
            decision.authorityNotices()
                    .forEach(row ->
                            add(section, row.id(), said("authority told", row.withdrawnAt()), row.at(), row.record()));
            decision.permitsToKeep()
                    .forEach(row ->
                            add(section, row.id(), said("permit " + row.number(), row.withdrawnAt()), row.record()));
            decision.welfareReviews()
                    .forEach(row ->
                            add(section, row.id(), said("welfare review", row.withdrawnAt()), row.at(), row.record()));
            decision.outcomes()
                    .forEach(row ->
                            add(section, row.id(), said(row.outcome(), row.withdrawnAt()), row.at(), row.record()));
        });
    }

    private static String said(String words, @Nullable Instant withdrawnAt) {
        return withdrawnAt == null ? words : words + " (taken back)";
    }

    private void add(String section, @Nullable UUID id, String words, RecordView record) {
        add(section, id, words, record.happenedAt(), record);
    }

    private void add(String section, @Nullable UUID id, String words, @Nullable Instant at, RecordView record) {
        entries.add(new AuditEntry(
                at,
                record.recordedAt(),
                record.recordedBy(),
                record.lateByHours(),
                section,
                id,
                words,
                record.revision() - 1));
    }
}
