package org.culvert.web.desk;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.culvert.call.CallView;
import org.culvert.taxon.TaxonService;
import org.culvert.taxon.TaxonService.GroupView;
import org.culvert.taxon.TaxonService.TaxonView;
import org.jspecify.annotations.Nullable;

/** What people call an animal, and which of the kinds of the register that is. */
@ApplicationScoped
public class AnimalNames {
    /**
     * @param scientificName of a kind of the register, or null
     * @param taxonGroup key of a group, where no more is known, or null
     * @param groupOf the group in either case
     */
    public record Meant(
            @Nullable String scientificName,
            @Nullable String taxonGroup,
            @Nullable GroupView groupOf) {}

    private final TaxonService taxa;

    AnimalNames(TaxonService taxa) {
        this.taxa = taxa;
    }

    /** The kind or group that is called exactly so; what is called otherwise is kept as it was said. */
    public Meant find(String said) {
        String name = said.strip();
        List<GroupView> groups = taxa.listGroups();
        List<TaxonView> kinds = taxa.findTaxa(name).stream()
                .filter(kind -> kind.vernacularName().equalsIgnoreCase(name)
                        || kind.scientificName().equalsIgnoreCase(name))
                .toList();
        if (kinds.size() == 1) {
            TaxonView kind = kinds.get(0);
            return new Meant(
                    kind.scientificName(),
                    null,
                    groups.stream()
                            .filter(group -> group.id().equals(kind.taxonGroupId()))
                            .findFirst()
                            .orElse(null));
        }
        GroupView group = groups.stream()
                .filter(one -> !one.key().equals(TaxonService.NOT_KNOWN_YET))
                .filter(one -> one.name().equalsIgnoreCase(name) || one.key().equalsIgnoreCase(name))
                .findFirst()
                .orElse(null);
        return new Meant(null, group == null ? null : group.key(), group);
    }

    /** What there is to choose from while somebody types. */
    public List<String> list() {
        return Stream.concat(
                        taxa.listGroups().stream()
                                .filter(group -> !group.key().equals(TaxonService.NOT_KNOWN_YET))
                                .map(GroupView::name),
                        taxa.findTaxa(null).stream().map(TaxonView::vernacularName))
                .distinct()
                .sorted(String.CASE_INSENSITIVE_ORDER)
                .toList();
    }

    static String shown(CallView.AnimalView animal) {
        return Objects.requireNonNullElse(
                animal.vernacularName(),
                Objects.requireNonNullElse(
                        animal.verbatimIdentification(), Objects.requireNonNullElse(animal.taxonGroup(), "")));
    }
}
