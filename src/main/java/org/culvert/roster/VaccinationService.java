package org.culvert.roster;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;

/** Who is vaccinated against what until when: health data, of which others learn only whether it is current on a day. */
@ApplicationScoped
public class VaccinationService {
    /** A vaccination as entered. */
    public record VaccinationEntry(
            @NotNull UUID memberId,
            @NotBlank @Size(max = 200) String against,
            @NotNull LocalDate givenOn,
            @NotNull LocalDate currentUntil,
            @NotBlank @Size(max = 200) String basis) {}

    /** A vaccination as kept: health data. */
    public record VaccinationView(
            UUID id,
            UUID memberId,
            String against,
            LocalDate givenOn,
            LocalDate currentUntil,
            String basis,
            RecordView record) {}

    @ApplicationScoped
    static class Vaccinations implements PanacheRepositoryBase<Vaccination, UUID> {}

    private final Vaccinations vaccinations;
    private final RosterService roster;
    private final RecordViews records;

    VaccinationService(Vaccinations vaccinations, RosterService roster, RecordViews records) {
        this.vaccinations = vaccinations;
        this.roster = roster;
        this.records = records;
    }

    @Transactional
    public UUID create(VaccinationEntry entry) {
        roster.getMember(entry.memberId());
        requireForward(entry.givenOn(), entry.currentUntil());
        var row = new Vaccination(
                entry.memberId(), entry.against(), entry.givenOn(), entry.currentUntil(), entry.basis());
        vaccinations.persistAndFlush(row);
        return row.id();
    }

    private static void requireForward(LocalDate givenOn, LocalDate currentUntil) {
        if (currentUntil.isBefore(givenOn)) {
            throw InvalidException.of("currentUntil", "It ends before it was given.", "a day on or after givenOn");
        }
    }

    @Transactional
    public VaccinationView get(UUID id) {
        return vaccinations
                .findByIdOptional(id)
                .filter(row -> row.erasedAt == null)
                .map(this::view)
                .orElseThrow(() -> new NotFoundException("vaccination", id));
    }

    @Transactional
    public List<VaccinationView> list(UUID memberId) {
        roster.getMember(memberId);
        return vaccinations.list("memberId = ?1 and erasedAt is null order by givenOn, id", memberId).stream()
                .map(this::view)
                .toList();
    }

    /** Corrects a vaccination, so that nobody handles what they are not shown to be protected from. */
    @Transactional
    public VaccinationView correct(UUID id, RosterCorrections.VaccinationCorrection correction) {
        Vaccination row = vaccinations.findByIdOptional(id).orElseThrow(() -> new NotFoundException("vaccination", id));
        row.correct(correction);
        requireForward(row.givenOn, row.currentUntil);
        vaccinations.flush();
        return view(row);
    }

    /** Whether a member is shown to be vaccinated on a day; no record is no vaccination. */
    @Transactional
    public boolean isVaccinated(UUID memberId, String against, LocalDate day) {
        return vaccinations.count(
                        "memberId = ?1 and against = ?2 and givenOn <= ?3 and currentUntil >= ?3 and erasedAt is null",
                        memberId,
                        against,
                        day)
                > 0;
    }

    private VaccinationView view(Vaccination row) {
        return new VaccinationView(
                row.id(), row.memberId, row.against, row.givenOn, row.currentUntil, row.basis, records.of(row));
    }
}
