package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Paging;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.StaleException;
import org.culvert.platform.account.OwnForm;
import org.culvert.release.RuleService;
import org.culvert.release.rules.Rule;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Release rules for people: which there are, with their sources and dates, a form to enter one, and one to review each. */
@OwnForm
@Path("/release-rules")
@Produces(MediaType.TEXT_HTML)
public class RulePageResource {
    private final Template template;
    private final RuleService rules;
    private final TaxonService taxa;
    private final RegionService region;
    private final Clock clock;

    RulePageResource(
            @Location("release-rules.html") Template template,
            RuleService rules,
            TaxonService taxa,
            RegionService region,
            Clock clock) {
        this.template = template;
        this.rules = rules;
        this.taxa = taxa;
        this.region = region;
        this.clock = clock;
    }

    /** A review that was sent and not taken. */
    private record Refused(UUID rule, ReviewForm form, List<FieldError> errors) {}

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER, Role.ADMIN})
    public Response listRules(@QueryParam("jurisdiction") @Nullable String jurisdiction) {
        return answer(200, page(new RuleForm(), List.of(), null, Typed.given(jurisdiction)));
    }

    @POST
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response enter(@BeanParam RuleForm form, @FormParam("csrf") @Nullable String csrf) {
        try {
            return entered(rules.createRule(form.entry()));
        } catch (InvalidException e) {
            return answer(400, page(form, e.errors(), null, null));
        }
    }

    @POST
    @Path("/{id}/reviews")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response review(
            @PathParam("id") String id, @BeanParam ReviewForm form, @FormParam("csrf") @Nullable String csrf) {
        UUID rule = Paging.uuid("id", id);
        try {
            return entered(rules.review(rule, form.seenVersion(), form.entry()));
        } catch (InvalidException e) {
            return answer(400, page(new RuleForm(), List.of(), new Refused(rule, form, e.errors()), null));
        } catch (StaleException e) {
            var changed = new FieldError(
                    "reason",
                    e.getMessage() + " It stands here as it is now.",
                    "the review once more, if it still fits",
                    null);
            return answer(e.status(), page(new RuleForm(), List.of(), new Refused(rule, form, List.of(changed)), null));
        }
    }

    private static Response entered(Rule rule) {
        return Response.seeOther(URI.create("/release-rules#rule-" + rule.id())).build();
    }

    private static Response answer(int status, TemplateInstance page) {
        return Response.status(status)
                .entity(page)
                .type(MediaType.TEXT_HTML_TYPE)
                .build();
    }

    /** @param only the jurisdiction whose rules are shown; null: all */
    private TemplateInstance page(
            RuleForm form, List<FieldError> errors, @Nullable Refused refused, @Nullable String only) {
        LocalDate day = clock.instant().atZone(region.zone()).toLocalDate();
        List<TaxonService.GroupView> groups = taxa.listGroups();
        Map<String, String> names =
                groups.stream().collect(Collectors.toMap(TaxonService.GroupView::key, TaxonService.GroupView::name));
        Map<String, List<RuleCard>> cards = new TreeMap<>();
        int due = 0;
        Set<String> codes = new TreeSet<>();
        for (Rule rule : rules.listRules()) {
            codes.add(rule.jurisdiction());
            due += rule.isDueForReview(day) ? 1 : 0;
            if (only != null && !only.equals(rule.jurisdiction())) {
                continue;
            }
            ReviewForm review = new ReviewForm();
            List<FieldError> wrong = List.of();
            if (refused != null && refused.rule().equals(rule.id())) {
                review = refused.form();
                wrong = refused.errors();
            }
            cards.computeIfAbsent(rule.jurisdiction(), code -> new ArrayList<>())
                    .add(RuleCard.of(rule, names, day, review.fields(rule.id().toString(), wrong), wrong));
        }
        return template.data(
                        "jurisdictions",
                        cards.entrySet().stream()
                                .map(entry -> new RuleCard.Jurisdiction(entry.getKey(), entry.getValue()))
                                .toList())
                .data("codes", codes)
                .data("only", only)
                .data("due", due)
                .data("errors", errors)
                .data("fields", form.fields(errors, groups));
    }
}
