package org.culvert.web.acts;

import jakarta.enterprise.context.RequestScoped;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.call.CallService;
import org.culvert.care.clock.LimitService;
import org.culvert.care.health.NotifiableConditionView;
import org.culvert.care.health.SuspicionService;
import org.culvert.care.health.SyndromeService;
import org.culvert.care.health.SyndromeView;
import org.culvert.platform.sight.Sight;
import org.culvert.roster.RosterService;
import org.culvert.taxon.TaxonService;
import org.culvert.web.Languages;
import org.culvert.web.forms.Reference;
import org.culvert.web.words.CaseWords;

/** Names of things that fields refer to, read once for a page. */
@RequestScoped
public class Choices {
    private static final String CLINIC = "clinic";

    private final TaxonService taxa;
    private final RosterService roster;
    private final SyndromeService syndromes;
    private final SuspicionService suspicions;
    private final LimitService limits;
    private final CallService calls;
    private final Languages languages;
    private final Sight sight;
    private final Map<Reference, Map<String, String>> read = new EnumMap<>(Reference.class);

    Choices(
            TaxonService taxa,
            RosterService roster,
            SyndromeService syndromes,
            SuspicionService suspicions,
            LimitService limits,
            CallService calls,
            Languages languages,
            Sight sight) {
        this.taxa = taxa;
        this.roster = roster;
        this.syndromes = syndromes;
        this.suspicions = suspicions;
        this.limits = limits;
        this.calls = calls;
        this.languages = languages;
        this.sight = sight;
    }

    /** Words by what the API calls each. */
    public Map<String, String> of(Reference reference) {
        return read.computeIfAbsent(reference, this::read);
    }

    private Map<String, String> read(Reference reference) {
        return switch (reference) {
            case groups -> named(taxa.listGroups(), TaxonService.GroupView::key, TaxonService.GroupView::name);
            case organisations -> organisations(roster.listOrganisations(null));
            case clinics -> organisations(roster.listOrganisations(CLINIC));
            case members ->
                named(
                        roster.listMembers().stream()
                                .filter(member -> member.leftOn() == null && seesName(member.id()))
                                .toList(),
                        member -> member.id().toString(),
                        RosterService.MemberView::callSign);
            case taxa ->
                named(
                        taxa.findTaxa(null),
                        taxon -> taxon.id().toString(),
                        taxon -> taxon.vernacularName() + " (" + taxon.scientificName() + ")");
            case syndromes ->
                named(syndromes.listSyndromes(), syndrome -> syndrome.id().toString(), SyndromeView::name);
            case conditions ->
                named(
                        suspicions.listConditions(),
                        condition -> condition.id().toString(),
                        NotifiableConditionView::name);
            case limits ->
                named(
                        limits.listLimits().stream()
                                .filter(LimitService.TimeLimitView::holdsHere)
                                .toList(),
                        limit -> limit.id().toString(),
                        limit -> limit.jurisdiction() + ": " + limit.words());
            case causes -> causes();
        };
    }

    /** In the language of the page, as far as there are words for them there. */
    private Map<String, String> causes() {
        CaseWords words = languages.words(CaseWords.class);
        Map<String, String> causes = new LinkedHashMap<>(calls.listCauses());
        causes.replaceAll((key, entered) -> {
            String said = words.cause(key);
            return said.equals(key) ? entered : said;
        });
        return causes;
    }

    /** Who sees no call signs has a choice of themselves. */
    private boolean seesName(UUID memberId) {
        return sight.sees("member", "callSign")
                || memberId.equals(sight.viewer().memberId());
    }

    private static Map<String, String> organisations(List<RosterService.OrganisationView> all) {
        return named(all, one -> one.id().toString(), RosterService.OrganisationView::name);
    }

    private static <T> Map<String, String> named(List<T> all, Function<T, String> key, Function<T, String> words) {
        return all.stream().collect(Collectors.toMap(key, words, (first, second) -> first, LinkedHashMap::new));
    }
}
