package org.culvert.taxon;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;
import org.jspecify.annotations.Nullable;

/** Groups and taxa, kept as data. */
@ApplicationScoped
public class TaxonService {
    /** How a body is built: which parts of it a finding may name. */
    public enum BodyPlan {
        turtle,
        lizard,
        snake,
        frog,
        bird,
        bat,
        mammal
    }

    /**
     * A group of taxa that the job treats alike.
     *
     * @param vaccinationNeeded what whoever handles it must be vaccinated against, such as {@code lyssavirus}; no one
     *     overrides that
     * @param pouch whether a pouch must be checked
     * @param clutches whether females may carry eggs that can be recovered
     * @param introduced whether it is introduced here
     * @param bodyPlan how its bodies are built; left out: as it was told before, if it was
     */
    public record GroupEntry(
            @NotBlank @Pattern(regexp = "[a-z][a-z-]*", message = "must be lower-case words joined by hyphens")
            String key,

            @NotBlank @Size(max = 200) String name,
            @Nullable @Size(max = 200) String vaccinationNeeded,
            boolean pouch,
            boolean clutches,
            boolean introduced,
            @Nullable BodyPlan bodyPlan) {
        /** A group of which it is not told how its bodies are built. */
        public GroupEntry(
                String key,
                String name,
                @Nullable String vaccinationNeeded,
                boolean pouch,
                boolean clutches,
                boolean introduced) {
            this(key, name, vaccinationNeeded, pouch, clutches, introduced, null);
        }
    }

    /** A group as others see it. */
    public record GroupView(
            UUID id,
            String key,
            String name,
            @Nullable String vaccinationNeeded,
            boolean pouch,
            boolean clutches,
            boolean introduced,
            @Nullable BodyPlan bodyPlan) {}

    /** A taxon as it is entered. */
    public record TaxonEntry(
            @NotBlank @Size(max = 200) String scientificName,
            @NotBlank @Size(max = 200) String vernacularName,
            @NotBlank @Size(max = 200) String taxonRank,
            @NotBlank @Size(max = 200) String taxonGroup,
            @Nullable Double sensitivityGridDegrees,
            @Nullable String sensitivityReason,
            @Nullable LocalDate sensitivityReviewBy) {}

    /**
     * A taxon as others see it.
     *
     * @param sensitivityGridDegrees its category: 0 for one whose places are withheld, 1, 0.1, 0.01 or 0.001 for one whose
     *     places are told to the cell of a grid, null for one that is not sensitive. The categories are those of A. D.
     *     Chapman, Current Best Practices for Generalizing Sensitive Species Occurrence Data, GBIF 2020,
     *     doi:10.15468/doc-5jp4-5g10
     */
    public record TaxonView(
            UUID id,
            String scientificName,
            String vernacularName,
            String taxonRank,
            String taxonGroup,
            UUID taxonGroupId,
            @Nullable Double sensitivityGridDegrees,
            @Nullable String sensitivityReason,
            @Nullable LocalDate sensitivityReviewBy) {}

    /**
     * How far the places of a taxon are told.
     *
     * @param gridDegrees 0 (withheld), 1, 0.1, 0.01 or 0.001; left out: it is not, or no longer, sensitive
     * @param reason why, in either case
     * @param reviewBy when somebody looks at it again; not needed where it is not sensitive
     */
    public record SensitivityEntry(
            @Nullable Double gridDegrees,
            @NotBlank String reason,
            @Nullable LocalDate reviewBy) {}

    /** The group of animals whose kind nobody knows yet. */
    public static final String NOT_KNOWN_YET = "not-known-yet";

    /** All of them; the name of a group in which nothing narrower is known. */
    private static final String ANIMALS = "Animalia";

    /** The categories, in degrees. */
    private static final List<Double> CATEGORIES = List.of(0.0, 1.0, 0.1, 0.01, 0.001);

    @ApplicationScoped
    static class Groups implements PanacheRepositoryBase<TaxonGroup, UUID> {}

    @ApplicationScoped
    static class Taxa implements PanacheRepositoryBase<Taxon, UUID> {}

    @Produces
    @Singleton
    static TagSource tag(EntityManager entities, TaxonService service) {
        return new RowTag("taxon", "taxa", entities, service::getTaxon);
    }

    private final Groups groups;
    private final Taxa taxa;
    private final EntityManager entities;
    private final RegionService region;
    private final Clock clock;

    TaxonService(Groups groups, Taxa taxa, EntityManager entities, RegionService region, Clock clock) {
        this.groups = groups;
        this.taxa = taxa;
        this.entities = entities;
        this.region = region;
        this.clock = clock;
    }

    @Transactional
    public List<GroupView> listGroups() {
        return groups.list("order by key").stream().map(TaxonGroup::view).toList();
    }

    /** Adds groups, or revises those whose key is known. */
    @Transactional
    public List<GroupView> enterGroups(List<GroupEntry> entries) {
        for (GroupEntry entry : entries) {
            groups.find("key", entry.key())
                    .firstResultOptional()
                    .ifPresentOrElse(known -> known.update(entry), () -> groups.persist(TaxonGroup.of(entry)));
        }
        groups.flush();
        return listGroups();
    }

    /** Adds taxa, or revises those whose scientific name is known. */
    @Transactional
    public List<TaxonView> enterTaxa(List<TaxonEntry> entries) {
        for (int i = 0; i < entries.size(); i++) {
            TaxonEntry entry = entries.get(i);
            UUID groupId = requireGroup(i + ".taxonGroup", entry.taxonGroup()).id();
            if (entry.sensitivityGridDegrees() != null) {
                requireCategory(
                        i + ".sensitivity",
                        entry.sensitivityGridDegrees(),
                        entry.sensitivityReason(),
                        entry.sensitivityReviewBy());
            }
            taxa.find("scientificName", entry.scientificName())
                    .firstResultOptional()
                    .ifPresentOrElse(
                            known -> known.update(entry, groupId), () -> taxa.persist(Taxon.of(entry, groupId)));
        }
        taxa.flush();
        return views(taxa.list(
                "scientificName in ?1 order by scientificName",
                entries.stream().map(TaxonEntry::scientificName).toList()));
    }

    /** Says how far the places of a taxon are told, or that it is not sensitive. */
    @Transactional
    public TaxonView settleSensitivity(UUID id, SensitivityEntry entry) {
        Taxon taxon = taxa.findByIdOptional(id).orElseThrow(() -> new NotFoundException("taxon", id));
        Double grid = entry.gridDegrees();
        LocalDate reviewBy = entry.reviewBy();
        if (grid == null) {
            taxon.noLongerSensitive(entry.reason());
        } else {
            requireCategory("", grid, entry.reason(), reviewBy);
            taxon.keepTo(grid, entry.reason(), java.util.Objects.requireNonNull(reviewBy));
        }
        taxa.flush();
        return getTaxon(id);
    }

    /**
     * The strictest category of a group's taxa, in degrees and 0 for withheld; empty where none is sensitive. Where nobody
     * knows the kind it may be any.
     */
    @Transactional
    public Optional<Double> findStrictestGrid(String group) {
        UUID groupId = requireGroup("taxonGroup", group).id();
        List<Double> grids = taxa
                .list(
                        "sensitivityGrid is not null and (?1 = true or taxonGroupId = ?2)",
                        group.equals(NOT_KNOWN_YET),
                        groupId)
                .stream()
                .map(taxon -> taxon.sensitivityGrid)
                .toList();
        return grids.contains(0.0) ? Optional.of(0.0) : grids.stream().max(Double::compare);
    }

    /** Sensitive taxa at which somebody should have looked again by now. */
    @Transactional
    public List<TaxonView> listReviewsDue() {
        LocalDate today = LocalDate.ofInstant(clock.instant(), region.zone());
        return views(taxa.list("sensitivityReviewBy < ?1 order by sensitivityReviewBy, scientificName", today));
    }

    private static void requireCategory(
            String field, double grid, @Nullable String reason, @Nullable LocalDate reviewBy) {
        if (!CATEGORIES.contains(grid)) {
            throw InvalidException.of(
                    field.isEmpty() ? "gridDegrees" : field + "GridDegrees",
                    "There is no such category.",
                    "0 (withheld), 1, 0.1, 0.01 or 0.001");
        }
        if (reason == null || reason.isBlank()) {
            throw InvalidException.of(
                    field.isEmpty() ? "reason" : field + "Reason", "A category needs a reason.", "a reason");
        }
        if (reviewBy == null) {
            throw InvalidException.of(
                    field.isEmpty() ? "reviewBy" : field + "ReviewBy",
                    "A category needs a day by which somebody looks again.",
                    "a date such as 2027-11-25");
        }
    }

    /** Taxa whose names contain the words, or all. */
    @Transactional
    public List<TaxonView> findTaxa(@Nullable String words) {
        return views(
                words == null || words.isBlank()
                        ? taxa.list("order by scientificName")
                        : taxa.list(
                                "lower(scientificName || ' ' || vernacularName) like lower(?1) order by scientificName",
                                "%" + words.strip() + "%"));
    }

    @Transactional
    public TaxonView getTaxon(UUID id) {
        return views(List.of(taxa.findByIdOptional(id).orElseThrow(() -> new NotFoundException("taxon", id))))
                .get(0);
    }

    /** Taxa by identifier, in one question. */
    @Transactional
    public Map<UUID, TaxonView> taxaById(Collection<UUID> ids) {
        return ids.isEmpty()
                ? Map.of()
                : views(taxa.list("id in ?1", ids)).stream()
                        .collect(Collectors.toMap(TaxonView::id, Function.identity()));
    }

    @Transactional
    public Optional<TaxonView> findByScientificName(String name) {
        return entities.createQuery(
                        "select t, g.key from Taxon t join TaxonGroup g on g.id = t.taxonGroupId"
                                + " where t.scientificName = ?1",
                        Object[].class)
                .setParameter(1, name)
                .getResultStream()
                .map(row -> view((Taxon) row[0], (String) row[1]))
                .findFirst();
    }

    /**
     * The taxon of an animal whose kind nobody knows yet: all animals, in a group of its own that is made when it is first
     * needed. Unknown is dangerous until known: if handling any group needs a vaccination, handling this one does.
     */
    @Transactional
    public TaxonView requireNotKnownYet() {
        Optional<TaxonView> known = findByScientificName(ANIMALS);
        if (known.isPresent()) {
            return known.get();
        }
        entities.createNativeQuery("select pg_advisory_xact_lock(hashtext('taxon not known yet'))", Object.class)
                .getSingleResult();
        if (findByScientificName(ANIMALS).isEmpty()) {
            if (findGroup(NOT_KNOWN_YET).isEmpty()) {
                String needed = groups.list("vaccinationNeeded is not null order by key").stream()
                        .map(group -> group.vaccinationNeeded)
                        .findFirst()
                        .orElse(null);
                groups.persist(TaxonGroup.of(
                        new GroupEntry(NOT_KNOWN_YET, "animals of a kind not known yet", needed, true, false, false)));
            }
            enterTaxa(List.of(new TaxonEntry(
                    ANIMALS, "animal of a kind not known yet", "kingdom", NOT_KNOWN_YET, null, null, null)));
        }
        return findByScientificName(ANIMALS).orElseThrow();
    }

    @Transactional
    public Optional<GroupView> findGroup(String key) {
        return groups.find("key", key).firstResultOptional().map(TaxonGroup::view);
    }

    @Transactional
    public GroupView getGroup(UUID id) {
        return groups.findByIdOptional(id)
                .map(TaxonGroup::view)
                .orElseThrow(() -> new NotFoundException("taxon group", id));
    }

    /**
     * The group by its key.
     *
     * @throws InvalidException naming {@code field} when there is no such group
     */
    @Transactional
    public GroupView requireGroup(String field, String key) {
        return findGroup(key)
                .orElseThrow(() -> InvalidException.of(
                        field,
                        "There is no taxon group " + key + ".",
                        listGroups().stream().map(GroupView::key).collect(Collectors.joining(", "))));
    }

    private List<TaxonView> views(List<Taxon> rows) {
        Map<UUID, String> keys =
                groups.listAll().stream().collect(Collectors.toMap(TaxonGroup::id, group -> group.key));
        return rows.stream()
                .map(taxon -> view(taxon, keys.getOrDefault(taxon.taxonGroupId, "")))
                .toList();
    }

    private static TaxonView view(Taxon taxon, String groupKey) {
        return new TaxonView(
                taxon.id(),
                taxon.scientificName,
                taxon.vernacularName,
                taxon.taxonRank,
                groupKey,
                taxon.taxonGroupId,
                taxon.sensitivityGrid,
                taxon.sensitivityReason,
                taxon.sensitivityReviewBy);
    }
}
