package org.culvert.clinic;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseService;
import org.culvert.platform.InvalidException;
import org.culvert.taxon.TaxonService;
import org.culvert.taxon.TaxonService.BodyPlan;
import org.jspecify.annotations.Nullable;

/** Parts of the body that a finding may name, and whether it names them rightly. */
@ApplicationScoped
public class BodyParts {
    /**
     * A part of the body.
     *
     * @param paired whether there is a left one and a right one, so that a finding of it says its side
     * @param bodyPlans the plans of a body that have it
     */
    public record BodyPartView(String key, String name, boolean paired, List<BodyPlan> bodyPlans) {}

    /**
     * Where something was found.
     *
     * @param words the part in words: the finder's own, or else its name
     */
    record Place(
            String words, ClinicService.Side side, @Nullable String part) {}

    private final EntityManager entities;
    private final TaxonService taxa;
    private final CaseService cases;

    BodyParts(EntityManager entities, TaxonService taxa, CaseService cases) {
        this.entities = entities;
        this.taxa = taxa;
        this.cases = cases;
    }

    /**
     * Parts in a stable order.
     *
     * @param taxonGroup key of a group, whose plan of a body narrows them where it is told; null: all
     */
    @Transactional
    public List<BodyPartView> listParts(@Nullable String taxonGroup) {
        BodyPlan plan = taxonGroup == null
                ? null
                : taxa.requireGroup("taxonGroup", taxonGroup).bodyPlan();
        return all().stream()
                .filter(part -> plan == null || part.bodyPlans().contains(plan))
                .toList();
    }

    private List<BodyPartView> all() {
        List<?> rows = entities.createNativeQuery(
                        "select key, name, paired, array_to_string(plans, ',') from body_parts order by place")
                .getResultList();
        return rows.stream()
                .map(row -> (Object[]) row)
                .map(row -> new BodyPartView(
                        (String) row[0],
                        (String) row[1],
                        (Boolean) row[2],
                        Arrays.stream(((String) row[3]).split(","))
                                .map(BodyPlan::valueOf)
                                .toList()))
                .toList();
    }

    /**
     * Reads where something was found on the animal of a case.
     *
     * @param at what goes before the fields in the request
     * @param bodyPart in the finder's words
     * @param part key of a part
     * @throws InvalidException when it says nothing of where, there is no such part, the animal has none, or the side is
     *     missing where there are two, or told where there is one
     */
    Place read(String at, UUID caseId, @Nullable String bodyPart, @Nullable String part, ClinicService.Side side) {
        if (part == null) {
            if (bodyPart == null || bodyPart.isBlank()) {
                throw InvalidException.of(at + "bodyPart", "It does not say where.", "part, or bodyPart in words");
            }
            return new Place(bodyPart, side, null);
        }
        BodyPlan plan = planOf(caseId);
        BodyPartView known = all().stream()
                .filter(one -> one.key().equals(part))
                .findFirst()
                .orElseThrow(() -> InvalidException.of(
                        at + "part", "There is no such part.", "a key from /api/body-parts; words go into bodyPart"));
        if (plan != null && !known.bodyPlans().contains(plan)) {
            throw InvalidException.of(
                    at + "part",
                    "An animal of the plan " + plan + " has no " + known.name() + ".",
                    "a key from /api/body-parts for its group");
        }
        boolean isOfASide =
                side == ClinicService.Side.left || side == ClinicService.Side.right || side == ClinicService.Side.both;
        if (known.paired() != isOfASide) {
            throw InvalidException.of(
                    at + "side",
                    known.paired()
                            ? "There are two of these: which one?"
                            : "There is one of these, and it has no side.",
                    known.paired() ? "left, right or both" : "notApplicable, or nothing");
        }
        if (side == ClinicService.Side.middle) {
            throw InvalidException.of(at + "side", "A part that is named has no middle.", "notApplicable, or nothing");
        }
        return new Place(bodyPart == null || bodyPart.isBlank() ? known.name() : bodyPart, side, part);
    }

    private @Nullable BodyPlan planOf(UUID caseId) {
        UUID group = cases.getCase(caseId).animal().taxonGroupId();
        return taxa.getGroup(group).bodyPlan();
    }
}
