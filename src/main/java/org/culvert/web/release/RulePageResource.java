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
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
import org.culvert.web.forms.SentFields;
import org.culvert.web.forms.SentForm;
import org.culvert.web.words.ReleaseWords;
import org.culvert.web.words.RuleWords;
import org.jspecify.annotations.Nullable;

/** Release rules for people: which hold where for whom, each whole with its source and dates, and forms to enter and review. */
@OwnForm
@Path("/release-rules")
@Produces(MediaType.TEXT_HTML)
public class RulePageResource {
    private final Template list;
    private final Template one;
    private final RuleForms forms;
    private final RuleService rules;
    private final TaxonService taxa;
    private final RegionService region;
    private final PageForms taken;
    private final Languages languages;
    private final Sight sight;
    private final Clock clock;

    RulePageResource(
            @Location("release-rules.html") Template list,
            @Location("release-rule.html") Template one,
            RuleForms forms,
            RuleService rules,
            TaxonService taxa,
            RegionService region,
            PageForms taken,
            Languages languages,
            Sight sight,
            Clock clock) {
        this.list = list;
        this.one = one;
        this.forms = forms;
        this.rules = rules;
        this.taxa = taxa;
        this.region = region;
        this.taken = taken;
        this.languages = languages;
        this.sight = sight;
        this.clock = clock;
    }

    /** What was typed into a form that was not taken, and what is wrong with it. */
    private record Refused(SentFields sent, List<FieldError> wrong) {
        static final Refused NONE = new Refused(SentFields.NOTHING, List.of());
    }

    @GET
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER, Role.ADMIN})
    public Response listRules(@BeanParam RuleFilter filter) {
        return answer(200, list(Refused.NONE, filter));
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
                (why, errors) -> answer(why.status(), list(new Refused(sent, errors), new RuleFilter())));
    }

    /** One rule, whole. */
    @GET
    @Path("/{id}")
    @RolesAllowed({Role.COORDINATOR, Role.CLINIC, Role.CARER, Role.RESCUER, Role.OFFICER, Role.ADMIN})
    public Response show(@PathParam("id") String id) {
        return answer(200, page(Paging.uuid("id", id), Refused.NONE));
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
                () -> entered(rules.review(rule, RuleForms.seenVersion(sent), forms.reviewed(sent))),
                (why, errors) -> answer(
                        why.status(),
                        page(rule, new Refused(sent, why instanceof StaleException ? changed(why) : errors))));
    }

    private List<FieldError> changed(Exception why) {
        return List.of(new FieldError(
                "reason", why.getMessage() + " " + words().changed(), "the review once more, if it still fits", null));
    }

    private static URI entered(Rule rule) {
        return URI.create("/release-rules/" + rule.id());
    }

    private static Response answer(int status, TemplateInstance page) {
        return PageForms.html(status, page);
    }

    private RuleWords words() {
        return languages.words(RuleWords.class);
    }

    private ReleaseTongue tongue() {
        return new ReleaseTongue(languages.words(ReleaseWords.class), languages.ofPage(), region.zone());
    }

    private LocalDate today() {
        return clock.instant().atZone(region.zone()).toLocalDate();
    }

    private boolean enters() {
        return sight.viewer().hasAny(Role.COORDINATOR, Role.ADMIN);
    }

    private Map<String, String> groups() {
        return taxa.listGroups().stream()
                .collect(Collectors.toMap(
                        TaxonService.GroupView::key, TaxonService.GroupView::name, (one, same) -> one, TreeMap::new));
    }

    private TemplateInstance list(Refused refused, RuleFilter filter) {
        Map<String, String> groups = groups();
        Map<String, Optional<String>> known = new HashMap<>();
        List<Rule> all = rules.listRules();
        List<Rule> meant = all.stream()
                .filter(rule -> filter.isMeant(
                        rule, name -> known.computeIfAbsent(name, this::groupOf).orElse(null)))
                .toList();
        return list.data("page", RuleList.of(meant, filter, groups, today(), words(), tongue()))
                .data("filter", filter)
                .data("codes", all.stream().map(Rule::jurisdiction).collect(Collectors.toCollection(TreeSet::new)))
                .data("groups", groups)
                .data(
                        "whens",
                        Arrays.stream(RuleFilter.When.values()).map(Enum::name).toList())
                .data("enters", enters())
                .data("form", forms.entering(refused.sent(), refused.wrong()))
                .data("key", UUID.randomUUID().toString());
    }

    private Optional<String> groupOf(String scientificName) {
        return taxa.findByScientificName(scientificName).map(TaxonService.TaxonView::taxonGroup);
    }

    private TemplateInstance page(UUID id, Refused refused) {
        return one.data("card", RuleCard.of(rules.getRule(id), groups(), today(), words(), tongue()))
                .data("enters", enters())
                .data("form", forms.review(refused.sent(), refused.wrong()))
                .data("key", UUID.randomUUID().toString());
    }
}
