package org.culvert.care.placement;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.Change;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.roster.RosterService;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Keeps what carers can take, when they are away, and what is kept apart. */
@ApplicationScoped
public class CarerService {
    private static final int MOST_PLACES = 10_000;
    private static final int MOST_GROUPS = 200;

    /** Whether a rule keeps groups apart, or wants company. */
    public enum Keep {
        apart,
        inCompany
    }

    /** Whether a named person passes a rule over with a reason, or it is only shown. */
    public enum KeepingStrength {
        policy,
        advice
    }

    /**
     * What a carer can take.
     *
     * @param premises what authorisations call the premises; never an address
     * @param supervisorId under whom the carer works, where an authorisation asks for it
     * @param supervisedFrom the first day of that; left out: not told, and so any
     * @param supervisedUntil the last day of it; left out: it goes on
     * @param places for all animals at once; left out: not told
     * @param placesByGroup the same by key of a group
     */
    public record CarerProfileEntry(
            @NotNull UUID memberId,
            @Nullable @Size(max = 200) String premises,
            @Nullable UUID supervisorId,
            @Nullable LocalDate supervisedFrom,
            @Nullable LocalDate supervisedUntil,
            @Nullable @Min(0) @Max(MOST_PLACES) Integer places,

            @NotNull @Size(max = MOST_GROUPS)
            Map<@NotBlank @Size(max = 200) String, @NotNull @Min(0) @Max(MOST_PLACES) Integer> placesByGroup) {}

    public record CarerProfileCorrection(
            Change<String> premises,
            Change<UUID> supervisorId,
            Change<LocalDate> supervisedFrom,
            Change<LocalDate> supervisedUntil,
            Change<Integer> places,
            Change<Map<String, Integer>> placesByGroup,
            @NotBlank @Size(max = 2000) String reason) {}

    public record CarerProfileView(
            UUID id,
            UUID memberId,
            @Nullable String premises,
            @Nullable UUID supervisorId,
            @Nullable LocalDate supervisedFrom,
            @Nullable LocalDate supervisedUntil,
            @Nullable Integer places,
            Map<String, Integer> placesByGroup,
            RecordView record) {}

    /** Days on which a carer takes nothing in, the last among them. */
    public record AbsenceEntry(
            @NotNull LocalDate from, @NotNull LocalDate until) {}

    public record AbsenceView(
            UUID id,
            UUID memberId,
            LocalDate from,
            LocalDate until,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    /**
     * What is kept apart, or in company.
     *
     * @param taxonGroup key of the group
     * @param otherGroup key of the group from which it is kept apart; left out for company
     */
    public record KeepingRuleEntry(
            @NotNull Keep keep,
            @NotBlank @Size(max = 200) String taxonGroup,
            @Nullable @Size(max = 200) String otherGroup,
            @NotNull KeepingStrength strength,
            @NotBlank @Size(max = 2000) String words,
            @NotBlank @Size(max = 1000) String source,
            @NotNull LocalDate readOn) {}

    public record KeepingRuleView(
            UUID id,
            Keep keep,
            String taxonGroup,
            @Nullable String otherGroup,
            KeepingStrength strength,
            String words,
            String source,
            LocalDate readOn,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    @ApplicationScoped
    static class Profiles implements PanacheRepositoryBase<CarerProfile, UUID> {}

    @ApplicationScoped
    static class Absences implements PanacheRepositoryBase<Absence, UUID> {}

    @ApplicationScoped
    static class KeepingRules implements PanacheRepositoryBase<KeepingRule, UUID> {}

    private final Profiles profiles;
    private final Absences absences;
    private final KeepingRules rules;
    private final RosterService roster;
    private final TaxonService taxa;
    private final RecordViews records;
    private final Clock clock;

    CarerService(
            Profiles profiles,
            Absences absences,
            KeepingRules rules,
            RosterService roster,
            TaxonService taxa,
            RecordViews records,
            Clock clock) {
        this.profiles = profiles;
        this.absences = absences;
        this.rules = rules;
        this.roster = roster;
        this.taxa = taxa;
        this.records = records;
        this.clock = clock;
    }

    @Transactional
    public CarerProfileView enterProfile(CarerProfileEntry entry) {
        if (!roster.getMember(entry.memberId()).cares()) {
            throw InvalidException.of("memberId", "This member takes no animals into care.", "a member who cares");
        }
        requireSupervisor(entry.memberId(), entry.supervisorId());
        requirePlaces(entry.placesByGroup());
        var row = new CarerProfile(entry);
        requireDays(row);
        profiles.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public CarerProfileView getProfile(UUID id) {
        return view(profiles.findByIdOptional(id).orElseThrow(() -> new NotFoundException("carer profile", id)));
    }

    /** Profiles, or the one of a member. */
    @Transactional
    public List<CarerProfileView> listProfiles(@Nullable UUID memberId) {
        return profiles.list("(?1 is null or memberId = ?1) order by id", memberId).stream()
                .map(this::view)
                .toList();
    }

    @Transactional
    public CarerProfileView correctProfile(UUID id, CarerProfileCorrection correction) {
        CarerProfile row = profiles.findByIdOptional(id).orElseThrow(() -> new NotFoundException("carer profile", id));
        requireSupervisor(row.memberId, correction.supervisorId().value());
        Integer places = correction.places().value();
        if (places != null && (places < 0 || places > MOST_PLACES)) {
            throw InvalidException.of("places", "So many places there are not.", "0 to " + MOST_PLACES);
        }
        Map<String, Integer> byGroup = correction.placesByGroup().value();
        if (byGroup != null) {
            requirePlaces(byGroup);
        }
        row.correct(correction);
        requireDays(row);
        profiles.flush();
        return view(row);
    }

    private void requireSupervisor(UUID memberId, @Nullable UUID supervisorId) {
        if (supervisorId != null) {
            roster.getMember(supervisorId);
            if (supervisorId.equals(memberId)) {
                throw InvalidException.of("supervisorId", "Nobody supervises themselves.", "another member");
            }
        }
    }

    private static void requireDays(CarerProfile row) {
        LocalDate from = row.supervisedFrom;
        LocalDate until = row.supervisedUntil;
        if (row.supervisorId == null && (from != null || until != null)) {
            throw InvalidException.of(
                    "supervisorId", "Supervision that has days has a supervisor.", "a member, or no days");
        }
        if (from != null && until != null && until.isBefore(from)) {
            throw InvalidException.of("supervisedUntil", "It ends before it begins.", "a day on or after " + from);
        }
    }

    private void requirePlaces(Map<String, Integer> placesByGroup) {
        if (placesByGroup.size() > MOST_GROUPS) {
            throw InvalidException.of("placesByGroup", "There are too many.", "at most " + MOST_GROUPS);
        }
        placesByGroup.forEach((group, places) -> {
            taxa.requireGroup("placesByGroup", group);
            // A correction is not looked at by annotations
            if (places == null || places < 0 || places > MOST_PLACES) {
                throw InvalidException.of(
                        "placesByGroup." + group, "So many places there are not.", "0 to " + MOST_PLACES);
            }
        });
    }

    @Transactional
    public AbsenceView addAbsence(UUID memberId, AbsenceEntry entry) {
        roster.getMember(memberId);
        if (entry.until().isBefore(entry.from())) {
            throw InvalidException.of("until", "It ends before it begins.", "a day on or after from");
        }
        var row = new Absence(memberId, entry.from(), entry.until());
        absences.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public AbsenceView getAbsence(UUID id) {
        return view(absences.findByIdOptional(id).orElseThrow(() -> new NotFoundException("absence", id)));
    }

    @Transactional
    public List<AbsenceView> listAbsences(UUID memberId) {
        roster.getMember(memberId);
        return absences.list("memberId = ?1 order by fromDay, id", memberId).stream()
                .map(this::view)
                .toList();
    }

    @Transactional
    public AbsenceView withdrawAbsence(UUID id, String reason) {
        Absence row = absences.findByIdOptional(id).orElseThrow(() -> new NotFoundException("absence", id));
        row.withdraw(clock.instant(), reason);
        absences.flush();
        return view(row);
    }

    @Transactional
    public KeepingRuleView enterRule(KeepingRuleEntry entry) {
        if ((entry.keep() == Keep.apart) != (entry.otherGroup() != null)) {
            throw InvalidException.of(
                    "otherGroup",
                    entry.keep() == Keep.apart ? "It does not say from what." : "Company is of its own group.",
                    entry.keep() == Keep.apart ? "the key of another group" : "nothing");
        }
        UUID other = entry.otherGroup() == null
                ? null
                : taxa.requireGroup("otherGroup", entry.otherGroup()).id();
        var row = new KeepingRule(
                entry, taxa.requireGroup("taxonGroup", entry.taxonGroup()).id(), other);
        rules.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public KeepingRuleView getRule(UUID id) {
        return view(rules.findByIdOptional(id).orElseThrow(() -> new NotFoundException("keeping rule", id)));
    }

    /** Rules that stand, and those that were withdrawn. */
    @Transactional
    public List<KeepingRuleView> listRules() {
        return rules.list("order by id").stream().map(this::view).toList();
    }

    @Transactional
    public KeepingRuleView withdrawRule(UUID id, String reason) {
        KeepingRule row = rules.findByIdOptional(id).orElseThrow(() -> new NotFoundException("keeping rule", id));
        row.withdraw(clock.instant(), reason);
        rules.flush();
        return view(row);
    }

    /** Whoever fills a place of a carer waits here for others who do, until the transaction ends. */
    void lockPlaces(UUID memberId) {
        profiles.find("memberId", memberId)
                .withLock(LockModeType.PESSIMISTIC_WRITE)
                .firstResult();
    }

    List<KeepingRule> standingRules() {
        return rules.list("withdrawnAt is null order by id");
    }

    List<Absence> absencesOn(LocalDate day) {
        return absences.list("withdrawnAt is null and fromDay <= ?1 and untilDay >= ?1", day);
    }

    List<CarerProfile> allProfiles() {
        return profiles.listAll();
    }

    private CarerProfileView view(CarerProfile row) {
        return new CarerProfileView(
                row.id(),
                row.memberId,
                row.premises,
                row.supervisorId,
                row.supervisedFrom,
                row.supervisedUntil,
                row.places,
                row.placesByGroup,
                records.of(row));
    }

    private AbsenceView view(Absence row) {
        return new AbsenceView(
                row.id(),
                row.memberId,
                row.fromDay,
                row.untilDay,
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }

    private KeepingRuleView view(KeepingRule row) {
        return new KeepingRuleView(
                row.id(),
                row.keep,
                taxa.getGroup(row.taxonGroupId).key(),
                row.otherGroupId == null
                        ? null
                        : taxa.getGroup(row.otherGroupId).key(),
                row.strength,
                row.words,
                row.source,
                row.readOn,
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }
}
