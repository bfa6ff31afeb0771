package org.culvert.taxon;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;

/** What callers and rescuers hear about groups of animals, kept as data. */
@ApplicationScoped
public class CautionService {
    /** A caution for callers or rescuers who meet a group. */
    public record CautionView(
            @NotBlank String taxonGroup,

            @NotNull @Size(max = 100) @Pattern(regexp = "caller|rescuer", message = "must be caller or rescuer")
            String audience,

            @NotBlank String words,
            @NotBlank String source,
            @NotNull LocalDate readOn) {}

    @ApplicationScoped
    static class Cautions implements PanacheRepositoryBase<Caution, UUID> {}

    private final Cautions cautions;
    private final TaxonService taxa;

    CautionService(Cautions cautions, TaxonService taxa) {
        this.cautions = cautions;
        this.taxa = taxa;
    }

    /** Adds cautions, each for a group that is known. */
    @Transactional
    public void enterCautions(List<CautionView> entries) {
        for (int i = 0; i < entries.size(); i++) {
            CautionView entry = entries.get(i);
            cautions.persist(Caution.of(
                    entry,
                    taxa.requireGroup(i + ".taxonGroup", entry.taxonGroup()).id()));
        }
    }

    /** All that are kept. */
    @Transactional
    public List<CautionView> listCautions() {
        return cautions.list("order by id").stream().map(this::view).toList();
    }

    private CautionView view(Caution row) {
        return new CautionView(taxa.getGroup(row.taxonGroupId).key(), row.audience, row.words, row.source, row.readOn);
    }

    /** What callers or rescuers should hear about some groups, in a stable order. */
    @Transactional
    public List<CautionView> listCautions(Collection<UUID> groupIds, String audience) {
        if (groupIds.isEmpty()) {
            return List.of();
        }
        return cautions.list("taxonGroupId in ?1 and audience = ?2 order by id", groupIds, audience).stream()
                .map(this::view)
                .toList();
    }
}
