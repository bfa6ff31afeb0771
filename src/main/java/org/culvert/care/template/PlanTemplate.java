package org.culvert.care.template;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.List;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** Steps that a plan may begin with, once a vet has adopted them. */
@Entity
@Table(name = "plan_templates")
class PlanTemplate extends Recorded {
    String key;
    String name;

    @Nullable
    String taxonGroup;

    @Nullable
    String words;

    String source;

    @JdbcTypeCode(SqlTypes.JSON)
    List<PlanStepEntry> steps;

    protected PlanTemplate() {}

    PlanTemplate(TemplateEntries.TemplateEntry entry) {
        this.key = entry.key();
        this.name = entry.name();
        this.taxonGroup = entry.taxonGroup();
        this.words = entry.words();
        this.source = entry.source();
        this.steps = entry.steps();
    }

    /** What its revision is called, from 1. */
    int revision() {
        return version() + 1;
    }

    void correct(TemplateEntries.TemplateCorrection correction) {
        name = Corrections.words("name", correction.name(), name, 200);
        taxonGroup = correction.taxonGroup().over(taxonGroup);
        words = Corrections.text("words", correction.words(), words, 4000);
        source = Corrections.words("source", correction.source(), source, 2000);
        List<PlanStepEntry> told = correction.steps().over("steps", steps);
        if (correction.steps().isMade() && (told.isEmpty() || told.size() > PlanStepEntry.MOST_STEPS)) {
            throw InvalidException.of(
                    "steps", "A template has its steps.", "1 to " + PlanStepEntry.MOST_STEPS + " steps");
        }
        steps = told;
        revisedBecause(correction.reason());
    }
}
