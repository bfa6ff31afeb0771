package org.culvert.clinic.profile;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.Change;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.roster.RosterService;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Keeps what clinics say of themselves, and finds the one to ask. */
@ApplicationScoped
public class ProfileService {
    private static final String CLINIC = "clinic";
    private static final int MOST_GROUPS = 200;
    private static final int MOST_SPANS = 50;

    /** What an animal may need that not every clinic has. */
    public enum Need {
        xRay,
        surgery
    }

    /** @param closes 00:00 is the end of the day */
    public record OpeningEntry(
            @NotNull DayOfWeek day,
            @NotNull LocalTime opens,
            @NotNull LocalTime closes) {}

    /**
     * What a clinic says of itself.
     *
     * @param phone of the practice
     * @param whenClosed what to do when it is closed
     * @param treats keys of the groups that it says it treats; a group that is not among them is not known to be treated
     * @param opening when it is open, in the region's time zone
     */
    public record ProfileEntry(
            @NotNull UUID clinicId,
            @NotBlank @Size(max = 200) String phone,
            @Nullable @Size(max = 2000) String whenClosed,
            @Nullable @Size(max = 4000) String words,
            @NotNull @Size(max = MOST_GROUPS) List<@NotBlank @Size(max = 200) String> treats,
            @NotNull @Size(max = MOST_SPANS) List<@NotNull @Valid OpeningEntry> opening) {}

    public record ProfileCorrection(
            Change<String> phone,
            Change<String> whenClosed,
            Change<String> words,
            Change<List<String>> treats,
            Change<List<OpeningEntry>> opening,
            @NotBlank @Size(max = 2000) String reason) {}

    /** A clinic's profile as shown. */
    public record ClinicProfileView(
            UUID id,
            UUID clinicId,
            String phone,
            @Nullable String whenClosed,
            @Nullable String words,
            List<String> treats,
            List<Opening> opening,
            RecordView record) {

        /** A span of a weekday in which it is open. */
        public record Opening(String day, LocalTime opens, LocalTime closes) {}
    }

    /**
     * A clinic that might be asked.
     *
     * @param metres from where the animal is, straight; null where either place is not known
     * @param openUntil null where it is closed, or nobody entered its hours
     * @param opensNext null where it is open, or nobody entered its hours
     * @param notBecause what speaks against asking it now; empty: nothing that is entered here
     */
    public record ClinicOption(
            UUID clinicId,
            String name,
            @Nullable String phone,
            @Nullable String whenClosed,
            @Nullable String words,
            @Nullable Double metres,
            boolean xRay,
            boolean surgery,
            @Nullable Instant openUntil,
            @Nullable Instant opensNext,
            List<String> notBecause) {}

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<ClinicProfile, UUID> {}

    private final Rows rows;
    private final RosterService roster;
    private final TaxonService taxa;
    private final RegionService region;
    private final RecordViews records;
    private final Clock clock;

    ProfileService(
            Rows rows,
            RosterService roster,
            TaxonService taxa,
            RegionService region,
            RecordViews records,
            Clock clock) {
        this.rows = rows;
        this.roster = roster;
        this.taxa = taxa;
        this.region = region;
        this.records = records;
        this.clock = clock;
    }

    @Transactional
    public ClinicProfileView enter(ProfileEntry entry) {
        if (!roster.getOrganisation(entry.clinicId()).kind().equals(CLINIC)) {
            throw InvalidException.of("clinicId", "This is no clinic.", "an organisation of kind clinic");
        }
        requireGroups(entry.treats());
        ClinicProfile row = ClinicProfile.of(entry, hours(entry.opening()));
        rows.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public List<ClinicProfileView> listProfiles() {
        return rows.list("order by id").stream().map(this::view).toList();
    }

    @Transactional
    public ClinicProfileView getProfile(UUID id) {
        return view(require(id));
    }

    /** What a clinic says of itself, if it was entered. */
    @Transactional
    public Optional<ClinicProfileView> findOfClinic(UUID clinicId) {
        return rows.find("organisationId", clinicId).firstResultOptional().map(this::view);
    }

    @Transactional
    public ClinicProfileView correct(UUID id, ProfileCorrection correction) {
        requireGroups(told("treats", correction.treats(), MOST_GROUPS));
        List<OpeningEntry> opening = told("opening", correction.opening(), MOST_SPANS);
        ClinicProfile row = require(id);
        row.correct(correction, correction.opening().isMade() ? hours(opening) : null);
        rows.flush();
        return view(row);
    }

    /**
     * All clinics, those against which nothing speaks first, then the nearest.
     *
     * @param group key of the animal's group
     * @param from where the animal is; null: not known
     * @param at when it would come; now when null
     */
    @Transactional
    public List<ClinicOption> findClinics(
            String group, @Nullable Position from, Set<Need> needs, @Nullable Instant at) {
        taxa.requireGroup("taxonGroup", group);
        Instant then = at == null ? clock.instant() : at;
        Map<UUID, ClinicProfile> profiles =
                rows.listAll().stream().collect(Collectors.toMap(row -> row.organisationId, Function.identity()));
        return roster.listOrganisations(CLINIC).stream()
                .map(clinic -> option(clinic, profiles.get(clinic.id()), group, from, needs, then))
                .sorted(Comparator.<ClinicOption>comparingInt(
                                option -> option.notBecause().isEmpty() ? 0 : 1)
                        .thenComparing(ClinicOption::metres, Comparator.nullsLast(Comparator.naturalOrder()))
                        .thenComparing(ClinicOption::name)
                        .thenComparing(ClinicOption::clinicId))
                .toList();
    }

    private ClinicOption option(
            RosterService.OrganisationView clinic,
            @Nullable ClinicProfile profile,
            String group,
            @Nullable Position from,
            Set<Need> needs,
            Instant at) {
        List<String> notBecause = new ArrayList<>();
        Instant openUntil = null;
        Instant opensNext = null;
        if (profile == null) {
            notBecause.add("What it treats and when it is open is not entered here: ring it first.");
        } else {
            if (!profile.treats.contains(group)) {
                notBecause.add("It is not entered that it treats animals of this group: ring it first.");
            }
            OpeningHours hours = profile.hours();
            openUntil = hours.openUntil(at, region.zone()).orElse(null);
            if (openUntil == null) {
                opensNext = hours.opensNext(at, region.zone()).orElse(null);
                notBecause.add(
                        hours.spans().isEmpty()
                                ? "When it is open is not entered here: ring it first."
                                : "It is closed.");
            }
        }
        if (needs.contains(Need.xRay) && !clinic.xRay()) {
            notBecause.add("It is not entered that it has X-ray.");
        }
        if (needs.contains(Need.surgery) && !clinic.surgery()) {
            notBecause.add("It is not entered that it operates.");
        }
        return new ClinicOption(
                clinic.id(),
                clinic.name(),
                profile == null ? null : profile.phone,
                profile == null ? null : profile.whenClosed,
                profile == null ? null : profile.words,
                metres(clinic, from),
                clinic.xRay(),
                clinic.surgery(),
                openUntil,
                opensNext,
                List.copyOf(notBecause));
    }

    private static @Nullable Double metres(RosterService.OrganisationView clinic, @Nullable Position from) {
        return from == null || clinic.latitude() == null || clinic.longitude() == null
                ? null
                : Double.valueOf(Geodesy.metresBetween(from, new Position(clinic.latitude(), clinic.longitude())));
    }

    /** What a correction lists; null clears, so it is an empty list. */
    private static <T> List<T> told(String field, Change<List<T>> change, int most) {
        List<T> told = change.value();
        if (told == null) {
            return List.of();
        }
        if (told.size() > most) {
            throw InvalidException.of(field, "There are too many.", "at most " + most);
        }
        return told;
    }

    private void requireGroups(List<String> treats) {
        for (int i = 0; i < treats.size(); i++) {
            taxa.requireGroup("treats[" + i + "]", treats.get(i));
        }
    }

    private static OpeningHours hours(List<OpeningEntry> entries) {
        List<OpeningHours.Span> spans = new ArrayList<>();
        for (int i = 0; i < entries.size(); i++) {
            OpeningEntry entry = entries.get(i);
            // A correction is not looked at by annotations
            if (entry.day() == null || entry.opens() == null || entry.closes() == null) {
                throw InvalidException.of(
                        "opening[" + i + "]",
                        "It says not when.",
                        "day, opens and closes, such as MONDAY, 08:00, 18:30");
            }
            var span = new OpeningHours.Span(entry.day(), entry.opens(), entry.closes());
            if (!span.lasts()) {
                throw InvalidException.of(
                        "opening[" + i + "].closes",
                        "It closes before it opens; a night is two spans.",
                        "a time after " + entry.opens() + ", or 00:00 for the end of the day");
            }
            spans.add(span);
        }
        var hours = new OpeningHours(spans);
        hours.findOverlap().ifPresent(span -> {
            throw InvalidException.of(
                    "opening",
                    "Two spans of one day overlap: " + span.day() + " from " + span.opens() + ".",
                    "spans that do not overlap");
        });
        return hours;
    }

    private ClinicProfile require(UUID id) {
        return rows.findByIdOptional(id).orElseThrow(() -> new NotFoundException("clinic profile", id));
    }

    private ClinicProfileView view(ClinicProfile row) {
        return new ClinicProfileView(
                row.id(),
                row.organisationId,
                row.phone,
                row.whenClosed,
                row.words,
                row.treats,
                row.hours().spans().stream()
                        .map(span -> new ClinicProfileView.Opening(span.day().name(), span.opens(), span.closes()))
                        .toList(),
                records.of(row));
    }
}
