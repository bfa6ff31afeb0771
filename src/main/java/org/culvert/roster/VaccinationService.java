package org.culvert.roster;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Who is vaccinated against what until when: health data, of which others learn only whether it is current on a day. */
@ApplicationScoped
public class VaccinationService {
    /**
     * A vaccination, or a test for antibodies, as entered.
     *
     * @param currentUntil last day on which it counts; left out where {@code event} is told and a rule is entered for what it
     *     is against: then it is worked out
     * @param event what was done; left out where only the last day is known
     * @param antibodyIuPerMl what a test found, in IU/mL
     */
    public record VaccinationEntry(
            @NotNull UUID memberId,
            @NotBlank @Size(max = 200) String against,
            @NotNull LocalDate givenOn,
            @Nullable LocalDate currentUntil,
            @NotBlank @Size(max = 200) String basis,
            BoosterRule.@Nullable Event event,
            @Nullable @DecimalMin("0") @DecimalMax("100000") Double antibodyIuPerMl) {}

    /**
     * How long a vaccination counts, as it is published.
     *
     * @param firstBoosterMonths after the course
     * @param intervalMonths after a booster, or a test that found enough
     * @param leastIuPerMl antibodies in IU/mL below which a booster is wanted
     */
    public record VaccinationRuleEntry(
            @NotBlank @Size(max = 200) String against,
            @NotNull @Min(1) @Max(1200) Integer firstBoosterMonths,
            @NotNull @Min(1) @Max(1200) Integer intervalMonths,

            @NotNull @DecimalMin("0.001") @DecimalMax("1000")
            Double leastIuPerMl,

            @NotBlank @Size(max = 2000) String words,
            @NotBlank @Size(max = 1000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @NotNull LocalDate validFrom) {}

    public record VaccinationRuleView(
            UUID id,
            String against,
            int firstBoosterMonths,
            int intervalMonths,
            double leastIuPerMl,
            String words,
            String source,
            LocalDate readOn,
            LocalDate reviewBy,
            LocalDate validFrom,
            RecordView record) {}

    /** A vaccination as kept: health data. */
    public record VaccinationView(
            UUID id,
            UUID memberId,
            String against,
            LocalDate givenOn,
            @Nullable LocalDate currentUntil,
            String basis,
            BoosterRule.@Nullable Event event,
            @Nullable Double antibodyIuPerMl,
            RecordView record) {}

    @ApplicationScoped
    static class Vaccinations implements PanacheRepositoryBase<Vaccination, UUID> {}

    @ApplicationScoped
    static class Rules implements PanacheRepositoryBase<VaccinationRule, UUID> {}

    private final Vaccinations vaccinations;
    private final Rules rules;
    private final RosterService roster;
    private final RecordViews records;

    VaccinationService(Vaccinations vaccinations, Rules rules, RosterService roster, RecordViews records) {
        this.vaccinations = vaccinations;
        this.rules = rules;
        this.roster = roster;
        this.records = records;
    }

    @Transactional
    public UUID create(VaccinationEntry entry) {
        roster.getMember(entry.memberId());
        if ((entry.event() == BoosterRule.Event.antibodyTest) != (entry.antibodyIuPerMl() != null)) {
            throw InvalidException.of(
                    "antibodyIuPerMl",
                    entry.antibodyIuPerMl() == null ? "A test has a figure." : "Only a test has a figure.",
                    "what an antibodyTest found, in IU/mL");
        }
        LocalDate until = entry.currentUntil() == null ? worked(entry) : entry.currentUntil();
        requireForward(entry.givenOn(), until);
        var row = new Vaccination(entry, until);
        vaccinations.persistAndFlush(row);
        return row.id();
    }

    private @Nullable LocalDate worked(VaccinationEntry entry) {
        VaccinationRule rule = ruleOn(entry.against(), entry.givenOn()).orElse(null);
        if (entry.event() == null || rule == null) {
            throw InvalidException.of(
                    "currentUntil",
                    entry.event() == null
                            ? "It says neither until when it counts nor what was done."
                            : "No rule is entered for how long that counts.",
                    "the last day on which it counts");
        }
        return rule.rule()
                .currentUntil(
                        entry.event(),
                        entry.givenOn(),
                        entry.antibodyIuPerMl(),
                        doses(entry.memberId(), entry.against()))
                .orElse(null);
    }

    private List<BoosterRule.Dose> doses(UUID memberId, String against) {
        return vaccinations
                .list("memberId = ?1 and against = ?2 and erasedAt is null order by givenOn, id", memberId, against)
                .stream()
                .map(Vaccination::dose)
                .toList();
    }

    private Optional<VaccinationRule> ruleOn(String against, LocalDate day) {
        return rules.find("against = ?1 and validFrom <= ?2 order by validFrom desc", against, day)
                .firstResultOptional();
    }

    private static void requireForward(LocalDate givenOn, @Nullable LocalDate currentUntil) {
        if (currentUntil != null && currentUntil.isBefore(givenOn)) {
            throw InvalidException.of("currentUntil", "It ends before it was given.", "a day on or after givenOn");
        }
    }

    /** Enters how long a vaccination counts from a day on. */
    @Transactional
    public VaccinationRuleView enterRule(VaccinationRuleEntry entry) {
        if (!entry.reviewBy().isAfter(entry.readOn())) {
            throw InvalidException.of("reviewBy", "It would be looked at again before it was read.", "a later day");
        }
        var row = new VaccinationRule(entry);
        rules.persistAndFlush(row);
        return view(row);
    }

    /** How long vaccinations count, with the source of each. */
    @Transactional
    public List<VaccinationRuleView> listRules() {
        return rules.list("order by against, validFrom").stream()
                .map(this::view)
                .toList();
    }

    private VaccinationRuleView view(VaccinationRule row) {
        return new VaccinationRuleView(
                row.id(),
                row.against,
                row.firstBoosterMonths,
                row.intervalMonths,
                row.leastIuPerMl,
                row.words,
                row.source,
                row.readOn,
                row.reviewBy,
                row.validFrom,
                records.of(row));
    }

    @Transactional
    public VaccinationView get(UUID id) {
        return vaccinations
                .findByIdOptional(id)
                .filter(row -> row.erasedAt == null)
                .map(this::view)
                .orElseThrow(() -> new NotFoundException("vaccination", id));
    }

    /** Of all members. */
    @Transactional
    public List<VaccinationView> listAll() {
        return vaccinations.list("erasedAt is null order by givenOn, id").stream()
                .map(this::view)
                .toList();
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

    /** Members shown to be vaccinated on a day; no record is no vaccination. */
    @Transactional
    public Set<UUID> listVaccinated(String against, LocalDate day) {
        return vaccinations.list("against = ?1 and erasedAt is null", against).stream()
                .collect(Collectors.groupingBy(
                        row -> row.memberId, Collectors.mapping(Vaccination::dose, Collectors.toList())))
                .entrySet()
                .stream()
                .filter(one -> isCurrent(one.getValue(), against, day))
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
    }

    /** Without a rule the days that were told stand alone. */
    private boolean isCurrent(List<BoosterRule.Dose> doses, String against, LocalDate day) {
        return ruleOn(against, day)
                .map(row -> row.rule().isCurrent(doses, day))
                .orElseGet(() -> doses.stream().anyMatch(dose -> BoosterRule.covers(dose, day)));
    }

    private VaccinationView view(Vaccination row) {
        return new VaccinationView(
                row.id(),
                row.memberId,
                row.against,
                row.givenOn,
                row.currentUntil,
                row.basis,
                row.event,
                row.antibodyIuPerMl,
                records.of(row));
    }
}
