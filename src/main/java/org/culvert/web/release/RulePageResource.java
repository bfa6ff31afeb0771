package org.culvert.web.release;

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
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Paging;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.StaleException;
import org.culvert.platform.account.OwnForm;
import org.culvert.platform.sight.Sight;
import org.culvert.release.RuleService;
import org.culvert.release.rules.Rule;
import org.culvert.taxon.TaxonService;
import org.culvert.web.Languages;
import org.culvert.web.PageForms;
import org.culvert.web.Typed;
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentForm;
import org.culvert.web.words.ReleaseWords;
import org.culvert.web.words.RuleWords;
import org.jspecify.annotations.Nullable;

/** Release rules for people: which there are, with their sources and dates, a form to enter one, and one to review each. */
@OwnForm
@Path("/release-rules")
@Produces(MediaType.TEXT_HTML)
public class RulePageResource {
    private final Template template;
    private final RuleForms forms;
    private final RuleService rules;
    private final TaxonService taxa;
    private final RegionService region;
    private final PageForms taken;
    private final Languages languages;
    private final Sight sight;
    private final Clock clock;

    RulePageResource(
            @Location("release-rules.html") Template template,
            RuleForms forms,
            RuleService rules,
            TaxonService taxa,
            RegionService region,
            PageForms taken,
            Languages languages,
            Sight sight,
            Clock clock) {
        this.template = template;
        this.forms = forms;
        this.rules = rules;
        this.taxa = taxa;
        this.region = region;
        this.taken = taken;
        this.languages = languages;
        this.sight = sight;
        this.clock = clock;
    }

    /**
     * A form that was sent and not taken.
     *
     * @param rule of which it is a review; null: it was to enter one
     */
    private record Refused(@Nullable UUID rule, SentFields sent, List<FieldError> wrong) {
        static final Refused NONE = new Refused(null, SentFields.NOTHING, List.of());
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER, Role.ADMIN})
    public Response listRules(@QueryParam("jurisdiction") @Nullable String jurisdiction) {
        return answer(200, page(Refused.NONE, Typed.given(jurisdiction)));
    }

    @POST
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response enter(@BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        SentFields sent = form.fields();
        return taken.once(
                "/release-rules",
                form.key(),
                sent,
                () -> entered(rules.createRule(forms.entered(sent))),
                (why, errors) -> answer(why.status(), page(new Refused(null, sent, errors), null)));
    }

    @POST
    @Path("/{id}/reviews")
    @RolesAllowed({Role.COORDINATOR, Role.ADMIN})
    public Response review(
            @PathParam("id") String id, @BeanParam SentForm form, @FormParam("csrf") @Nullable String csrf) {
        UUID rule = Paging.uuid("id", id);
        SentFields sent = form.fields();
        return taken.once(
                "/release-rules/" + rule + "/reviews",
                form.key(),
                sent,
                () -> entered(rules.review(rule, RuleForms.seenVersion(sent), forms.reviewed(rule, sent))),
                (why, errors) -> answer(
                        why.status(),
                        page(new Refused(rule, sent, why instanceof StaleException ? changed(why) : errors), null)));
    }

    private List<FieldError> changed(Exception why) {
        return List.of(new FieldError(
                "reason",
                why.getMessage() + " " + languages.words(RuleWords.class).changed(),
                "the review once more, if it still fits",
                null));
    }

    private static URI entered(Rule rule) {
        return URI.create("/release-rules#rule-" + rule.id());
    }

    private static Response answer(int status, TemplateInstance page) {
        return Response.status(status)
                .entity(page)
                .type(MediaType.TEXT_HTML_TYPE)
                .build();
    }

    /** @param only the jurisdiction whose rules are shown; null: all */
    private TemplateInstance page(Refused refused, @Nullable String only) {
        LocalDate day = clock.instant().atZone(region.zone()).toLocalDate();
        RuleWords words = languages.words(RuleWords.class);
        var tongue = new ReleaseTongue(languages.words(ReleaseWords.class), languages.ofPage(), region.zone());
        Map<String, String> names = taxa.listGroups().stream()
                .collect(Collectors.toMap(TaxonService.GroupView::key, TaxonService.GroupView::name));
        Map<String, List<RuleCard>> cards = new TreeMap<>();
        int due = 0;
        Set<String> codes = new TreeSet<>();
        for (Rule rule : rules.listRules()) {
            codes.add(rule.jurisdiction());
            due += rule.isDueForReview(day) ? 1 : 0;
            if (only != null && !only.equals(rule.jurisdiction())) {
                continue;
            }
            Refused own = rule.id().equals(refused.rule()) ? refused : Refused.NONE;
            cards.computeIfAbsent(rule.jurisdiction(), code -> new ArrayList<>())
                    .add(RuleCard.of(
                            rule, names, day, forms.review(rule.id(), own.sent(), own.wrong()), words, tongue));
        }
        Refused entering = refused.rule() == null ? refused : Refused.NONE;
        return template.data(
                        "jurisdictions",
                        cards.entrySet().stream()
                                .map(entry -> new RuleCard.Jurisdiction(entry.getKey(), entry.getValue()))
                                .toList())
                .data("codes", codes)
                .data("only", only)
                .data("due", due)
                .data("enters", sight.viewer().hasAny(Role.COORDINATOR, Role.ADMIN))
                .data("form", forms.entering(entering.sent(), entering.wrong()))
                .data("key", UUID.randomUUID().toString());
    }
}
