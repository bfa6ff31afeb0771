package org.culvert.exchange.auditfile;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseView;
import org.culvert.clinic.VisitView;
import org.culvert.exchange.auditfile.AuditFile.AuditSignature;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/** Who signed or approved what of one animal. */
final class AuditSignatures {
    private final List<AuditSignature> signatures = new ArrayList<>();

    private AuditSignatures() {}

    static List<AuditSignature> of(AuditParts parts) {
        var all = new AuditSignatures();
        CaseView.FateView fate = parts.animal().fate();
        if (fate != null) {
            all.add("end of the case approved", null, fate.approvedBy(), fate.authority(), fate.at(), fate.record());
            all.add("death confirmed", null, fate.deathConfirmedBy(), null, fate.deathConfirmedAt(), fate.record());
        }
        for (VisitView visit : parts.visits()) {
            visit.procedures()
                    .forEach(row -> all.add(
                            "procedure: " + row.procedure(),
                            row.id(),
                            row.vetName(),
                            row.vetRegistration(),
                            row.at(),
                            row.record()));
            visit.drugOrders()
                    .forEach(row -> all.add(
                            "drug order: " + row.drug(),
                            row.id(),
                            row.vetName(),
                            row.vetRegistration(),
                            row.at(),
                            row.record()));
            VisitView.DischargeView discharge = visit.discharge();
            if (discharge != null) {
                all.add(
                        "discharge",
                        visit.id(),
                        discharge.vetName(),
                        discharge.vetRegistration(),
                        discharge.at(),
                        discharge.record());
            }
        }
        parts.aftercarePlans()
                .forEach(plan -> plan.phases()
                        .forEach(phase -> all.add(
                                "aftercare plan",
                                plan.id(),
                                phase.vetName(),
                                phase.vetRegistration(),
                                phase.record().happenedAt(),
                                phase.record())));
        parts.fitnessChecks()
                .forEach(row ->
                        all.add("fitness", row.id(), row.vetName(), row.vetRegistration(), row.at(), row.record()));
        parts.releases()
                .forEach(row -> all.add("release approved", row.id(), row.approvedBy(), null, row.at(), row.record()));
        parts.nonReleaseDecisions().forEach(decision -> {
            all.add(
                    "decision not to release",
                    decision.id(),
                    decision.vetName(),
                    decision.vetRegistration(),
                    decision.decidedAt(),
                    decision.record());
            decision.secondOpinions()
                    .forEach(row -> all.add(
                            "second opinion", row.id(), row.vetName(), row.vetRegistration(), row.at(), row.record()));
            decision.welfareReviews()
                    .forEach(
                            row -> all.add("welfare review", row.id(), row.reviewedBy(), null, row.at(), row.record()));
            decision.outcomes()
                    .forEach(row -> all.add(
                            "outcome: " + row.outcome(), row.id(), row.approvedBy(), null, row.at(), row.record()));
        });
        all.signatures.sort(
                Comparator.comparing(AuditSignature::at, Comparator.nullsFirst(Comparator.<Instant>naturalOrder()))
                        .thenComparing(AuditSignature::recordedAt)
                        .thenComparing(AuditSignature::what));
        return List.copyOf(all.signatures);
    }

    /** @param name null or blank where nobody signed, or where it was erased */
    private void add(
            String what,
            @Nullable UUID id,
            @Nullable String name,
            @Nullable String capacity,
            @Nullable Instant at,
            RecordView record) {
        if (name != null && !name.isBlank()) {
            signatures.add(new AuditSignature(what, id, name, capacity, at, record.recordedAt()));
        }
    }
}
