package org.culvert.exchange.auditfile;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.BiFunction;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.animal.photograph.PhotographService;
import org.culvert.call.IncidentService;
import org.culvert.care.clutch.ClutchService;
import org.culvert.care.plan.CareEntryService;
import org.culvert.care.plan.PlanService;
import org.culvert.clinic.ClinicService;
import org.culvert.dispatch.DispatchService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.platform.Role;
import org.culvert.platform.Rows;
import org.culvert.platform.sight.Sight;
import org.culvert.release.AssessmentService;
import org.culvert.release.ReleaseService;
import org.culvert.release.ReleaseView;
import org.culvert.release.approvals.ApprovalService;
import org.culvert.release.fitness.FitnessService;
import org.culvert.release.holds.HoldService;
import org.culvert.release.nonrelease.NonReleaseService;
import org.jspecify.annotations.Nullable;

/** Puts together what all rooms know of one animal. */
@ApplicationScoped
public class AuditService {
    static final String NOTE =
            "This tells what was entered here, and calls nothing lawful: what is listed was read by its days alone.";

    private static final int LONGEST_REASON = 2000;

    private final CaseService cases;
    private final IncidentService incidents;
    private final DispatchService dispatch;
    private final CustodyAudit custody;
    private final ClinicService clinic;
    private final PlanService plans;
    private final CareEntryService careEntries;
    private final ClutchService clutches;
    private final PhotographService photographs;
    private final HoldService holds;
    private final FitnessService fitness;
    private final ApprovalService approvals;
    private final AssessmentService assessments;
    private final ReleaseService releases;
    private final NonReleaseService nonReleases;
    private final Inspections inspections;
    private final Sight sight;
    private final EntityManager entities;
    private final Clock clock;

    AuditService(
            CaseService cases,
            IncidentService incidents,
            DispatchService dispatch,
            CustodyAudit custody,
            ClinicService clinic,
            PlanService plans,
            CareEntryService careEntries,
            ClutchService clutches,
            PhotographService photographs,
            HoldService holds,
            FitnessService fitness,
            ApprovalService approvals,
            AssessmentService assessments,
            ReleaseService releases,
            NonReleaseService nonReleases,
            Inspections inspections,
            Sight sight,
            EntityManager entities,
            Clock clock) {
        this.cases = cases;
        this.incidents = incidents;
        this.dispatch = dispatch;
        this.custody = custody;
        this.clinic = clinic;
        this.plans = plans;
        this.careEntries = careEntries;
        this.clutches = clutches;
        this.photographs = photographs;
        this.holds = holds;
        this.fitness = fitness;
        this.approvals = approvals;
        this.assessments = assessments;
        this.releases = releases;
        this.nonReleases = nonReleases;
        this.inspections = inspections;
        this.sight = sight;
        this.entities = entities;
        this.clock = clock;
    }

    /**
     * Everything of a case. Where an officer reads it, that is kept as an inspection.
     *
     * @param reason why; an officer has to say it
     */
    @Transactional
    public AuditFile open(UUID caseId, @Nullable String reason) {
        boolean officer = sight.viewer().hasAny(Role.OFFICER);
        if (officer && (reason == null || reason.isBlank())) {
            throw InvalidException.of("reason", "An inspection says why.", "in words, such as a complaint's number");
        }
        if (reason != null && reason.length() > LONGEST_REASON) {
            throw InvalidException.of("reason", "That is too long.", "at most " + LONGEST_REASON + " characters");
        }
        AuditFile file = read(caseId);
        if (officer && reason != null) {
            inspections.keep(caseId, reason);
        }
        return file;
    }

    private AuditFile read(UUID caseId) {
        CaseView of = cases.getCase(caseId);
        Instant knownAt = knownAt();
        var parts = new AuditParts(
                of,
                incidents.getIncident(of.incidentId(), false),
                dispatch.listAttendances(of.incidentId()),
                custody.read(of, knownAt),
                cases.listWhereabouts(caseId),
                clinic.listVisits(caseId),
                plans.listPlans(caseId),
                all((limit, before) -> careEntries.listEntries(caseId, limit, before)),
                clutches.listClutches(caseId),
                all((limit, before) -> photographs.listOfCase(caseId, limit, before)),
                holds.listHolds(caseId),
                fitness.listChecks(caseId),
                approvals.listForCase(caseId),
                all((limit, before) -> assessments.listAssessments(caseId, limit, before)),
                releasesOf(caseId),
                nonReleases.listOfCase(caseId));
        List<AuditFile.AuditEntry> timeline = AuditTimeline.of(parts);
        return new AuditFile(
                caseId,
                of.number(),
                knownAt,
                timeline.stream().mapToInt(AuditFile.AuditEntry::revisions).sum(),
                timeline,
                of,
                parts.incident(),
                parts.attendances(),
                parts.custody(),
                parts.whereabouts(),
                parts.visits(),
                parts.aftercarePlans(),
                parts.careEntries(),
                parts.clutches(),
                parts.photographs(),
                parts.holds(),
                parts.fitnessChecks(),
                parts.approvals(),
                parts.assessments(),
                parts.releases(),
                parts.nonReleaseDecisions(),
                AuditSignatures.of(parts),
                inspections.listOfCase(caseId),
                NOTE);
    }

    /** Those that were taken back too. */
    private List<ReleaseView> releasesOf(UUID caseId) {
        List<UUID> ids = Rows.column(
                entities.createNativeQuery(
                                "select distinct a.release_id from released_animals a where a.case_id = :id order by a.release_id")
                        .setParameter("id", caseId),
                UUID.class);
        return ids.stream().map(releases::getRelease).toList();
    }

    private static <T> List<T> all(BiFunction<Integer, @Nullable UUID, Page<T>> pages) {
        List<T> all = new ArrayList<>();
        UUID before = null;
        do {
            Page<T> page = pages.apply(Paging.MAXIMUM_LIMIT, before);
            all.addAll(page.items());
            before = page.next() == null ? null : UUID.fromString(page.next());
        } while (before != null);
        return all;
    }

    /** The instant of the past that is asked for, or now. */
    private Instant knownAt() {
        String asked = (String) entities.createNativeQuery("select current_setting('culvert.as_of', true)")
                .getSingleResult();
        return asked == null || asked.isEmpty()
                ? clock.instant()
                : OffsetDateTime.parse(asked).toInstant();
    }
}
