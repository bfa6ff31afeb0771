package org.culvert.taxon;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** Animals that the job treats alike: who may go, what to check, which season. */
@Entity
@Table(name = "taxon_groups")
class TaxonGroup extends Recorded {
    String key;
    String name;

    @Nullable
    String vaccinationNeeded;

    boolean pouch;
    boolean clutches;
    boolean introduced;

    @Nullable
    String bodyPlan;

    protected TaxonGroup() {}

    static TaxonGroup of(TaxonService.GroupEntry view) {
        var group = new TaxonGroup();
        group.key = view.key();
        group.update(view);
        return group;
    }

    void update(TaxonService.GroupEntry view) {
        name = view.name();
        vaccinationNeeded = view.vaccinationNeeded();
        pouch = view.pouch();
        clutches = view.clutches();
        introduced = view.introduced();
        bodyPlan = view.bodyPlan() == null ? bodyPlan : view.bodyPlan().name();
    }

    TaxonService.GroupView view() {
        return new TaxonService.GroupView(
                id(),
                key,
                name,
                vaccinationNeeded,
                pouch,
                clutches,
                introduced,
                bodyPlan == null ? null : TaxonService.BodyPlan.valueOf(bodyPlan));
    }
}
