package org.culvert.web.kept;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.culvert.care.growth.GrowthEntries;
import org.culvert.care.growth.GrowthTableService;
import org.culvert.care.template.TemplateEntries;
import org.culvert.care.template.TemplateService;
import org.culvert.release.SiteService;
import org.culvert.release.approvals.ApprovalService;

/** Of data that somebody answers for: who adopted it, and what was agreed. */
@ApplicationScoped
class DataWholes implements WholeSource {
    private final TemplateService templates;
    private final GrowthTableService growth;
    private final SiteService sites;
    private final ApprovalService approvals;

    DataWholes(TemplateService templates, GrowthTableService growth, SiteService sites, ApprovalService approvals) {
        this.templates = templates;
        this.growth = growth;
        this.sites = sites;
        this.approvals = approvals;
    }

    @Override
    public List<Whole> wholes() {
        return List.of(templates(), tables(), sites());
    }

    private Whole templates() {
        String reads = "GET /api/plan-templates/{id}";
        return new Whole(
                "plan-templates",
                "plan-template",
                "/settings/plan-templates",
                templates::getTemplate,
                List.of(
                        KeptKind.of("plan-templates", reads, id -> List.of(templates.getTemplate(id)))
                                .act(
                                        "adoptions",
                                        "POST /api/plan-templates/{id}/adoptions",
                                        "plan-template",
                                        TemplateEntries.AdoptionEntry.class,
                                        (ids, entry) -> templates.adopt(ids.id(), entry)),
                        KeptKind.of("adoptions", reads, id -> List.of(templates.getTemplate(id)), "adoptions")
                                .withdrawn(
                                        "/api/plan-templates/{id}/adoptions/{adoptionId}/withdrawal",
                                        "plan-template",
                                        (ids, why) -> templates.withdraw(ids.whole(), ids.id(), why.reason()))));
    }

    private Whole tables() {
        String reads = "GET /api/growth-tables/{id}";
        return new Whole(
                "growth-tables",
                "growth-table",
                "/settings/growth-tables",
                growth::getTable,
                List.of(
                        KeptKind.of("growth-tables", reads, id -> List.of(growth.getTable(id)))
                                .act(
                                        "adoptions",
                                        "POST /api/growth-tables/{id}/adoptions",
                                        "growth-table",
                                        GrowthEntries.TableAdoptionEntry.class,
                                        (ids, entry) -> growth.adopt(ids.id(), entry)),
                        KeptKind.of("adoptions", reads, id -> List.of(growth.getTable(id)), "adoptions")
                                .withdrawn(
                                        "/api/growth-tables/{id}/adoptions/{tableAdoptionId}/withdrawal",
                                        "growth-table",
                                        (ids, why) -> growth.withdraw(ids.whole(), ids.id(), why.reason()))));
    }

    private Whole sites() {
        return new Whole(
                "release-sites",
                "release-site",
                "/settings/release-sites",
                sites::getSite,
                List.of(
                        KeptKind.of("release-sites", "GET /api/release-sites/{id}", id -> List.of(sites.getSite(id)))
                                .act(
                                        "approvals",
                                        "POST /api/release-sites/{id}/approvals",
                                        "",
                                        ApprovalService.ApprovalEntry.class,
                                        (ids, entry) -> approvals.recordForSite(ids.id(), entry)),
                        KeptKind.of(
                                        "release-approvals",
                                        "GET /api/release-sites/{id}/approvals",
                                        approvals::listForSite)
                                .withdrawn(
                                        "/api/release-approvals/{id}/withdrawal",
                                        "release-approval",
                                        (ids, why) -> approvals.withdraw(ids.id(), why.reason()))));
    }
}
