package org.culvert.release.fitness;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.clinic.ClinicService;
import org.culvert.clinic.VisitView;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.release.rules.FitnessCheck;
import org.culvert.release.rules.FitnessCheck.Answer;
import org.culvert.release.rules.FitnessCheck.Aspect;
import org.culvert.release.rules.Site.Consent;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/** Keeps checks of fitness, and says which is the latest. */
@ApplicationScoped
public class FitnessService {
    /** What every check says of itself. */
    public static final String NOTE =
            "This is what a vet signed of that hour, and no more: what was not looked at is not known,"
                    + " and after a further visit to a clinic it wants looking at anew. Check your local code and your licensed vet.";

    /** What was looked at, and how it was found. */
    public record ItemEntry(@NotNull Aspect aspect, @NotNull Answer answer) {}

    /**
     * A check as a vet signed it: a member with a registration on the roster, or another by name and registration.
     *
     * @param at when the animal was looked at; now when left out
     * @param items each aspect once at most; one that is not there was not looked at
     * @param housedWithPets whether it was kept with pets of its kind or near it
     */
    public record CheckEntry(
            @Nullable Instant at,
            @Nullable UUID signedByMemberId,
            @Nullable @Size(max = 200) String vetName,
            @Nullable @Size(max = 200) String vetRegistration,
            @NotEmpty @Size(max = 100) List<@NotNull @Valid ItemEntry> items,
            Consent housedWithPets,
            @Nullable @Size(max = 4000) String words) {
        public CheckEntry {
            housedWithPets = housedWithPets == null ? Consent.unknown : housedWithPets;
        }
    }

    /**
     * A check as shown.
     *
     * @param vetRegistration as it was on that day
     * @param seenAgainSince whether it was at a clinic after that
     */
    public record SignedCheckView(
            UUID id,
            UUID caseId,
            Instant at,
            @Nullable UUID signedByMemberId,
            @Nullable String vetName,
            String vetRegistration,
            List<Item> items,
            Consent housedWithPets,
            @Nullable String words,
            boolean seenAgainSince,
            String note,
            RecordView record) {

        public record Item(Aspect aspect, Answer answer) {}
    }

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<SignedCheck, UUID> {}

    private final Rows rows;
    private final CaseService cases;
    private final ClinicService clinic;
    private final RosterService roster;
    private final RegionService regions;
    private final RecordViews records;
    private final Clock clock;

    FitnessService(
            Rows rows,
            CaseService cases,
            ClinicService clinic,
            RosterService roster,
            RegionService regions,
            RecordViews records,
            Clock clock) {
        this.rows = rows;
        this.cases = cases;
        this.clinic = clinic;
        this.roster = roster;
        this.regions = regions;
        this.records = records;
        this.clock = clock;
    }

    @Transactional
    public SignedCheckView sign(UUID caseId, CheckEntry entry) {
        CaseView told = cases.getCase(caseId);
        if (told.fate() != null) {
            throw new ConflictException("That case has ended: " + told.fate().fate() + ".");
        }
        Instant at = Corrections.passed("at", entry.at(), clock);
        if (at.isBefore(told.foundAt())) {
            throw InvalidException.of("at", "It had not been found then.", "an instant after " + told.foundAt());
        }
        var row = new SignedCheck(caseId, entry, registration(entry, at), items(entry), at);
        rows.persistAndFlush(row);
        return view(row, clinic.listVisits(caseId));
    }

    /** Checks of a case, the latest first. */
    @Transactional
    public List<SignedCheckView> listChecks(UUID caseId) {
        cases.getCase(caseId);
        List<VisitView> visits = clinic.listVisits(caseId);
        return rows.list("caseId = ?1 order by happenedAt desc, id desc", caseId).stream()
                .map(row -> view(row, visits))
                .toList();
    }

    /** The check of a case at which it was looked at last; an older one that was recorded later does not replace it. */
    @Transactional
    public Optional<FitnessCheck> latest(UUID caseId) {
        return rows.find("caseId = ?1 order by happenedAt desc, id desc", caseId)
                .firstResultOptional()
                .map(row -> new FitnessCheck(
                        row.at(),
                        itemsOf(row)
                                .map(item -> new FitnessCheck.Item(item.aspect(), item.answer()))
                                .toList(),
                        Consent.valueOf(row.housedWithPets),
                        isSeenAgain(row, clinic.listVisits(caseId))));
    }

    private String registration(CheckEntry entry, Instant at) {
        UUID memberId = entry.signedByMemberId();
        boolean named = entry.vetName() != null || entry.vetRegistration() != null;
        if ((memberId == null) != named) {
            throw InvalidException.of(
                    "signedByMemberId",
                    "One vet signs a check.",
                    "a member who is a vet, or vetName and vetRegistration of another");
        }
        if (memberId == null) {
            requireWords("vetName", entry.vetName());
            return requireWords("vetRegistration", entry.vetRegistration());
        }
        RosterService.MemberView member = roster.getMember(memberId);
        LocalDate leftOn = member.leftOn();
        if (leftOn != null && !at.atZone(regions.zone()).toLocalDate().isBefore(leftOn)) {
            throw InvalidException.of("signedByMemberId", "That member had left by then.", "a member of that day");
        }
        if (member.vetRegistration() == null || member.vetRegistration().isBlank()) {
            throw InvalidException.of(
                    "signedByMemberId",
                    "That member has no registration as a vet on the roster.",
                    "a member with a vetRegistration, or vetName and vetRegistration of another vet");
        }
        return member.vetRegistration();
    }

    private static String requireWords(String field, @Nullable String text) {
        if (text == null || text.isBlank()) {
            throw InvalidException.of(field, "Who signed is not told.", "the vet's name and registration, both");
        }
        return text;
    }

    private static Map<String, String> items(CheckEntry entry) {
        Map<String, String> items = new TreeMap<>();
        for (int i = 0; i < entry.items().size(); i++) {
            ItemEntry item = entry.items().get(i);
            if (items.put(item.aspect().name(), item.answer().name()) != null) {
                throw InvalidException.of(
                        "items." + i + ".aspect", "This is there twice: " + item.aspect() + ".", "each aspect once");
            }
        }
        return items;
    }

    private static Stream<SignedCheckView.Item> itemsOf(SignedCheck row) {
        return row.items.entrySet().stream()
                .map(item -> new SignedCheckView.Item(Aspect.valueOf(item.getKey()), Answer.valueOf(item.getValue())))
                .sorted(Comparator.comparing(SignedCheckView.Item::aspect));
    }

    /** Whether it came to a clinic after the check, or something was done or read of it there. */
    private static boolean isSeenAgain(SignedCheck row, List<VisitView> visits) {
        return visits.stream()
                .flatMap(visit -> Stream.concat(
                        Stream.of(visit.arrivedAt()),
                        Stream.concat(
                                visit.procedures().stream().map(VisitView.ProcedureView::at),
                                visit.readings().stream().map(VisitView.ReadingView::at))))
                .anyMatch(at -> at != null && at.isAfter(row.at()));
    }

    private SignedCheckView view(SignedCheck row, List<VisitView> visits) {
        return new SignedCheckView(
                row.id(),
                row.caseId,
                row.at(),
                row.signedByMemberId,
                row.vetName,
                row.vetRegistration,
                itemsOf(row).toList(),
                Consent.valueOf(row.housedWithPets),
                row.words,
                isSeenAgain(row, visits),
                NOTE,
                records.of(row));
    }
}
