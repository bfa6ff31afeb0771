package org.culvert.taxon;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;
import org.jspecify.annotations.Nullable;

/** Keeps other names of taxa: scientific names besides the accepted one, and common names with their language. */
@ApplicationScoped
public class SynonymService {
    /** What kind of name, in the words of Darwin Core. */
    public enum SynonymKind {
        scientificName,
        vernacularName
    }

    /**
     * Another name of a taxon as it is entered.
     *
     * @param language of a common name, as RFC 5646 has it, such as {@code en} or {@code en-AU}; left out for a scientific name
     * @param source where it was read that this is its name
     */
    public record SynonymEntry(
            @NotNull UUID taxonId,
            @NotNull SynonymKind kind,
            @NotBlank @Size(max = 200) String name,

            @Nullable
            @Size(max = 35)
            @Pattern(
                    regexp = "[a-z]{2,3}(-[A-Za-z0-9]{2,8})*",
                    message = "must be a language as RFC 5646 has it, such as en or en-AU")
            String language,

            @NotBlank @Size(max = 4000) String source) {}

    /** Why a name is no longer looked for. */
    public record SynonymEnding(@NotBlank @Size(max = 2000) String reason) {}

    /** Another name of a taxon as others see it. */
    public record TaxonSynonymView(
            UUID id,
            UUID taxonId,
            SynonymKind kind,
            String name,
            @Nullable String language,
            String source,
            @Nullable Instant endedAt,
            @Nullable String endedBecause,
            RecordView record) {}

    @ApplicationScoped
    static class Synonyms implements PanacheRepositoryBase<TaxonSynonym, UUID> {}

    @Produces
    @Singleton
    static TagSource ofSynonym(EntityManager entities, SynonymService synonyms) {
        return new RowTag("taxon-synonym", "taxon_synonyms", entities, synonyms::getSynonym);
    }

    private final Synonyms synonyms;
    private final TaxonService.Taxa taxa;
    private final RecordViews records;
    private final Clock clock;

    SynonymService(Synonyms synonyms, TaxonService.Taxa taxa, RecordViews records, Clock clock) {
        this.synonyms = synonyms;
        this.taxa = taxa;
        this.records = records;
        this.clock = clock;
    }

    /** Adds another name. Two taxa may have one common name: whoever reads it has to decide then. */
    @Transactional
    public TaxonSynonymView createSynonym(SynonymEntry entry) {
        if (taxa.findByIdOptional(entry.taxonId()).isEmpty()) {
            throw InvalidException.of("taxonId", "There is no such taxon.", "the identifier of one from /api/taxa");
        }
        if ((entry.kind() == SynonymKind.vernacularName) != (entry.language() != null)) {
            throw InvalidException.of(
                    "language",
                    entry.language() == null ? "A common name has a language." : "A scientific name has no language.",
                    "a language for a common name, and none for a scientific one");
        }
        String name = entry.name().strip();
        if (name.isEmpty()) {
            throw InvalidException.of("name", "It is blank.", "a name");
        }
        if (entry.kind() == SynonymKind.scientificName && taxa.count("lower(scientificName) = lower(?1)", name) > 0) {
            throw InvalidException.of(
                    "name", "It is the accepted name of a taxon here.", "a name that is accepted for none");
        }
        TaxonSynonym row = TaxonSynonym.of(entry);
        synonyms.persistAndFlush(row);
        return view(row);
    }

    /** Says that a name is no longer looked for. */
    @Transactional
    public TaxonSynonymView end(UUID id, String reason) {
        TaxonSynonym row = require(id);
        row.end(clock.instant(), reason);
        synonyms.flush();
        return view(row);
    }

    @Transactional
    public TaxonSynonymView getSynonym(UUID id) {
        return view(require(id));
    }

    /** All of them, those that were ended too, in a stable order. */
    @Transactional
    public List<TaxonSynonymView> listSynonyms() {
        return views(synonyms.list("order by name, id"));
    }

    /** Those that are looked for. */
    @Transactional
    public List<TaxonSynonymView> listCurrent() {
        return views(synonyms.list("endedAt is null order by name, id"));
    }

    private TaxonSynonym require(UUID id) {
        return synonyms.findByIdOptional(id).orElseThrow(() -> new NotFoundException("taxon synonym", id));
    }

    private List<TaxonSynonymView> views(List<TaxonSynonym> rows) {
        records.lookUp(rows);
        return rows.stream().map(this::view).toList();
    }

    private TaxonSynonymView view(TaxonSynonym row) {
        return new TaxonSynonymView(
                row.id(),
                row.taxonId,
                row.kind,
                row.name,
                row.language,
                row.source,
                row.endedAt,
                row.endedBecause,
                records.of(row));
    }
}
