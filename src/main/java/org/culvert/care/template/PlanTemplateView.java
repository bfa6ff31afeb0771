package org.culvert.care.template;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A template as kept.
 *
 * @param adopted whether a vet has adopted it as it stands, so that plans may be made of it
 */
public record PlanTemplateView(
        UUID id,
        String key,
        String name,
        @Nullable String taxonGroup,
        @Nullable String words,
        String source,
        List<PlanStepEntry> steps,
        boolean adopted,
        List<AdoptionView> adoptions,
        String note,
        RecordView record) {
    /**
     * @param templateRevision which revision of the template was adopted
     * @param stands whether it was not taken back and the template has not been changed since
     */
    public record AdoptionView(
            UUID id,
            int templateRevision,
            String vetName,
            String vetRegistration,
            Instant adoptedAt,
            boolean stands,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}
}
