package org.culvert.web.kept;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;
import org.culvert.clinic.ClinicCorrections;
import org.culvert.clinic.ClinicCorrector;
import org.culvert.clinic.ClinicService;
import org.culvert.clinic.DrugOrders;
import org.culvert.platform.NotFoundException;

/** Of a case: its visits, with what was found, done, ordered and given there. */
@ApplicationScoped
class ClinicKinds {
    private static final String VISIT = "/api/visits/{id}";
    private static final String READS = "GET /api/visits/{id}";
    private static final String TAG = "visit";

    private final ClinicService clinic;
    private final ClinicCorrector corrector;

    ClinicKinds(ClinicService clinic, ClinicCorrector corrector) {
        this.clinic = clinic;
        this.corrector = corrector;
    }

    List<KeptKind> kinds() {
        return List.of(
                of("visits")
                        .corrected(
                                VISIT,
                                TAG,
                                ClinicCorrections.VisitCorrection.class,
                                (ids, entry) -> corrector.correctVisit(ids.in(), entry)),
                of("findings", "findings")
                        .corrected(
                                VISIT + "/findings/{findingId}",
                                TAG,
                                ClinicCorrections.FindingCorrection.class,
                                (ids, entry) -> corrector.correctFinding(ids.in(), ids.id(), entry)),
                of("readings", "readings")
                        .corrected(
                                VISIT + "/readings/{readingId}",
                                TAG,
                                ClinicCorrections.ReadingCorrection.class,
                                (ids, entry) -> corrector.correctReading(ids.in(), ids.id(), entry)),
                of("procedures", "procedures")
                        .corrected(
                                VISIT + "/procedures/{procedureId}",
                                TAG,
                                ClinicCorrections.ProcedureCorrection.class,
                                (ids, entry) -> corrector.correctProcedure(ids.in(), ids.id(), entry)),
                of("discharges", "discharge")
                        .corrected(
                                VISIT + "/discharge",
                                TAG,
                                ClinicCorrections.DischargeCorrection.class,
                                (ids, entry) -> corrector.correctDischarge(ids.in(), entry)),
                of("drug-orders", "drugOrders")
                        .act(
                                "uses",
                                "POST " + VISIT + "/drug-orders/{orderId}/uses",
                                "",
                                ClinicService.DrugUseEntry.class,
                                (ids, entry) -> clinic.addDrugUse(ids.in(), ids.id(), entry))
                        .withdrawn(
                                VISIT + "/drug-orders/{orderId}/withdrawal",
                                TAG,
                                (ids, why) -> clinic.withdrawDrug(ids.in(), ids.id(), null, why.reason())),
                of("drug-uses", "drugOrders", "uses")
                        .withdrawn(
                                VISIT + "/drug-orders/{orderId}/uses/{useId}/withdrawal",
                                TAG,
                                (ids, why) -> clinic.withdrawDrug(
                                        ids.in(), orderOf(ids.in(), ids.id()), ids.id(), why.reason())));
    }

    private KeptKind of(String name, String... part) {
        return KeptKind.of(name, READS, id -> clinic.listVisits(id), part);
    }

    private UUID orderOf(UUID visitId, UUID useId) {
        return clinic.getVisit(visitId).drugOrders().stream()
                .filter(order -> order.uses().stream().anyMatch(use -> use.id().equals(useId)))
                .map(DrugOrders.DrugOrderView::id)
                .findFirst()
                .orElseThrow(() -> new NotFoundException("drug use of that visit", useId));
    }
}
