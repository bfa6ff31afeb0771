package org.culvert.web.release;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.platform.RegionService;
import org.culvert.platform.sight.Sight;
import org.culvert.release.AreaService;
import org.culvert.release.AssessmentService;
import org.culvert.release.AssessmentService.AssessmentView;
import org.culvert.release.ReleaseAreaFeature.RankedSite;
import org.culvert.release.SiteService;
import org.culvert.release.approvals.ApprovalService;
import org.culvert.release.fitness.FitnessService;
import org.culvert.release.fitness.FitnessService.SignedCheckView;
import org.culvert.release.holds.HoldService;
import org.culvert.release.holds.HoldService.CaseHoldView;
import org.culvert.release.nonrelease.NonReleaseService;
import org.culvert.release.rules.Finding;
import org.culvert.web.Languages;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.words.ReleaseWords;
import org.jspecify.annotations.Nullable;

/** Lays out what is open before an animal may go back. */
@ApplicationScoped
class PlanPages {
    private static final int MOST_ASSESSMENTS = 10;
    private static final int MOST_SITES = 60;

    private final PlanForms forms;
    private final CaseService cases;
    private final HoldService holds;
    private final FitnessService checks;
    private final ApprovalService approvals;
    private final AssessmentService assessments;
    private final NonReleaseService decisions;
    private final SiteService sites;
    private final RegionService region;
    private final Languages languages;
    private final Sight sight;

    PlanPages(
            PlanForms forms,
            CaseService cases,
            HoldService holds,
            FitnessService checks,
            ApprovalService approvals,
            AssessmentService assessments,
            NonReleaseService decisions,
            SiteService sites,
            RegionService region,
            Languages languages,
            Sight sight) {
        this.forms = forms;
        this.cases = cases;
        this.holds = holds;
        this.checks = checks;
        this.approvals = approvals;
        this.assessments = assessments;
        this.decisions = decisions;
        this.sites = sites;
        this.region = region;
        this.languages = languages;
        this.sight = sight;
    }

    ReleaseTongue tongue() {
        return new ReleaseTongue(languages.words(ReleaseWords.class), languages.ofPage(), region.zone());
    }

    /** Tests that stand in the way at every known site, as the first of them has them. */
    static List<Finding> everywhere(AreaService.@Nullable Looked looked) {
        if (looked == null || looked.area().properties().sites().isEmpty()) {
            return List.of();
        }
        Set<String> keys = looked.findings().values().stream()
                .map(findings -> findings.stream()
                        .filter(Finding::stands)
                        .map(Finding::key)
                        .collect(Collectors.toSet()))
                .reduce((some, others) -> {
                    some.retainAll(others);
                    return some;
                })
                .orElse(Set.of());
        UUID first = looked.area().properties().sites().get(0).siteId();
        return looked.findings().getOrDefault(first, List.of()).stream()
                .filter(finding -> keys.contains(finding.key()))
                .toList();
    }

    /** @param looked null where nothing could be answered */
    PlanPage page(UUID caseId, AreaForm asked, AreaService.@Nullable Looked looked, PlanForms.Again again) {
        sight.requireSeen("case", caseId);
        ReleaseTongue tongue = tongue();
        CaseView told = cases.getCase(caseId);
        List<CaseHoldView> held = holds.listHolds(caseId).stream()
                .filter(hold -> hold.clearing() == null)
                .toList();
        List<PlanPage.Open> open = new ArrayList<>();
        held.forEach(hold -> open.add(new PlanPage.Open(
                tongue.words().holdStands(tongue.words().holdKind(hold.kind()), tongue.moment(hold.since())),
                true,
                null)));
        addDecisions(caseId, tongue, open);
        addCheck(caseId, tongue, open);
        addApprovals(caseId, tongue, open);
        assessments
                .listUnsuitable(caseId)
                .forEach(one -> open.add(new PlanPage.Open(
                        tongue.words().unsuitable(one.words(), one.seenAt() == null ? "" : tongue.moment(one.seenAt())),
                        false,
                        null)));
        List<Option> known = looked == null
                ? List.of()
                : looked.area().properties().sites().stream()
                        .limit(MOST_SITES)
                        .map(site -> new Option(site.siteId().toString(), site.rank() + ". " + site.name()))
                        .toList();
        return new PlanPage(
                caseId,
                told.number(),
                told.animal().vernacularName(),
                told.animal().scientificName(),
                looked == null
                        ? Objects.requireNonNullElse(asked.jurisdiction, "")
                        : looked.area().properties().jurisdiction(),
                Objects.requireNonNullElse(asked.withinMetres, ""),
                open,
                everywhere(looked).stream()
                        .map(finding -> FindingRow.ofAnyPlace(finding, tongue))
                        .toList(),
                assessed(caseId, looked, tongue),
                told.fate() != null
                        ? Map.of()
                        : forms.all(
                                known,
                                held.stream()
                                        .map(hold -> new Option(
                                                hold.id().toString(),
                                                tongue.words().holdKind(hold.kind()) + ", "
                                                        + tongue.moment(hold.since())))
                                        .toList(),
                                told.foundPlace() != null,
                                again));
    }

    private void addDecisions(UUID caseId, ReleaseTongue tongue, List<PlanPage.Open> open) {
        decisions.listOfCase(caseId).stream()
                .filter(one -> one.withdrawnAt() == null)
                .forEach(one -> open.add(new PlanPage.Open(
                        tongue.words().decisionStands(one.words())
                                + (one.standing().equals("inDispute")
                                        ? " " + tongue.words().decisionDisputed()
                                        : ""),
                        true,
                        "/non-release-decisions/" + one.id())));
    }

    private void addCheck(UUID caseId, ReleaseTongue tongue, List<PlanPage.Open> open) {
        List<SignedCheckView> signed = checks.listChecks(caseId);
        ReleaseWords words = tongue.words();
        if (signed.isEmpty()) {
            open.add(new PlanPage.Open(words.noCheck(), true, null));
            return;
        }
        SignedCheckView latest = signed.get(0);
        String items = latest.items().stream()
                .map(item -> words.aspect(item.aspect().name()) + ": "
                        + words.answer(item.answer().name()))
                .collect(Collectors.joining("; "));
        open.add(new PlanPage.Open(
                words.checkSigned(items, tongue.moment(latest.at()))
                        + (latest.seenAgainSince() ? " " + words.checkOld() : ""),
                latest.seenAgainSince(),
                null));
    }

    private void addApprovals(UUID caseId, ReleaseTongue tongue, List<PlanPage.Open> open) {
        ReleaseWords words = tongue.words();
        boolean all = sight.sees("release-approval", "reference");
        approvals.listForCase(caseId).stream()
                .filter(one -> one.withdrawnAt() == null)
                .forEach(one -> open.add(new PlanPage.Open(
                        words.approvalSaid(
                                        words.approvalOf(one.of()),
                                        one.given() ? words.approvalYes() : words.approvalNo(),
                                        tongue.moment(one.at()))
                                + (one.until() == null ? "" : words.approvalUntil(tongue.day(one.until())))
                                + (all && one.reference() != null ? " (" + one.reference() + ")" : ""),
                        !one.given(),
                        null)));
    }

    private List<PlanPage.AssessmentRow> assessed(
            UUID caseId, AreaService.@Nullable Looked looked, ReleaseTongue tongue) {
        List<AssessmentView> kept =
                assessments.listAssessments(caseId, MOST_ASSESSMENTS, null).items();
        Map<UUID, String> names = new HashMap<>();
        if (looked != null) {
            for (RankedSite site : looked.area().properties().sites()) {
                names.put(site.siteId(), site.name());
            }
        }
        return kept.stream().map(one -> row(one, names, tongue)).toList();
    }

    PlanPage.AssessmentRow row(AssessmentView one, Map<UUID, String> names, ReleaseTongue tongue) {
        return new PlanPage.AssessmentRow(
                one.id(),
                tongue.words().assessedAt(place(one.siteId(), names, tongue), tongue.moment(one.recordedAt())),
                one.overall(),
                tongue.words().verdict(one.overall()),
                FindingRow.standing(one.tests(), tongue),
                FindingRow.advice(one.tests(), tongue));
    }

    /** The name of a site, or that it is a place without one. */
    String place(@Nullable UUID site, Map<UUID, String> known, ReleaseTongue tongue) {
        return site == null
                ? tongue.words().aPosition()
                : known.computeIfAbsent(site, id -> sites.getSite(id).name());
    }
}
