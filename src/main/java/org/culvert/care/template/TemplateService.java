package org.culvert.care.template;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validator;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RefusedException;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Keeps templates of aftercare plans, and who adopted them. */
@ApplicationScoped
public class TemplateService {
    private static final String NOTE =
            "A template is nobody's treatment: it is inert until a vet adopts it, and the vet of each case answers for the plan.";

    @ApplicationScoped
    static class Templates implements PanacheRepositoryBase<PlanTemplate, UUID> {}

    @ApplicationScoped
    static class Adoptions implements PanacheRepositoryBase<TemplateAdoption, UUID> {}

    /**
     * An adoption that stands, with the steps that were adopted.
     *
     * @param taxonGroup key of the group they are for, or null
     */
    public record Adopted(UUID adoptionId, @Nullable String taxonGroup, List<PlanStepEntry> steps) {}

    /** From which template a plan came, and as of which revision. */
    public record Origin(UUID templateId, int templateRevision) {}

    private final Templates templates;
    private final Adoptions adoptions;
    private final TaxonService taxa;
    private final RecordViews records;
    private final Validator validator;
    private final Clock clock;

    TemplateService(
            Templates templates,
            Adoptions adoptions,
            TaxonService taxa,
            RecordViews records,
            Validator validator,
            Clock clock) {
        this.templates = templates;
        this.adoptions = adoptions;
        this.taxa = taxa;
        this.records = records;
        this.validator = validator;
        this.clock = clock;
    }

    @Transactional
    public PlanTemplateView enter(TemplateEntries.TemplateEntry entry) {
        requireGroup(entry.taxonGroup());
        PlanStepEntry.read("steps", entry.steps());
        var row = new PlanTemplate(entry);
        templates.persistAndFlush(row);
        return view(row, List.of());
    }

    /** Templates by name. */
    @Transactional
    public List<PlanTemplateView> listTemplates() {
        List<PlanTemplate> rows = templates.list("order by name, id");
        List<TemplateAdoption> told = adoptions.list("order by id");
        records.lookUp(rows);
        records.lookUp(told);
        Map<UUID, List<TemplateAdoption>> byTemplate =
                told.stream().collect(Collectors.groupingBy(adoption -> adoption.templateId));
        return rows.stream()
                .map(row -> view(row, byTemplate.getOrDefault(row.id(), List.of())))
                .toList();
    }

    @Transactional
    public PlanTemplateView getTemplate(UUID id) {
        return view(require(id));
    }

    @Transactional
    public Optional<PlanTemplateView> findByKey(String key) {
        return templates.find("key", key).firstResultOptional().map(this::view);
    }

    /** Changes a template, which wants adopting again afterwards; plans that were made of it stay as they are. */
    @Transactional
    public PlanTemplateView correct(UUID id, TemplateEntries.TemplateCorrection correction) {
        PlanTemplate row = require(id);
        requireWhole(correction.steps().value());
        row.correct(correction);
        if (correction.taxonGroup().isMade()) {
            requireGroup(row.taxonGroup);
        }
        if (correction.steps().isMade()) {
            PlanStepEntry.read("steps", row.steps);
        }
        templates.flush();
        return view(row);
    }

    @Transactional
    public PlanTemplateView adopt(UUID id, TemplateEntries.AdoptionEntry entry) {
        PlanTemplate row = require(id);
        Instant at = Corrections.passed("at", entry.at(), clock);
        Instant since = row.revisedAt();
        if (entry.at() != null && since != null && at.isBefore(since)) {
            throw InvalidException.of(
                    "at", "The template was changed after that, at " + since + ".", "an instant after it, or nothing");
        }
        adoptions.persistAndFlush(new TemplateAdoption(row, entry, at));
        return view(row);
    }

    @Transactional
    public PlanTemplateView withdraw(UUID id, UUID adoptionId, String reason) {
        PlanTemplate row = require(id);
        adoptions
                .findByIdOptional(adoptionId)
                .filter(adoption -> adoption.templateId.equals(id))
                .orElseThrow(() -> new NotFoundException("adoption of that template", adoptionId))
                .withdraw(clock.instant(), reason);
        adoptions.flush();
        return view(row);
    }

    /**
     * The adoption of a template as it stands, which cannot be taken back before the transaction ends.
     *
     * @throws RefusedException when no vet has adopted it, or not since it was changed
     */
    @Transactional
    public Adopted requireAdopted(UUID templateId) {
        PlanTemplate row = templates
                .findByIdOptional(templateId, LockModeType.PESSIMISTIC_READ)
                .orElseThrow(() -> InvalidException.of(
                        "templateId", "There is no such template.", "an identifier from /api/plan-templates"));
        return adoptions
                .find("templateId = ?1 and withdrawnAt is null order by id desc", templateId)
                .withLock(LockModeType.PESSIMISTIC_READ)
                .stream()
                .filter(adoption -> adoption.standsFor(row))
                .findFirst()
                .map(adoption -> new Adopted(adoption.id(), row.taxonGroup, row.steps))
                .orElseThrow(() -> new RefusedException(
                        "That template is inert.",
                        List.of("No vet has adopted \"" + row.name
                                + "\" as it stands. A vet adopts it first, by name and registration, or writes the steps of this"
                                + " case.")));
    }

    /** Where the plans of some adoptions came from. */
    @Transactional
    public Map<UUID, Origin> originsByAdoption(List<UUID> adoptionIds) {
        if (adoptionIds.isEmpty()) {
            return Map.of();
        }
        return adoptions.list("id in ?1", adoptionIds).stream()
                .collect(Collectors.toMap(
                        TemplateAdoption::id, row -> new Origin(row.templateId, row.templateRevision)));
    }

    /** The steps of a correction, which are read only once the correction is. */
    private void requireWhole(@Nullable List<@Nullable PlanStepEntry> steps) {
        List<FieldError> errors = new ArrayList<>();
        for (int i = 0; steps != null && i < steps.size(); i++) {
            PlanStepEntry step = steps.get(i);
            String at = "steps[" + i + "]";
            if (step == null) {
                errors.add(new FieldError(at, "There is no step.", "a step", null));
                continue;
            }
            for (ConstraintViolation<PlanStepEntry> violation : validator.validate(step)) {
                errors.add(new FieldError(
                        at + "." + violation.getPropertyPath(),
                        "This " + violation.getMessage() + ".",
                        "a value that does",
                        null));
            }
        }
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
    }

    private void requireGroup(@Nullable String key) {
        if (key != null) {
            taxa.requireGroup("taxonGroup", key);
        }
    }

    private PlanTemplate require(UUID id) {
        return templates.findByIdOptional(id).orElseThrow(() -> new NotFoundException("plan template", id));
    }

    private PlanTemplateView view(PlanTemplate row) {
        return view(row, adoptions.list("templateId = ?1 order by id", row.id()));
    }

    private PlanTemplateView view(PlanTemplate row, List<TemplateAdoption> told) {
        return new PlanTemplateView(
                row.id(),
                row.key,
                row.name,
                row.taxonGroup,
                row.words,
                row.source,
                row.steps,
                told.stream().anyMatch(adoption -> adoption.standsFor(row)),
                told.stream()
                        .map(adoption -> new PlanTemplateView.AdoptionView(
                                adoption.id(),
                                adoption.templateRevision,
                                adoption.vetName,
                                adoption.vetRegistration,
                                Objects.requireNonNull(adoption.happenedAt()),
                                adoption.standsFor(row),
                                adoption.withdrawnAt,
                                adoption.withdrawnBecause,
                                records.of(adoption)))
                        .toList(),
                NOTE,
                records.of(row));
    }
}
