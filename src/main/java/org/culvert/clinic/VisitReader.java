package org.culvert.clinic;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Shows visits. */
@ApplicationScoped
class VisitReader {
    private final ClinicService.Findings findings;
    private final ClinicService.FilmReadings readings;
    private final ClinicService.Procedures procedures;
    private final ClinicService.Discharges discharges;
    private final DrugOrders drugs;
    private final RecordViews records;

    VisitReader(
            ClinicService.Findings findings,
            ClinicService.FilmReadings readings,
            ClinicService.Procedures procedures,
            ClinicService.Discharges discharges,
            DrugOrders drugs,
            RecordViews records) {
        this.findings = findings;
        this.readings = readings;
        this.procedures = procedures;
        this.discharges = discharges;
        this.drugs = drugs;
        this.records = records;
    }

    Map<UUID, Discharge> dischargesOf(Collection<UUID> visitIds) {
        return discharges.list("visitId in ?1", visitIds).stream()
                .collect(Collectors.toMap(row -> row.visitId, Function.identity()));
    }

    VisitView view(Visit visit) {
        return views(List.of(visit)).get(0);
    }

    /** Some visits in as many questions as one. */
    List<VisitView> views(List<Visit> visits) {
        if (visits.isEmpty()) {
            return List.of();
        }
        List<UUID> ids = visits.stream().map(Visit::id).toList();
        List<Finding> allFound = findings.list("visitId in ?1 order by id", ids);
        List<FilmReading> allRead = readings.list("visitId in ?1 order by id", ids);
        List<Procedure> allDone = procedures.list("visitId in ?1 order by id", ids);
        Map<UUID, List<DrugOrders.DrugOrderView>> ordered = drugs.listByVisit(ids);
        Map<UUID, Discharge> ended = dischargesOf(ids);
        records.lookUp(Stream.of(visits, allFound, allRead, allDone, List.copyOf(ended.values()))
                .flatMap(List::stream)
                .toList());
        Map<UUID, List<Finding>> found = allFound.stream().collect(Collectors.groupingBy(row -> row.visitId));
        Map<UUID, List<FilmReading>> read = allRead.stream().collect(Collectors.groupingBy(row -> row.visitId));
        Map<UUID, List<Procedure>> done = allDone.stream().collect(Collectors.groupingBy(row -> row.visitId));
        return visits.stream()
                .map(visit -> view(
                        visit,
                        found.getOrDefault(visit.id(), List.of()),
                        read.getOrDefault(visit.id(), List.of()),
                        done.getOrDefault(visit.id(), List.of()),
                        ordered.getOrDefault(visit.id(), List.of()),
                        ended.get(visit.id())))
                .toList();
    }

    private VisitView view(
            Visit visit,
            List<Finding> found,
            List<FilmReading> read,
            List<Procedure> done,
            List<DrugOrders.DrugOrderView> ordered,
            @Nullable Discharge discharge) {
        return new VisitView(
                visit.id(),
                visit.caseId,
                visit.organisationId,
                visit.ofBody,
                Objects.requireNonNull(visit.happenedAt()),
                visit.leftAt,
                visit.stabilisedAt,
                visit.weightGrams,
                visit.bodyCondition,
                visit.gravid,
                visit.diagnosis,
                visit.causeOfDeath,
                found.stream()
                        .map(row -> new VisitView.FindingView(
                                row.id(),
                                row.bodyPart,
                                ClinicService.Side.valueOf(row.side),
                                row.part,
                                row.kind == null ? null : ClinicService.FindingKind.valueOf(row.kind),
                                row.words,
                                records.of(row)))
                        .toList(),
                read.stream()
                        .map(row -> new VisitView.ReadingView(
                                row.id(),
                                row.what,
                                row.counted,
                                row.reader,
                                ClinicService.Confidence.valueOf(row.confidence),
                                row.happenedAt(),
                                records.of(row)))
                        .toList(),
                done.stream()
                        .map(row -> new VisitView.ProcedureView(
                                row.id(),
                                row.words,
                                row.vetName,
                                row.vetRegistration,
                                row.happenedAt(),
                                records.of(row)))
                        .toList(),
                ordered,
                discharge == null
                        ? null
                        : new VisitView.DischargeView(
                                discharge.vetName,
                                discharge.vetRegistration,
                                discharge.words,
                                discharge.limits,
                                discharge.mayHold,
                                discharge.reviewOn,
                                discharge.happenedAt(),
                                records.of(discharge)),
                records.of(visit));
    }
}
