package org.culvert.clinic;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.UUID;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.Corrections;

/** Corrects what was entered of visits; what it was before stays in the revisions. */
@ApplicationScoped
public class ClinicCorrector {
    private final ClinicService.Visits visits;
    private final ClinicService.Findings findings;
    private final ClinicService.FilmReadings readings;
    private final ClinicService.Procedures procedures;
    private final ClinicService.Discharges discharges;
    private final BodyParts parts;
    private final Clock clock;

    ClinicCorrector(
            ClinicService.Visits visits,
            ClinicService.Findings findings,
            ClinicService.FilmReadings readings,
            ClinicService.Procedures procedures,
            ClinicService.Discharges discharges,
            BodyParts parts,
            Clock clock) {
        this.visits = visits;
        this.findings = findings;
        this.readings = readings;
        this.procedures = procedures;
        this.discharges = discharges;
        this.parts = parts;
        this.clock = clock;
    }

    @Transactional
    public void correctVisit(UUID id, ClinicCorrections.VisitCorrection correction) {
        visits.findByIdOptional(id)
                .orElseThrow(() -> new NotFoundException("visit", id))
                .correct(correction, clock);
        visits.flush();
    }

    @Transactional
    public void correctFinding(UUID visitId, UUID id, ClinicCorrections.FindingCorrection correction) {
        Finding row = findings.findByIdOptional(id)
                .filter(one -> one.visitId.equals(visitId))
                .orElseThrow(() -> new NotFoundException("finding of that visit", id));
        UUID caseId = visits.findById(visitId).caseId;
        row.correct(
                correction,
                parts.read(
                        "",
                        caseId,
                        Corrections.words("bodyPart", correction.bodyPart(), row.bodyPart, 200),
                        correction.part().over(row.part),
                        ClinicService.Side.valueOf(Corrections.name("side", correction.side(), row.side))));
        findings.flush();
    }

    @Transactional
    public void correctReading(UUID visitId, UUID id, ClinicCorrections.ReadingCorrection correction) {
        readings.findByIdOptional(id)
                .filter(row -> row.visitId.equals(visitId))
                .orElseThrow(() -> new NotFoundException("reading of that visit", id))
                .correct(correction, clock);
        readings.flush();
    }

    @Transactional
    public void correctProcedure(UUID visitId, UUID id, ClinicCorrections.ProcedureCorrection correction) {
        procedures
                .findByIdOptional(id)
                .filter(row -> row.visitId.equals(visitId))
                .orElseThrow(() -> new NotFoundException("procedure of that visit", id))
                .correct(correction, clock);
        procedures.flush();
    }

    @Transactional
    public void correctDischarge(UUID visitId, ClinicCorrections.DischargeCorrection correction) {
        discharges
                .find("visitId", visitId)
                .firstResultOptional()
                .orElseThrow(() -> new NotFoundException("discharge of visit", visitId))
                .correct(correction);
        discharges.flush();
    }
}
