package org.culvert.care.template;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.List;
import org.culvert.platform.ledger.Change;
import org.jspecify.annotations.Nullable;

/** What goes into this room. */
public final class TemplateEntries {
    private TemplateEntries() {}

    /**
     * @param taxonGroup key of the group it is for; null: for all
     * @param source what it was taken from, or that it is common practice without a source
     */
    public record TemplateEntry(
            @NotBlank
            @Size(max = 60)
            @Pattern(regexp = "[a-z0-9]+(-[a-z0-9]+)*", message = "must be small letters, digits and hyphens")
            String key,

            @NotBlank @Size(max = 200) String name,
            @Nullable @Size(max = 100) String taxonGroup,
            @Nullable @Size(max = 4000) String words,
            @NotBlank @Size(max = 2000) String source,
            @NotEmpty @Size(max = PlanStepEntry.MOST_STEPS) List<@Valid PlanStepEntry> steps) {}

    /** Of a template; whatever it changes, the template wants adopting again. */
    public record TemplateCorrection(
            Change<String> name,
            Change<String> taxonGroup,
            Change<String> words,
            Change<String> source,
            Change<List<PlanStepEntry>> steps,
            @NotBlank @Size(max = 2000) String reason) {}

    public record AdoptionEntry(
            @NotBlank @Size(max = 200) String vetName,
            @NotBlank @Size(max = 200) String vetRegistration,
            @Nullable Instant at) {}
}
