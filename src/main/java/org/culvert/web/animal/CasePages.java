package org.culvert.web.animal;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.call.IncidentService;
import org.culvert.care.health.NotifiableConditionView;
import org.culvert.care.health.SuspicionService;
import org.culvert.care.placement.CarerSearch;
import org.culvert.care.template.PlanTemplateView;
import org.culvert.care.template.TemplateService;
import org.culvert.clinic.BodyParts;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.sight.Sight;
import org.culvert.platform.sight.Viewer;
import org.culvert.roster.RosterService;
import org.culvert.taxon.CautionService;
import org.culvert.web.HolderNames;
import org.culvert.web.Languages;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.Labels;
import org.culvert.web.kept.KeptLinks;
import org.culvert.web.kept.NamedRecords;
import org.culvert.web.words.CaseWords;
import org.jspecify.annotations.Nullable;

/** Lays out the page of a case for whoever asks. */
@ApplicationScoped
class CasePages {
    private final Template page;
    private final Template carers;
    private final CaseService cases;
    private final CasePartsReader parts;
    private final IncidentService incidents;
    private final RosterService roster;
    private final HolderNames names;
    private final BodyParts bodyParts;
    private final TemplateService templates;
    private final SuspicionService suspicions;
    private final CarerSearch search;
    private final CautionService cautions;
    private final Languages languages;
    private final Labels labels;
    private final RegionService region;
    private final KeptLinks kept;
    private final NamedRecords named;
    private final Sight sight;
    private final Clock clock;

    CasePages(
            @Location("case.html") Template page,
            @Location("case-carers.html") Template carers,
            CaseService cases,
            CasePartsReader parts,
            IncidentService incidents,
            RosterService roster,
            HolderNames names,
            BodyParts bodyParts,
            TemplateService templates,
            SuspicionService suspicions,
            CarerSearch search,
            CautionService cautions,
            Languages languages,
            Labels labels,
            RegionService region,
            KeptLinks kept,
            NamedRecords named,
            Sight sight,
            Clock clock) {
        this.page = page;
        this.carers = carers;
        this.cases = cases;
        this.parts = parts;
        this.incidents = incidents;
        this.roster = roster;
        this.names = names;
        this.bodyParts = bodyParts;
        this.templates = templates;
        this.suspicions = suspicions;
        this.search = search;
        this.cautions = cautions;
        this.languages = languages;
        this.labels = labels;
        this.region = region;
        this.kept = kept;
        this.named = named;
        this.sight = sight;
        this.clock = clock;
    }

    CaseTongue tongue() {
        return new CaseTongue(languages.words(CaseWords.class), labels, languages.ofPage(), region.zone());
    }

    /**
     * @param form the form that is to be seen at once
     * @param kept what was kept just now
     */
    @Transactional
    TemplateInstance page(UUID caseId, @Nullable String form, @Nullable String kept, CaseSent sent) {
        sight.requireSeen("case", caseId);
        CaseTongue tongue = tongue();
        CaseView told = cases.getCase(caseId);
        CaseParts seen = parts.read(caseId, tongue);
        Viewer asker = sight.viewer();
        Instant now = clock.instant();
        CaseForms forms = new CaseForms(
                caseId,
                asker,
                sent,
                form == null ? asked(told, seen, asker) : form,
                tongue,
                choices(told),
                left(told, asker));
        return page.data(
                "page",
                new CasePage(
                        caseId,
                        tongue.words().caseOf(told.number(), told.animal().vernacularName()),
                        told,
                        seen,
                        forms,
                        names.loaded(),
                        tongue,
                        CaseWaits.of(told, seen, names, tongue, now),
                        CustodyPicture.of(told, names, now),
                        where(told, tongue.words()),
                        cautions.listCautions(List.of(told.animal().taxonGroupId()), "rescuer"),
                        sight.strictness("case", caseId) > 0,
                        asker.hasAny(Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR),
                        incidentNumber(told),
                        new CasePage.Links(
                                asker.hasAny(Role.DISPATCHER, Role.COORDINATOR),
                                asker.hasAny(Role.CLINIC, Role.CARER, Role.COORDINATOR, Role.OFFICER),
                                asker.hasAny(Role.CLINIC, Role.CARER, Role.COORDINATOR),
                                asker.hasAny(Role.COORDINATOR, Role.OFFICER),
                                !asker.hasAny(Role.COORDINATOR),
                                asker.hasAny(Role.CLINIC, Role.COORDINATOR),
                                asker.hasAny(Role.DISPATCHER, Role.RESCUER, Role.CLINIC, Role.CARER, Role.COORDINATOR)),
                        this.kept.waysOf("cases", caseId),
                        sent.errors(),
                        sent.isRefused() ? "form-" + sent.form() : null,
                        kept,
                        UUID.randomUUID().toString()));
    }

    /** Who could take the animal, with what speaks for and against each, and a form for each. */
    @Transactional
    TemplateInstance carers(UUID caseId, CaseSent sent) {
        sight.requireSeen("case", caseId);
        CaseTongue tongue = tongue();
        CaseView told = cases.getCase(caseId);
        List<Option> visits = options(named.visits(caseId));
        CaseForms forms = new CaseForms(
                caseId,
                sight.viewer(),
                sent,
                null,
                tongue,
                Map.of("visitId", () -> visits),
                visits.isEmpty() ? Set.of("visitId") : Set.of());
        List<Candidate> candidates = search.findCarers(caseId, null).stream()
                .map(one -> new Candidate(
                        one,
                        one.answer().equals("canNotTake") || told.pendingHandOver() != null || told.fate() != null
                                ? null
                                : forms.filled(
                                        CaseFormKind.placement,
                                        one.memberId(),
                                        Map.of("carerMemberId", one.memberId().toString()))))
                .toList();
        return carers.data("told", told)
                .data(
                        "title",
                        tongue.words().carersFor(told.number(), told.animal().vernacularName()))
                .data("candidates", candidates)
                .data("mayNot", (int) candidates.stream()
                        .filter(one -> one.option().answer().equals("canNotTake"))
                        .count())
                .data("say", tongue)
                .data("errors", sent.errors())
                .data(
                        "refused",
                        candidates.stream()
                                .map(Candidate::form)
                                .filter(form -> form != null && form.open())
                                .map(CaseFormView::id)
                                .findFirst()
                                .orElse(null))
                .data("key", UUID.randomUUID().toString());
    }

    private static List<Option> options(Map<String, String> named) {
        return named.entrySet().stream()
                .map(one -> new Option(one.getKey(), one.getValue()))
                .toList();
    }

    /** @param form null where it cannot be placed there now */
    public record Candidate(
            CarerSearch.CarerOption option, @Nullable CaseFormView form) {}

    /** The form that the asker is most likely to need: to take over what is offered, or to keep the visit of what has come. */
    private static @Nullable String asked(CaseView told, CaseParts seen, Viewer asker) {
        UUID own = asker.organisationId();
        UUID self = asker.memberId();
        CaseView.HandOverView offer = told.pendingHandOver();
        if (offer != null) {
            boolean isMine = self != null && self.equals(offer.taker().memberId())
                    || own != null && own.equals(offer.taker().organisationId());
            return isMine ? CaseFormKind.acceptance.name() : null;
        }
        CaseView.WhereaboutsView where = told.whereabouts();
        boolean hasCome = told.fate() == null
                && own != null
                && where != null
                && own.equals(where.organisationId())
                && seen.visits() != null
                && seen.openVisit() == null;
        return hasCome && asker.hasAny(Role.CLINIC) ? CaseFormKind.visit.name() : null;
    }

    private @Nullable Long incidentNumber(CaseView told) {
        return !sight.seesOwnOnly("incident") || sight.isOwn("incident", told.incidentId())
                ? Long.valueOf(incidents.getIncident(told.incidentId(), false).number())
                : null;
    }

    private @Nullable String where(CaseView told, CaseWords words) {
        CaseView.WhereaboutsView last = told.whereabouts();
        if (last == null) {
            return null;
        }
        String at = last.organisationId() != null
                ? names.organisation(last.organisationId())
                : last.memberId() != null ? words.with(names.member(last.memberId())) : null;
        return at == null ? last.words() : last.words() == null ? at : at + ", " + last.words();
    }

    /** Of an animal's own clinic the page need not ask, and of one that lives not what it died of. */
    private static Set<String> left(CaseView told, Viewer asker) {
        Set<String> left = new HashSet<>();
        if (!asker.hasAny(Role.COORDINATOR) && asker.organisationId() != null) {
            left.add("clinicId");
        }
        if (told.body() == null) {
            left.add("causeOfDeath");
        } else {
            left.add("stabilisedAt");
        }
        return left;
    }

    private Map<String, Supplier<List<Option>>> choices(CaseView told) {
        return Map.of(
                "clinicId",
                () -> roster.listOrganisations("clinic").stream()
                        .map(one -> new Option(one.id().toString(), one.name()))
                        .toList(),
                "organisationId",
                () -> names.all().stream()
                        .map(one -> new Option(one.id().toString(), one.name()))
                        .sorted(Comparator.comparing(Option::words))
                        .toList(),
                "part",
                () -> bodyParts.listParts(told.animal().taxonGroup()).stream()
                        .map(one -> new Option(one.key(), one.name()))
                        .toList(),
                "templateId",
                () -> templates.listTemplates().stream()
                        .filter(PlanTemplateView::adopted)
                        .filter(one -> one.taxonGroup() == null
                                || one.taxonGroup().equals(told.animal().taxonGroup()))
                        .map(one -> new Option(one.id().toString(), one.name()))
                        .toList(),
                "conditionId",
                () -> suspicions.listConditions().stream()
                        .filter(one -> isOf(one, told))
                        .map(one -> new Option(one.id().toString(), one.name()))
                        .toList());
    }

    private static boolean isOf(NotifiableConditionView one, CaseView told) {
        return one.taxonGroups().isEmpty()
                || one.taxonGroups().contains(told.animal().taxonGroup());
    }
}
