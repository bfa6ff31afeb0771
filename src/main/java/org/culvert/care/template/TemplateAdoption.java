package org.culvert.care.template;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** A named vet takes a template as it stands; it happened when it was adopted. */
@Entity
@Table(name = "plan_template_adoptions")
class TemplateAdoption extends Recorded {
    UUID templateId;
    int templateRevision;
    String vetName;
    String vetRegistration;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected TemplateAdoption() {}

    TemplateAdoption(PlanTemplate template, TemplateEntries.AdoptionEntry entry, Instant at) {
        happenedAt(at);
        this.templateId = template.id();
        this.templateRevision = template.revision();
        this.vetName = entry.vetName();
        this.vetRegistration = entry.vetRegistration();
    }

    boolean standsFor(PlanTemplate template) {
        return withdrawnAt == null && templateRevision == template.revision();
    }

    void withdraw(Instant at, String reason) {
        if (withdrawnAt != null) {
            throw new ConflictException("That adoption was taken back already: " + withdrawnBecause);
        }
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }
}
