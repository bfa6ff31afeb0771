package org.culvert.release.approvals;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.release.SiteService;
import org.culvert.release.rules.Approval;
import org.culvert.release.rules.Approval.Of;
import org.jspecify.annotations.Nullable;

/** Keeps approvals and refusals, and says which stand. */
@ApplicationScoped
public class ApprovalService {
    /** What every approval says of itself. */
    public static final String NOTE =
            "This is what was answered and recorded here. Whose approval is needed, your local code"
                    + " says: check your local code and your licensed vet.";

    /**
     * An answer as entered.
     *
     * @param of who was asked
     * @param given whether they said yes
     * @param until its last day; null: none was named
     * @param reference what proves it: a letter's number, a document's name
     * @param askedOf which body or office; no person's name or number
     * @param at when they answered; now when left out
     */
    public record ApprovalEntry(
            @NotNull Of of,
            @NotNull Boolean given,
            @Nullable LocalDate until,
            @Nullable @Size(max = 200) String reference,
            @Nullable @Size(max = 200) String askedOf,
            @Nullable Instant at) {}

    /** Why an answer no longer stands. */
    public record ApprovalWithdrawal(
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * An answer as shown, of a site or of a case.
     *
     * @param withdrawnAt when it was taken back; null while it stands
     */
    public record ReleaseApprovalView(
            UUID id,
            @Nullable UUID siteId,
            @Nullable UUID caseId,
            String of,
            boolean given,
            Instant at,
            @Nullable LocalDate until,
            @Nullable String reference,
            @Nullable String askedOf,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            String note,
            RecordView record) {}

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<ReleaseApproval, UUID> {}

    private final Rows rows;
    private final SiteService sites;
    private final CaseService cases;
    private final RegionService regions;
    private final RecordViews records;
    private final Clock clock;

    ApprovalService(
            Rows rows, SiteService sites, CaseService cases, RegionService regions, RecordViews records, Clock clock) {
        this.rows = rows;
        this.sites = sites;
        this.cases = cases;
        this.regions = regions;
        this.records = records;
        this.clock = clock;
    }

    @Transactional
    public ReleaseApprovalView recordForSite(UUID siteId, ApprovalEntry entry) {
        sites.getSite(siteId);
        return keep(siteId, null, entry);
    }

    @Transactional
    public ReleaseApprovalView recordForCase(UUID caseId, ApprovalEntry entry) {
        cases.getCase(caseId);
        return keep(null, caseId, entry);
    }

    private ReleaseApprovalView keep(@Nullable UUID siteId, @Nullable UUID caseId, ApprovalEntry entry) {
        Instant at = Corrections.passed("at", entry.at(), clock);
        LocalDate until = entry.until();
        if (until != null && until.isBefore(dayOf(at))) {
            throw InvalidException.of("until", "It would end before it was given.", "a day on or after " + dayOf(at));
        }
        var row = new ReleaseApproval(siteId, caseId, entry, at);
        rows.persistAndFlush(row);
        return view(row);
    }

    @Transactional
    public ReleaseApprovalView getApproval(UUID id) {
        return view(require(id));
    }

    /** Answers about a site, those that were withdrawn or have run out among them, the newest first. */
    @Transactional
    public List<ReleaseApprovalView> listForSite(UUID siteId) {
        sites.getSite(siteId);
        return rows.list("siteId = ?1 order by happenedAt desc, id desc", siteId).stream()
                .map(this::view)
                .toList();
    }

    /** Those about all sites, by site. */
    @Transactional
    public Map<UUID, List<Approval>> ofAllSites(LocalDate day) {
        Map<UUID, List<ReleaseApproval>> bySite = new LinkedHashMap<>();
        for (ReleaseApproval row : rows.list("siteId is not null and withdrawnAt is null order by happenedAt, id")) {
            bySite.computeIfAbsent(Objects.requireNonNull(row.siteId), site -> new ArrayList<>())
                    .add(row);
        }
        Map<UUID, List<Approval>> standing = new LinkedHashMap<>();
        bySite.forEach((site, answers) -> standing.put(site, standing(answers, day)));
        return standing;
    }

    /** The same about a case. */
    @Transactional
    public List<ReleaseApprovalView> listForCase(UUID caseId) {
        cases.getCase(caseId);
        return rows.list("caseId = ?1 order by happenedAt desc, id desc", caseId).stream()
                .map(this::view)
                .toList();
    }

    /** Takes an answer back: it is kept and shown, and stands no longer. */
    @Transactional
    public ReleaseApprovalView withdraw(UUID id, String reason) {
        ReleaseApproval row = require(id);
        row.withdraw(clock.instant(), reason);
        rows.flush();
        return view(row);
    }

    /**
     * The answers about a site that stand on a day, in the order in which they were given. A refusal stands beside an approval
     * that came later, until it is withdrawn: several may have a say.
     */
    @Transactional
    public List<Approval> forSite(UUID siteId, LocalDate day) {
        return standing(rows.list("siteId = ?1 and withdrawnAt is null order by happenedAt, id", siteId), day);
    }

    /** The same about a case. */
    @Transactional
    public List<Approval> forCase(UUID caseId, LocalDate day) {
        return standing(rows.list("caseId = ?1 and withdrawnAt is null order by happenedAt, id", caseId), day);
    }

    private List<Approval> standing(List<ReleaseApproval> answers, LocalDate day) {
        return answers.stream()
                .filter(row -> !dayOf(row.at()).isAfter(day))
                .map(ReleaseApproval::approval)
                .filter(approval -> approval.holdsOn(day))
                .toList();
    }

    private LocalDate dayOf(Instant at) {
        return at.atZone(regions.zone()).toLocalDate();
    }

    private ReleaseApproval require(UUID id) {
        return rows.findByIdOptional(id).orElseThrow(() -> new NotFoundException("release approval", id));
    }

    private ReleaseApprovalView view(ReleaseApproval row) {
        return new ReleaseApprovalView(
                row.id(),
                row.siteId,
                row.caseId,
                row.ofWhom,
                row.given,
                row.at(),
                row.untilDay,
                row.reference,
                row.askedOf,
                row.withdrawnAt,
                row.withdrawnBecause,
                NOTE,
                records.of(row));
    }
}
